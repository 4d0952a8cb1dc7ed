import { FEWEST_TREATMENTS, MOST_TREATMENTS } from './check-trial.ts';
import { cutFor, MOST_UNITS, mostReached } from './count-orders.ts';
import { rankChances } from './estimate-shift.ts';
import { TRIAL_LEVEL } from './read-trial.ts';
import { noncentralTCdf, tQuantile } from './t-distribution.ts';
import { TrialError } from './trial-error.ts';

/** What is planned. All as shares of the mean: 0.2 is a fifth. */
export interface TrialWish {
  readonly treatments: number;
  /** In pairs or blocks with one unit of each treatment, or at random throughout. */
  readonly how: 'random' | 'blocks';
  /** Coefficient of variation of units treated alike (`SPREAD_WORDS`, `spreadFromRange`; whole beds: `spreadOfBedMeans`). */
  readonly spread: number;
  /** Correlation of the units of one block, 0 to under 1: how much of the spread lies between blocks. Default 0, the cautious guess. */
  readonly likeness?: number;
}

/**
 * Chance that a two-sided t test sees a shift (noncentral t: Cohen 1988, Statistical Power Analysis, chapter 2).
 * @param shift noncentrality: true difference over its standard error
 * @param wrong chance to see one where there is none, both sides
 */
export function chanceByT(shift: number, df: number, wrong: number): number {
  const bound = tQuantile(1 - wrong / 2, df);
  return 1 - noncentralTCdf(bound, df, shift) + noncentralTCdf(-bound, df, shift);
}

/** Rank tests need π/3 as many normal units as the t test (Hodges and Lehmann 1956). */
const RANK_EFFICIENCY = 3 / Math.PI;

/** How often each single interval must hold so that all two-by-two ones hold together (Dunn 1961). */
export const levelOfEach = (treatments: number): number =>
  1 - (1 - TRIAL_LEVEL) / ((treatments * (treatments - 1)) / 2);

function checkWish({ treatments, spread, likeness = 0 }: TrialWish): void {
  if (!Number.isInteger(treatments) || treatments < FEWEST_TREATMENTS || treatments > MOST_TREATMENTS)
    throw new TrialError('treatments');
  if (!(spread > 0 && Number.isFinite(spread)) || !(likeness >= 0 && likeness < 1))
    throw new TrialError('plan');
}

const chancesFor = (how: TrialWish['how'], units: number): Float64Array =>
  how === 'blocks' && units > 1
    ? rankChances(Array.from({ length: units }, () => [1, 1] as const))
    : rankChances([[units, units]]);

/** What so few units can reach at most by ranks alone: how often the widest interval of two treatments holds. @param units of each treatment */
export const reachByRanks = (how: TrialWish['how'], units: number): number =>
  mostReached(chancesFor(how, units));

/**
 * Chance that a true difference between two of the treatments is seen: that their interval leaves out nought. By the power of the t
 * test, at the level that the rank interval has with so many units and with the efficiency of ranks; where ranks do not reach the level,
 * that of the t interval used then. Normal spread assumed; tried by simulation (`README.md`).
 * @param units of each treatment; with blocks, blocks
 * @param difference share of the mean
 * @throws TrialError `treatments`, `plan`, `too-many-units`
 */
export function chanceToSee(wish: TrialWish, units: number, difference: number): number {
  checkWish(wish);
  if (!Number.isInteger(units) || units < 1 || !(difference > 0)) throw new TrialError('plan');
  if (units > MOST_UNITS) throw new TrialError('too-many-units');
  if (units === 1) return 0;
  const { how, spread, likeness = 0, treatments } = wish;
  const cut = cutFor(chancesFor(how, units), levelOfEach(treatments));
  const spreadOfOne = spread * Math.sqrt(how === 'blocks' ? 1 - likeness : 1);
  const shift = (difference / spreadOfOne) * Math.sqrt(units / 2);
  if (cut) {
    const df = how === 'blocks' ? units - 1 : 2 * units - 2;
    return chanceByT(shift * Math.sqrt(RANK_EFFICIENCY), df, 1 - cut.reached);
  }
  // Welch's degrees of freedom hang on the values; the fewest they can be is the cautious guess.
  return chanceByT(shift, units - 1, 1 - levelOfEach(treatments));
}

/**
 * Fewest units of each treatment that see a difference with the chance wanted, and would with one more too.
 * @param chance e.g. 0.8
 * @returns nothing where even `MOST_UNITS` do not
 * @throws TrialError `treatments`, `plan`
 */
export function unitsNeeded(wish: TrialWish, difference: number, chance: number): number | undefined {
  if (!(chance > 0 && chance < 1)) throw new TrialError('plan');
  let before = false;
  for (let units = 2; units <= MOST_UNITS; units += 1) {
    const enough = chanceToSee(wish, units, difference) >= chance;
    if (enough && before) return units - 1;
    before = enough;
  }
  return undefined;
}

/**
 * Smallest difference that so many units see with the chance wanted, as a share of the mean, to a thousandth.
 * @returns nothing for one unit, or where it is above ten times the mean
 * @throws TrialError `treatments`, `plan`, `too-many-units`
 */
export function smallestSeen(wish: TrialWish, units: number, chance: number): number | undefined {
  if (!(chance > 0 && chance < 1)) throw new TrialError('plan');
  let low = 0;
  let high = 10;
  if (chanceToSee(wish, units, high) < chance) return undefined;
  while (high - low > 0.0005) {
    const middle = (low + high) / 2;
    if (chanceToSee(wish, units, middle) < chance) low = middle;
    else high = middle;
  }
  return high;
}
