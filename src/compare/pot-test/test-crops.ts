import type { TestQuestion } from './types.ts';

/** What a crop needs to be a test plant. Ours where no source is named. */
export interface TestCrop {
  /** Word of the vocabulary. */
  readonly id: string;
  readonly questions: readonly TestQuestion[];
  readonly seedsPerPot: number;
  readonly sowMm: number;
  /** Below this, °C, it comes up too slowly or rots (common practice, no source). */
  readonly leastCelsius: number;
  /** Usual first and last day after sowing on which it comes up in a warm place (common practice, no source). */
  readonly upAfterDays: readonly [first: number, last: number];
  /** Share of sound seed that comes up (common practice, no source). */
  readonly comesUp: number;
  /** Days from sowing to the end of the test. */
  readonly days: number;
  /** Who tests with it. */
  readonly source: string;
}

/**
 * Crops that published tests are sown with, the best first. Beans and peas are hurt by the smallest traces (OSU-SF-AMINO,
 * CORTEZ); the certified screening of growing media takes field or broad bean (WRAP-61843), the test of certified compost tomato
 * (REAL-PRT, 28 days), an allotment's tomato too (WFA). Radish asks only whether a compost is ripe (UF-SARASOTA).
 */
export const TEST_CROPS: readonly TestCrop[] = [
  {
    id: 'french-bean',
    questions: ['residue'],
    seedsPerPot: 3,
    sowMm: 30,
    leastCelsius: 15,
    upAfterDays: [7, 12],
    comesUp: 0.85,
    days: 21,
    source: 'OSU-CARRY',
  },
  {
    id: 'pea',
    questions: ['residue'],
    seedsPerPot: 3,
    sowMm: 25,
    leastCelsius: 8,
    upAfterDays: [7, 14],
    comesUp: 0.85,
    days: 21,
    source: 'WSU-WHATCOM',
  },
  {
    id: 'broad-bean',
    questions: ['residue'],
    seedsPerPot: 3,
    sowMm: 40,
    leastCelsius: 6,
    upAfterDays: [9, 16],
    comesUp: 0.85,
    days: 28,
    source: 'WRAP-61843',
  },
  {
    id: 'tomato',
    questions: ['residue'],
    seedsPerPot: 4,
    sowMm: 10,
    leastCelsius: 16,
    upAfterDays: [6, 12],
    comesUp: 0.85,
    days: 28,
    source: 'REAL-PRT',
  },
  {
    id: 'radish',
    questions: ['ripeness'],
    seedsPerPot: 5,
    sowMm: 10,
    leastCelsius: 8,
    upAfterDays: [3, 7],
    comesUp: 0.9,
    days: 14,
    source: 'UF-SARASOTA',
  },
];

export const testCrop = (id: string): TestCrop | undefined => TEST_CROPS.find((crop) => crop.id === id);
