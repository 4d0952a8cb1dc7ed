import { computed, signal } from '@preact/signals';
import { gatherGarden } from '../../garden/gather-garden.ts';
import type { GroundRecord } from '../../garden/ground-records.ts';
import { StoreError, type StoreTrouble } from '../../garden/store/store-trouble.ts';
import { cases, nowStamp, store, tryRead, tryStore } from './kept.ts';
import { offerUndo } from './undo-bar.ts';

const GROUND_KINDS = [
  'bed',
  'event',
  'batch',
  'planting',
  'weather',
  'normal-leaf',
  'pot-test',
  'trial',
] as const;

/** All records of the ground, the deleted ones too; `undefined` until the store has been read. */
export const groundRecords = signal<readonly GroundRecord[] | undefined>(undefined);

/** The garden as it stands, cases included; `undefined` until both have been read. */
export const garden = computed(() =>
  groundRecords.value && cases.value ? gatherGarden([...groundRecords.value, ...cases.value]) : undefined,
);

export async function refreshGarden(): Promise<void> {
  const found = await tryRead(() => store.listRecords(...GROUND_KINDS));
  groundRecords.value = found ?? groundRecords.value ?? [];
}

/** Reads the ground, and again whenever another tab has written it, or cases change: keeping a look can make a bed. */
export function followGarden(): void {
  store.watch((keys) => {
    if (keys.some((key) => GROUND_KINDS.some((kind) => key.startsWith(`${kind}:`)))) void refreshGarden();
  });
  cases.subscribe(() => void refreshGarden());
}

/** How a save went: stored, or why not. Forms keep what was typed and say it in a sentence. */
export type Saved = 'stored' | StoreTrouble;

/** Keeps records, all or none. On a conflict the newer state is read, so that saving once more is a change of that. */
export async function keepRecords(records: readonly GroundRecord[]): Promise<Saved> {
  try {
    await store.saveRecords(records.map((record) => ({ ...record, changedAt: nowStamp() })));
  } catch (cause) {
    const trouble = cause instanceof StoreError ? cause.code : 'refused';
    if (trouble === 'conflict') await refreshGarden();
    return trouble;
  }
  await refreshGarden();
  return 'stored';
}

/** Changes what is stored, whatever it is by then; shows the store's trouble by itself. True when it was stored. */
export async function changeGround<R extends GroundRecord>(
  record: R,
  change: (found: R) => R,
): Promise<boolean> {
  const done = await tryStore(
    () =>
      store.changeRecord(record.kind, record.id, (found) => ({
        ...change(found as unknown as R),
        changedAt: nowStamp(),
      })) as Promise<unknown>,
  );
  await refreshGarden();
  return done !== undefined;
}

/** Deletes a record of the ground; the bar offers it back. */
export async function deleteGround(record: GroundRecord, says: string): Promise<boolean> {
  const done = await changeGround(record, (found) => ({ ...found, deletedAt: nowStamp() }));
  if (done)
    offerUndo({
      says,
      undo: async () => {
        await bringBackGround(record);
      },
    });
  return done;
}

/** True when it is there again. */
export const bringBackGround = (record: GroundRecord): Promise<boolean> =>
  changeGround(record, ({ deletedAt: _deletedAt, ...found }) => found as GroundRecord);

/** A record of the ground as it is stored now, a deleted one too. */
export const onRecord = <Kind extends GroundRecord['kind']>(kind: Kind, id: string | undefined) =>
  groundRecords.value?.find((one) => one.kind === kind && one.id === id) as
    | Extract<GroundRecord, { kind: Kind }>
    | undefined;

const stored = (record: GroundRecord): GroundRecord | undefined => onRecord(record.kind, record.id);

/** The record as it is stored now, or the one at hand where it never was. */
export const latest = <R extends GroundRecord>(record: R): R => (stored(record) as R | undefined) ?? record;

/** Keeps records, and offers to put everything back as it was. */
export async function keepWithUndo(records: readonly GroundRecord[], says: string): Promise<Saved> {
  const before = new Map(records.map((record) => [record.id, stored(record)]));
  const saved = await keepRecords(records);
  if (saved !== 'stored') return saved;
  const undo = async (): Promise<void> => {
    await keepRecords(
      records.map((record) => {
        const now = latest(record);
        const old = before.get(record.id) ?? { ...now, deletedAt: nowStamp() };
        return now.revision === undefined ? old : { ...old, revision: now.revision };
      }),
    );
  };
  offerUndo({ says, undo });
  return saved;
}
