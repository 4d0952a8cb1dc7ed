import { daysBetween } from '../days/days.ts';
import type { BatchRecord, HeapReading } from './ground-records.ts';

/** What is doubtful about a reading before it is kept. `future` is refused, the others may be so. */
export type ReadingDoubt =
  | { readonly code: 'future'; readonly date: string }
  | { readonly code: 'before-it-came'; readonly date: string; readonly came: string }
  | { readonly code: 'below-air'; readonly celsius: number; readonly airCelsius: number };

/**
 * The middle of a heap follows the air by days, so it may be cooler on a warm day, but not by more than this, K (common
 * practice, no source): the tip was not in the heap, or the number was misread.
 */
export const BELOW_AIR = 10;

/** @param air of that day as weather records have it, where the reading says none, °C */
export const isBelowAir = ({ celsius, airCelsius }: Omit<HeapReading, 'id'>, air?: number): boolean => {
  const around = airCelsius ?? air;
  return around !== undefined && celsius < around - BELOW_AIR;
};

export function doubtReading(
  { arrivedOn, startedOn }: BatchRecord,
  reading: Omit<HeapReading, 'id'>,
  today: string,
  air?: number,
): readonly ReadingDoubt[] {
  const { date, celsius, airCelsius = air } = reading;
  const doubts: ReadingDoubt[] = [];
  if (date > today) doubts.push({ code: 'future', date });
  // A heap of one's own was begun before the day on which it was noted down.
  const came = [arrivedOn, startedOn].filter((day) => day !== undefined).sort()[0];
  if (came !== undefined && daysBetween(date, came) > 0) doubts.push({ code: 'before-it-came', date, came });
  if (airCelsius !== undefined && isBelowAir(reading, air))
    doubts.push({ code: 'below-air', celsius, airCelsius });
  return doubts;
}
