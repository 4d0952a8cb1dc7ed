/**
 * The garden's store in the browser (IndexedDB). The only file of this folder that knows the DOM. Records and pictures
 * lie in two stores: lists read records only. Every save is one transaction, so a case is kept whole or not at all.
 */
import { createStore, del, get, promisifyRequest, set, type UseStore } from 'idb-keyval';
import { addLookToCase } from './add-look-to-case.ts';
import type {
  CaseRecord,
  DraftRecord,
  GardenRecord,
  LessonsRecord,
  LookRecord,
  LookSummary,
} from './records.ts';
import { LESSONS_ID } from './records.ts';
import { repairRecord } from './repair-record.ts';

/**
 * Why the store did not take something. `full`: no room; `refused`: the browser keeps nothing for this page; `newer`: a
 * newer version of the tool wrote this record, and writing over it would lose what it knows.
 */
export type StoreTrouble = 'full' | 'refused' | 'newer';

export class StoreError extends Error {
  override readonly name = 'StoreError';
  constructor(
    readonly code: StoreTrouble,
    options?: { cause?: unknown },
  ) {
    super(`store: ${code}`, options);
  }
}

export interface CaseStore {
  /** All cases, the deleted ones too (they carry `deletedAt`). No photos, no rankings. */
  listCases(): Promise<CaseRecord[]>;
  readCase(id: string): Promise<CaseRecord | undefined>;
  /** All looks of a case, oldest first. */
  listLooks(caseId: string): Promise<LookRecord[]>;
  listDrafts(): Promise<DraftRecord[]>;
  readDraft(id: string): Promise<DraftRecord | undefined>;
  saveDraft(draft: DraftRecord): Promise<void>;
  dropDraft(id: string): Promise<void>;
  /** Keeps a look in its case and drops the draft it came from, all in one transaction. */
  saveLook(kept: CaseRecord, look: LookRecord, summary: LookSummary, draftId?: string): Promise<CaseRecord>;
  /** Changes a case by a function of what is in the store, in one transaction. */
  changeCase(id: string, change: (kept: CaseRecord) => CaseRecord): Promise<CaseRecord | undefined>;
  /** Takes away the looks and pictures of a case for good; a bare record of the deletion stays. */
  eraseCase(id: string, now: string): Promise<void>;
  /** What learning leaves out; `undefined` while nothing was ever reset. */
  readLessons(): Promise<LessonsRecord | undefined>;
  saveLessons(lessons: LessonsRecord): Promise<void>;
  savePicture(id: string, picture: Blob): Promise<void>;
  readPicture(id: string): Promise<Blob | undefined>;
  dropPictures(ids: readonly string[]): Promise<void>;
}

const caseKey = (id: string): string => `case:${id}`;
const lookKey = (caseId: string, id: string): string => `look:${caseId}:${id}`;
const draftKey = (id: string): string => `draft:${id}`;
const keysUnder = (prefix: string): IDBKeyRange => IDBKeyRange.bound(prefix, `${prefix}\uffff`);

/** Runs a store operation; whatever it throws crosses as a `StoreError` with a code. */
async function guarded<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (cause) {
    if (cause instanceof StoreError) throw cause;
    const name = cause instanceof Error || cause instanceof DOMException ? cause.name : '';
    throw new StoreError(name === 'QuotaExceededError' ? 'full' : 'refused', { cause });
  }
}

const repairAll = <Kind extends GardenRecord['kind']>(
  found: readonly unknown[],
  kind: Kind,
): Extract<GardenRecord, { kind: Kind }>[] =>
  found
    .map(repairRecord)
    .filter((record): record is Extract<GardenRecord, { kind: Kind }> => record?.kind === kind);

const namesOf = ({ bed, plant, crop, variety }: CaseRecord): Partial<CaseRecord> => ({
  bed,
  plant,
  ...(crop ? { crop } : {}),
  ...(variety ? { variety } : {}),
});

/** What stays of a case that is deleted for good: that it was there, so that a merge does not bring it back. */
const bareRecord = ({ outcome: _outcome, ...found }: CaseRecord, now: string): CaseRecord => ({
  ...found,
  bed: '',
  plant: '',
  looks: [],
  changedAt: now,
  deletedAt: found.deletedAt ?? now,
});

