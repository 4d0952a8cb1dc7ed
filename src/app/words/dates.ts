import { units } from './units.ts';

/** Dates as people say them, with the day of the week. Days are `YYYY-MM-DD` without a time zone. */
const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** In place of a day that was not said. */
export const NO_DAY = 'Not said';

const MS_A_DAY = 86_400_000;

/** Midnight UTC of a day, so that days can be counted without summer time in the way. NaN for what is no day. */
const atMidnight = (day: string): number =>
  /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN;

/** "Thursday 18 June", or "Thursday, June 18" where the month comes first; the year is added when it is not that of `today`. */
export function describeDay(day: string, today: string): string {
  const ms = atMidnight(day.slice(0, 10));
  if (Number.isNaN(ms)) return 'a day that cannot be read';
  const date = new Date(ms);
  const comma = units.value.days === 'month-first' ? ',' : '';
  const said = `${WEEKDAYS[date.getUTCDay()]}${comma} ${dayAndMonth(date)}`;
  return day.slice(0, 4) === today.slice(0, 4) ? said : `${said}${comma} ${day.slice(0, 4)}`;
}

/** "18 June" or "June 18". */
function dayAndMonth(date: Date): string {
  const [day, month] = [date.getUTCDate(), MONTHS[date.getUTCMonth()]!];
  return units.value.days === 'month-first' ? `${month} ${day}` : `${day} ${month}`;
}

/** "1 to 3 November 2026", "28 October to 3 November 2026", or with the month first: days from one to another, no more said than needed. */
export function describeDays(from: string, to: string): string {
  const [first, last] = [new Date(atMidnight(from)), new Date(atMidnight(to))];
  const withYear = (date: Date): string =>
    `${dayAndMonth(date)}${units.value.days === 'month-first' ? ',' : ''} ${date.getUTCFullYear()}`;
  if (from === to) return withYear(last);
  if (from.slice(0, 4) !== to.slice(0, 4)) return `${withYear(first)} to ${withYear(last)}`;
  if (from.slice(0, 7) !== to.slice(0, 7)) return `${dayAndMonth(first)} to ${withYear(last)}`;
  return units.value.days === 'month-first'
    ? `${dayAndMonth(first)} to ${last.getUTCDate()}, ${last.getUTCFullYear()}`
    : `${first.getUTCDate()} to ${withYear(last)}`;
}

/** "18 Jun" or "Jun 18", as narrow as a plot or a column of days must be. */
export function describeDayShortly(day: string): string {
  const date = new Date(atMidnight(day.slice(0, 10)));
  return dayAndMonth(date).replace(/[A-Z]\w+/, (month) => month.slice(0, 3));
}

/** "Thu": the weekday, as narrow. */
export const weekdayShortly = (day: string): string =>
  WEEKDAYS[new Date(atMidnight(day.slice(0, 10))).getUTCDay()]?.slice(0, 3) ?? '';

/** "Thursday 18 June 2026": for what is kept, where the year will matter. */
export const describeDayAndYear = (day: string): string => describeDay(day, '');

/** Whole days from `today` to `day`; negative when it is past. */
export function daysUntil(day: string, today: string): number {
  return Math.round((atMidnight(day.slice(0, 10)) - atMidnight(today.slice(0, 10))) / MS_A_DAY);
}

/** "today", "tomorrow", "in 6 days", "3 days ago", "in 5 weeks". */
export function describeDistance(day: string, today: string): string {
  const days = daysUntil(day, today);
  if (Number.isNaN(days)) return '';
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  if (days === -1) return 'yesterday';
  const far = Math.abs(days);
  const said =
    far < 21 ? `${far} days` : far < 70 ? `${Math.round(far / 7)} weeks` : `${Math.round(far / 30.4)} months`;
  return days > 0 ? `in ${said}` : `${said} ago`;
}

/** The day it is here, by this device's clock and time zone. */
export function dayOf(date: Date): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
