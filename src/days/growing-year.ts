import { dayAfter } from './days.ts';

/** Where a garden lies, as far as its seasons go: north or south of the equator, or where no winter comes. */
export type Zone = 'north' | 'south' | 'tropics';

/** The month in which a growing year begins south of the equator: July, the middle of its winter. */
const FIRST_MONTH = 7;

const between = (from: number): string => `${from}–${String((from + 1) % 100).padStart(2, '0')}`;

/** The calendar year in which the growing year of a day begins. */
function beginOf(day: string, zone: Zone): number {
  const year = Number(day.slice(0, 4));
  return zone === 'south' && Number(day.slice(5, 7)) < FIRST_MONTH ? year - 1 : year;
}

/**
 * The growing year of a day: `2025` in the north, where winter parts the calendar years; `2025–26` in the south, from July
 * to June, named by both years it lies in and with a dash that is no hyphen, so that it may stand in an id. Where no winter
 * comes nothing parts the years, and to name one the calendar's is as good as any; whether two days belong together is for
 * `growingYearsOf` to say. As words they sort by time within one place.
 * @param day `YYYY-MM-DD`
 */
export function growingYearOf(day: string, zone: Zone): string {
  return zone === 'south' ? between(beginOf(day, zone)) : day.slice(0, 4);
}

/**
 * Parts the days on which one thing was met by the growing year. Where no winter comes New Year is a day like any other, so there a
 * year is counted from the first of the days: what was met twice within weeks is never of two years.
 * @param days `YYYY-MM-DD`, in any order
 * @returns the growing year of each of them: as `growingYearOf` names it, or by the day on which it began
 */
export function growingYearsOf(days: readonly string[], zone: Zone): (day: string) => string {
  if (zone !== 'tropics') return (day) => growingYearOf(day, zone);
  const begun: string[] = [];
  for (const day of [...days].sort()) {
    const last = begun.at(-1);
    if (last === undefined || day >= `${Number(last.slice(0, 4)) + 1}${last.slice(4)}`) begun.push(day);
  }
  return (day) => begun.filter((first) => first <= day).at(-1) ?? day;
}

/** Half a year to one and a half before, days: where a calendar's last year lies on the average day. */
const LAST_YEAR = { from: 547, to: 183 } as const;

/**
 * First and last day of the growing year before that of a day. Where no winter comes it goes with the day: from one and a half
 * years before it to half a year, so that what was set a few weeks earlier never counts as last year's.
 * @param day `YYYY-MM-DD`
 */
export function yearBefore(day: string, zone: Zone): { readonly from: string; readonly to: string } {
  if (zone === 'tropics') return { from: dayAfter(day, -LAST_YEAR.from), to: dayAfter(day, -LAST_YEAR.to) };
  const year = beginOf(day, zone) - 1;
  return zone === 'south'
    ? { from: `${year}-07-01`, to: `${year + 1}-06-30` }
    : { from: `${year}-01-01`, to: `${year}-12-31` };
}
