/** In which order a file writes its days. */
export type DayOrder = 'year-first' | 'day-first' | 'month-first';

export interface DayParts {
  readonly mark: string;
  readonly parts: readonly [string, string, string];
}

/** The three numbers of a day and what stands between them, as written. */
export function partsOfDay(cell: string): DayParts | undefined {
  const found = /^(\d{1,4})([-/.])(\d{1,2})[-/.](\d{1,4})(?:[T\s,].*)?$/.exec(cell);
  return found ? { mark: found[2]!, parts: [found[1]!, found[3]!, found[4]!] } : undefined;
}

/** The order that one written day can only have; `undefined` where it reads both ways or neither. */
function onlyOrder({ parts: [a, b, c] }: DayParts): DayOrder | undefined {
  if (a.length === 4) return 'year-first';
  if (c.length !== 4) return undefined;
  if (Number(a) > 12 && Number(b) <= 12) return 'day-first';
  return Number(b) > 12 && Number(a) <= 12 ? 'month-first' : undefined;
}

/**
 * The order that the days of a file speak for by themselves; `undefined` where each of them reads both ways. Only days
 * written with the mark most lines use (1.6. or 1/6/) have a say, so that one stray line turns no file; of these most of the
 * days that read one way only decide. Days with dots that read both ways are day first: so write the countries that use dots.
 */
export function orderOfDays(cells: readonly string[]): DayOrder | undefined {
  const days = cells.map(partsOfDay).filter((day) => day !== undefined);
  const mark = mostOf(days.map((day) => day.mark));
  const alike = days.filter((day) => day.mark === mark);
  const said = mostOf(alike.map(onlyOrder).filter((order) => order !== undefined));
  return said ?? (mark === '.' ? 'day-first' : undefined);
}

/** What stands most often in a list; `undefined` of an empty one and where two stand equally often. */
function mostOf<T>(list: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const one of list) counts.set(one, (counts.get(one) ?? 0) + 1);
  const [first, second] = [...counts].sort((a, b) => b[1] - a[1]);
  return first && first[1] !== second?.[1] ? first[0] : undefined;
}
