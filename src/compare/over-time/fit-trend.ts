import { daysBetween } from '../../days/days.ts';
import type { Measured } from '../../leaf/measures.ts';

/** One look's value of a measure. */
export interface TrendPoint extends Measured {
  /** Day of the look, `YYYY-MM-DD`. */
  readonly date: string;
}

/** A straight line through the looks, by weighted least squares. */
export interface Trend {
  /** Change a week, with its standard error, in the unit of the measure. */
  readonly perWeek: Measured;
  /** Value of the line on the first and on the last day. */
  readonly from: number;
  readonly to: number;
}

/**
 * Weighted straight line (weights 1/se²; Bevington and Robinson, Data Reduction, chapter 6: slope and its error). Where the
 * points stray more than their errors allow, the error grows with them (square root of chi-square over its degrees of freedom).
 * @returns nothing for fewer than two days
 */
export function fitTrend(points: readonly TrendPoint[]): Trend | undefined {
  const [first] = points;
  if (!first) return undefined;
  const rows = points.map(({ date, value, se }) => ({
    x: daysBetween(first.date, date) / 7,
    y: value,
    w: 1 / Math.max(se, 1e-9) ** 2,
  }));
  const total = rows.reduce((sum, { w }) => sum + w, 0);
  const meanX = rows.reduce((sum, { x, w }) => sum + w * x, 0) / total;
  const meanY = rows.reduce((sum, { y, w }) => sum + w * y, 0) / total;
  const sxx = rows.reduce((sum, { x, w }) => sum + w * (x - meanX) ** 2, 0);
  if (sxx <= 0) return undefined;
  const slope = rows.reduce((sum, { x, y, w }) => sum + w * (x - meanX) * (y - meanY), 0) / sxx;
  const at = (x: number): number => meanY + slope * (x - meanX);
  const chiSquare = rows.reduce((sum, { x, y, w }) => sum + w * (y - at(x)) ** 2, 0);
  const stray = rows.length > 2 ? Math.max(1, chiSquare / (rows.length - 2)) : 1;
  const xs = rows.map(({ x }) => x);
  return {
    perWeek: { value: slope, se: Math.sqrt(stray / sxx) },
    from: at(Math.min(...xs)),
    to: at(Math.max(...xs)),
  };
}
