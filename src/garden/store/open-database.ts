import { createStore, promisifyRequest, type UseStore } from 'idb-keyval';
import { isObject, text } from '../loose.ts';
import { type GardenRecord, RECORDS_SCHEMA } from '../records.ts';
import { repairRecord } from '../repair-record.ts';
import { stampChanges } from '../stamp-changes.ts';
import { upgradeRecords } from '../upgrade-records.ts';
import { keyOf, META_KEY, type StoreMeta } from './record-keys.ts';
import { guarded, StoreError } from './store-trouble.ts';

/** One write: reads what it needs, says what to put and drop; all of it happens, or nothing. */
export interface Writer {
  /** The record as it is stored; throws `newer` where it cannot be read for being newer than this version. */
  read(key: string): Promise<GardenRecord | undefined>;
  readAll(keys: IDBKeyRange): Promise<GardenRecord[]>;
  /** Puts a record with its edits stamped; gives it as it will be stored. */
  put<R extends GardenRecord>(record: R, how?: { readonly asItIs?: boolean }): Promise<R>;
  drop(key: string | IDBKeyRange): void;
}

export interface Database {
  read<T>(run: (store: IDBObjectStore) => Promise<T>): Promise<T>;
  write<T>(plan: (writer: Writer) => Promise<T>): Promise<T>;
  pictures: UseStore;
  meta(): Promise<StoreMeta>;
  changeMeta(change: (meta: StoreMeta) => StoreMeta): Promise<void>;
  /** Called with the keys that another tab (or this one, through another store) has written. */
  watch(changed: (keys: readonly string[]) => void): () => void;
}

/** The grower's own garden, and the invented one: databases of their own, so that nothing can mix. */
export const OWN_GARDEN = 'bedside';
export const DEMO_GARDEN = 'bedside-demo';

/** The databases of a garden: its records and its pictures. */
export const databasesOf = (garden: string): readonly [records: string, pictures: string] => [
  `${garden}-records`,
  `${garden}-pictures`,
];

/**
 * @param now the clock, ISO 8601, UTC; for tests
 * @param garden whose databases
 */
export function openDatabase(now: () => string, garden = OWN_GARDEN): Database {
  const [recordsName, picturesName] = databasesOf(garden);
  // Opened on first use: opening throws where the browser refuses storage, and the app must start all the same.
  let recordsOpened: UseStore | undefined;
  let picturesOpened: UseStore | undefined;
  let ready: Promise<StoreMeta> | undefined;
  const raw: UseStore = (mode, run) => {
    recordsOpened ??= openStore(recordsName, 'records');
    return recordsOpened(mode, run);
  };
  const channel =
    typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(`${garden}-changes`);

  /** Brings the whole store up to this version in one transaction, the first time that it is used. */
  const upgraded = (): Promise<StoreMeta> => {
    ready ??= upgradeStore(raw).catch((cause) => {
      // Full or refused now may be well later: the next use tries again.
      ready = undefined;
      throw cause;
    });
    return ready;
  };

  return {
    read: (run) =>
      guarded(async () => {
        await upgraded();
        return raw('readonly', run);
      }),
    write: (plan) =>
      guarded(async () => {
        const { device } = await upgraded();
        const touched: string[] = [];
        const done = await raw('readwrite', async (store) => {
          try {
            const made = await plan(writerOn(store, now(), device, touched));
            await promisifyRequest(store.transaction);
            return made;
          } catch (cause) {
            abort(store.transaction);
            throw cause;
          }
        });
        if (touched.length > 0) channel?.postMessage(touched);
        return done;
      }),
    pictures: (mode, run) => {
      picturesOpened ??= openStore(picturesName, 'pictures');
      return picturesOpened(mode, run);
    },
    meta: () => guarded(upgraded),
    changeMeta: (change) =>
      guarded(async () => {
        const meta = change(await upgraded());
        await raw('readwrite', (store) => {
          store.put(meta, META_KEY);
          return promisifyRequest(store.transaction);
        });
        ready = Promise.resolve(meta);
      }),
    watch(changed) {
      const hear = ({ data }: MessageEvent): void => {
        if (Array.isArray(data)) changed(data);
      };
      channel?.addEventListener('message', hear);
      return () => channel?.removeEventListener('message', hear);
    },
  };
}

const underWay = new Set<PromiseLike<unknown>>();

/** Settles once all that this page was writing, in whatever store, lies on the disk or was refused. */
export async function writesDone(): Promise<void> {
  do {
    await Promise.allSettled(underWay);
    // What waited its turn begins now.
    await new Promise((resolve) => setTimeout(resolve));
  } while (underWay.size > 0);
}

/** A store whose saves are told as kept only once they lie on the disk: without asking, browsers say so earlier. */
function openStore(database: string, name: string): UseStore {
  const opened = createStore(database, name);
  return async (mode, run) => {
    if (mode === 'readonly') return opened(mode, run);
    const writing = opened('readonly', ({ transaction: { db } }) =>
      run(db.transaction(name, mode, { durability: 'strict' }).objectStore(name)),
    );
    underWay.add(writing);
    try {
      return await writing;
    } finally {
      underWay.delete(writing);
    }
  };
}

function abort(transaction: IDBTransaction): void {
  try {
    transaction.abort();
  } catch {
    // It has ended by itself already.
  }
}

function readMeta(found: unknown): StoreMeta | undefined {
  if (!isObject(found) || typeof found.schema !== 'number') return undefined;
  const askedToLastAt = text(found.askedToLastAt);
  return { schema: found.schema, device: text(found.device), ...(askedToLastAt ? { askedToLastAt } : {}) };
}

function upgradeStore(raw: UseStore): Promise<StoreMeta> {
  return raw('readwrite', async (store) => {
    const meta = readMeta(await promisifyRequest(store.get(META_KEY)));
    if (meta && meta.schema > RECORDS_SCHEMA) throw new StoreError('newer');
    if (meta && meta.schema === RECORDS_SCHEMA && meta.device !== '') return meta;
    const fresh: StoreMeta = {
      ...meta,
      schema: RECORDS_SCHEMA,
      device: meta?.device || crypto.randomUUID().slice(0, 8),
    };
    try {
      const records: unknown[] = await promisifyRequest(store.getAll());
      for (const record of upgradeRecords(records)) store.put(record, keyOf(record));
      store.put(fresh, META_KEY);
      await promisifyRequest(store.transaction);
    } catch (cause) {
      abort(store.transaction);
      throw cause;
    }
    return fresh;
  });
}

function writerOn(store: IDBObjectStore, now: string, device: string, touched: string[]): Writer {
  const read = async (key: string): Promise<GardenRecord | undefined> => {
    const found: unknown = await promisifyRequest(store.get(key));
    const record = repairRecord(found);
    if (found !== undefined && record === undefined) throw new StoreError('newer');
    return record;
  };
  return {
    read,
    readAll: async (keys) => {
      const found: unknown[] = await promisifyRequest(store.getAll(keys));
      return found.map(repairRecord).filter((record) => record !== undefined);
    },
    async put(record, { asItIs = false } = {}) {
      const key = keyOf(record);
      const before = await read(key);
      // A draft is one device's own, renewed with every letter: it needs no edits to be told apart.
      const stamped = asItIs || record.kind === 'draft' ? record : stampChanges(before, record, now, device);
      const stored = { ...stamped, revision: (before?.revision ?? 0) + 1 };
      store.put(stored, key);
      touched.push(key);
      return stored;
    },
    drop(key) {
      store.delete(key);
      touched.push(typeof key === 'string' ? key : String(key.lower));
    },
  };
}
