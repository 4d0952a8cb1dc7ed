import 'fake-indexeddb/auto';
import {
  BlobReader,
  configure,
  TextReader,
  Uint8ArrayWriter,
  ZipReader,
  ZipWriter,
} from '@zip.js/zip.js/lib/zip-core-external.js';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import fc from 'fast-check';
import sharp from 'sharp';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  BACKUP_VERSION,
  BackupError,
  pictureEntry,
  pictureOfEntry,
} from '../../src/garden/backup/backup-format.ts';
import { mergeBackup } from '../../src/garden/backup/merge-backup.ts';
import { openBackup } from '../../src/garden/backup/read-backup.ts';
import { writeBackup } from '../../src/garden/backup/write-backup.ts';
import { canonical } from '../../src/garden/canonical.ts';
import { type LookRecord, RECORDS_SCHEMA } from '../../src/garden/records.ts';
import { type GardenStore, openGardenStore } from '../../src/garden/store/garden-store.ts';
import { StoreError } from '../../src/garden/store/store-trouble.ts';
import { record } from './small-garden.ts';

configure({ useWebWorkers: false });
afterEach(() => vi.restoreAllMocks());

const NOW = '2026-06-01T08:00:00.000Z';
const minute = (at: number): string => new Date(Date.UTC(2026, 5, 1, 8, at)).toISOString();

/** A device of its own: a store in a browser that knows nothing of the others. */
async function newDevice(clock: () => string = () => NOW): Promise<GardenStore> {
  globalThis.indexedDB = new IDBFactory();
  const store = openGardenStore(clock);
  await store.device();
  await store.hasPicture('none');
  return store;
}

async function backupOf(store: GardenStore): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const sink = new WritableStream<Uint8Array>({ write: (chunk) => void parts.push(chunk.slice()) });
  await writeBackup(store, sink, NOW);
  return new Blob(parts);
}

/** Everything a store holds, as one text; revisions are the device's own. */
async function stateOf(store: GardenStore, ...pictures: string[]): Promise<string> {
  const all: string[] = [];
  for await (const { revision: _revision, ...kept } of store.eachRecord()) all.push(canonical(kept));
  const there = await Promise.all(pictures.map(async (id) => `${id} ${await store.hasPicture(id)}`));
  return [...all.sort(), ...there].join('\n');
}

const SCRIPT = '<img src=x onerror=alert(1)><script>alert(2)</script>';
const look = (id: string, caseId: string, photo: string): LookRecord =>
  record('look', id, {
    caseId,
    date: '2026-06-01',
    photos: [{ id: photo, role: 'old', taps: {} }],
    note: SCRIPT,
  });
const summary = (id: string, photo: string) => ({
  id,
  date: '2026-06-01',
  verdict: 'watch',
  leading: [],
  photos: [photo],
});
const aCase = (id: string) =>
  record('case', id, { bed: 'Long bed', plant: `plant ${id}`, openedOn: '2026-06-01' });

/** A photo of something coarse, `side` px square, without notes. */
async function photo(side: number, kind: 'jpeg' | 'webp'): Promise<Blob> {
  const raw = { width: side, height: side, channels: 3 } as const;
  const pixels = new Uint8Array(side * side * 3).map((_, i) => (i * 7919) % 251);
  const file = await sharp(pixels, { raw }).toFormat(kind, { quality: 100 }).toBuffer();
  return new Blob([new Uint8Array(file)], { type: `image/${kind}` });
}

async function filled(): Promise<GardenStore> {
  const store = await newDevice();
  await store.savePicture('p1', await photo(40, 'jpeg'));
  await store.savePicture('p1:small', await photo(20, 'webp'));
  await store.savePicture('unnamed', new Blob(['nobody names me']));
  await store.saveLook(aCase('a'), look('l', 'a', 'p1'), summary('l', 'p1'));
  await store.saveRecords([
    record('batch', 'm', {
      name: 'Stable – Größe',
      readings: [{ id: 'r', date: '2026-05-01', celsius: 60 }],
    }),
    { ...record('bed', 'demo', { name: 'Demo' }), demo: true as const },
  ]);
  await store.saveDraft(record('draft', 'd', { body: { note: 'half typed', photos: [] } }));
  return store;
}

