import { dayAfter } from '../days/days.ts';
import type { Zone } from '../days/growing-year.ts';
import { averageDegreeDays, sineDegreeDays } from './degree-days.ts';
import { type EstimatedCelsius, nextSoilCelsius, typicalSoilCelsius } from './soil-temperature.ts';

/** One day as it was measured or, with `forecast`, expected; °C. */
export interface WeatherDay {
  readonly date: string;
  readonly minCelsius?: number;
  readonly maxCelsius?: number;
  readonly meanCelsius?: number;
  readonly soilCelsius?: number;
  readonly forecast?: true;
}

/** Mean of a day: as measured, else the middle between lowest and highest. */
export function meanOf({ meanCelsius, minCelsius, maxCelsius }: WeatherDay): number | undefined {
  if (meanCelsius !== undefined) return meanCelsius;
  return minCelsius === undefined || maxCelsius === undefined ? undefined : (minCelsius + maxCelsius) / 2;
}

/** Soil at 10 cm on one day. */
export interface SoilDay extends EstimatedCelsius {
  readonly date: string;
  readonly from: 'reading' | 'air' | 'season';
}

/** Standard error of an estimate from air: 1.5 to 2.9 °C (ZHENG-1993). */
const FROM_AIR_SD = 2.2;
/** A thermometer in the soil once in the morning against the day's mean, °C (common practice, no source). */
const READING_SD = 1;
/** The running mean of ZHENG-1993 reaches back so many days: before that the start still shows. */
const SETTLED_AFTER_DAYS = 11;

/**
 * Soil temperature of each day between two days: as read, else carried on from the day before by the air's mean (`nextSoilCelsius`,
 * after ZHENG-1993), else the season's. A reading sets it right for the days that follow; its lead is lost within eleven days.
 * @param leafArea leaf area over ground area
 */
export function soilBetween(
  days: readonly WeatherDay[],
  from: string,
  to: string,
  zone: Zone,
  leafArea = 0,
): SoilDay[] {
  const byDate = new Map(days.filter(({ forecast }) => !forecast).map((day) => [day.date, day]));
  const soil: SoilDay[] = [];
  let known: { celsius: number; sd: number } | undefined;
  // Eleven days ahead, so that the first day asked for has settled.
  for (let date = dayAfter(from, -SETTLED_AFTER_DAYS); date <= to; date = dayAfter(date, 1)) {
    const day = byDate.get(date);
    const air = day && meanOf(day);
    const season = typicalSoilCelsius(date, zone);
    let found: SoilDay;
    if (day?.soilCelsius !== undefined)
      found = { date, celsius: day.soilCelsius, sd: READING_SD, from: 'reading' };
    else if (air !== undefined) {
      const before = known ?? season;
      const drift =
        (before.sd < FROM_AIR_SD ? FROM_AIR_SD - READING_SD : FROM_AIR_SD - season.sd) / SETTLED_AFTER_DAYS;
      const sd =
        drift > 0 ? Math.min(FROM_AIR_SD, before.sd + drift) : Math.max(FROM_AIR_SD, before.sd + drift);
      found = { date, celsius: nextSoilCelsius(before.celsius, air, leafArea), sd, from: 'air' };
    } else found = { date, ...season, from: 'season' };
    known = found.from === 'season' ? undefined : found;
    if (date >= from) soil.push(found);
  }
  return soil;
}

/**
 * Mean soil temperature over a time, where at least half of its days are known by reading or by air; errors of neighbouring
 * days go together, so the mean is no surer than a day.
 */
export function meanSoilBetween(
  days: readonly WeatherDay[],
  from: string,
  to: string,
  zone: Zone,
): (EstimatedCelsius & { readonly daysKnown: number; readonly days: number }) | undefined {
  const soil = soilBetween(days, from, to, zone);
  const daysKnown = soil.filter((day) => day.from !== 'season').length;
  if (soil.length === 0 || daysKnown * 2 < soil.length) return undefined;
  const average = (value: (day: SoilDay) => number): number =>
    soil.reduce((sum, day) => sum + value(day), 0) / soil.length;
  return {
    celsius: average(({ celsius }) => celsius),
    sd: average(({ sd }) => sd),
    daysKnown,
    days: soil.length,
  };
}

/** Days of a span up to and with a day (forecasts left out) that have a mean, and how many of them lie below a temperature. */
export function coldDaysBefore(
  days: readonly WeatherDay[],
  date: string,
  belowCelsius: number,
  span = 21,
): { readonly cold: number; readonly known: number } {
  const first = dayAfter(date, 1 - span);
  const means = days
    .filter((day) => !day.forecast && day.date >= first && day.date <= date)
    .map(meanOf)
    .filter((mean) => mean !== undefined);
  return { cold: means.filter((mean) => mean < belowCelsius).length, known: means.length };
}

/** Degree-days of the air between two days, both counted; days without lowest and highest are left out and counted. */
export function sumDegreeDays(
  days: readonly WeatherDay[],
  from: string,
  to: string,
  base: number,
  method: 'average' | 'sine' = 'sine',
): { readonly degreeDays: number; readonly daysMissing: number } {
  const one = method === 'sine' ? sineDegreeDays : averageDegreeDays;
  const byDate = new Map(days.filter(({ forecast }) => !forecast).map((day) => [day.date, day]));
  let degreeDays = 0;
  let daysMissing = 0;
  for (let date = from; date <= to; date = dayAfter(date, 1)) {
    const { minCelsius: min, maxCelsius: max } = byDate.get(date) ?? {};
    if (min === undefined || max === undefined) daysMissing += 1;
    else degreeDays += one({ min, max }, base);
  }
  return { degreeDays, daysMissing };
}
