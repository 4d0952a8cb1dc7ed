import type { TestQuestion } from './types.ts';

/** Of 100 made-up tests, how many ended how. */
export interface Ends {
  readonly safe: number;
  readonly stopped: number;
  readonly goOn: number;
  readonly void: number;
}

/** One setting of the simulation. `unlike`: pots that differ among themselves far more than usual. */
export interface SimulatedTests {
  readonly alike: Ends;
  readonly unlike: Ends;
}

export interface HowOftenWrong {
  /** Loads that do nothing. */
  readonly harmless: SimulatedTests;
  /** Residue: a true injury of 30. Ripeness: 40 in 100 fewer and smaller. */
  readonly harmful: SimulatedTests;
}

const ends = (safe: number, stopped: number, goOn: number, isVoid: number): Ends => ({
  safe,
  stopped,
  goOn,
  void: isVoid,
});

/**
 * From the README's table "How often it goes wrong", which `training/simulate-pot-tests.ts` makes: 10,000 made-up tests a setting,
 * by crop and pots of each kind. A test compares these numbers with the table.
 */
export const SIMULATED: Readonly<Record<string, Readonly<Record<number, HowOftenWrong>>>> = {
  'french-bean': {
    3: {
      harmless: { alike: ends(60.4, 0, 28.7, 11), unlike: ends(47.8, 0.1, 32.6, 19.6) },
      harmful: { alike: ends(0, 85.7, 3.6, 10.7), unlike: ends(0, 66.1, 14, 19.9) },
    },
    4: {
      harmless: { alike: ends(71, 0, 21.9, 7.1), unlike: ends(58.4, 0, 27, 14.7) },
      harmful: { alike: ends(0, 91.6, 1.3, 7.1), unlike: ends(0, 76.8, 9, 14.2) },
    },
    6: {
      harmless: { alike: ends(79.2, 0, 17.8, 3), unlike: ends(68.8, 0, 22.2, 9) },
      harmful: { alike: ends(0, 96.5, 0.2, 3.3), unlike: ends(0, 89, 2.6, 8.3) },
    },
  },
  tomato: {
    3: {
      harmless: { alike: ends(75.3, 0, 17.1, 7.5), unlike: ends(59.6, 0.1, 24.7, 15.7) },
      harmful: { alike: ends(0, 91.7, 0.8, 7.5), unlike: ends(0.1, 76.8, 7.2, 16) },
    },
    4: {
      harmless: { alike: ends(82.8, 0, 10.5, 6.6), unlike: ends(67.4, 0, 17.3, 15.3) },
      harmful: { alike: ends(0, 93.8, 0.2, 6), unlike: ends(0, 81.5, 3.9, 14.6) },
    },
    6: {
      harmless: { alike: ends(92.6, 0, 5.6, 1.9), unlike: ends(81.5, 0, 11.6, 6.9) },
      harmful: { alike: ends(0, 98, 0, 2), unlike: ends(0, 92.9, 0.8, 6.3) },
    },
  },
  radish: {
    4: {
      harmless: { alike: ends(74.3, 0, 23.2, 2.5), unlike: ends(55.7, 0.1, 36.7, 7.5) },
      harmful: { alike: ends(0, 84.4, 13.6, 2), unlike: ends(0, 65.9, 26.5, 7.6) },
    },
  },
};

/** Peas and broad beans were not simulated by themselves: they are sown and scored as beans are. */
const likeCrop = (crop: string): string => (crop in SIMULATED ? crop : 'french-bean');

/**
 * How often a test with so many pots of each kind goes wrong, by the simulated setting with the most pots that it has.
 * @returns `undefined` with fewer pots than any that was simulated
 */
export function howOftenWrong(question: TestQuestion, crop: string, pots: number): HowOftenWrong | undefined {
  const settings = SIMULATED[question === 'ripeness' ? 'radish' : likeCrop(crop)] ?? {};
  const most = Object.keys(settings)
    .map(Number)
    .filter((count) => count <= pots)
    .at(-1);
  return most === undefined ? undefined : settings[most];
}

/** Shares of made-up tests that came to an end. */
export interface PotsTell {
  /** Of harmless loads: called safe enough. */
  readonly freesClean: number;
  /** Of harmful loads: stopped. */
  readonly stopsHarmful: number;
}

/** What a test can tell: the mean of pots that are alike and unlike. The rest goes on or is void. */
export function potsTell(question: TestQuestion, crop: string, pots: number): PotsTell | undefined {
  const found = howOftenWrong(question, crop, pots);
  if (!found) return undefined;
  const mean = ({ alike, unlike }: SimulatedTests, how: keyof Ends): number =>
    (alike[how] + unlike[how]) / 200;
  return { freesClean: mean(found.harmless, 'safe'), stopsHarmful: mean(found.harmful, 'stopped') };
}