const refusedWith = async (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'taken',
    (cause) => (cause instanceof BackupError || cause instanceof StoreError ? cause.code : `threw ${cause}`),
  );

describe('a backup', () => {
  it('carries everything but the demo to another device, pictures byte for byte, markup as the text it is', async () => {
    const one = await filled();
    const file = await backupOf(one);
    const two = await newDevice();
    const report = await mergeBackup(two, file);
    expect(report).toMatchObject({ added: 5, changed: 0, same: 0, pictures: 2, conflicts: [] });
    await one.eraseDemo();
    expect(await stateOf(two)).toBe(await stateOf(one));
    const [kept] = await two.listLooks('a');
    expect(kept?.note).toBe(SCRIPT);
    const [mine, theirs] = await Promise.all([one.readPicture('p1'), two.readPicture('p1')]);
    expect(theirs?.type).toBe('image/jpeg');
    expect(new Uint8Array(await theirs!.arrayBuffer())).toEqual(new Uint8Array(await mine!.arrayBuffer()));
    expect((await two.readPicture('p1:small'))?.type).toBe('image/webp');
    expect(await two.hasPicture('unnamed')).toBe(false);
    expect(await mergeBackup(two, file)).toMatchObject({ added: 0, changed: 0, same: 5, pictures: 0 });
  });

  it('says in itself what it is', async () => {
    const backup = await openBackup(await backupOf(await filled()));
    expect(backup.manifest).toEqual({
      format: 'bedside-garden',
      version: BACKUP_VERSION,
      schema: RECORDS_SCHEMA,
      madeAt: NOW,
      records: 5,
      pictures: 2,
    });
    await backup.close();
  });

  it('leaves out, and counts, what it cannot free of its place', async () => {
    const store = await filled();
    await store.savePicture('p1', new Blob(['taken at 51.5 N, 7.25 E'], { type: 'image/x-unheard-of' }));
    const parts: Uint8Array<ArrayBuffer>[] = [];
    const sink = new WritableStream<Uint8Array>({ write: (chunk) => void parts.push(chunk.slice()) });
    expect(await writeBackup(store, sink, NOW)).toMatchObject({ leftOut: 1, manifest: { pictures: 1 } });
    const two = await newDevice();
    expect(await mergeBackup(two, new Blob(parts))).toMatchObject({ added: 5, pictures: 1 });
    expect(await two.hasPicture('p1')).toBe(false);
  });

  it('is written as it is taken: one picture at a time', async () => {
    const store = await newDevice();
    for (const id of ['p', 'q', 'r']) {
      await store.savePicture(id, await photo(400, 'jpeg'));
      await store.saveLook(aCase(id), look(`l${id}`, id, id), summary(`l${id}`, id));
    }
    const reading = vi.spyOn(store, 'readPicture');
    const most: number[] = [];
    const sink = new WritableStream<Uint8Array>({
      write: () => void most.push(reading.mock.calls.length),
    });
    await writeBackup(store, sink, NOW);
    // Bytes of the first picture are on their way before the second one is read, and so on.
    expect(new Set(most).size).toBeGreaterThanOrEqual(4);
  });
});

