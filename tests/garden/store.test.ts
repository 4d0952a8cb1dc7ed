import 'fake-indexeddb/auto';
import { IDBFactory, IDBKeyRange, IDBObjectStore } from 'fake-indexeddb';
import { createStore, get, keys, set } from 'idb-keyval';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { BedRecord, PotTestRecord } from '../../src/garden/ground-records.ts';
import { type CaseRecord, type LookRecord, RECORDS_SCHEMA } from '../../src/garden/records.ts';
import { openGardenStore } from '../../src/garden/store/garden-store.ts';
import { StoreError } from '../../src/garden/store/store-trouble.ts';
import type { TrialRecord } from '../../src/garden/trial-record.ts';

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  globalThis.IDBKeyRange = IDBKeyRange;
});
afterEach(() => vi.restoreAllMocks());

const T = '2026-06-01T08:00:00.000Z';
const bed = (id: string, name: string): BedRecord => ({
  kind: 'bed',
  id,
  schema: RECORDS_SCHEMA,
  changedAt: T,
  name,
  note: '',
});
const kept = (id: string, more: Partial<CaseRecord> = {}): CaseRecord => ({
  kind: 'case',
  id,
  schema: RECORDS_SCHEMA,
  changedAt: T,
  bed: 'Long bed',
  plant: 'third kale',
  openedOn: '2026-06-01',
  looks: [],
  ...more,
});
const look = (id: string, caseId: string, photo?: string): LookRecord => ({
  kind: 'look',
  id,
  caseId,
  schema: RECORDS_SCHEMA,
  changedAt: T,
  date: '2026-06-01',
  photos: photo ? [{ id: photo, role: 'old', taps: {} }] : [],
  answers: { setting: {}, signs: {} },
  cannotSay: [],
  note: '',
});
const summary = (id: string, photo?: string) => ({
  id,
  date: '2026-06-01',
  verdict: 'watch',
  leading: [],
  photos: photo ? [photo] : [],
});
const draft = (id: string, note: string) =>
  ({
    kind: 'draft',
    id,
    schema: RECORDS_SCHEMA,
    changedAt: T,
    body: { note, photos: [], removed: [] },
  }) as const;
const codeOf = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'stored',
    (cause) => (cause instanceof StoreError ? cause.code : String(cause)),
  );

