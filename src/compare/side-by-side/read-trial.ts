import { checkReadings, checkTrial } from './check-trial.ts';
import {
  type BlockValues,
  centreOf,
  estimateShift,
  type IntervalMethod,
  type Shift,
} from './estimate-shift.ts';
import {
  groupUnits,
  type Independent,
  type LayoutWarning,
  seasonOf,
  warnOfLayout,
} from './find-independent.ts';
import { gatherPoints, type TrialPoint, unitPoints, type ValuedUnit } from './gather-points.ts';
import { type LooksAs, sumUpLooks } from './sum-up-looks.ts';
import type { Trial, TrialReading } from './trial.ts';
import { TrialError } from './trial-error.ts';
import { type ReadingWarning, warnOfReadings } from './warn-of-readings.ts';

/** How often all intervals of a trial together hold the truth: at least so often. */
export const TRIAL_LEVEL = 0.9;

/** `trial`: independent units on both sides. `indication`: one bed a side; what is said holds for these beds, not for the treatments. */
export type Standing = 'trial' | 'indication';

/**
 * `more`, `less`: the second treatment has clearly more or less of what is measured than the first. `alike`: any difference is smaller than
 * what matters (the whole interval lies within it: two one-sided tests at 5 %, Schuirmann 1987). `open`: cannot be told.
 */
export type DifferenceWord = 'more' | 'less' | 'alike' | 'open';

/** Ends of an interval with what it rests on. */
export interface DifferenceInterval {
  readonly low: number;
  readonly high: number;
  readonly method: IntervalMethod;
  /** How often an interval made so holds the true difference of these two treatments. */
  readonly reached: number;
  /** So many wild plants cannot carry an end away. */
  readonly bearsWild: number;
}

/** How much the second treatment differs from the first: second less first, or second over first on the scale of ratios. */
export interface TreatmentDifference {
  readonly first: string;
  readonly second: string;
  readonly estimate: number;
  readonly interval?: DifferenceInterval;
  readonly word: DifferenceWord;
  readonly standing: Standing;
  /** Points on either side that had something to be compared with. */
  readonly counts: readonly [number, number];
  /** Season by season, where there are several; these intervals hold one by one, not together. */
  readonly seasons?: readonly {
    readonly season: string;
    readonly estimate: number;
    readonly interval?: DifferenceInterval;
  }[];
}

/** What came out of a trial: everything that words and a plot need. */
export interface TrialResult {
  readonly scale: 'difference' | 'ratio';
  /** The level at which all differences hold together. */
  readonly level: number;
  /** What was counted as separate evidence. */
  readonly independent: Independent;
  /** What counted; plants one by one where some difference is only an indication. */
  readonly points: readonly TrialPoint[];
  /** Centre of each treatment that has points, in the order of the trial. Where blocks differ, the differences do not follow from these. */
  readonly centres: readonly {
    readonly treatment: string;
    readonly centre: number;
    readonly count: number;
  }[];
  /** Every two treatments once, in the order of the trial. */
  readonly differences: readonly TreatmentDifference[];
  /** Units without a value. */
  readonly lost: readonly string[];
  readonly warnings: readonly (LayoutWarning | ReadingWarning)[];
}

export interface TrialQuestion {
  /** What of several looks counts. Default `last`. */
  readonly looks?: LooksAs;
  /** `ratio` for what grows by shares, like weights: second over first, all values above nought. Default `difference`. */
  readonly scale?: 'difference' | 'ratio';
  /** The smallest difference that matters to the grower: in the unit of the measure, or a factor above 1. Without it nothing is `alike`. */
  readonly matters?: number;
}

/** The two treatments' values block by block, blocks that hold only one of them left out. */
function blocksFor(points: readonly TrialPoint[], first: string, second: string): BlockValues[] {
  const of = (group: readonly TrialPoint[], wanted: string): number[] =>
    group.filter(({ treatment }) => treatment === wanted).map(({ value }) => value);
  return [...groupUnits(points, ({ block }) => block).values()]
    .map((group) => ({ first: of(group, first), second: of(group, second) }))
    .filter((block) => block.first.length > 0 && block.second.length > 0);
}

function wordFor(shift: Shift, matters: number | undefined): DifferenceWord {
  if (!shift.interval) return 'open';
  const { low, high } = shift.interval;
  if (matters !== undefined && low > -matters && high < matters) return 'alike';
  if (low > 0) return 'more';
  return high < 0 ? 'less' : 'open';
}

