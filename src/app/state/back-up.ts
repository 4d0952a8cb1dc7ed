/** The garden as a file and back. Loads the packer, so screens import this on use only. */
import { BackupError, type BackupTrouble } from '../../garden/backup/backup-format.ts';
import { type MergeReport, mergeBackup } from '../../garden/backup/merge-backup.ts';
import { type BackupProgress, type WrittenBackup, writeBackup } from '../../garden/backup/write-backup.ts';
import { type Conflict, conflictsIn } from '../../garden/merge-records.ts';
import type { GardenRecord } from '../../garden/records.ts';
import { settleRivals } from '../../garden/stamp-changes.ts';
import { StoreError, type StoreTrouble } from '../../garden/store/store-trouble.ts';
import { inDemo } from './demo.ts';
import { refreshGarden } from './garden.ts';
import { nowStamp, refreshKept, store } from './kept.ts';
import { refreshOwnHead } from './own-head.ts';

/** `in-demo`: the invented garden takes no files. */
export type BackupFailure = BackupTrouble | StoreTrouble | 'in-demo';

const failureOf = (cause: unknown): BackupFailure =>
  cause instanceof BackupError || cause instanceof StoreError ? cause.code : 'refused';

type Outcome<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly why: BackupFailure };

/** Everything in one file. */
export async function backUp(
  progress: (done: BackupProgress) => void,
): Promise<Outcome<{ readonly file: Blob } & WrittenBackup>> {
  try {
    const { readable, writable } = new TransformStream<Uint8Array, Uint8Array>();
    const packed = new Response(readable as ReadableStream<Uint8Array<ArrayBuffer>>).blob();
    const written = await writeBackup(store, writable, nowStamp(), progress);
    return { ok: true, file: await packed, ...written };
  } catch (cause) {
    return { ok: false, why: failureOf(cause) };
  }
}

/** Brings a file in beside what is here. Where it fails, nothing has changed. */
export async function bringIn(file: Blob): Promise<Outcome<{ readonly report: MergeReport }>> {
  // It would go into what is deleted on leaving.
  if (inDemo) return { ok: false, why: 'in-demo' };
  try {
    const report = await mergeBackup(store, file);
    await refreshAll();
    return { ok: true, report };
  } catch (cause) {
    return { ok: false, why: failureOf(cause) };
  }
}

const refreshAll = async (): Promise<void> =>
  void (await Promise.all([refreshKept(), refreshGarden(), refreshOwnHead()]));

export interface OpenConflict {
  readonly record: GardenRecord;
  readonly conflict: Conflict;
}

/** Every conflict that waits to be settled, from this backup or an earlier one. */
export async function openConflicts(): Promise<readonly OpenConflict[]> {
  const found: OpenConflict[] = [];
  for await (const record of store.eachRecord())
    found.push(...conflictsIn(record).map((conflict) => ({ record, conflict })));
  return found;
}

/** The record with another value at a path (`name`, or `readings/ID`); nothing empties it or takes the element away. */
export function withValueAt(record: GardenRecord, path: string, value: unknown): GardenRecord {
  const [field = path, elementId] = path.split('/');
  const { [field]: old, ...rest } = record as unknown as Record<string, unknown>;
  if (elementId === undefined)
    return (value === undefined ? rest : { ...rest, [field]: value }) as unknown as GardenRecord;
  const others = (Array.isArray(old) ? old : []).filter(({ id }: { id: string }) => id !== elementId);
  const list = [...others, ...(value === undefined ? [] : [value])] as { date?: string; id: string }[];
  list.sort((a, b) => ((a.date ?? '') + a.id < (b.date ?? '') + b.id ? -1 : 1));
  return { ...rest, [field]: list } as unknown as GardenRecord;
}

/** The grower has chosen what holds. False: it changed meanwhile, or could not be stored. */
export async function settleConflict({ record, conflict }: OpenConflict, value: unknown): Promise<boolean> {
  try {
    const now = await store.readSame(record);
    if (!now) return false;
    const chosen = withValueAt(now, conflict.path, value);
    await store.saveMerged([settleRivals(chosen, conflict.path, nowStamp(), await store.device())]);
    await refreshAll();
    return true;
  } catch {
    return false;
  }
}
