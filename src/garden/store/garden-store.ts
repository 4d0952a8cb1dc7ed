/**
 * The garden's store in the browser (IndexedDB). Records and pictures lie in two databases: lists read records only. A save
 * is one transaction: whole or absent.
 */
import { get, promisifyRequest, set } from 'idb-keyval';
import { addLookToCase } from '../add-look-to-case.ts';
import type { BedRecord } from '../ground-records.ts';
import { bedKey } from '../group-by-bed.ts';
import { compareWords, isObject, texts } from '../loose.ts';
import { bedNamed, newBed } from '../name-beds.ts';
import { picturesOf } from '../pictures-of.ts';
import type {
  CaseRecord,
  DraftRecord,
  GardenRecord,
  LessonsRecord,
  LookRecord,
  LookSummary,
  RecordKind,
  RecordOf,
} from '../records.ts';
import { LESSONS_ID } from '../records.ts';
import { repairRecord } from '../repair-record.ts';
import { openDatabase, type Writer } from './open-database.ts';
import { keyOf, keysUnder, lookKey, META_KEY, recordKey } from './record-keys.ts';
import { guarded, StoreError } from './store-trouble.ts';

export interface GardenStore {
  /** All records of these kinds, the deleted ones too (they carry `deletedAt`). No photos. */
  listRecords<Kind extends Exclude<RecordKind, 'lessons'>>(
    ...kinds: readonly Kind[]
  ): Promise<RecordOf<Kind>[]>;
  /**
   * Keeps records in one transaction, each with its edits stamped. Hand them over with the `revision` they were read with:
   * @throws StoreError `conflict` with `theirs` where another tab was quicker; then nothing is written
   * @returns them as they are stored
   */
  saveRecords<R extends GardenRecord>(records: readonly R[]): Promise<R[]>;
  /** As `saveRecords`, but with the edits that the records bring along: for what was merged. */
  saveMerged(records: readonly GardenRecord[]): Promise<void>;
  /** Changes one record by a function of what is stored, in one transaction; `undefined` where it is not there. */
  changeRecord<Kind extends Exclude<RecordKind, 'look' | 'lessons' | 'draft'>>(
    kind: Kind,
    id: string,
    change: (record: RecordOf<Kind>) => RecordOf<Kind>,
  ): Promise<RecordOf<Kind> | undefined>;
  /** The record as it is stored that has the kind and id of another one. */
  readSame(record: GardenRecord): Promise<GardenRecord | undefined>;
  /** Every record of the store one by one, drafts and looks too. Reads on while they are used up. */
  eachRecord(): AsyncIterable<GardenRecord>;

  /** All cases, the deleted ones too. No photos, no rankings. */
  listCases(): Promise<CaseRecord[]>;
  readCase(id: string): Promise<CaseRecord | undefined>;
  /** All looks of a case, oldest first. */
  listLooks(caseId: string): Promise<LookRecord[]>;
  listDrafts(): Promise<DraftRecord[]>;
  readDraft(id: string): Promise<DraftRecord | undefined>;
  /** Keeps a draft. @throws StoreError `conflict` where another tab has written it since this one read or wrote it */
  saveDraft(draft: DraftRecord): Promise<void>;
  dropDraft(id: string): Promise<void>;
  /** Keeps a look in its case, the bed it names, and drops the draft it came from, all in one transaction. */
  saveLook(kept: CaseRecord, look: LookRecord, summary: LookSummary, draftId?: string): Promise<CaseRecord>;
  /** Changes a case by a function of what is in the store, in one transaction. */
  changeCase(id: string, change: (kept: CaseRecord) => CaseRecord): Promise<CaseRecord | undefined>;
  /** Takes away the looks and pictures of a case for good; a bare record of the deletion stays. */
  eraseCase(id: string, now: string): Promise<void>;
  /** What learning leaves out; `undefined` while nothing was ever reset. */
  readLessons(): Promise<LessonsRecord | undefined>;
  saveLessons(lessons: LessonsRecord): Promise<void>;
  /** Takes away everything that belongs to the demo garden, pictures included. */
  eraseDemo(): Promise<void>;

  savePicture(id: string, picture: Blob): Promise<void>;
  readPicture(id: string): Promise<Blob | undefined>;
  hasPicture(id: string): Promise<boolean>;
  /** Takes pictures away, with their small copies, but for those that a case, a draft, a normal leaf, a pot test or a trial still names. */
  dropPictures(ids: readonly string[]): Promise<void>;

  /** The word by which this device's edits are told from others'. */
  device(): Promise<string>;
  /** Asks the browser, once and never again, to keep the store for good. `undefined`: was asked before, or cannot be asked. */
  askToLast(): Promise<boolean | undefined>;
  /** Tells when another tab has written, with the keys (`case:ID`, `draft:ID`). Returns how to stop. */
  watch(changed: (keys: readonly string[]) => void): () => void;
}

