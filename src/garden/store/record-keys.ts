import type { GardenRecord, RecordKind } from '../records.ts';
import { LESSONS_ID } from '../records.ts';

/** Where a record lies. Looks lie by case, so that a case's looks are read in one go. */
export function keyOf(record: GardenRecord): string {
  if (record.kind === 'lessons') return LESSONS_ID;
  return record.kind === 'look' ? lookKey(record.caseId, record.id) : `${record.kind}:${record.id}`;
}
export const recordKey = (kind: Exclude<RecordKind, 'look' | 'lessons'>, id: string): string =>
  `${kind}:${id}`;
export const lookKey = (caseId: string, id: string): string => `look:${caseId}:${id}`;
export const keysUnder = (prefix: string): IDBKeyRange => IDBKeyRange.bound(prefix, `${prefix}\uffff`);

/** What the store says of itself: its version, this device, whether it was asked to last. */
export const META_KEY = 'meta:store';

export interface StoreMeta {
  readonly schema: number;
  /** A random word that tells this device's edits from others'. */
  readonly device: string;
  /** When the browser was asked to keep the store for good. */
  readonly askedToLastAt?: string;
}