export function openCaseStore(): CaseStore {
  // Opened on first use: opening throws where the browser refuses storage, and the app must start all the same.
  let recordsOpened: UseStore | undefined;
  let picturesOpened: UseStore | undefined;
  const records: UseStore = (mode, run) => {
    recordsOpened ??= createStore('bedside-records', 'records');
    return recordsOpened(mode, run);
  };
  const pictures: UseStore = (mode, run) => {
    picturesOpened ??= createStore('bedside-pictures', 'pictures');
    return picturesOpened(mode, run);
  };
  const readUnder = (prefix: string): Promise<unknown[]> =>
    guarded(() => records('readonly', (store) => promisifyRequest(store.getAll(keysUnder(prefix)))));

  const listLooks: CaseStore['listLooks'] = async (caseId) =>
    repairAll(await readUnder(`look:${caseId}:`), 'look').sort((a, b) => (a.date < b.date ? -1 : 1));

  /** Reads one case and writes it back changed; the transaction holds both, so two tabs cannot lose each other's look. */
  const rewriteCase = (
    id: string,
    change: (kept: CaseRecord | undefined) => CaseRecord | undefined,
    also: (store: IDBObjectStore) => void = () => {},
  ): Promise<CaseRecord | undefined> =>
    guarded(() =>
      records('readwrite', async (store) => {
        const raw: unknown = await promisifyRequest(store.get(caseKey(id)));
        const found = repairRecord(raw);
        if (raw !== undefined && found === undefined) throw new StoreError('newer');
        const changed = change(found?.kind === 'case' ? found : undefined);
        if (changed) store.put(changed, caseKey(id));
        also(store);
        await promisifyRequest(store.transaction);
        return changed;
      }),
    );

  return {
    listCases: async () => repairAll(await readUnder('case:'), 'case'),
    async readCase(id) {
      const found = repairRecord(await guarded(() => get(caseKey(id), records)));
      return found?.kind === 'case' ? found : undefined;
    },
    listLooks,
    listDrafts: async () => repairAll(await readUnder('draft:'), 'draft'),
    async readDraft(id) {
      const found = repairRecord(await guarded(() => get(draftKey(id), records)));
      return found?.kind === 'draft' ? found : undefined;
    },
    saveDraft: (draft) => guarded(() => set(draftKey(draft.id), draft, records)),
    dropDraft: (id) => guarded(() => del(draftKey(id), records)),
    async saveLook(kept, look, summary, draftId) {
      const saved = await rewriteCase(
        kept.id,
        // Looks and marks come from the store, where another tab may have added some; names from what was typed now.
        (found) => addLookToCase({ ...kept, ...found, ...namesOf(kept) }, summary, look.changedAt),
        (store) => {
          store.put(look, lookKey(kept.id, look.id));
          if (draftId) store.delete(draftKey(draftId));
        },
      );
      if (!saved) throw new StoreError('refused');
      return saved;
    },
    changeCase: (id, change) => rewriteCase(id, (found) => (found ? change(found) : undefined)),
    async eraseCase(id, now) {
      const looks = await listLooks(id);
      await rewriteCase(
        id,
        (found) => found && bareRecord(found, now),
        (store) => {
          store.delete(keysUnder(`look:${id}:`));
        },
      );
      await this.dropPictures(looks.flatMap((look) => look.photos.map((photo) => photo.id)));
    },
    async readLessons() {
      const found = repairRecord(await guarded(() => get(LESSONS_ID, records)));
      return found?.kind === 'lessons' ? found : undefined;
    },
    saveLessons: (lessons) => guarded(() => set(LESSONS_ID, lessons, records)),
    savePicture: (id, picture) => guarded(() => set(id, picture, pictures)),
    readPicture: (id) => guarded(() => get<Blob>(id, pictures)),
    dropPictures: (ids) =>
      guarded(() =>
        pictures('readwrite', (store) => {
          for (const id of ids) store.delete(id);
          return promisifyRequest(store.transaction);
        }),
      ),
  };
}
