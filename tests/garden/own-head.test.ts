import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import { mergeBackup } from '../../src/garden/backup/merge-backup.ts';
import { writeBackup } from '../../src/garden/backup/write-backup.ts';
import { conflictsIn, mergeRecords } from '../../src/garden/merge-records.ts';
import type { OwnHeadRecord } from '../../src/garden/own-head-record.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import { stampChanges } from '../../src/garden/stamp-changes.ts';
import { type GardenStore, openGardenStore } from '../../src/garden/store/garden-store.ts';
import { isWholeOwnHead } from '../../src/garden/whole-own-head.ts';
import { ownHeadOf, record } from './small-garden.ts';

const head = (weight: number, changedAt = '2026-01-01T00:00:00.000Z'): OwnHeadRecord =>
  record('own-head', 'own-head', { ...ownHeadOf(weight), changedAt });
const learnt = (weight: number, at: string, device: string): OwnHeadRecord =>
  stampChanges(undefined, head(weight, at), at, device);

const repaired = (found: object): OwnHeadRecord => repairRecord(found) as OwnHeadRecord;

describe('what the network has learnt of a garden, as a record', () => {
  it('comes back as it was kept', () => {
    expect(repairRecord(head(0.5))).toEqual(head(0.5));
    expect(isWholeOwnHead(head(0.5))).toBe(true);
    expect(head(0.5).marks[0]!.head!.weights).toEqual([0.5, 0]);
  });

  it('is not half used: it is not whole where anything in it is broken', () => {
    const whole = head(0.5);
    const [powder, holes] = whole.marks as [OwnHeadRecord['marks'][0], OwnHeadRecord['marks'][0]];
    const withHead = (more: object) => ({ marks: [{ ...powder, head: { ...powder.head, ...more } }, holes] });
    for (const broken of [
      { network: '' },
      { learntAt: 'yesterday' },
      { plantings: 1.5 },
      { marks: [7] },
      { marks: [{ ...powder, end: 'guessed' }] },
      { marks: [powder, powder] },
      { marks: [{ ...powder, tested: { own: 1 } }] },
      // Used without a head, and a head that is not used.
      { marks: [{ ...holes, end: 'used' }] },
      { marks: [{ ...powder, end: 'no-better' }] },
      withHead({ weights: [] }),
      withHead({ weights: [1] }),
      withHead({ weights: [1, Number.NaN] }),
      withHead({ weights: [1, '2'] }),
      withHead({ spread: [1, 0] }),
      withHead({ level: Number.POSITIVE_INFINITY }),
      withHead({ most: 0.5 }),
    ])
      expect(isWholeOwnHead(repaired({ ...whole, ...broken })), JSON.stringify(broken)).toBe(false);
    expect(isWholeOwnHead(repaired({ ...whole, id: 'another' }))).toBe(false);
  });

  it('is merged whole: what was learnt or forgotten last holds, in either order, and is no conflict', () => {
    const phone = learnt(0.5, '2026-06-02T00:00:00.000Z', 'phone');
    const desk = learnt(0.7, '2026-06-03T00:00:00.000Z', 'desk');
    const forgotten = stampChanges(
      phone,
      { ...phone, changedAt: '2026-06-04T00:00:00.000Z', deletedAt: '2026-06-04T00:00:00.000Z' },
      '2026-06-04T00:00:00.000Z',
      'phone',
    );
    for (const [a, b] of [
      [phone, desk],
      [desk, phone],
    ] as const)
      expect(mergeRecords(a, b)).toEqual(desk);
    for (const [a, b] of [
      [forgotten, desk],
      [desk, forgotten],
    ] as const)
      expect(mergeRecords(a, b)).toEqual(forgotten);
    expect(mergeRecords(mergeRecords(phone, desk), forgotten)).toEqual(
      mergeRecords(phone, mergeRecords(desk, forgotten)),
    );
    expect(conflictsIn(mergeRecords(phone, desk))).toEqual([]);
    // Made at one moment with other numbers: the same one everywhere.
    const twin = learnt(0.9, '2026-06-02T00:00:00.000Z', 'phone');
    expect(mergeRecords(phone, twin)).toEqual(mergeRecords(twin, phone));
  });
});

describe('what the network has learnt of a garden, in the store', () => {
  const backupOf = async (store: GardenStore): Promise<Blob> => {
    const parts: Uint8Array<ArrayBuffer>[] = [];
    const sink = new WritableStream<Uint8Array>({ write: (chunk) => void parts.push(chunk.slice()) });
    await writeBackup(store, sink, '2026-06-05T00:00:00.000Z');
    return new Blob(parts);
  };
  const newDevice = (now: string): GardenStore => {
    globalThis.indexedDB = new IDBFactory();
    return openGardenStore(() => now);
  };
  const read = async (store: GardenStore) => (await store.listRecords('own-head'))[0];

  it('is in the backup, and on another device the newer one holds', async () => {
    const phone = newDevice('2026-06-03T00:00:00.000Z');
    await phone.saveRecords([head(0.5, '2026-06-03T00:00:00.000Z')]);
    const file = await backupOf(phone);

    const empty = newDevice('2026-06-06T00:00:00.000Z');
    expect(await mergeBackup(empty, file)).toMatchObject({ added: 1, conflicts: [] });
    expect((await read(empty))?.marks).toEqual(head(0.5).marks);

    const older = newDevice('2026-06-01T00:00:00.000Z');
    await older.saveRecords([head(0.1, '2026-06-01T00:00:00.000Z')]);
    expect(await mergeBackup(older, file)).toMatchObject({ added: 0, changed: 1, conflicts: [] });
    expect((await read(older))?.marks).toEqual(head(0.5).marks);
    expect(await mergeBackup(older, file)).toMatchObject({ added: 0, changed: 0, same: 1 });

    const newer = newDevice('2026-06-09T00:00:00.000Z');
    await newer.saveRecords([head(0.9, '2026-06-09T00:00:00.000Z')]);
    expect(await mergeBackup(newer, file)).toMatchObject({ changed: 0, same: 1, conflicts: [] });
    expect((await read(newer))?.marks).toEqual(head(0.9).marks);
  });

  it('refuses a backup in which it is broken, and changes nothing', async () => {
    const phone = newDevice('2026-06-03T00:00:00.000Z');
    const broken = { ...head(0.5), marks: [{ mark: 'holes', end: 'used' }] };
    const lines = {
      ...phone,
      async *eachRecord() {
        yield broken as never;
      },
    } as GardenStore;
    const file = await backupOf(lines);
    const other = newDevice('2026-06-06T00:00:00.000Z');
    await expect(mergeBackup(other, file)).rejects.toMatchObject({ code: 'broken' });
    expect(await read(other)).toBeUndefined();
  });
});
