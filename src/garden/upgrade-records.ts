import type { BedRecord } from './ground-records.ts';
import { isObject } from './loose.ts';
import { bedNamed, newBed } from './name-beds.ts';
import { type GardenRecord, RECORDS_SCHEMA } from './records.ts';
import { repairRecord } from './repair-record.ts';

/**
 * Everything that an earlier version kept, as this version keeps it. From 1 and 2: every record says when it was made, and
 * the beds that cases name in words become records that the cases point to. From 3 to 5: nothing but the number, what came
 * since was not there before.
 * @param found the raw records in any order
 * @returns the records that have to be written; what is of this or a newer version already, or none of ours, is left out
 */
export function upgradeRecords(found: readonly unknown[]): GardenRecord[] {
  const beds = found.map(repairRecord).filter((record) => record?.kind === 'bed') as BedRecord[];
  const made: BedRecord[] = [];
  const upgraded = found.filter(isOlder).flatMap((raw) => {
    const record = repairRecord(raw);
    if (!record) return [];
    const dated = {
      ...record,
      createdAt: record.createdAt ?? bornAt(record),
      createdBy: record.createdBy ?? '',
    };
    if (dated.kind !== 'case' || dated.bedId || dated.deletedAt || dated.bed.trim() === '') return [dated];
    let bed = bedNamed(dated.bed, [...beds, ...made]);
    if (!bed) {
      bed = { ...newBed(dated.bed, dated.changedAt), createdAt: dated.changedAt, createdBy: '' };
      made.push(bed);
    }
    return [{ ...dated, bedId: bed.id }];
  });
  return [...upgraded, ...made];
}

const isOlder = (raw: unknown): boolean =>
  isObject(raw) && !(typeof raw.schema === 'number' && raw.schema >= RECORDS_SCHEMA);

/** The first moment that an old record tells of. */
const bornAt = (record: GardenRecord): string =>
  record.kind === 'case' && record.openedOn < record.changedAt.slice(0, 10)
    ? `${record.openedOn}T00:00:00.000Z`
    : record.changedAt;