const namesOf = ({ bed, plant, bedId, plantingId, crop, variety }: CaseRecord): Partial<CaseRecord> => ({
  bed,
  plant,
  ...(bedId ? { bedId } : {}),
  ...(plantingId ? { plantingId } : {}),
  ...(crop ? { crop } : {}),
  ...(variety ? { variety } : {}),
});

/** What stays of a case that is deleted for good: that it was there, so that a merge does not bring it back. */
const bareRecord = (
  { outcome: _outcome, bedId: _bed, plantingId: _planting, rivals: _rivals, ...found }: CaseRecord,
  now: string,
): CaseRecord => ({
  ...found,
  bed: '',
  plant: '',
  looks: [],
  changedAt: now,
  deletedAt: found.deletedAt ?? now,
});

/** Pictures that a record of a list names; of a draft, also those put aside. */
function picturesNamedBy(record: GardenRecord): string[] {
  if (record.kind === 'case') return record.looks.flatMap(({ photos }) => photos);
  const aside = record.kind === 'draft' && isObject(record.body) ? texts(record.body.removed) : [];
  return [...picturesOf(record), ...aside];
}

/**
 * The case with the bed that it names: the one that was chosen, else the one of that name, else a new one, which is
 * written along.
 * @param before the case as it is stored: where its words for the bed have changed, so has the bed
 */
async function withBed(
  kept: CaseRecord,
  before: CaseRecord | undefined,
  writer: Writer,
  now: string,
): Promise<CaseRecord> {
  const { bedId, ...unplaced } = kept;
  if (kept.bed.trim() === '') return unplaced;
  const beds = (await writer.readAll(keysUnder('bed:'))) as BedRecord[];
  const named = bedNamed(kept.bed, beds);
  const reworded = before?.bedId === bedId && bedKey(before?.bed ?? '') !== bedKey(kept.bed);
  if (bedId && !reworded && beds.some(({ id }) => id === bedId)) return kept;
  if (named) return { ...unplaced, bedId: named.id };
  const fresh = { ...newBed(kept.bed, now), ...(kept.demo ? { demo: true as const } : {}) };
  const taken = beds.some(({ id }) => id === fresh.id);
  const bed = await writer.put(taken ? { ...fresh, id: crypto.randomUUID() } : fresh);
  return { ...unplaced, bedId: bed.id };
}

/**
 * @param now the clock, ISO 8601, UTC; for tests
 * @param garden whose databases; the grower's own unless said
 */
