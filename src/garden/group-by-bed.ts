import type { CaseRecord } from './records.ts';

export interface NamedBed {
  /** Same for every spelling of one name. */
  readonly key: string;
  /** The name as it was written last. */
  readonly name: string;
  /** Newest look first. */
  readonly cases: readonly CaseRecord[];
}

/** One key for every spelling of a bed's name: letter case and spaces do not make a second bed. */
export const bedKey = (name: string): string => name.trim().replace(/\s+/g, ' ').toLocaleLowerCase('en-GB');

/** The beds that the cases name, in order of name; cases without a bed come under the empty key, last. */
export function groupByBed(cases: readonly CaseRecord[]): NamedBed[] {
  const beds = new Map<string, CaseRecord[]>();
  for (const kept of cases) {
    if (kept.deletedAt) continue;
    const key = bedKey(kept.bed);
    const there = beds.get(key);
    if (there) there.push(kept);
    else beds.set(key, [kept]);
  }
  const named = [...beds].map(([key, all]) => {
    const sorted = [...all].sort((a, b) => (lastDay(a) < lastDay(b) ? 1 : -1));
    return { key, name: sorted[0]?.bed.trim().replace(/\s+/g, ' ') ?? '', cases: sorted };
  });
  return named.sort((a, b) => {
    if ((a.key === '') !== (b.key === '')) return a.key === '' ? 1 : -1;
    return a.key.localeCompare(b.key, 'en-GB', { numeric: true });
  });
}

const lastDay = (kept: CaseRecord): string => kept.looks.at(-1)?.date ?? kept.openedOn;
