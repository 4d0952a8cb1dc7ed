/** One day's lowest and highest temperature, °C (or any one scale, with the base in the same). */
export interface DayTemperatures {
  readonly min: number;
  readonly max: number;
}

/** Degree-days of one day by the average method: how far the mean of highest and lowest lies above the base (UC-DD). */
export function averageDegreeDays({ min, max }: DayTemperatures, base: number): number {
  return Math.max(0, (max + min) / 2 - base);
}

/**
 * Degree-days of one day by a single sine through highest and lowest (Baskerville and Emin 1969; OSU-CALC, UC-DD). Counts the
 * warm hours of a day whose lowest lies below the base, which the average method leaves out (ACTA-2014).
 */
export function sineDegreeDays({ min, max }: DayTemperatures, base: number): number {
  if (min >= base) return averageDegreeDays({ min, max }, base);
  if (max <= base) return 0;
  const mean = (max + min) / 2;
  const swing = (max - min) / 2;
  const crossing = Math.asin((base - mean) / swing);
  return ((mean - base) * (Math.PI / 2 - crossing) + swing * Math.cos(crossing)) / Math.PI;
}

/** Degree-days of one day in the four cases of a national weather service (METIE). */
export function fourCaseDegreeDays({ min, max }: DayTemperatures, base: number): number {
  if (max <= base) return 0;
  const mean = (max + min) / 2;
  if (min >= base) return mean - base;
  return mean >= base ? (max - base) / 2 - (base - min) / 4 : (max - base) / 4;
}

/** Days whose mean of lowest and highest lies below a temperature. */
export function countColdDays(days: readonly DayTemperatures[], belowCelsius: number): number {
  return days.filter(({ min, max }) => (min + max) / 2 < belowCelsius).length;
}

/** How much faster chilling does harm for each ten degrees colder, and where it begins, in cucumber leaves (CUC-CHILL). */
const CHILLING_Q10 = 5.7;
const CHILLING_FROM_CELSIUS = 12;

/**
 * Dose of chilling of a time at one temperature: days times how much faster than at 12 °C harm is done. About 3 marks
 * the first lasting harm to cucumber leaves: a week at 10 °C stays just below, three days at 8 °C reach it (CUC-CHILL).
 * That 5 °C does harm within hours it understates: it needs more than a day.
 */
export function chillingDose(celsius: number, days: number): number {
  if (celsius >= CHILLING_FROM_CELSIUS) return 0;
  return days * (CHILLING_Q10 ** ((CHILLING_FROM_CELSIUS - celsius) / 10) - 1);
}