describe('two devices brought together', () => {
  it('keep both sides’ work and list real conflicts, in whatever order', async () => {
    const clock = { at: 0 };
    const tick = (): string => minute(clock.at++);
    const phone = await newDevice(tick);
    await phone.saveRecords([record('bed', 'b', { name: 'Long bed' })]);
    const desk = await newDevice(tick);
    await mergeBackup(desk, await backupOf(phone));
    await phone.changeRecord('bed', 'b', (bed) => ({ ...bed, name: 'Long one', soil: 'clay' }));
    await desk.changeRecord('bed', 'b', (bed) => ({ ...bed, name: 'By the wall', note: 'stony' }));
    await desk.saveLook(aCase('a'), look('l', 'a', 'p'), summary('l', 'p'));
    const [fromPhone, fromDesk] = [await backupOf(phone), await backupOf(desk)];
    const report = await mergeBackup(phone, fromDesk);
    expect(report.conflicts).toMatchObject([
      {
        record: { kind: 'bed', id: 'b' },
        path: 'name',
        shown: 'By the wall',
        others: [{ value: 'Long one' }],
      },
    ]);
    await mergeBackup(desk, fromPhone);
    expect(await stateOf(phone)).toBe(await stateOf(desk));
    expect((await phone.listRecords('bed')).find(({ id }) => id === 'b')).toMatchObject({
      soil: 'clay',
      note: 'stony',
    });
  });

  it('come to the same garden in any order and any number of times', async () => {
    const kinds = ['name', 'note', 'soil'] as const;
    const edits = fc.array(
      fc.record({
        device: fc.nat(2),
        bed: fc.constantFrom('x', 'y'),
        field: fc.constantFrom(...kinds),
        value: fc.constantFrom('1', '2', '3'),
      }),
      { maxLength: 8 },
    );
    await fc.assert(
      fc.asyncProperty(
        edits,
        fc.shuffledSubarray([0, 1, 2, 0, 1], { minLength: 5 }),
        async (steps, order) => {
          let at = 0;
          const devices = [
            await newDevice(() => minute(at++)),
            await newDevice(() => minute(at++)),
            await newDevice(() => minute(at++)),
          ];
          for (const { device, bed, field, value } of steps) {
            const store = devices[device]!;
            const found = (await store.listRecords('bed')).find(({ id }) => id === bed);
            await store.saveRecords([{ ...(found ?? record('bed', bed, { name: '' })), [field]: value }]);
          }
          const files = await Promise.all(devices.map(backupOf));
          const straight = await newDevice();
          for (const file of files) await mergeBackup(straight, file);
          const mixed = await newDevice();
          for (const index of order) await mergeBackup(mixed, files[index]!);
          for (const file of files) await mergeBackup(mixed, file);
          expect(await stateOf(mixed)).toBe(await stateOf(straight));
          const through = await newDevice();
          await mergeBackup(through, await backupOf(straight));
          expect(await stateOf(through)).toBe(await stateOf(straight));
        },
      ),
      { seed: 1207, numRuns: 12 },
    );
  });

  it('takes a deletion for good along, looks and pictures included, and does not bring the case back', async () => {
    const one = await filled();
    const before = await backupOf(one);
    const two = await newDevice(() => minute(30));
    await mergeBackup(two, before);
    await two.eraseCase('a', minute(30));
    await mergeBackup(one, await backupOf(two));
    expect(await one.readCase('a')).toMatchObject({ looks: [], plant: '' });
    expect(await one.listLooks('a')).toEqual([]);
    expect(await one.hasPicture('p1')).toBe(false);
    await mergeBackup(two, before);
    expect(await two.listLooks('a')).toEqual([]);
  });
});

/** A ZIP archive of any entries. */
async function zipOf(entries: readonly (readonly [string, string])[]): Promise<Uint8Array<ArrayBuffer>> {
  const zip = new ZipWriter(new Uint8ArrayWriter());
  for (const [name, content] of entries) await zip.add(name, new TextReader(content));
  return (await zip.close()) as Uint8Array<ArrayBuffer>;
}
const manifest = (more: object = {}): [string, string] => [
  'manifest.json',
  JSON.stringify({ format: 'bedside-garden', version: BACKUP_VERSION, schema: RECORDS_SCHEMA, ...more }),
];
const records = (...all: unknown[]): [string, string] => [
  'records.jsonl',
  all.map((one) => JSON.stringify(one)).join('\n'),
];
const bed = record('bed', 'new', { name: 'New' });