export function openGardenStore(
  now: () => string = () => new Date().toISOString(),
  garden?: string,
): GardenStore {
  const database = openDatabase(now, garden);
  /** Revisions of drafts as this tab read or wrote them last. */
  const seen = new Map<string, number>();
  /** Drafts are written one after the other: each write must know the revision that the one before made. */
  let line: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const done = line.then(work);
    line = done.catch(() => {});
    return done;
  };

  const readOne = async (key: string): Promise<GardenRecord | undefined> =>
    repairRecord(await database.read((store) => promisifyRequest<unknown>(store.get(key))));
  const listUnder = async (prefixes: readonly string[]): Promise<GardenRecord[]> => {
    const found = await database.read((store) =>
      Promise.all(prefixes.map((prefix) => promisifyRequest<unknown[]>(store.getAll(keysUnder(prefix))))),
    );
    return found
      .flat()
      .map(repairRecord)
      .filter((record) => record !== undefined);
  };
  const listRecords: GardenStore['listRecords'] = async (...kinds) =>
    (await listUnder(kinds.map((kind) => `${kind}:`))) as never;

  /** Throws where the store holds another state than the one a record was read in. */
  const expectSame = async (record: GardenRecord, writer: Writer, revision = record.revision ?? 0) => {
    const theirs = await writer.read(keyOf(record));
    if ((theirs?.revision ?? 0) !== revision) throw new StoreError('conflict', { theirs });
  };
  const saveAll = <R extends GardenRecord>(records: readonly R[], asItIs: boolean): Promise<R[]> =>
    database.write(async (writer) => {
      for (const record of records) await expectSame(record, writer);
      const stored: R[] = [];
      for (const record of records) stored.push(await writer.put(record, { asItIs }));
      return stored;
    });

  const changeRecord: GardenStore['changeRecord'] = (kind, id, change) =>
    database.write(async (writer) => {
      const found = await writer.read(recordKey(kind, id));
      return found?.kind === kind ? writer.put(change(found as never)) : undefined;
    }) as never;

  const listLooks: GardenStore['listLooks'] = async (caseId) =>
    ((await listUnder([`look:${caseId}:`])) as LookRecord[]).sort(
      (a, b) =>
        compareWords(a.date, b.date) || compareWords(a.createdAt ?? a.changedAt, b.createdAt ?? b.changedAt),
    );

  const dropPictures: GardenStore['dropPictures'] = async (ids) => {
    if (ids.length === 0) return;
    const named = new Set(
      (await listUnder(['case:', 'normal-leaf:', 'pot-test:', 'trial:', 'draft:'])).flatMap(picturesNamedBy),
    );
    await guarded(() =>
      database.pictures('readwrite', (store) => {
        for (const id of ids) {
          if (named.has(id.split(':')[0]!)) continue;
          store.delete(id);
          store.delete(keysUnder(`${id}:`));
        }
        return promisifyRequest(store.transaction);
      }),
    );
  };

  return {
    listRecords,
    saveRecords: (records) => saveAll(records, false),
    saveMerged: async (records) => void (await saveAll(records, true)),
    changeRecord,
    readSame: (record) => readOne(keyOf(record)),
    async *eachRecord() {
      const keys = await database.read((store) => promisifyRequest(store.getAllKeys()));
      for (const key of keys) {
        if (key === META_KEY) continue;
        const record = await readOne(String(key));
        if (record) yield record;
      }
    },
    listCases: () => listRecords('case'),
    async readCase(id) {
      const found = await readOne(recordKey('case', id));
      return found?.kind === 'case' ? found : undefined;
    },
    listLooks,
    listDrafts: () => listRecords('draft'),
    async readDraft(id) {
      const found = await readOne(recordKey('draft', id));
      if (found?.kind !== 'draft') return undefined;
      seen.set(id, found.revision ?? 0);
      return found;
    },
    saveDraft: (draft) =>
      inTurn(async () => {
        const stored = await database.write(async (writer) => {
          await expectSame(draft, writer, Math.max(draft.revision ?? 0, seen.get(draft.id) ?? 0));
          return writer.put(draft);
        });
        seen.set(draft.id, stored.revision ?? 0);
      }),
    dropDraft: (id) =>
      inTurn(async () => {
        await database.write(async (writer) => writer.drop(recordKey('draft', id)));
        seen.delete(id);
      }),
    saveLook: (kept, look, summary, draftId) =>
      database.write(async (writer) => {
        const found = await writer.read(recordKey('case', kept.id));
        // Looks and marks come from the store, where another tab may have added some; names from what was typed now.
        const before = found?.kind === 'case' ? found : undefined;
        const { bedId: _bed, plantingId: _planting, ...rest } = before ?? kept;
        const named = await withBed(
          { ...rest, ...namesOf(kept) } as CaseRecord,
          before,
          writer,
          look.changedAt,
        );
        const saved = await writer.put(addLookToCase(named, summary, look.changedAt));
        await writer.put(look);
        if (draftId) writer.drop(recordKey('draft', draftId));
        return saved;
      }),
    changeCase: (id, change) => changeRecord('case', id, change),
    async eraseCase(id, at) {
      const looks = await database.write(async (writer) => {
        const found = await writer.read(recordKey('case', id));
        const all = await writer.readAll(keysUnder(`look:${id}:`));
        if (found?.kind === 'case') await writer.put(bareRecord(found, at));
        for (const look of all) writer.drop(lookKey(id, look.id));
        return all;
      });
      await dropPictures(looks.flatMap(picturesOf));
    },
    async readLessons() {
      const found = await readOne(LESSONS_ID);
      return found?.kind === 'lessons' ? found : undefined;
    },
    saveLessons: (lessons) => database.write(async (writer) => void (await writer.put(lessons))),
    async eraseDemo() {
      const gone = await database.write(async (writer) => {
        const all = (await writer.readAll(keysUnder(''))).filter(({ demo }) => demo);
        for (const record of all) writer.drop(keyOf(record));
        return all;
      });
      await dropPictures(gone.flatMap(picturesOf));
    },
    savePicture: (id, picture) => guarded(() => set(id, picture, database.pictures)),
    readPicture: (id) => guarded(() => get<Blob>(id, database.pictures)),
    hasPicture: async (id) =>
      (await guarded(() => database.pictures('readonly', (store) => promisifyRequest(store.getKey(id))))) !==
      undefined,
    dropPictures,
    device: async () => (await database.meta()).device,
    async askToLast() {
      if ((await database.meta()).askedToLastAt) return undefined;
      await database.changeMeta((meta) => ({ ...meta, askedToLastAt: now() }));
      try {
        return await navigator.storage.persist();
      } catch {
        return undefined;
      }
    },
    watch: (changed) => database.watch(changed),
  };
}
