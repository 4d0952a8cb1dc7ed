import { TrialError } from './trial-error.ts';

/**
 * How much plants or plots that were treated alike differ, in the grower's words, as a coefficient of variation (standard deviation over
 * mean). The bounds are those of Pimentel Gomes for field trials: under 10 % low, to 20 % middling, to 30 % high, above that very high (Curso de
 * Estatística Experimental, as quoted in work on trials of sugar cane, maize and eucalyptus); each word stands for the middle of its band,
 * the last for one and a half times its bound (common practice, no source). Plots of several plants are mostly in the first two, single plants
 * mostly in the last two: the variance of a plot's mean falls with its size (Fairfield Smith 1938, from memory). Measured beside it
 * (`tests/compare/side-by-side`): plots of peas at Rothamsted 8 % (R's npk), dried plants grown under control 12 % (R's PlantGrowth).
 */
export const SPREAD_WORDS = {
  'hard-to-tell-apart': 0.07,
  'a-little-uneven': 0.15,
  uneven: 0.25,
  'very-uneven': 0.45,
} as const;
export type SpreadWord = keyof typeof SPREAD_WORDS;

/** Mean range of 2 to 25 normal values in standard deviations (Tippett 1925; d₂ of the control-chart tables). */
const RANGE_OF_NORMALS = [
  1.128, 1.693, 2.059, 2.326, 2.534, 2.704, 2.847, 2.97, 3.078, 3.173, 3.258, 3.336, 3.407, 3.472, 3.532,
  3.588, 3.64, 3.689, 3.735, 3.778, 3.819, 3.858, 3.895, 3.931,
];

/**
 * Coefficient of variation from the smallest and the largest of some plants the grower has before the eye or in the notes: range over
 * its mean for normal values, over the middle of the two.
 * @param outOf 2 to 25 plants or plots
 * @throws TrialError `plan`
 */
export function spreadFromRange(smallest: number, largest: number, outOf: number): number {
  const range = RANGE_OF_NORMALS[outOf - 2];
  if (range === undefined || !(smallest >= 0) || !(largest > smallest) || !Number.isFinite(largest))
    throw new TrialError('plan');
  return (largest - smallest) / range / ((smallest + largest) / 2);
}

/**
 * Spread of bed means where whole beds are treated: what beds differ by themselves, and what is left of the plants' differences in the mean
 * of so many. However many plants, it never falls below the beds' own.
 * @param amongBeds coefficient of variation of beds treated alike
 * @param amongPlants that of plants within a bed
 */
export function spreadOfBedMeans(amongBeds: number, amongPlants: number, plantsPerBed: number): number {
  return Math.hypot(amongBeds, amongPlants / Math.sqrt(plantsPerBed));
}

/**
 * How many independent plants a bed of plants is worth (design effect 1 + (m − 1)ρ, Kish 1965).
 * @param likeness correlation of plants of one bed, 0 to 1
 */
export const worthInPlants = (plantsPerBed: number, likeness: number): number =>
  plantsPerBed / (1 + (plantsPerBed - 1) * likeness);
