/** Reading what may be anything: each function gives a value of its kind, or the empty one. */
export type Loose = Readonly<Record<string, unknown>>;

export const isObject = (value: unknown): value is Loose =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
export const text = (value: unknown): string => (typeof value === 'string' ? value : '');
export const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
export const texts = (value: unknown): string[] => list(value).filter((item) => typeof item === 'string');

const DAYS_IN_MONTH = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** A calendar day that exists, `YYYY-MM-DD`, or ''. A moment is cut down to its day. */
export function day(value: unknown): string {
  const said = text(value).slice(0, 10);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(said)) return '';
  const [year, month, date] = [Number(said.slice(0, 4)), Number(said.slice(5, 7)), Number(said.slice(8))];
  const most = month === 2 && !isLeap(year) ? 28 : (DAYS_IN_MONTH[month - 1] ?? 0);
  return date >= 1 && date <= most ? said : '';
}

/** A number within bounds, or `undefined`. */
export const number = (value: unknown, least: number, most: number): number | undefined =>
  typeof value === 'number' && value >= least && value <= most ? value : undefined;

/** `{key: value}` unless the value is empty: optional parts are left out, not set to nothing. */
export const optional = <Key extends string, Value>(
  key: Key,
  value: Value | '' | undefined,
): { [K in Key]?: Value } =>
  (value === '' || value === undefined ? {} : { [key]: value }) as { [K in Key]?: Value };

export const yesNo = (value: unknown): boolean | undefined =>
  typeof value === 'boolean' ? value : undefined;

/** One of the known words, or `undefined`. */
export const oneOf = <Word extends string>(words: readonly Word[], value: unknown): Word | undefined =>
  words.find((word) => word === value);

/** In order of date; what happened on one day stays in the order in which it was told. */
export const byDate = <Dated extends { readonly date: string }>(all: readonly Dated[]): Dated[] =>
  [...all].sort((a, b) => compareWords(a.date, b.date));

export const compareWords = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The later of two moments in ISO 8601, UTC. */
export const later = (a: string, b: string): string => (compareWords(a, b) < 0 ? b : a);

/** Elements with an id, each id once. */
export function once<Element extends { readonly id: string }>(
  all: readonly (Element | undefined)[],
): Element[] {
  const byId = new Map<string, Element>();
  for (const one of all) if (one && !byId.has(one.id)) byId.set(one.id, one);
  return [...byId.values()];
}