/** Back from logarithms where ratios are asked for. */
function scaled(shift: Shift, ratio: boolean): Pick<TreatmentDifference, 'estimate' | 'interval'> {
  if (!ratio) return shift;
  const { estimate, interval } = shift;
  return {
    estimate: Math.exp(estimate),
    ...(interval
      ? { interval: { ...interval, low: Math.exp(interval.low), high: Math.exp(interval.high) } }
      : {}),
  };
}

const logged = (points: readonly TrialPoint[]): TrialPoint[] =>
  points.map((point) => {
    if (point.value <= 0) throw new TrialError('ratio-needs-positive', point.units[0]);
    return { ...point, value: Math.log(point.value) };
  });

/**
 * Reads a trial: every two treatments' difference with an interval, such that all intervals of the trial hold together at least 9 times in 10
 * (Bonferroni's division of what may go wrong, Dunn 1961). `README.md` tells what the intervals rest on and how often they held when tried.
 * Pure.
 * @throws TrialError `treatments`, `units`, `unknown-unit`, `day`, `value`, `plan` (what matters), `ratio-needs-positive`, `no-readings`,
 * `no-common-season`, `too-many-units`
 */
export function readTrial(
  trial: Trial,
  readings: readonly TrialReading[],
  { looks = 'last', scale = 'difference', matters }: TrialQuestion = {},
): TrialResult {
  checkTrial(trial);
  checkReadings(trial, readings);
  const ratio = scale === 'ratio';
  if (matters !== undefined && !(matters > (ratio ? 1 : 0) && Number.isFinite(matters)))
    throw new TrialError('plan');
  const margin = matters === undefined || !ratio ? matters : Math.log(matters);
  const byUnit = groupUnits(readings, ({ unit }) => unit);
  const valued: ValuedUnit[] = trial.units.flatMap((unit) => {
    const value = sumUpLooks(byUnit.get(unit.id) ?? [], looks);
    return value ? [{ ...unit, ...value }] : [];
  });
  const met = trial.treatments.filter((wanted) => valued.some(({ treatment }) => treatment === wanted));
  if (met.length < 2) throw new TrialError('no-readings');

  const { independent, points } = gatherPoints(trial.units, valued);
  const singles = unitPoints(valued, seasonOf);
  const level = 1 - (1 - TRIAL_LEVEL) / ((met.length * (met.length - 1)) / 2);
  const bedCount = (wanted: string): number =>
    new Set(trial.units.filter(({ treatment }) => treatment === wanted).map(({ bed }) => bed)).size;

  const differences = met.flatMap((first, i) =>
    met.slice(i + 1).flatMap((second): TreatmentDifference[] => {
      const alone = independent === 'bed' && Math.min(bedCount(first), bedCount(second)) === 1;
      const theirs = (alone ? singles : points).filter((point) => [first, second].includes(point.treatment));
      const used = ratio ? logged(theirs) : theirs;
      const blocks = blocksFor(used, first, second);
      if (blocks.length === 0) return [];
      const shift = estimateShift(blocks, level);
      const seasons = seasonByTurn(used, first, second, ratio);
      return [
        {
          first,
          second,
          ...scaled(shift, ratio),
          word: wordFor(shift, margin),
          standing: alone ? 'indication' : 'trial',
          counts: [
            blocks.reduce((sum, block) => sum + block.first.length, 0),
            blocks.reduce((sum, block) => sum + block.second.length, 0),
          ],
          ...(seasons.length > 1 ? { seasons } : {}),
        },
      ];
    }),
  );
  const have = new Set(valued.map(({ id }) => id));
  const shown = differences.some(({ standing }) => standing === 'indication') ? singles : points;
  return {
    scale,
    level: TRIAL_LEVEL,
    independent,
    points: shown,
    centres: met.map((treatment) => {
      const values = shown.filter((point) => point.treatment === treatment).map(({ value }) => value);
      return { treatment, centre: centreOf(values), count: values.length };
    }),
    differences,
    lost: trial.units.filter(({ id }) => !have.has(id)).map(({ id }) => id),
    warnings: [...warnOfLayout(trial), ...warnOfReadings(trial, valued, differences)],
  };
}

function seasonByTurn(
  points: readonly TrialPoint[],
  first: string,
  second: string,
  ratio: boolean,
): NonNullable<TreatmentDifference['seasons']> {
  return [...groupUnits(points, ({ season }) => season ?? '')].flatMap(([season, group]) => {
    const blocks = blocksFor(group, first, second);
    if (season === '' || blocks.length === 0) return [];
    return [{ season, ...scaled(estimateShift(blocks, TRIAL_LEVEL), ratio) }];
  });
}
