import { daysBetween } from '../days/days.ts';
import type { WeatherDay } from './daily-weather.ts';

/** What makes one think a file was read in the wrong order or unit. The faces own the sentences. */
export type WeatherDoubt =
  | { readonly code: 'far-apart'; readonly from: string; readonly to: string; readonly days: number }
  | { readonly code: 'far-ahead'; readonly date: string; readonly days: number }
  | {
      readonly code: 'too-hot' | 'too-cold' | 'night-too-hot';
      readonly date: string;
      readonly celsius: number;
      /** What weather where vegetables grow hardly goes beyond, °C. */
      readonly bound: number;
    };

/**
 * Beyond these a unit was more likely mistaken than the weather strange, °C (common practice, no source). The hottest and
 * coldest air ever measured lie further out, near 57 and −89 °C (from memory), but not over vegetables.
 */
const HOTTEST = 46;
const COLDEST = -40;
/** A night does not stay above this, °C (common practice, no source). */
const HOTTEST_NIGHT = 34;
/** Days written month for day lie about a month apart; a station that stood still for two weeks does not (common practice, no source). */
const LONGEST_GAP_DAYS = 14;
/** No forecast of single days looks further ahead (common practice, no source). */
const FORECAST_DAYS = 16;

/** What to ask about days before they are kept. @param days in order of date */
export function doubtWeather(days: readonly WeatherDay[], today: string): readonly WeatherDoubt[] {
  const doubts: WeatherDoubt[] = [];
  const gaps = days.slice(1).map(({ date }, at) => {
    const from = days[at]!.date;
    return { code: 'far-apart' as const, from, to: date, days: daysBetween(from, date) };
  });
  const [widest] = gaps.sort((a, b) => b.days - a.days);
  if (widest && widest.days > LONGEST_GAP_DAYS) doubts.push(widest);
  const last = days.at(-1);
  const ahead = last ? daysBetween(today, last.date) : 0;
  if (last && ahead > FORECAST_DAYS) doubts.push({ code: 'far-ahead', date: last.date, days: ahead });

  const air = ({ minCelsius, maxCelsius, meanCelsius }: WeatherDay): number[] =>
    [minCelsius, maxCelsius, meanCelsius].filter((celsius) => celsius !== undefined);
  const all = days.flatMap((day) => air(day).map((celsius) => ({ date: day.date, celsius })));
  const [hottest] = [...all].sort((a, b) => b.celsius - a.celsius);
  const [coldest] = [...all].sort((a, b) => a.celsius - b.celsius);
  const [night] = days
    .flatMap(({ date, minCelsius }) => (minCelsius === undefined ? [] : [{ date, celsius: minCelsius }]))
    .sort((a, b) => b.celsius - a.celsius);
  if (hottest && hottest.celsius > HOTTEST) doubts.push({ code: 'too-hot', ...hottest, bound: HOTTEST });
  else if (night && night.celsius > HOTTEST_NIGHT)
    doubts.push({ code: 'night-too-hot', ...night, bound: HOTTEST_NIGHT });
  if (coldest && coldest.celsius < COLDEST) doubts.push({ code: 'too-cold', ...coldest, bound: COLDEST });
  return doubts;
}

export interface Span {
  readonly from: string;
  readonly to: string;
  readonly count: number;
  /** Lowest and highest air of all days, °C; left out where the file holds none. */
  readonly lowest?: number;
  readonly highest?: number;
}

/** Which days these are, and between what. @param days in order of date */
export function spanOf(days: readonly WeatherDay[]): Span | undefined {
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return undefined;
  const air = days
    .flatMap(({ minCelsius, maxCelsius, meanCelsius }) => [minCelsius, maxCelsius, meanCelsius])
    .filter((celsius) => celsius !== undefined);
  return {
    from: first.date,
    to: last.date,
    count: days.length,
    // Not spread: a file of many years has more values than a call may have arguments.
    ...(air.length > 0 && {
      lowest: air.reduce((a, b) => Math.min(a, b)),
      highest: air.reduce((a, b) => Math.max(a, b)),
    }),
  };
}
