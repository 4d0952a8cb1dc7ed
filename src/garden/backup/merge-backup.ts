import { canonical } from '../canonical.ts';
import { type Conflict, conflictsIn, mergeRecords } from '../merge-records.ts';
import type { CaseRecord, GardenRecord } from '../records.ts';
import type { GardenStore } from '../store/garden-store.ts';
import { StoreError } from '../store/store-trouble.ts';
import { upgradeRecords } from '../upgrade-records.ts';
import { BackupError, picturesAndSmall } from './backup-format.ts';
import { type Backup, openBackup } from './read-backup.ts';

export interface MergeReport {
  /** Records that were not here, that were changed, and that were the same. */
  readonly added: number;
  readonly changed: number;
  readonly same: number;
  readonly pictures: number;
  /** Real conflicts, for the grower to settle. */
  readonly conflicts: readonly Conflict[];
}

/**
 * Brings a backup file into the garden. The whole file is read and checked first; then pictures that are missing are
 * stored, then all records in one transaction. Where anything fails, nothing has changed.
 * @throws BackupError the file is not to be used; StoreError `full`, `refused`, or `conflict` where another tab wrote meanwhile
 */
export async function mergeBackup(store: GardenStore, file: Blob): Promise<MergeReport> {
  const backup = await openBackup(file);
  try {
    const plan = await planMerge(store, backup);
    for (const picture of backup.pictures) await picture.read();
    const stored = await storePictures(store, backup, plan.pictures);
    try {
      await store.saveMerged(plan.write);
    } catch (cause) {
      await store.dropPictures(stored);
      throw cause;
    }
    for (const id of plan.emptied) await store.eraseCase(id, (await store.readCase(id))?.deletedAt ?? '');
    return { ...plan.report, pictures: stored.length };
  } finally {
    await backup.close();
  }
}

interface MergePlan {
  readonly write: readonly GardenRecord[];
  readonly pictures: ReadonlySet<string>;
  /** Cases that were deleted for good on the other device: what is left of their looks here goes too. */
  readonly emptied: readonly string[];
  readonly report: Omit<MergeReport, 'pictures'>;
}

const withoutRevision = ({ revision: _revision, ...record }: GardenRecord): string => canonical(record);

async function planMerge(store: GardenStore, backup: Backup): Promise<MergePlan> {
  const incoming: GardenRecord[] = [];
  for await (const record of backup.records()) incoming.push(record);
  const upgraded = new Map(upgradeRecords(incoming).map((record) => [`${record.kind} ${record.id}`, record]));
  const all = [...incoming.filter(({ kind, id }) => !upgraded.has(`${kind} ${id}`)), ...upgraded.values()];
  // Cases first: a look belongs to the garden only while its case names it.
  all.sort((a, b) => Number(b.kind === 'case') - Number(a.kind === 'case'));
  const named = new Set<string>();
  const write: GardenRecord[] = [];
  const emptied: string[] = [];
  const pictures = new Set<string>();
  const conflicts: Conflict[] = [];
  let [added, changed, same] = [0, 0, 0];
  const seen = new Set<string>();
  for (const theirs of all) {
    const name = `${theirs.kind} ${theirs.id}`;
    if (seen.has(name)) throw new BackupError('unsafe');
    seen.add(name);
    const mine = await store.readSame(theirs);
    const unchanged = mine !== undefined && withoutRevision(mine) === withoutRevision(theirs);
    const merged = mine && !unchanged ? mergeRecords(mine, theirs) : (mine ?? theirs);
    if (merged.kind === 'case') for (const { id } of merged.looks) named.add(`${merged.id} ${id}`);
    if (merged.kind === 'look' && !named.has(`${merged.caseId} ${merged.id}`)) continue;
    for (const id of picturesAndSmall(merged)) pictures.add(id);
    conflicts.push(...conflictsIn(merged));
    if (mine && withoutRevision(mine) === withoutRevision(merged)) {
      same += 1;
      continue;
    }
    if (mine) changed += 1;
    else added += 1;
    if (mine?.kind === 'case' && mine.looks.length > 0 && isBare(merged as CaseRecord)) emptied.push(mine.id);
    write.push(mine?.revision === undefined ? merged : { ...merged, revision: mine.revision });
  }
  return { write, pictures, emptied, report: { added, changed, same, conflicts } };
}

const isBare = ({ deletedAt, looks }: CaseRecord): boolean => deletedAt !== undefined && looks.length === 0;

/** Stores the pictures that are wanted and missing; takes them out again where one does not fit. Gives their ids. */
async function storePictures(
  store: GardenStore,
  backup: Backup,
  wanted: ReadonlySet<string>,
): Promise<string[]> {
  const stored: string[] = [];
  try {
    for (const { id, read } of backup.pictures) {
      if (!wanted.has(id) || (await store.hasPicture(id))) continue;
      await store.savePicture(id, await read());
      stored.push(id);
    }
  } catch (cause) {
    await store.dropPictures(stored).catch(() => {});
    throw cause instanceof StoreError || cause instanceof BackupError
      ? cause
      : new BackupError('broken', { cause });
  }
  return stored;
}