describe('upgrading what an earlier version stored', () => {
  const fill = async (records: Record<string, object>): Promise<void> => {
    const raw = createStore('bedside-records', 'records');
    for (const [key, record] of Object.entries(records)) await set(key, record, raw);
  };

  it.each([
    [1, {}],
    [
      2,
      {
        outcome: {
          settledOn: '2026-06-20',
          settledAt: T,
          causes: ['aphids'],
          sureness: 'sure',
          lost: 'none',
          done: '',
        },
      },
    ],
  ])(
    'brings version %i up: records say when they were made, beds named in words become records',
    async (schema, more) => {
      const stamp = { schema, changedAt: '2026-06-20T10:00:00.000Z' };
      await fill({
        'case:a': { ...kept('a', { bed: 'Long bed', openedOn: '2026-06-01' }), ...stamp, ...more },
        'case:b': { ...kept('b', { bed: ' long  BED ' }), ...stamp },
        'case:c': { ...kept('c', { bed: '' }), ...stamp },
        'case:d': { ...kept('d', { bed: 'Gone', deletedAt: T }), ...stamp },
        'look:a:l': { ...look('l', 'a'), ...stamp },
        'draft:d1': { ...draft('d1', 'typed'), ...stamp },
        ...(schema === 2 ? { lessons: { kind: 'lessons', id: 'lessons', ...stamp, forgetUntil: T } } : {}),
      });
      const store = openGardenStore();
      const cases = await store.listCases();
      const beds = await store.listRecords('bed');
      expect(beds.map(({ name }) => name)).toEqual(['Long bed']);
      expect(cases.map(({ id, bedId }) => [id, bedId])).toEqual([
        ['a', beds[0]!.id],
        ['b', beds[0]!.id],
        ['c', undefined],
        ['d', undefined],
      ]);
      expect(cases[0]).toMatchObject({
        schema: RECORDS_SCHEMA,
        createdAt: '2026-06-01T00:00:00.000Z',
        ...more,
      });
      expect(await store.listLooks('a')).toMatchObject([{ id: 'l', createdAt: stamp.changedAt }]);
      expect((await store.listDrafts())[0]?.body).toMatchObject({ note: 'typed' });
      expect((await store.readLessons())?.forgetUntil).toBe(schema === 2 ? T : undefined);
      // A second opening finds everything done.
      const again = openGardenStore();
      expect(await again.listRecords('bed')).toEqual(beds);
      expect(await again.device()).toBe(await store.device());
    },
  );

  it('brings version 3 up: everything stays as it was, and pot tests can be kept', async () => {
    const stamp = { schema: 3, changedAt: T, createdAt: T, createdBy: 'phone', revision: 2 };
    const batch = {
      kind: 'batch',
      id: 'm',
      name: 'Heap',
      source: '',
      note: '',
      readings: [{ id: 'r', date: '2026-05-01', celsius: 60 }],
      given: [],
      suspicion: { state: 'suspected', on: '2026-05-02', why: 'curled beans', caseId: 'a' },
    };
    await fill({
      'bed:b': { ...bed('b', 'Long'), ...stamp },
      'batch:m': { ...batch, ...stamp },
      'case:a': { ...kept('a', { bedId: 'b' }), ...stamp },
      'meta:store': { schema: 3, device: 'phone' },
    });
    const store = openGardenStore();
    const now = { ...stamp, schema: RECORDS_SCHEMA };
    expect(await store.listRecords('batch')).toEqual([{ ...batch, ...now }]);
    expect(await store.listRecords('bed')).toEqual([{ ...bed('b', 'Long'), ...now }]);
    expect(await store.listCases()).toMatchObject([{ id: 'a', bedId: 'b', schema: RECORDS_SCHEMA }]);
    expect(await store.device()).toBe('phone');
    const test: PotTestRecord = {
      kind: 'pot-test',
      id: 't',
      schema: RECORDS_SCHEMA,
      changedAt: T,
      batchId: 'm',
      question: 'residue',
      crop: 'pea',
      sownOn: '2026-06-01',
      pots: [{ id: 'p', label: 'A', role: 'test', seeds: 3 }],
      scores: [{ id: '2026-06-20 p', date: '2026-06-20', potId: 'p', emerged: 3, photos: ['ph'] }],
      note: '',
    };
    await store.savePicture('ph', new Blob(['x']));
    await store.saveRecords([test]);
    // A picture that a score names is spared.
    await store.dropPictures(['ph']);
    expect(await store.hasPicture('ph')).toBe(true);
    expect(await openGardenStore().listRecords('pot-test')).toMatchObject([{ id: 't', scores: test.scores }]);
  });

  it('brings version 4 up: pot tests stay as they were, and trials can be kept with their pictures', async () => {
    const stamp = { schema: 4, changedAt: T, createdAt: T, createdBy: 'phone', revision: 3 };
    const test = {
      kind: 'pot-test',
      id: 't',
      batchId: 'm',
      question: 'residue',
      crop: 'pea',
      sownOn: '2026-06-01',
      pots: [{ id: 'p', label: 'A', role: 'test', seeds: 3 }],
      scores: [{ id: '2026-06-20 p', date: '2026-06-20', potId: 'p', emerged: 3, photos: [] }],
      lookOn: '2026-06-27',
      note: '',
    };
    await fill({
      'pot-test:t': { ...test, ...stamp },
      'bed:b': { ...bed('b', 'Long'), ...stamp },
      'meta:store': { schema: 4, device: 'phone' },
    });
    const store = openGardenStore();
    const now = { ...stamp, schema: RECORDS_SCHEMA };
    expect(await store.listRecords('pot-test')).toEqual([{ ...test, ...now }]);
    expect(await store.listRecords('bed')).toEqual([{ ...bed('b', 'Long'), ...now }]);
    expect(await store.device()).toBe('phone');
    const trial: TrialRecord = {
      kind: 'trial',
      id: 'v',
      schema: RECORDS_SCHEMA,
      changedAt: T,
      name: 'Dug or not',
      ways: [{ id: 'A', name: 'dug' }],
      layouts: [],
      readings: [
        { id: '2026-06-20 u', date: '2026-06-20', unitId: 'u', value: 3, photoId: 'ph' },
        { id: '2026-06-20 w', date: '2026-06-20', unitId: 'w', value: 4 },
      ],
      losses: [],
      note: '',
    };
    await store.savePicture('ph', new Blob(['x']));
    await store.saveRecords([trial]);
    await store.dropPictures(['ph']);
    expect(await store.hasPicture('ph')).toBe(true);
    expect(await openGardenStore().listRecords('trial')).toMatchObject([
      { id: 'v', name: 'Dug or not', readings: trial.readings },
    ]);
  });

  it('brings version 5 up: looks and normal leaves stay as they were, and may hold what the network saw', async () => {
    const stamp = { schema: 5, changedAt: T, createdAt: T, createdBy: 'phone', revision: 3 };
    const leaf = {
      kind: 'normal-leaf',
      id: 'n',
      crop: 'kale',
      variety: 'x',
      date: '2026-06-01',
      photoId: 'ph',
    } as const;
    await fill({
      'look:a:l': { ...look('l', 'a', 'p'), ...stamp },
      'normal-leaf:n': { ...leaf, ...stamp },
      'meta:store': { schema: 5, device: 'phone' },
    });
    const store = openGardenStore();
    const now = { ...stamp, schema: RECORDS_SCHEMA };
    const [old] = await store.listLooks('a');
    expect(old).toEqual({ ...look('l', 'a', 'p'), ...now });
    const [normal] = await store.listRecords('normal-leaf');
    expect(normal).toEqual({ ...leaf, ...now });
    const network = {
      network: '0123456789abcdef',
      reports: [{ sign: 'white-powder@old', ratio: 3 }],
      logits: [1.234, -2],
      features: [0, 0.5],
      strangeness: 0.9,
    };
    await store.saveRecords([
      { ...normal!, network },
      { ...old!, photos: old!.photos.map((photo) => ({ ...photo, network })) },
    ]);
    const again = openGardenStore();
    expect((await again.listRecords('normal-leaf'))[0]?.network).toEqual(network);
    expect((await again.listLooks('a'))[0]?.photos.map((photo) => photo.network)).toEqual([network]);
  });

  it('upgrades whole or not at all', async () => {
    await fill({
      'case:a': { ...kept('a'), schema: 2 },
      'case:b': { ...kept('b', { bed: 'Other' }), schema: 2 },
    });
    let puts = 0;
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      puts += 1;
      if (puts === 3) throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, args);
    });
    const store = openGardenStore();
    expect(await codeOf(store.listCases())).toBe('full');
    const raw = createStore('bedside-records', 'records');
    expect(await get('case:a', raw)).toMatchObject({ schema: 2 });
    expect((await keys(raw)).length).toBe(2);
    vi.restoreAllMocks();
    // The same store tries again once there is room.
    expect((await store.listCases()).length).toBe(2);
  });

  it('leaves a store of a newer version alone', async () => {
    await fill({ 'meta:store': { schema: RECORDS_SCHEMA + 1, device: 'x' } });
    const store = openGardenStore();
    expect(await codeOf(store.listCases())).toBe('newer');
    expect(await codeOf(store.saveRecords([bed('b', 'Long')]))).toBe('newer');
  });
});

