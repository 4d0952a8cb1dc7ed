import { signal } from '@preact/signals';

/** What people read temperatures, lengths and days in. Records are in °C, mm and `YYYY-MM-DD` whatever is shown. */
export interface Units {
  readonly temperature: 'celsius' | 'fahrenheit';
  readonly length: 'metric' | 'inch';
  readonly days: 'day-first' | 'month-first';
}

export const METRIC: Units = { temperature: 'celsius', length: 'metric', days: 'day-first' };

/** As chosen; what is worded while a screen is drawn is worded anew when the choice changes. */
export const units = signal<Units>(METRIC);

/** A unit that records and knowledge speak in. */
export type RecordUnit = '°C' | 'cm' | 'mm';

const MM_AN_INCH = 25.4;
const perInch = { cm: MM_AN_INCH / 10, mm: MM_AN_INCH } as const;

const isRecordUnit = (unit: string): unit is RecordUnit => unit === '°C' || unit === 'cm' || unit === 'mm';
const isTurned = (unit: string): unit is RecordUnit =>
  isRecordUnit(unit) &&
  (unit === '°C' ? units.value.temperature === 'fahrenheit' : units.value.length === 'inch');

/** The unit that is shown in its place: "°F", "in"; any other unit stays as it is. */
export const shownUnit = (unit: string): string => (isTurned(unit) ? (unit === '°C' ? '°F' : 'in') : unit);

/** The same where it stands in a sentence: "in in" is no English. */
export const unitInSentence = (unit: string): string => {
  const shown = shownUnit(unit);
  return shown === 'in' ? 'inches' : shown;
};

/** A value of the records as it is shown, unrounded. */
export const toShown = (unit: string, value: number): number =>
  !isTurned(unit) ? value : unit === '°C' ? value * 1.8 + 32 : value / perInch[unit];

/** A value as it was typed, in the unit of the records, to a hundredth. */
export const fromShown = (unit: string, value: number): number =>
  !isTurned(unit) ? value : rounded(unit === '°C' ? (value - 32) / 1.8 : value * perInch[unit], 2);

/** A value of the records as it is shown in a field: no more places than the unit is read to. */
export const figureShown = (unit: string, value: number): number =>
  isTurned(unit) ? rounded(toShown(unit, value), unit === '°C' ? 1 : 2) : value;

const rounded = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places;
const sign = (figure: number): string => String(figure).replace('-', '−');

/** "12 °C" or "54 °F". @param places decimal places, 0 unless tenths matter */
export const sayCelsius = (celsius: number, places = 0): string =>
  `${sign(rounded(toShown('°C', celsius), places))} ${shownUnit('°C')}`;

/** "3 cm" or "1.2 in", as exact as it was written down. */
export const sayLength = (unit: 'cm' | 'mm', value: number): string =>
  `${sign(isTurned(unit) ? rounded(toShown(unit, value), unit === 'cm' ? 1 : 2) : value)} ${shownUnit(unit)}`;

/** "20 degrees" or "36 degrees": a difference, which has no zero to move. */
export const sayDegreesApart = (celsius: number): string =>
  `${Math.round(isTurned('°C') ? celsius * 1.8 : celsius)} degrees`;

const AMOUNT = /([−-]?\d+(?:\.\d+)?)(?: (to|or) ([−-]?\d+(?:\.\d+)?))? (°C|cm|mm)(?![\w²])/g;

/** A sentence of the knowledge base or of the settings, which speak in °C and cm, in the chosen units: "8 to 11 °C" → "46 to 52 °F". */
export const inUnits = (sentence: string): string =>
  sentence.replace(AMOUNT, (said: string, from: string, word: string, to: string, unit: RecordUnit) => {
    if (!isTurned(unit)) return said;
    const figure = (value: string): string => {
      const shown = toShown(unit, Number(value.replace('−', '-')));
      return sign(rounded(shown, unit === '°C' || shown >= 2 ? 0 : 1));
    };
    return `${figure(from)}${to === undefined ? '' : ` ${word} ${figure(to)}`} ${shownUnit(unit)}`;
  });
