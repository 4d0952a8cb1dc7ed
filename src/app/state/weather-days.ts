import { type WeatherRecord, weatherId } from '../../garden/ground-records.ts';
import { RECORDS_SCHEMA } from '../../garden/records.ts';
import type { ImportedDay, WeatherReading } from '../../season/import-weather.ts';
import { readNumber, withFields } from './edit-ground.ts';

export const GRID_COLUMNS = ['min', 'max', 'soil', 'rain'] as const;
export type GridColumn = (typeof GRID_COLUMNS)[number];
const FIELDS = { min: 'minCelsius', max: 'maxCelsius', soil: 'soilCelsius', rain: 'rainMm' } as const;
/** What weather can be, as in files: least and most. */
const BOUNDS = { min: [-60, 60], max: [-60, 60], soil: [-30, 50], rain: [0, 2000] } as const;

/** A line of the grid as typed. */
export type GridLine = Readonly<Partial<Record<GridColumn, string>>>;

export const asGridLine = (record: WeatherRecord | undefined): GridLine =>
  Object.fromEntries(
    GRID_COLUMNS.flatMap((column) => {
      const value = record?.[FIELDS[column]];
      return value === undefined ? [] : [[column, String(value)]];
    }),
  );

export interface GridFault {
  readonly date: string;
  readonly code: 'no-number' | 'beyond' | 'crossed';
}

/**
 * The grid as records to keep: only days that differ from what is kept. A line emptied of everything takes its day away; a
 * mean that came from a file stays.
 * @param kept as stored, the deleted ones too
 * @param today days after it are kept as expected
 */
export function readGrid(
  lines: Readonly<Record<string, GridLine>>,
  kept: readonly WeatherRecord[],
  today: string,
  now: string,
): { readonly records: readonly WeatherRecord[]; readonly faults: readonly GridFault[] } {
  const byDate = new Map(kept.map((record) => [record.date, record]));
  const records: WeatherRecord[] = [];
  const faults: GridFault[] = [];
  for (const [date, line] of Object.entries(lines)) {
    const before = byDate.get(date);
    const alive = before?.deletedAt ? undefined : before;
    const shown = asGridLine(alive);
    if (GRID_COLUMNS.every((column) => (line[column] ?? '').trim() === (shown[column] ?? ''))) continue;
    const values = GRID_COLUMNS.map((column) => [column, readNumber(line[column])] as const);
    const { min, max } = Object.fromEntries(values);
    const isBeyond = ([column, value]: (typeof values)[number]): boolean =>
      value !== undefined && (value < BOUNDS[column][0] || value > BOUNDS[column][1]);
    if (values.some(([, value]) => Number.isNaN(value))) faults.push({ date, code: 'no-number' });
    else if (values.some(isBeyond)) faults.push({ date, code: 'beyond' });
    else if (min !== undefined && max !== undefined && min > max) faults.push({ date, code: 'crossed' });
    else records.push(keepDay(before, date, Object.fromEntries(values), today, now));
  }
  return { records, faults };
}

function keepDay(
  before: WeatherRecord | undefined,
  date: string,
  values: Partial<Record<GridColumn, number | undefined>>,
  today: string,
  now: string,
): WeatherRecord {
  const base: WeatherRecord = before ?? {
    kind: 'weather',
    id: weatherId(date),
    schema: RECORDS_SCHEMA,
    changedAt: now,
    date,
  };
  const isEmpty =
    GRID_COLUMNS.every((column) => values[column] === undefined) && base.meanCelsius === undefined;
  return withFields<WeatherRecord>(base, {
    minCelsius: values.min,
    maxCelsius: values.max,
    soilCelsius: values.soil,
    rainMm: values.rain,
    forecast: date > today ? true : undefined,
    deletedAt: isEmpty ? now : undefined,
  });
}

/** Days of a file as records: what the file says goes over what was kept, what it does not say stays. */
export function recordsOfFile(
  days: readonly ImportedDay[],
  kept: readonly WeatherRecord[],
  now: string,
): WeatherRecord[] {
  const byDate = new Map(kept.map((record) => [record.date, record]));
  return days.map((day) => {
    const before = byDate.get(day.date);
    const fresh: WeatherRecord = {
      kind: 'weather',
      id: weatherId(day.date),
      schema: RECORDS_SCHEMA,
      changedAt: now,
      date: day.date,
    };
    const base = before?.deletedAt
      ? { ...fresh, ...(before.revision === undefined ? {} : { revision: before.revision }) }
      : (before ?? fresh);
    return withFields<WeatherRecord>({ ...base, ...day }, { forecast: day.forecast });
  });
}

const KEY = 'bedside-weather-columns';
const nameOf = (columns: readonly string[]): string => columns.join('\u001f');

/** How a file with these columns was read last time on this device. */
export function recallReading(columns: readonly string[]): WeatherReading | undefined {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Record<string, WeatherReading>;
    return found[nameOf(columns)];
  } catch {
    return undefined;
  }
}

export function rememberReading(columns: readonly string[], reading: WeatherReading): void {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Record<string, WeatherReading>;
    localStorage.setItem(KEY, JSON.stringify({ ...found, [nameOf(columns)]: reading }));
  } catch {
    // A browser that keeps nothing asks again the next time.
  }
}