describe('a save', () => {
  it('stamps what was edited and counts revisions', async () => {
    const store = openGardenStore(() => '2026-06-02T00:00:00.000Z');
    const [made] = await store.saveRecords([bed('b', 'Long')]);
    expect(made).toMatchObject({
      revision: 1,
      createdAt: '2026-06-02T00:00:00.000Z',
      createdBy: await store.device(),
    });
    const [renamed] = await store.saveRecords([{ ...made!, name: 'Longer' }]);
    expect(Object.keys(renamed!.edited!)).toEqual(['name']);
    expect(renamed!.revision).toBe(2);
  });

  it('of a second tab does not overwrite the first unseen; it learns what is there, and nothing of it is written', async () => {
    const [one, two] = [openGardenStore(), openGardenStore()];
    await one.saveRecords([bed('b', 'Long')]);
    const [[mine], [yours]] = await Promise.all([one.listRecords('bed'), two.listRecords('bed')]);
    await one.saveRecords([{ ...mine!, name: 'First' }]);
    const late = two.saveRecords([bed('c', 'New'), { ...yours!, name: 'Second' }]);
    await expect(late).rejects.toMatchObject({ code: 'conflict', theirs: { name: 'First' } });
    expect((await two.listRecords('bed')).map(({ name }) => name)).toEqual(['First']);
    // With what is there in hand, it may.
    const [now] = await two.listRecords('bed');
    expect(await codeOf(two.saveRecords([{ ...now!, name: 'Second' }]))).toBe('stored');
  });

  it('tells other tabs which records it wrote', async () => {
    const [one, two] = [openGardenStore(), openGardenStore()];
    const heard = new Promise<readonly string[]>((resolve) => {
      two.watch(resolve);
    });
    await one.saveRecords([bed('b', 'Long')]);
    expect(await heard).toEqual(['bed:b']);
  });

  it('is absent when anything in it fails', async () => {
    const store = openGardenStore();
    await store.listCases();
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      if ((args[0] as { id: string }).id === 'l') throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, args);
    });
    expect(await codeOf(store.saveLook(kept('a'), look('l', 'a'), summary('l')))).toBe('full');
    vi.restoreAllMocks();
    expect(await store.listCases()).toEqual([]);
    expect(await store.listRecords('bed')).toEqual([]);
  });

  it('says so where the browser refuses storage', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('private', 'SecurityError');
    });
    expect(await codeOf(openGardenStore().listCases())).toBe('refused');
  });
});

