import { growingYearOf, type Zone } from '../../days/growing-year.ts';
import type { Garden } from '../../garden/gather-garden.ts';
import type { BatchRecord, EventRecord, PlantingRecord, Spreading } from '../../garden/ground-records.ts';
import { bedKey } from '../../garden/group-by-bed.ts';
import type { CaseRecord, LookSummary } from '../../garden/records.ts';
import { type PotTestHappening, potTestsOfBed } from '../../garden/settle-pot-test.ts';
import { type TrialHappening, trialsOfBed } from '../../garden/trials-of-bed.ts';

/** One thing that happened at a bed on a day. */
export type Happening =
  | PotTestHappening
  | TrialHappening
  | ({ readonly id: string; readonly date: string } & (
      | { readonly what: 'event'; readonly event: EventRecord }
      | { readonly what: 'spread'; readonly batch: BatchRecord; readonly given: Spreading }
      | { readonly what: 'sown' | 'planted' | 'cleared'; readonly planting: PlantingRecord }
      | { readonly what: 'look'; readonly kept: CaseRecord; readonly look: LookSummary }
      | { readonly what: 'ended'; readonly kept: CaseRecord }
    ));

/** Cases of a bed: by its record, or by its name where a case was never linked. Without a bed: those that name none. */
export function casesAt(
  garden: Garden,
  bed: { readonly id: string; readonly name: string } | undefined,
): CaseRecord[] {
  return garden.cases.filter((kept) =>
    bed
      ? kept.bedId === bed.id ||
        (!kept.bedId && bedKey(kept.bed) === bedKey(bed.name) && bedKey(bed.name) !== '')
      : !kept.bedId && bedKey(kept.bed) === '',
  );
}

function ofCase(kept: CaseRecord): Happening[] {
  const looks = kept.looks.map((look) => ({
    what: 'look' as const,
    id: look.id,
    date: look.date,
    kept,
    look,
  }));
  const end = kept.closedOn && kept.outcome;
  return end ? [...looks, { what: 'ended', id: `${kept.id}:ended`, date: end.settledOn, kept }] : looks;
}

function ofPlanting(planting: PlantingRecord): Happening[] {
  const { id, sownOn, plantedOn, clearedOn } = planting;
  return (
    [
      ['sown', sownOn],
      ['planted', plantedOn],
      ['cleared', clearedOn],
    ] as const
  ).flatMap(([what, date]) => (date ? [{ what, date, id: `${id}:${what}`, planting }] : []));
}

/** All that happened at a bed, newest first: plantings, what went on and its pot tests, trials, what was done, looks and ends of cases. */
export function historyOf(
  garden: Garden,
  bed: { readonly id: string; readonly name: string } | undefined,
): Happening[] {
  const here = casesAt(garden, bed).flatMap(ofCase);
  if (bed)
    here.push(
      ...garden.events
        .filter(({ bedId }) => bedId === bed.id)
        .map((event) => ({ what: 'event' as const, id: event.id, date: event.date, event })),
      ...garden.batches.flatMap((batch) =>
        batch.given
          .filter(({ bedId }) => bedId === bed.id)
          .map((given) => ({ what: 'spread' as const, id: given.id, date: given.date, batch, given })),
      ),
      ...garden.plantings.filter(({ bedId }) => bedId === bed.id).flatMap(ofPlanting),
      ...potTestsOfBed(garden, bed.id),
      ...trialsOfBed(garden, bed.id),
    );
  return here.sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
}

/** The growing years in which anything happened, and this one; newest first. */
export const yearsOf = (history: readonly Happening[], today: string, zone: Zone): string[] =>
  [...new Set([today, ...history.map(({ date }) => date)].map((day) => growingYearOf(day, zone)))]
    .sort()
    .reverse();

/** What happened in one growing year, in the same order. */
export const inYear = (history: readonly Happening[], year: string, zone: Zone): Happening[] =>
  history.filter(({ date }) => growingYearOf(date, zone) === year);

/** Address of the cases without a bed. */
export const UNNAMED = '-';
