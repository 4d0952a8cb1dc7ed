import { dueCases } from '../../garden/due-cases.ts';
import { gatherGarden } from '../../garden/gather-garden.ts';
import { groupByBed } from '../../garden/group-by-bed.ts';
import { listToday } from '../../garden/list-today.ts';
import { mergeRecords } from '../../garden/merge-records.ts';
import type { CaseRecord, GardenRecord } from '../../garden/records.ts';
import { repairRecord } from '../../garden/repair-record.ts';
import { plainWords, searchOver } from '../../garden/search-cases.ts';
import { stampChanges } from '../../garden/stamp-changes.ts';
import { coldLimitsOf } from '../../season/crop-temperatures.ts';
import { BEDS, CASES, LOOKS, makeManyCases, PHOTOS_A_LOOK } from './make-many-cases.ts';
import { type BenchRow, medianMs } from './median-ms.ts';

const wordsOf = ({ plant, bed, looks }: CaseRecord): string =>
  plainWords(`${plant} ${bed} ${looks.flatMap(({ leading }) => leading).join(' ')}`);

/** From what the store hands over to lists on the screen; then a search, a walk, and a merge of all of it. */
export function benchGarden(): BenchRow[] {
  const device = (record: GardenRecord, word: string): GardenRecord =>
    stampChanges(record, { ...record, plant: word } as GardenRecord, '2026-06-01T00:00:00.000Z', word);
  const all = makeManyCases();
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
