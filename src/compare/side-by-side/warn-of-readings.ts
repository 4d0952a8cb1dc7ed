import { daysBetween } from '../../days/days.ts';
import { groupUnits, seasonOf } from './find-independent.ts';
import type { ValuedUnit } from './gather-points.ts';
import type { TreatmentDifference } from './read-trial.ts';
import type { Trial } from './trial.ts';

/**
 * What makes the result doubtful.
 * `units-lost`: units have no value; `lost-unevenly`: one treatment lost more than another, which may itself be the effect and is not in the
 * difference; `looks-apart`: units were last looked at more than a week apart; `photo-errors-lead`: the photos' own error makes at least half
 * of the spread, so better photos would help more than more plants; `few-units`: some interval rests on a spread that is about
 * normal, because so few units cannot reach the level by ranks; `no-interval`: too few to say anything of the spread; `no-spread`: values do not
 * differ at all, measured too coarsely; `seasons-disagree`: the intervals of two seasons lie apart; `alone-pair`: two treatments never
 * stood in one block and are not compared.
 */
export type ReadingWarning =
  | 'units-lost'
  | 'lost-unevenly'
  | 'looks-apart'
  | 'photo-errors-lead'
  | 'few-units'
  | 'no-interval'
  | 'no-spread'
  | 'seasons-disagree'
  | 'alone-pair';

/** Days between last looks that still count as one time. Common practice, no source. */
const SAME_TIME = 7;
/** So many more lost on one side than on another are worth a word. Common practice, no source. */
const LOST_UNEVENLY = 2;

function lossesBy(trial: Trial, valued: readonly ValuedUnit[]): number[] {
  const have = new Set(valued.map(({ id }) => id));
  return trial.treatments.map(
    (wanted) => trial.units.filter(({ id, treatment }) => treatment === wanted && !have.has(id)).length,
  );
}

function looksApart(valued: readonly ValuedUnit[]): boolean {
  return [...groupUnits(valued, seasonOf).values()].some((group) => {
    const last = group.map(({ days }) => days.at(-1)!).sort();
    return daysBetween(last[0]!, last.at(-1)!) > SAME_TIME;
  });
}

/** Mean squared error that the photos state, against the variance within treatments (and seasons). */
function photoErrorsLead(valued: readonly ValuedUnit[]): boolean {
  if (valued.some(({ se }) => se === undefined)) return false;
  let strays = 0;
  let freedom = 0;
  for (const group of groupUnits(valued, (unit) => `${unit.treatment}\u0000${seasonOf(unit)}`).values()) {
    const mean = group.reduce((sum, { value }) => sum + value, 0) / group.length;
    strays += group.reduce((sum, { value }) => sum + (value - mean) ** 2, 0);
    freedom += group.length - 1;
  }
  const errors = valued.reduce((sum, { se }) => sum + se! ** 2, 0) / valued.length;
  return freedom > 0 && errors > 0 && errors >= strays / freedom / 2;
}

function seasonsDisagree({ seasons = [] }: TreatmentDifference): boolean {
  const lows = seasons.flatMap(({ interval }) => (interval ? [interval.low] : []));
  const highs = seasons.flatMap(({ interval }) => (interval ? [interval.high] : []));
  return lows.length > 1 && Math.max(...lows) > Math.min(...highs);
}

/** What was found doubtful in what was measured. Pure. */
export function warnOfReadings(
  trial: Trial,
  valued: readonly ValuedUnit[],
  differences: readonly TreatmentDifference[],
): ReadingWarning[] {
  const losses = lossesBy(trial, valued);
  const treatments = new Set(valued.map(({ treatment }) => treatment)).size;
  const found: Record<ReadingWarning, boolean> = {
    'units-lost': losses.some((count) => count > 0),
    'lost-unevenly': Math.max(...losses) - Math.min(...losses) >= LOST_UNEVENLY,
    'looks-apart': looksApart(valued),
    'photo-errors-lead': photoErrorsLead(valued),
    'few-units': differences.some(({ interval }) => interval?.method === 't'),
    'no-interval': differences.some(({ interval }) => interval === undefined),
    'no-spread': differences.some(({ interval }) => interval !== undefined && interval.low === interval.high),
    'seasons-disagree': differences.some(seasonsDisagree),
    'alone-pair': differences.length < (treatments * (treatments - 1)) / 2,
  };
  return (Object.keys(found) as ReadingWarning[]).filter((warning) => found[warning]);
}
