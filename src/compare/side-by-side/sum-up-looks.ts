import { daysBetween } from '../../days/days.ts';
import type { TrialReading } from './trial.ts';

/**
 * What of several looks at one unit counts. `last`: the last look; `mean`: the mean over the time between the first and the last look
 * (trapezoids); `total`: the sum, for harvests that add up; `change`: last less first.
 */
export type LooksAs = 'last' | 'mean' | 'total' | 'change';

/** One number for one unit, however often it was looked at. */
export interface UnitValue {
  readonly value: number;
  /** Standard error that the photos state, where all do. */
  readonly se?: number;
  /** Days of the looks, first to last. */
  readonly days: readonly string[];
}

interface DayValue {
  readonly date: string;
  readonly value: number;
  readonly variance: number;
}

function byDay(readings: readonly TrialReading[]): DayValue[] {
  const days = new Map<string, TrialReading[]>();
  for (const reading of readings) days.set(reading.date, [...(days.get(reading.date) ?? []), reading]);
  return [...days]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([date, same]) => ({
      date,
      value: same.reduce((sum, { value }) => sum + value, 0) / same.length,
      variance: same.reduce((sum, { se }) => sum + (se ?? Number.NaN) ** 2, 0) / same.length ** 2,
    }));
}

/** How much each look counts in the number. */
function weightsOf(days: readonly DayValue[], as: Exclude<LooksAs, 'total'>): number[] {
  const last = days.length - 1;
  if (as === 'last' || last === 0) return days.map((_, i) => (i === last ? 1 : 0));
  if (as === 'change') return days.map((_, i) => (i === last ? 1 : i === 0 ? -1 : 0));
  const span = daysBetween(days[0]!.date, days[last]!.date);
  return days.map(({ date }, i) => {
    const before = i > 0 ? daysBetween(days[i - 1]!.date, date) : 0;
    const after = i < last ? daysBetween(date, days[i + 1]!.date) : 0;
    return (before + after) / 2 / span;
  });
}

/**
 * Several looks at one unit are one unit still: they are summed up to one number first (summary measures: Matthews, Altman,
 * Campbell and Royston 1990, BMJ 300, 230), and only units are compared. Several harvests on one day add up under `total`;
 * otherwise what was read on one day is averaged.
 * @param readings of one unit, in any order
 * @returns nothing without a reading, or for `change` with looks on fewer than two days
 */
export function sumUpLooks(readings: readonly TrialReading[], as: LooksAs): UnitValue | undefined {
  const days = byDay(readings);
  if (days.length === 0 || (as === 'change' && days.length < 2)) return undefined;
  const dates = days.map(({ date }) => date);
  if (as === 'total') {
    const value = readings.reduce((sum, reading) => sum + reading.value, 0);
    const variance = readings.reduce((sum, { se }) => sum + (se ?? Number.NaN) ** 2, 0);
    return { value, days: dates, ...(Number.isNaN(variance) ? {} : { se: Math.sqrt(variance) }) };
  }
  const weights = weightsOf(days, as);
  const value = days.reduce((sum, day, i) => sum + weights[i]! * day.value, 0);
  const variance = days.reduce(
    (sum, day, i) => sum + (weights[i] === 0 ? 0 : weights[i]! ** 2 * day.variance),
    0,
  );
  return { value, days: dates, ...(Number.isNaN(variance) ? {} : { se: Math.sqrt(variance) }) };
}
