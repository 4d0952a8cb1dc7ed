import { growingYearOf, growingYearsOf, type Zone } from '../days/growing-year.ts';
import { compareWords } from './loose.ts';
import type { BedOfCase } from './place-cases.ts';
import type { CaseRecord } from './records.ts';
import { type Settled, settledCases } from './settle-case.ts';

/** Stands for the cause of cases of which nobody found out what it was. */
export const NEVER_FOUND = '-';

/** One cause in one bed: its cases by the growing year in which they began. */
export interface CauseInBed {
  readonly bed: BedOfCase;
  /** Newest first. */
  readonly cases: readonly Settled[];
  readonly byYear: ReadonlyMap<string, readonly Settled[]>;
  /** Was it met in more than one growing year? Where no winter comes cases of a few weeks may lie in two years of the calendar. */
  readonly cameBack: boolean;
}

/** Where and when one cause was met. */
export interface MetCause {
  readonly cause: string;
  readonly cases: readonly Settled[];
  /** Most cases first. */
  readonly beds: readonly CauseInBed[];
  /** Growing years in which it was met, oldest first. */
  readonly years: readonly string[];
}

/** The growing year in which a case began. */
export const yearOf = ({ openedOn }: CaseRecord, zone: Zone): string => growingYearOf(openedOn, zone);

function groupBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}

/**
 * Which causes were met where, through the years: settled cases by cause, bed and the growing year in which they began. A case of
 * two causes counts at both. Causes with most cases first; cases of which it was never found out come last.
 */
export function countCauses(
  cases: readonly CaseRecord[],
  placeOf: (kept: CaseRecord) => BedOfCase,
  zone: Zone,
): readonly MetCause[] {
  const pairs = settledCases(cases).flatMap((kept) =>
    (kept.outcome.causes.length > 0 ? [...new Set(kept.outcome.causes)] : [NEVER_FOUND]).map((cause) => ({
      cause,
      kept,
      bed: placeOf(kept),
    })),
  );
  const newest = (a: CaseRecord, b: CaseRecord): number =>
    compareWords(b.openedOn, a.openedOn) || compareWords(a.id, b.id);
  return [...groupBy(pairs, ({ cause }) => cause)]
    .map(([cause, met]): MetCause => {
      const beds = [...groupBy(met, ({ bed }) => bed.key).values()].map((here): CauseInBed => {
        const all = here.map(({ kept }) => kept).sort(newest);
        const days = all.map(({ openedOn }) => openedOn);
        return {
          bed: here[0]!.bed,
          cases: all,
          byYear: groupBy(all, (kept) => yearOf(kept, zone)),
          cameBack: new Set(days.map(growingYearsOf(days, zone))).size > 1,
        };
      });
      return {
        cause,
        cases: met.map(({ kept }) => kept).sort(newest),
        beds: beds.sort(
          (a, b) =>
            b.cases.length - a.cases.length ||
            a.bed.name.localeCompare(b.bed.name, 'en-GB', { numeric: true }),
        ),
        years: [...new Set(met.map(({ kept }) => yearOf(kept, zone)))].sort(),
      };
    })
    .sort(
      (a, b) =>
        Number(a.cause === NEVER_FOUND) - Number(b.cause === NEVER_FOUND) ||
        b.cases.length - a.cases.length ||
        compareWords(a.cause, b.cause),
    );
}

/** Beds in which a cause was met in more than one year: there it came back. */
export const bedsOfReturn = ({ beds }: MetCause): readonly CauseInBed[] =>
  beds.filter(({ cameBack }) => cameBack);
