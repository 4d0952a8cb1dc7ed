/**
 * The backup file: a ZIP archive with three kinds of entries. `docs/backup-format.md` describes it for others.
 */
import { isObject, number, text } from '../loose.ts';
import { picturesOf } from '../pictures-of.ts';
import type { GardenRecord } from '../records.ts';

export const BACKUP_FORMAT = 'bedside-garden';
/** Raised when the layout of the archive changes. The shape of the records has a number of its own (`RECORDS_SCHEMA`). */
export const BACKUP_VERSION = 1;

export const MANIFEST = 'manifest.json';
export const RECORDS = 'records.jsonl';

export interface Manifest {
  readonly format: typeof BACKUP_FORMAT;
  readonly version: number;
  /** Shape of the records. */
  readonly schema: number;
  /** ISO 8601, UTC. */
  readonly madeAt: string;
  readonly records: number;
  readonly pictures: number;
}

/**
 * Why a file was not taken; nothing has been changed then. `not-a-backup`: something else; `newer`: a newer version wrote it;
 * `broken`: damaged or cut off; `unsafe`: built in a way that no backup is; `too-large`: more than a garden can hold.
 */
export type BackupTrouble = 'not-a-backup' | 'newer' | 'broken' | 'unsafe' | 'too-large';

export class BackupError extends Error {
  override readonly name = 'BackupError';
  constructor(
    readonly code: BackupTrouble,
    options?: { readonly cause?: unknown },
  ) {
    super(`backup: ${code}`, options);
  }
}

/** What a garden may hold at most, bytes and counts: beyond it the file was made to do harm (our own judgement). */
export const LIMITS = {
  entries: 200_000,
  recordBytes: 32 * 2 ** 20,
  recordsBytes: 2 ** 30,
  pictureBytes: 64 * 2 ** 20,
  manifestBytes: 64 * 2 ** 10,
} as const;

const EXTENSIONS: Readonly<Record<string, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/avif': 'avif',
  'image/gif': 'gif',
  'image/heic': 'heic',
  'image/heif': 'heif',
};

/** The entry of a picture: its id with what no file name may hold escaped, and an ending by its kind. */
export const pictureEntry = (id: string, type: string): string =>
  `pictures/${encodeURIComponent(id).replace(/[.!~*'()]/g, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`)}.${EXTENSIONS[type] ?? 'bin'}`;

/** Id and kind of a picture's entry; `undefined` for any other name, whatever path it tries. */
export function pictureOfEntry(name: string): { readonly id: string; readonly type: string } | undefined {
  const found = /^pictures\/((?:[A-Za-z0-9_-]|%[0-9A-F]{2}){1,300})\.([a-z0-9]{1,5})$/.exec(name);
  if (!found) return undefined;
  try {
    const id = decodeURIComponent(found[1]!);
    const type = Object.entries(EXTENSIONS).find(([, ending]) => ending === found[2])?.[0] ?? '';
    return { id, type };
  } catch {
    return undefined;
  }
}

export function readManifest(found: unknown): Manifest {
  if (!isObject(found) || found.format !== BACKUP_FORMAT) throw new BackupError('not-a-backup');
  const [version, schema] = [number(found.version, 1, 1e6), number(found.schema, 1, 1e6)];
  if (version === undefined || schema === undefined) throw new BackupError('broken');
  return {
    format: BACKUP_FORMAT,
    version,
    schema,
    madeAt: text(found.madeAt),
    records: number(found.records, 0, 1e9) ?? 0,
    pictures: number(found.pictures, 0, 1e9) ?? 0,
  };
}

/** The pictures that a record names, small copies included. */
export const picturesAndSmall = (record: GardenRecord): string[] =>
  picturesOf(record).flatMap((id) => [id, `${id}:small`]);