describe('a draft in two tabs', () => {
  it('goes on in one tab without end, and is refused in the other that has not seen it', async () => {
    const [one, two] = [openGardenStore(), openGardenStore()];
    await Promise.all(['a', 'ab', 'abc'].map((note) => one.saveDraft(draft('d', note))));
    await two.readDraft('d');
    await one.saveDraft(draft('d', 'abcd'));
    await two.listDrafts();
    await expect(two.saveDraft(draft('d', 'abcX'))).rejects.toMatchObject({
      code: 'conflict',
      theirs: { body: { note: 'abcd' } },
    });
    await one.dropDraft('d');
    expect(await codeOf(one.saveDraft(draft('d', 'new')))).toBe('stored');
  });
});

describe('looks, beds and pictures', () => {
  it('gives the looks of one day in the order in which they were kept, whatever their ids', async () => {
    // A clock of its own: two saves may fall into one millisecond of the machine's.
    let minute = 10;
    const store = openGardenStore(() => `2026-06-18T08:${minute++}:00.000Z`);
    await store.saveLook(kept('a'), look('z', 'a'), summary('z'));
    await store.saveLook(kept('a'), look('a', 'a'), summary('a'));
    expect((await store.listLooks('a')).map(({ id }) => id)).toEqual(['z', 'a']);
  });

  it('keeps a look with its case, its bed and without its draft', async () => {
    const store = openGardenStore();
    await store.saveDraft(draft('d', ''));
    const saved = await store.saveLook(kept('a'), look('l', 'a'), summary('l'), 'd');
    const beds = await store.listRecords('bed');
    expect(beds.map(({ id, name }) => [id, name])).toEqual([[saved.bedId, 'Long bed']]);
    expect(await store.listDrafts()).toEqual([]);
    const second = await store.saveLook(kept('b', { bed: 'long bed' }), look('m', 'b'), summary('m'));
    expect(second.bedId).toBe(saved.bedId);
    // A bed that was renamed keeps its cases; a case told another bed moves.
    await store.changeRecord('bed', saved.bedId!, (found) => ({ ...found, name: 'Wall bed' }));
    expect((await store.saveLook({ ...saved }, look('n', 'a'), summary('n'))).bedId).toBe(saved.bedId);
    const moved = await store.saveLook({ ...second, bed: 'Pot' }, look('o', 'b'), summary('o'));
    expect((await store.listRecords('bed')).find(({ id }) => id === moved.bedId)?.name).toBe('Pot');
    expect(moved.looks.length).toBe(2);
  });

  it('keeps pictures that are still named, and drops small copies with the others', async () => {
    const store = openGardenStore();
    for (const id of ['p', 'p:small', 'q', 'q:small']) await store.savePicture(id, new Blob([id]));
    await store.saveLook(kept('a'), look('l', 'a', 'p'), summary('l', 'p'));
    await store.dropPictures(['p', 'q']);
    expect(await Promise.all(['p', 'p:small', 'q', 'q:small'].map((id) => store.hasPicture(id)))).toEqual([
      true,
      true,
      false,
      false,
    ]);
    await store.eraseCase('a', T);
    expect(await store.hasPicture('p:small')).toBe(false);
    expect(await store.readCase('a')).toMatchObject({ looks: [], deletedAt: T, plant: '' });
  });

  it('leaves no trace of a demo', async () => {
    const store = openGardenStore();
    await store.saveRecords([bed('mine', 'Mine'), { ...bed('demo', 'Demo'), demo: true as const }]);
    const shown: CaseRecord = { ...kept('a', { bed: 'Demo', demo: true }) };
    await store.savePicture('p', new Blob(['p']));
    await store.saveLook(shown, { ...look('l', 'a', 'p'), demo: true }, summary('l', 'p'));
    await store.eraseDemo();
    const left: string[] = [];
    for await (const { id } of store.eachRecord()) left.push(id);
    expect(left).toEqual(['mine']);
    expect(await store.hasPicture('p')).toBe(false);
  });

  it('asks only once to be kept for good', async () => {
    const persist = vi.fn(async () => true);
    vi.stubGlobal('navigator', { storage: { persist } });
    const store = openGardenStore();
    expect(await store.askToLast()).toBe(true);
    expect(await openGardenStore().askToLast()).toBeUndefined();
    expect(persist).toHaveBeenCalledTimes(1);
    vi.unstubAllGlobals();
  });
});
