import type { BedRecord } from './ground-records.ts';
import { bedKey } from './group-by-bed.ts';
import type { CaseRecord } from './records.ts';

/** The bed of a case: its record where there is one, else the name that was written. */
export interface BedOfCase {
  /** Id of the record, or the key of the name; empty where no bed was named. */
  readonly key: string;
  readonly name: string;
}

/**
 * Gives the bed of each case: by its record, by the record of that name where it was never linked, else by its name alone.
 * Made once for a list of beds.
 */
export function placesOf(beds: readonly BedRecord[]): (kept: CaseRecord) => BedOfCase {
  const byId = new Map(beds.map((bed) => [bed.id, bed]));
  const byName = new Map(beds.map((bed) => [bedKey(bed.name), bed]));
  return ({ bedId, bed }) => {
    const key = bedKey(bed);
    const record = (bedId ? byId.get(bedId) : undefined) ?? byName.get(key);
    return record ? { key: record.id, name: record.name } : { key, name: bed.trim().replace(/\s+/g, ' ') };
  };
}