describe('a file that is no good', () => {
  const cases: readonly (readonly [string, string, () => Promise<Uint8Array<ArrayBuffer>>])[] = [
    ['no archive', 'not-a-backup', async () => new TextEncoder().encode('hello') as Uint8Array<ArrayBuffer>],
    ['an empty file', 'not-a-backup', async () => new Uint8Array()],
    ['another archive', 'not-a-backup', () => zipOf([['readme.txt', 'hi']])],
    [
      'another program’s manifest',
      'not-a-backup',
      () => zipOf([['manifest.json', '{"format":"other"}'], records(bed)]),
    ],
    ['a newer layout', 'newer', () => zipOf([manifest({ version: BACKUP_VERSION + 1 }), records(bed)])],
    ['newer records', 'newer', () => zipOf([manifest({ schema: RECORDS_SCHEMA + 1 }), records(bed)])],
    [
      'one newer record',
      'newer',
      () => zipOf([manifest(), records(bed, { ...bed, id: 'z', schema: RECORDS_SCHEMA + 1 })]),
    ],
    ['no records', 'broken', () => zipOf([manifest()])],
    [
      'a line that is no JSON',
      'broken',
      () => zipOf([manifest(), ['records.jsonl', `${JSON.stringify(bed)}\n{"kind":`]]),
    ],
    [
      'a line that is no record',
      'broken',
      () => zipOf([manifest(), records(bed, { kind: 'plan', id: 'x' })]),
    ],
    [
      'a reach for prototypes',
      'unsafe',
      () => zipOf([manifest(), ['records.jsonl', '{"kind":"bed","id":"x","__proto__":{"a":1}}']]),
    ],
    ['one record twice', 'unsafe', () => zipOf([manifest(), records(bed, { ...bed, name: 'Other' })])],
    ...[
      '../evil',
      'pictures/../../evil.jpg',
      '/etc/passwd',
      'pictures/a/b.jpg',
      'C:\\evil.jpg',
      'pictures/..%2Fx',
      'run.exe',
    ].map(
      (name) =>
        [`an entry named ${name}`, 'unsafe', () => zipOf([manifest(), records(bed), [name, 'x']])] as const,
    ),
    [
      'an entry that claims to be huge',
      'too-large',
      async () =>
        patchedSizes(
          await zipOf([manifest(), records(bed), ['pictures/p.jpg', 'x'.repeat(1000)]]),
          'pictures/p.jpg',
          2 ** 30,
        ),
    ],
    [
      'a bomb that claims to be small',
      'unsafe or broken',
      async () =>
        patchedSizes(
          await zipOf([manifest(), records(bed), ['pictures/p.jpg', 'x'.repeat(5_000_000)]]),
          'pictures/p.jpg',
          100,
        ),
    ],
  ];
  it.each(cases)('is refused and changes nothing: %s', async (_name, code, make) => {
    const store = await filled();
    const before = await stateOf(store, 'p1', 'p', 'evil');
    const got = await refusedWith(mergeBackup(store, new Blob([await make()])));
    expect(code).toContain(got);
    expect(await stateOf(store, 'p1', 'p', 'evil')).toBe(before);
  });

  /** Damage as cards, cables and people do it, one after the other; places as shares of what is left of the file. */
  const place = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
  const byteChanged = fc.record({
    how: fc.constant('change' as const),
    at: place,
    by: fc.integer({ min: 1, max: 255 }),
  });
  const damage = fc.oneof(
    byteChanged,
    fc.record({ how: fc.constant('cut' as const), at: place, by: fc.constant(0) }),
    fc.record({
      how: fc.constantFrom('drop' as const, 'double' as const, 'blank' as const),
      at: place,
      by: fc.integer({ min: 1, max: 64 }),
    }),
  );
  /** One byte alone can be harmless; several hardly ever are. */
  const damages = fc.oneof(
    fc.array(byteChanged, { minLength: 1, maxLength: 1 }),
    fc.array(damage, { minLength: 2, maxLength: 6 }),
  );
  type Damage = typeof damage extends fc.Arbitrary<infer D> ? D : never;
  const spoil = (file: Uint8Array<ArrayBuffer>, { how, at, by }: Damage): Uint8Array<ArrayBuffer> => {
    const from = Math.floor(at * file.length);
    const joined = (...parts: Uint8Array[]): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.concat(parts));
    switch (how) {
      case 'change':
        return file.map((byte, index) => (index === from ? byte ^ by : byte));
      case 'cut':
        return file.slice(0, from);
      case 'drop':
        return joined(file.subarray(0, from), file.subarray(from + by));
      case 'double':
        return joined(file.subarray(0, from + by), file.subarray(from));
      case 'blank':
        return file.map((byte, index) => (index >= from && index < from + by ? 0 : byte));
    }
  };

  it('is refused however it was damaged, in one place or in several, or brings exactly what it held', async () => {
    const source = await filled();
    await source.eraseDemo();
    const file = new Uint8Array(await (await backupOf(source)).arrayBuffer());
    const whole = await stateOf(source);
    const ends = new Map<string, number>();
    await fc.assert(
      fc.asyncProperty(damages, async (done) => {
        const bad = done.reduce(spoil, file);
        const store = await newDevice();
        const got = await refusedWith(mergeBackup(store, new Blob([bad])));
        // A changed byte in a date or a comment of the archive does no harm: then everything is there.
        expect(await stateOf(store)).toBe(got === 'taken' ? whole : '');
        expect(got).not.toContain('threw');
        ends.set(got, (ends.get(got) ?? 0) + 1);
      }),
      { seed: 42, numRuns: 800 },
    );
    // Most are refused, and more than one reason is found; some are harmless.
    const { taken = 0, ...refused } = Object.fromEntries(ends);
    expect(taken).toBeGreaterThan(0);
    expect(Object.values(refused).reduce((sum, count) => sum + count, 0)).toBeGreaterThan(600);
    expect(Object.keys(refused).length).toBeGreaterThan(1);
  });

  it('is refused as damaged wherever it was cut off', async () => {
    const file = new Uint8Array(await (await backupOf(await filled())).arrayBuffer());
    await fc.assert(
      fc.asyncProperty(fc.nat(file.length - 1), async (at) => {
        const store = await newDevice();
        // Of so few bytes nobody can tell what they were.
        expect(await refusedWith(mergeBackup(store, new Blob([file.slice(0, at)])))).toBe(
          at < 4 ? 'not-a-backup' : 'broken',
        );
        expect(await stateOf(store)).toBe('');
      }),
      { seed: 43, numRuns: 100, examples: [[3], [4], [file.length - 200], [file.length - 1]] },
    );
  });
});

