import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { LEANING_LOG_ODDS } from '../../../src/causes/schema.ts';
import { cropMatches } from '../../../src/signs/crops.ts';
import type { CropId } from '../../../src/signs/vocabulary.ts';

/** Threshold a (dS/m) and slope b (% per dS/m) of Maas 1990 (USSL-MAAS). */
const MAAS: readonly (readonly [CropId, number, number])[] = [
  ['french-bean', 1.0, 19],
  ['carrot', 1.0, 14],
  ['onion', 1.2, 16],
  ['radish', 1.2, 13],
  ['aubergine', 1.1, 6.9],
  ['lettuce', 1.3, 13],
  ['pepper', 1.5, 14],
  ['sweetcorn', 1.7, 12],
  ['potato', 1.7, 12],
  ['cabbage', 1.8, 9.7],
  ['celery', 1.8, 6.2],
  ['spinach', 2.0, 7.6],
  ['cucumber', 2.5, 13],
  ['tomato', 2.5, 9.9],
  ['broccoli', 2.8, 9.2],
  ['beetroot', 4.0, 9],
  ['courgette', 4.7, 9.4],
  ['turnip', 0.9, 9],
];

/** Relative yield in percent at an electrical conductivity of the soil in dS/m: 100 − b (EC − a) above a (USSL-MAAS). */
const yieldAt = (ec: number, [, a, b]: (typeof MAAS)[number]): number => 100 - Math.max(0, b * (ec - a));

const leaning = (crop: CropId): number =>
  KNOWLEDGE.find(({ id }) => id === 'salt-burn')!.leanings.reduce(
    (sum, { when, leans }) =>
      'crop' in when && cropMatches(crop, when.crop) ? sum + LEANING_LOG_ODDS[leans] : sum,
    0,
  );

const of = (crop: CropId) => MAAS.find(([name]) => name === crop)!;

it('I4 the table gives bean 62 % at 3 dS/m; tomato 85.15, lettuce 64.9 and beet 100 % at 4 (USSL-MAAS)', () => {
  expect(yieldAt(3, of('french-bean'))).toBeCloseTo(62, 10);
  expect(yieldAt(4, of('tomato'))).toBeCloseTo(85.15, 10);
  expect(yieldAt(4, of('lettuce'))).toBeCloseTo(64.9, 10);
  expect(yieldAt(4, of('beetroot'))).toBe(100);
});

it('I4 no crop that keeps ten percent more of its yield at 4 dS/m leans more towards salt burn (USSL-MAAS)', () => {
  for (const tender of MAAS)
    for (const tough of MAAS)
      if (yieldAt(4, tough) >= yieldAt(4, tender) + 10)
        expect(leaning(tough[0]), `${tough[0]} against ${tender[0]}`).toBeLessThanOrEqual(leaning(tender[0]));
});

it('I5 the older handbook ranks crops as the leanings do: Spearman below −0.6 (ECHO-SALT)', () => {
  // Conductivity at a quarter of yield lost, mmho/cm.
  const quarterLost: readonly (readonly [CropId, number])[] = [
    ['beetroot', 10],
    ['spinach', 7],
    ['tomato', 6],
    ['broccoli', 6],
    ['cabbage', 4],
    ['cucumber', 4],
    ['potato', 4],
    ['sweetcorn', 4],
    ['lettuce', 3],
    ['pepper', 3],
    ['radish', 3],
    ['onion', 3],
    ['carrot', 3],
    ['french-bean', 2],
  ];
  const ranks = (values: readonly number[]): number[] =>
    values.map((v) => values.filter((w) => w < v).length + (values.filter((w) => w === v).length - 1) / 2);
  const [x, y] = [ranks(quarterLost.map(([, ec]) => ec)), ranks(quarterLost.map(([crop]) => leaning(crop)))];
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const cov = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, v, i) => sum + (v - mean(a)) * (b[i]! - mean(b)), 0);
  expect(cov(x, y) / Math.sqrt(cov(x, x) * cov(y, y))).toBeLessThan(-0.6);
});
