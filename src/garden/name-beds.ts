import type { BedRecord } from './ground-records.ts';
import { bedKey } from './group-by-bed.ts';
import { RECORDS_SCHEMA } from './records.ts';

/** A bed as it is named in words: the one of that name, in any spelling. */
export const bedNamed = (name: string, beds: readonly BedRecord[]): BedRecord | undefined =>
  bedKey(name) === '' ? undefined : beds.find((bed) => !bed.deletedAt && bedKey(bed.name) === bedKey(name));

/** A fresh record for a bed known by name only. Its id follows from the name, so that two devices make one bed of it. */
export const newBed = (name: string, now: string): BedRecord => ({
  kind: 'bed',
  id: `bed-${bedKey(name)}`,
  schema: RECORDS_SCHEMA,
  changedAt: now,
  name: name.trim().replace(/\s+/g, ' '),
  note: '',
});