describe('a merge that the store cannot take', () => {
  it('leaves everything as it was, pictures too', async () => {
    const file = await backupOf(await filled());
    const store = await newDevice();
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      if ((args[0] as { kind?: string }).kind === 'look')
        throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, args);
    });
    expect(await refusedWith(mergeBackup(store, file))).toBe('full');
    vi.restoreAllMocks();
    expect(await stateOf(store, 'p1', 'p1:small')).toBe('p1 false\np1:small false');
    expect(await refusedWith(mergeBackup(store, file))).toBe('taken');
  });
});

describe('names of pictures', () => {
  it('hold any id and lead back to it, and no name leads out of the folder', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }), (id) => {
        const name = pictureEntry(id, 'image/jpeg');
        expect(name).toMatch(/^pictures\/[A-Za-z0-9_%-]+\.jpg$/);
        expect(pictureOfEntry(name)).toEqual({ id, type: 'image/jpeg' });
      }),
      { seed: 3 },
    );
  });
});

it('is an ordinary archive for others: entries named as documented', async () => {
  const zip = new ZipReader(new BlobReader(await backupOf(await filled())));
  const names = (await zip.getEntries()).map(({ filename }) => filename);
  expect(names).toEqual(['records.jsonl', 'pictures/p1.jpg', 'pictures/p1%3Asmall.webp', 'manifest.json']);
});

/** The archive with another uncompressed size told for one entry, in both of its headers. */
function patchedSizes(file: Uint8Array<ArrayBuffer>, name: string, size: number): Uint8Array<ArrayBuffer> {
  const patched = file.slice();
  const view = new DataView(patched.buffer);
  const wanted = new TextEncoder().encode(name);
  for (let at = 0; at + 46 < patched.length; at++) {
    const local = view.getUint32(at, true) === 0x04034b50;
    const central = view.getUint32(at, true) === 0x02014b50;
    const from = at + (local ? 30 : 46);
    if (!(local || central) || !wanted.every((byte, index) => patched[from + index] === byte)) continue;
    view.setUint32(at + (local ? 22 : 24), size, true);
  }
  return patched;
}
