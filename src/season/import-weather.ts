import { celsiusOf } from './crop-temperatures.ts';
import type { WeatherDay } from './daily-weather.ts';
import { type DayOrder, orderOfDays, partsOfDay } from './order-of-days.ts';
import type { Table } from './read-table.ts';

export const WEATHER_COLUMNS = ['date', 'min', 'max', 'mean', 'soil', 'rain'] as const;
export type WeatherColumn = (typeof WEATHER_COLUMNS)[number];

/** How the grower says a file is to be read: asked once, and again only when the columns differ. */
export interface WeatherReading {
  /** Which column of the table holds what; `date` must be there. */
  readonly columns: Partial<Record<WeatherColumn, number>>;
  readonly dates: DayOrder;
  readonly temperature: 'celsius' | 'fahrenheit';
  readonly rain: 'mm' | 'inch';
}

/** What is wrong with a line; the faces own the sentences. `column`: its name in the file. */
export interface LineFault {
  readonly line: number;
  readonly code:
    | 'broken-quotes'
    | 'bad-date'
    | 'bad-number'
    | 'out-of-bounds'
    | 'lowest-above-highest'
    | 'nothing-to-keep'
    | 'day-twice';
  readonly column?: string;
  readonly got?: string;
}

/** One day of a file, °C and mm. */
export interface ImportedDay extends WeatherDay {
  readonly rainMm?: number;
}

export interface ImportedWeather {
  readonly days: readonly ImportedDay[];
  /** In order of line. A line with a fault is left out whole, all others are kept. */
  readonly faults: readonly LineFault[];
}

/** Words by which columns are known. Our own; anything else is matched by the grower. */
const NAMES: Readonly<Record<WeatherColumn, RegExp>> = {
  date: /^(date|day|datum|time|timestamp)/,
  soil: /soil|ground/,
  min: /min|low/,
  max: /max|high/,
  mean: /mean|avg|average|temp/,
  rain: /rain|precip/,
};

/** How a grower reads days and numbers: the guess where a file does not say. */
export type UsualReading = Omit<WeatherReading, 'columns'>;

/** The order the days of a column speak for by themselves; `undefined` where each reads both ways. */
export const orderInFile = ({ rows }: Table, dateColumn = 0): DayOrder | undefined =>
  orderOfDays(rows.map(({ cells }) => cells[dateColumn] ?? ''));

/** A first guess at how a table is to be read, for the grower to put right. */
export function guessReading(table: Table, usual: UsualReading): WeatherReading {
  const { columns } = table;
  const found: Partial<Record<WeatherColumn, number>> = {};
  // Soil before the others: "soil min" is a soil temperature.
  for (const column of ['date', 'soil', 'min', 'max', 'rain', 'mean'] as const) {
    const at = columns.findIndex(
      (name, index) => NAMES[column].test(name.toLowerCase()) && !Object.values(found).includes(index),
    );
    if (at >= 0) found[column] = at;
  }
  const head = columns.join(' ');
  return {
    columns: found,
    dates: orderInFile(table, found.date) ?? usual.dates,
    temperature: /°\s*f\b|fahrenheit|\(f\)|_f\b/i.test(head)
      ? 'fahrenheit'
      : /°\s*c\b|celsius|\(c\)|_c\b/i.test(head)
        ? 'celsius'
        : usual.temperature,
    rain: /\bin\b|inch/i.test(head) ? 'inch' : /\bmm\b|_mm\b|millimet/i.test(head) ? 'mm' : usual.rain,
  };
}

/** `YYYY-MM-DD` of a cell, or `undefined` where it is no day that exists. */
function dayIn(cell: string, dates: WeatherReading['dates']): string | undefined {
  const parts = partsOfDay(cell)?.parts;
  if (!parts) return undefined;
  const [a, b, c] = parts;
  const [year, month, day] =
    dates === 'year-first' ? [a, b, c] : dates === 'day-first' ? [c, b, a] : [c, a, b];
  if (year.length !== 4) return undefined;
  const said = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const time = Date.parse(`${said}T00:00:00Z`);
  return Number.isNaN(time) || !new Date(time).toISOString().startsWith(said) ? undefined : said;
}

/** A number with point or comma; anything else, thousands separators included, is none. */
function numberIn(cell: string): number | undefined {
  return /^[-+]?(\d+([.,]\d*)?|[.,]\d+)$/.test(cell) ? Number(cell.replace(',', '.')) : undefined;
}

/** What a garden's air, soil and a day's rain can be; beyond it a column or unit was mistaken. */
const BOUNDS = { min: [-60, 60], max: [-60, 60], mean: [-60, 60], soil: [-30, 50], rain: [0, 2000] } as const;
const KEYS = {
  min: 'minCelsius',
  max: 'maxCelsius',
  mean: 'meanCelsius',
  soil: 'soilCelsius',
  rain: 'rainMm',
} as const;
const MM_AN_INCH = 25.4;
const EMPTY = new Set(['', '-', '–', 'na', 'n/a', 'nan', 'null']);

/**
 * A table as days of weather. A bad line is named and left out; all others are kept. Of two lines for one day the first
 * holds.
 * @param today days after it are taken for forecasts, `YYYY-MM-DD`
 */
export function weatherFromTable(table: Table, reading: WeatherReading, today: string): ImportedWeather {
  const faults: LineFault[] = table.brokenLines.map((line) => ({ line, code: 'broken-quotes' }));
  const days = new Map<string, ImportedDay>();
  for (const { line, cells } of table.rows) {
    const found = dayFrom(cells, table.columns, reading);
    if ('code' in found) faults.push({ line, ...found });
    else if (days.has(found.date)) faults.push({ line, code: 'day-twice', got: found.date });
    else days.set(found.date, found.date > today ? { ...found, forecast: true } : found);
  }
  return {
    days: [...days.values()].sort((a, b) => (a.date < b.date ? -1 : 1)),
    faults: faults.sort((a, b) => a.line - b.line),
  };
}

function dayFrom(
  cells: readonly string[],
  names: readonly string[],
  { columns, dates, temperature, rain }: WeatherReading,
): ImportedDay | Omit<LineFault, 'line'> {
  const at = columns.date ?? 0;
  const date = dayIn(cells[at] ?? '', dates);
  if (date === undefined) return { code: 'bad-date', column: names[at] ?? '', got: cells[at] ?? '' };
  const day: Record<string, number> = {};
  for (const column of ['min', 'max', 'mean', 'soil', 'rain'] as const) {
    const place = columns[column];
    const cell = place === undefined ? '' : (cells[place] ?? '');
    if (EMPTY.has(cell.toLowerCase())) continue;
    const said = { column: names[place!] ?? '', got: cell };
    const number = numberIn(cell);
    if (number === undefined) return { code: 'bad-number', ...said };
    const value =
      column === 'rain'
        ? number * (rain === 'inch' ? MM_AN_INCH : 1)
        : temperature === 'fahrenheit'
          ? celsiusOf(number)
          : number;
    const [least, most] = BOUNDS[column];
    if (value < least || value > most) return { code: 'out-of-bounds', ...said };
    day[KEYS[column]] = Math.round(value * 100) / 100;
  }
  if (Object.keys(day).length === 0) return { code: 'nothing-to-keep' };
  if ((day.minCelsius ?? -100) > (day.maxCelsius ?? 100)) return { code: 'lowest-above-highest' };
  return { date, ...day };
}
