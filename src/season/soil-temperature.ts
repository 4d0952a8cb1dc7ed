import type { Zone } from '../days/growing-year.ts';

/** A temperature that is known only so well, °C. */
export interface EstimatedCelsius {
  readonly celsius: number;
  readonly sd: number;
}

/**
 * Course of the year in the soil at 10 cm where no record is known: a temperate lowland near the sea, mean 11 °C, 7 °C up
 * and down, coldest in early February (from memory). Gardens differ, so the spread is wide.
 */
const YEAR = { mean: 11, swing: 7, coldestDay: 35, sd: 3 } as const;
/** The same where no winter comes, from the lowlands of the wet tropics up to the hills: nearly even all year (from memory). */
const YEAR_WITHOUT_WINTER = { mean: 25, swing: 1.5, coldestDay: 35, sd: 4 } as const;
const DAYS_A_YEAR = 365.25;

const yearOf = (zone: Zone) => (zone === 'tropics' ? YEAR_WITHOUT_WINTER : YEAR);

function dayOfYear(date: string): number {
  const at = Date.parse(`${date.slice(0, 10)}T00:00:00Z`);
  return (at - Date.UTC(Number(date.slice(0, 4)), 0, 1)) / 86_400_000;
}

/** Typical soil temperature at 10 cm on a day of the year; without a date, that of the growing season. */
export function typicalSoilCelsius(date: string | undefined, zone: Zone): EstimatedCelsius {
  const { mean, swing, coldestDay, sd } = yearOf(zone);
  if (date === undefined) return zone === 'tropics' ? { celsius: mean, sd } : { celsius: 14, sd: 4.5 };
  const day = dayOfYear(date) + (zone === 'south' ? DAYS_A_YEAR / 2 : 0);
  return { celsius: mean - swing * Math.cos((2 * Math.PI * (day - coldestDay)) / DAYS_A_YEAR), sd };
}

/** Warmth that was summed up over a time, in degree-days (base 0 °C), with its relative standard error. */
export interface SummedWarmth {
  readonly degreeDays: number;
  readonly relativeSd: number;
}

/**
 * Degree-days (base 0 °C) in the soil over the weeks before a day.
 * @param soilCelsius mean soil temperature of that time, where records give one; its error is that of an estimate from air
 * temperatures, 1.5 to 2.9 °C (ZHENG-1993)
 */
export function warmthSince(
  weeks: number,
  date: string | undefined,
  zone: Zone,
  soilCelsius?: number,
): SummedWarmth {
  const days = weeks * 7;
  const { mean, swing, coldestDay, sd } = yearOf(zone);
  if (soilCelsius !== undefined)
    return { degreeDays: Math.max(0, soilCelsius) * days, relativeSd: 2.2 / Math.max(4, soilCelsius) };
  if (date === undefined) {
    // Long ago means through a winter, so the mean draws near that of the year.
    const typical = typicalSoilCelsius(undefined, zone);
    const celsius = days > 180 ? mean : typical.celsius;
    return { degreeDays: celsius * days, relativeSd: typical.sd / celsius };
  }
  const end = dayOfYear(date) + (zone === 'south' ? DAYS_A_YEAR / 2 : 0);
  const turn = (day: number): number => (2 * Math.PI * (day - coldestDay)) / DAYS_A_YEAR;
  const degreeDays =
    mean * days - (swing * DAYS_A_YEAR * (Math.sin(turn(end)) - Math.sin(turn(end - days)))) / (2 * Math.PI);
  return { degreeDays, relativeSd: days > 0 ? sd / Math.max(4, degreeDays / days) : 0 };
}

/**
 * Soil temperature of the next day from that of the day before and the mean air temperature: a quarter of the way there,
 * slower in warming under leaves (after ZHENG-1993; the coefficients are from memory).
 * @param leafArea leaf area over ground area
 */
export function nextSoilCelsius(soilCelsius: number, airCelsius: number, leafArea = 0): number {
  const step = 0.25 * (airCelsius - soilCelsius);
  return soilCelsius + (step > 0 ? step * Math.exp(-0.5 * leafArea) : step);
}

/**
 * Damping depth of a temperature wave in soil, cm: √(2 D / ω) (OKSTATE-ST).
 * @param diffusivity mm² a second
 * @param periodDays 1 for the day's wave, 365 for the year's
 */
export function dampingDepthCm(diffusivity: number, periodDays: number): number {
  const angular = (2 * Math.PI) / (periodDays * 86_400);
  return Math.sqrt((2 * diffusivity) / angular) / 10;
}

/** What is left of the surface's swing at a depth, 0–1, and how late it comes, hours (OKSTATE-ST). */
export function waveAtDepth(
  depthCm: number,
  dampingCm: number,
  periodDays = 1,
): { readonly share: number; readonly hoursLate: number } {
  const depth = depthCm / dampingCm;
  return { share: Math.exp(-depth), hoursLate: (depth / (2 * Math.PI)) * periodDays * 24 };
}
