import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { mergeBackup } from '../../src/garden/backup/merge-backup.ts';
import { writeBackup } from '../../src/garden/backup/write-backup.ts';
import { type GardenStore, openGardenStore } from '../../src/garden/store/garden-store.ts';

/** A backup file as another device writes it: its store filled by `fill`, over what `from` brought it. */
export async function makeBackup(
  now: string,
  fill: (store: GardenStore) => Promise<unknown>,
  from?: Buffer<ArrayBuffer>,
): Promise<Buffer<ArrayBuffer>> {
  globalThis.indexedDB = new IDBFactory();
  const store = openGardenStore(() => now);
  if (from) await mergeBackup(store, new Blob([from]));
  await fill(store);
  const parts: Uint8Array[] = [];
  await writeBackup(store, new WritableStream({ write: (part) => void parts.push(part.slice()) }), now);
  return Buffer.concat(parts) as Buffer<ArrayBuffer>;
}
