import { dayOf, describeDay, describeDayAndYear } from './dates.ts';

/** No garden on this device was written up before; a day typed before it is a slip of the finger. */
export const FIRST_DAY = '2000-01-01';
/** Further ahead nothing is planned. */
const YEARS_AHEAD = 5;

export const lastDay = (today: string): string => `${Number(today.slice(0, 4)) + YEARS_AHEAD}-12-31`;

interface Bounds {
  readonly min?: string | undefined;
  readonly max?: string | undefined;
}

/** What is wrong with a day that was typed, and what to do; undefined where it can be. `kept`: the day that stays in its place, or empty. */
export function sayDayFault(
  day: string,
  { min = FIRST_DAY, max }: Bounds,
  kept: string,
  today = dayOf(new Date()),
): string | undefined {
  if (day === '') return undefined;
  const last = max ?? lastDay(today);
  if (day >= min && day <= last) return undefined;
  const stays = kept ? ` Until then ${describeDay(kept, today)} stays.` : '';
  const what = describeDayAndYear(day);
  if (day < min) return `${what} is too long ago. Choose a day from ${describeDayAndYear(min)} on.${stays}`;
  return last === today
    ? `${what} is still to come. Choose today or a day before it.${stays}`
    : `${what} is too far ahead. Choose a day up to ${describeDayAndYear(last)}.${stays}`;
}
