import { BlobReader, configure, type FileEntry, ZipReader } from '@zip.js/zip.js/lib/zip-core-external.js';
import { type GardenRecord, RECORDS_SCHEMA } from '../records.ts';
import { repairRecord } from '../repair-record.ts';
import { isWholeOwnHead } from '../whole-own-head.ts';
import {
  BACKUP_VERSION,
  BackupError,
  LIMITS,
  MANIFEST,
  type Manifest,
  pictureOfEntry,
  RECORDS,
  readManifest,
} from './backup-format.ts';

configure({ useWebWorkers: false, useCompressionStream: true });

export interface BackupPicture {
  readonly id: string;
  read(): Promise<Blob>;
}

/** A backup file that was opened and looked over; its content is checked while it is read. */
export interface Backup {
  readonly manifest: Manifest;
  readonly pictures: readonly BackupPicture[];
  /** The records one by one. @throws BackupError `broken`, `newer`, `too-large` */
  records(): AsyncIterable<GardenRecord>;
  close(): Promise<void>;
}

/** Did the library refuse the archive for how it is built: two stories of one entry, entries in one another, names that lead out? */
const isUnsafe = (cause: unknown): boolean =>
  cause instanceof Error && /ambiguous|overlapping|encrypt|unsafe|filename/i.test(cause.message);

/** What a ZIP archive with anything in it begins with ("PK", 3, 4). */
const ARCHIVE_BEGINS = [0x50, 0x4b, 0x03, 0x04];

async function beginsAsArchive(file: Blob): Promise<boolean> {
  const start = new Uint8Array(await file.slice(0, ARCHIVE_BEGINS.length).arrayBuffer());
  return ARCHIVE_BEGINS.every((octet, at) => start[at] === octet);
}

/** Runs work on the archive; whatever the library throws crosses as a `BackupError`. */
async function checked<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (cause) {
    if (cause instanceof BackupError) throw cause;
    throw new BackupError(isUnsafe(cause) ? 'unsafe' : 'broken', { cause });
  }
}

/**
 * Opens a backup file and checks how it is built, before anything of it is unpacked: only the entries that a backup has, each
 * once, none larger than a garden can need, headers that agree with the directory.
 */
export async function openBackup(file: Blob): Promise<Backup> {
  const zip = new ZipReader(new BlobReader(file), {
    strictness: 'strict',
    checkSignature: true,
    checkOverlappingEntry: true,
  });
  const entries = await zip.getEntries().catch(async (cause: unknown) => {
    if (isUnsafe(cause)) throw new BackupError('unsafe', { cause });
    // The list of what is in it stands at the end, so a file that was cut off has none: that must not sound like another kind of file.
    throw new BackupError((await beginsAsArchive(file)) ? 'broken' : 'not-a-backup', { cause });
  });
  if (entries.length > LIMITS.entries) throw new BackupError('too-large');
  const files = new Map<string, FileEntry>();
  const pictures: BackupPicture[] = [];
  const strange = entries.some(
    ({ filename }) => filename !== MANIFEST && filename !== RECORDS && !pictureOfEntry(filename),
  );
  const isOurs = entries.some(({ filename }) => filename === MANIFEST);
  if (!isOurs) throw new BackupError('not-a-backup');
  if (strange) throw new BackupError('unsafe');
  for (const entry of entries) {
    if (entry.directory || entry.encrypted || files.has(entry.filename)) throw new BackupError('unsafe');
    files.set(entry.filename, entry);
    const picture = pictureOfEntry(entry.filename);
    const most = picture
      ? LIMITS.pictureBytes
      : entry.filename === RECORDS
        ? LIMITS.recordsBytes
        : LIMITS.manifestBytes;
    if (entry.uncompressedSize > most) throw new BackupError('too-large');
    if (picture) pictures.push({ id: picture.id, read: () => unpack(entry, picture.type) });
  }
  if (new Set(pictures.map(({ id }) => id)).size < pictures.length) throw new BackupError('unsafe');
  const manifest = readManifest(parse(await (await unpack(files.get(MANIFEST)!, '')).text()));
  if (manifest.version > BACKUP_VERSION || manifest.schema > RECORDS_SCHEMA) throw new BackupError('newer');
  const records = files.get(RECORDS);
  if (!records) throw new BackupError('broken');
  return {
    manifest,
    pictures,
    records: () => recordsIn(records),
    close: () => zip.close(),
  };
}

/** What an entry holds, as a stream that breaks off where it becomes longer than it said, and fails on a wrong check sum. */
function streamOf(entry: FileEntry): ReadableStream<Uint8Array> {
  let octets = 0;
  const counted = new TransformStream<Uint8Array, Uint8Array>({
    transform(chunk, controller) {
      octets += chunk.byteLength;
      if (octets > entry.uncompressedSize) controller.error(new BackupError('unsafe'));
      else controller.enqueue(chunk);
    },
  });
  entry.getData(counted.writable).catch((cause: unknown) => {
    // The reader hears of it through the stream; where that has ended already, there is nobody left to tell.
    counted.writable.abort(cause).catch(() => {});
  });
  return counted.readable;
}

async function unpack(entry: FileEntry, type: string): Promise<Blob> {
  return checked(async () => {
    const parts: Uint8Array<ArrayBuffer>[] = [];
    for await (const chunk of streamOf(entry)) parts.push(chunk.slice());
    const blob = new Blob(parts, { type });
    if (blob.size !== entry.uncompressedSize) throw new BackupError('broken');
    return blob;
  });
}

/** JSON that cannot reach into objects' prototypes and is not nested beyond reason. */
function parse(line: string): unknown {
  try {
    return JSON.parse(line, (key: string, value: unknown) => {
      if (key === '__proto__') throw new BackupError('unsafe');
      return value;
    });
  } catch (cause) {
    throw cause instanceof BackupError ? cause : new BackupError('broken', { cause });
  }
}

async function* recordsIn(entry: FileEntry): AsyncGenerator<GardenRecord> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let rest = '';
  try {
    for await (const chunk of streamOf(entry)) {
      rest += decoder.decode(chunk, { stream: true });
      const lines = rest.split('\n');
      rest = lines.pop()!;
      if (rest.length > LIMITS.recordBytes) throw new BackupError('too-large');
      for (const line of lines) if (line !== '') yield recordIn(line);
    }
    rest += decoder.decode();
  } catch (cause) {
    throw cause instanceof BackupError ? cause : new BackupError('broken', { cause });
  }
  if (rest !== '') yield recordIn(rest);
}

function recordIn(line: string): GardenRecord {
  const found = parse(line);
  const schema = (found as { schema?: unknown } | null)?.schema;
  if (typeof schema === 'number' && schema > RECORDS_SCHEMA) throw new BackupError('newer');
  const record = repairRecord(found);
  if (!record || (record.kind === 'own-head' && !isWholeOwnHead(record))) throw new BackupError('broken');
  const { revision: _revision, demo: _demo, ...kept } = record;
  return kept as GardenRecord;
}
