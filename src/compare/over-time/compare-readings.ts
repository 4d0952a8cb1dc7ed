import { MEASURES, type Measured, type MeasureId, type Measures } from '../../leaf/measures.ts';
import { betterWayOf, farFromWell } from './better-way.ts';
import { asOneOfItsPlant, leastTold } from './spread-among-leaves.ts';

/** What a change amounts to. */
export type ChangeWord = 'better' | 'no-clear-change' | 'worse';

/**
 * How sure a change must be before it is called better or worse: its sign is right at least so often (one-sided). At
 * 19 in 20 a plant that stays as it is is called better once in twenty looks, and worse as often.
 */
export const CHANGE_SURENESS = 0.95;
/** Quantile of the normal distribution at `CHANGE_SURENESS`. Standard tables: 1.645. */
const QUANTILE = 1.644854;

/** One measure at two looks. All in the unit of the measure. */
export interface MeasureChange {
  readonly measure: MeasureId;
  readonly first: Measured;
  readonly later: Measured;
  /** Later less first, with its standard error: both readings' errors, and how far leaves differ if it is another leaf. */
  readonly change: Measured;
  /** Absent for measures that are neither good nor bad by themselves. */
  readonly word?: ChangeWord;
}

/** What is known besides the two readings. */
export interface ComparedLeaves {
  /** The very same leaf was photographed again. Default no: then leaves of one plant differ a little by themselves. */
  readonly sameLeaf?: boolean;
  /** Measures of a normal leaf of the variety: mending goes towards it. */
  readonly normal?: Measures;
}

/** @param least a smaller change is none, however sure */
function wordFor(first: number, later: number, se: number, least: number): ChangeWord {
  const gain = first - later;
  if (Math.abs(gain) < least || Math.abs(gain) <= QUANTILE * se) return 'no-clear-change';
  return gain > 0 ? 'better' : 'worse';
}

/** Every measure that both readings have, in the order of the measures. Pure. */
export function compareReadings(
  first: Measures,
  later: Measures,
  { sameLeaf = false, normal }: ComparedLeaves = {},
): MeasureChange[] {
  return MEASURES.flatMap(({ id }) => {
    const a = first[id];
    const b = later[id];
    if (!a || !b || id === 'frame-share' || id === 'sharpness') return [];
    const se = Math.hypot(asOneOfItsPlant(id, a, sameLeaf).se, asOneOfItsPlant(id, b, sameLeaf).se);
    const change = { value: b.value - a.value, se };
    const way = betterWayOf(id, normal?.[id]?.value);
    if (way === undefined) return [{ measure: id, first: a, later: b, change }];
    const word = wordFor(farFromWell(a.value, way), farFromWell(b.value, way), se, leastTold(id));
    return [{ measure: id, first: a, later: b, change, word }];
  });
}

/** So many times as large must the largest change one way be that the largest the other way does not speak against it. */
const OUTWEIGHS = 3;

/**
 * One word for the whole leaf: better or worse where at least one measure clearly is and none that matters says the
 * opposite. Since several measures are asked at once, one that decides must hold against their number (Holm 1979):
 * `QUANTILE` widened to the share of each. How sure a change is says nothing of how large it is: where both ways are sure, the one
 * counts that is far larger, each measured by the least change that a grower would call one.
 */
export function wordForLeaf(changes: readonly MeasureChange[]): ChangeWord {
  const judged = changes.filter(({ word }) => word !== undefined);
  const needed = quantileShared(judged.length);
  const largest = (wanted: ChangeWord): number =>
    Math.max(
      0,
      ...judged
        .filter(({ word, change }) => word === wanted && Math.abs(change.value) / change.se >= needed)
        .map(({ measure, change }) => Math.abs(change.value) / leastTold(measure)),
    );
  const better = largest('better');
  const worse = largest('worse');
  if (better > OUTWEIGHS * worse) return 'better';
  return worse > OUTWEIGHS * better ? 'worse' : 'no-clear-change';
}

/** Upper quantile of the normal distribution at (1 − sureness) / n; rational approximation, error under 4.5e-4 (Abramowitz and Stegun 26.2.23). */
function quantileShared(n: number): number {
  const t = Math.sqrt(-2 * Math.log((1 - CHANGE_SURENESS) / Math.max(1, n)));
  return (
    t -
    (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3)
  );
}
