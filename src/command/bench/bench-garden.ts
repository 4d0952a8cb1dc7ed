import { dueCases } from '../../garden/due-cases.ts';
import { gatherGarden } from '../../garden/gather-garden.ts';
import { groupByBed } from '../../garden/group-by-bed.ts';
import { listToday } from '../../garden/list-today.ts';
import { mergeRecords } from '../../garden/merge-records.ts';
import type { CaseRecord, GardenRecord } from '../../garden/records.ts';
import { repairRecord } from '../../garden/repair-record.ts';
import { searchOver } from '../../garden/search-cases.ts';
import { stampChanges } from '../../garden/stamp-changes.ts';
import { coldLimitsOf } from '../../season/crop-temperatures.ts';
import { type BenchRow, medianMs } from './median-ms.ts';

const CASES = 5000;
const LOOKS = 2;
const PHOTOS_A_LOOK = 2;
const BEDS = 12;
const WORDS = ['kale by the gate', 'third tomato', 'Café chilli', 'beans along the fence', 'pot on the step'];

/** A garden of many years: 5,000 cases with two looks each, which name 20,000 photos and hold none. */
function manyCases(): CaseRecord[] {
  return Array.from({ length: CASES }, (_, at) => {
    const date = (look: number): string =>
      new Date(Date.UTC(2016, 2, 1) + (at * 0.7 + look * 10) * 86_400_000).toISOString().slice(0, 10);
    return repairRecord({
      kind: 'case',
      id: `case-${at}`,
      changedAt: `${date(0)}T08:00:00.000Z`,
      bed: `Bed ${at % BEDS}`,
      bedId: `bed-${at % BEDS}`,
      plant: `${WORDS[at % WORDS.length]} ${at}`,
      crop: 'kale',
      openedOn: date(0),
      looks: Array.from({ length: LOOKS }, (_, look) => ({
        id: `look-${at}-${look}`,
        date: date(look),
        verdict: 'watch',
        leading: ['aphids', 'nitrogen-short'],
        lookAgain: date(look + 1),
        photos: Array.from({ length: PHOTOS_A_LOOK }, (_, photo) => `photo-${at}-${look}-${photo}`),
      })),
      ...(at % 10 === 0 ? {} : { closedOn: date(LOOKS) }),
    }) as CaseRecord;
  });
}

const wordsOf = ({ plant, bed, looks }: CaseRecord): string =>
  `${plant} ${bed} ${looks.flatMap(({ leading }) => leading).join(' ')}`;

/** From what the store hands over to lists on the screen; then a search, a walk, and a merge of all of it. */
export function benchGarden(): BenchRow[] {
  const device = (record: GardenRecord, word: string): GardenRecord =>
    stampChanges(record, { ...record, plant: word } as GardenRecord, '2026-06-01T00:00:00.000Z', word);
  const all = manyCases();
  const beds = Array.from({ length: BEDS }, (_, at) =>
    repairRecord({ kind: 'bed', id: `bed-${at}`, name: `Bed ${at}` }),
  ) as GardenRecord[];
  const stored = structuredClone(all);
  const made = all.map((kept) => stampChanges(undefined, kept, kept.changedAt, 'phone'));
  const [phone, desk] = [made.map((kept) => device(kept, 'phone')), made.map((kept) => device(kept, 'desk'))];
  const search = searchOver(all, wordsOf);
  search('kale');
  const garden = gatherGarden([...all, ...beds]);
  const note = `${CASES} cases, ${CASES * LOOKS * PHOTOS_A_LOOK} photos named`;
  return [
    {
      name: 'open: repair, group by bed, due, list',
      ms: medianMs(() => {
        const cases = stored.map(repairRecord) as CaseRecord[];
        groupByBed(cases);
        dueCases(cases, '2026-06-01');
        return searchOver(cases, wordsOf)('');
      }),
      note: `${note}; to stay under 300 ms`,
    },
    { name: 'search: sorting and first letter', ms: medianMs(() => searchOver(all, wordsOf)('kale')), note },
    {
      name: 'search: each letter after it',
      ms: medianMs(() => search('kale gate aphids')),
      note: 'to stay under 50 ms',
    },
    {
      name: 'what is due on a walk',
      ms: medianMs(() => listToday(garden, '2026-06-01', coldLimitsOf)),
      note,
    },
    {
      name: 'merge two devices’ records',
      ms: medianMs(() => phone.map((record, at) => mergeRecords(record, desk[at]!)), 3),
      note: `${CASES} cases, each edited on both`,
    },
  ];
}
