import { configure, ZipWriter } from '@zip.js/zip.js/lib/zip-core-external.js';
import { RECORDS_SCHEMA } from '../records.ts';
import type { GardenStore } from '../store/garden-store.ts';
import {
  BACKUP_FORMAT,
  BACKUP_VERSION,
  MANIFEST,
  type Manifest,
  pictureEntry,
  picturesAndSmall,
  RECORDS,
} from './backup-format.ts';
import { withoutLocation } from './without-location.ts';

// Workers of its own would have to be allowed for in the content security policy.
configure({ useWebWorkers: false, useCompressionStream: true });

/** How far a backup has come: records are read first, pictures one by one after them. */
export interface BackupProgress {
  readonly records: number;
  readonly pictures: number;
  /** Pictures that are named by records; known once all records are read. */
  readonly picturesNamed: number;
}

export interface WrittenBackup {
  readonly manifest: Manifest;
  /** Photos that are not in the file, because the place where they were taken could not be taken out for certain. */
  readonly leftOut: number;
}

/**
 * Writes the whole garden as one file into a stream; no more than one picture is held at a time. The demo garden is left out, and
 * so is the place of every photo.
 * @param now ISO 8601, UTC
 */
export async function writeBackup(
  store: GardenStore,
  sink: WritableStream<Uint8Array>,
  now: string,
  progress: (done: BackupProgress) => void = () => {},
): Promise<WrittenBackup> {
  const zip = new ZipWriter(sink, { lastModDate: new Date(now), extendedTimestamp: false });
  const named = new Set<string>();
  const written = { records: 0, pictures: 0 };
  let leftOut = 0;
  await zip.add(
    RECORDS,
    recordLines(store, named, () => {
      written.records += 1;
    }),
  );
  for (const id of named) {
    const picture = await store.readPicture(id);
    if (!picture) continue;
    const bytes = withoutLocation(new Uint8Array(await picture.arrayBuffer()));
    if (!bytes) {
      leftOut += 1;
      continue;
    }
    // Photos are compressed already.
    await zip.add(pictureEntry(id, picture.type), new Blob([bytes]).stream(), { level: 0 });
    written.pictures += 1;
    progress({ ...written, picturesNamed: named.size });
  }
  const manifest: Manifest = {
    format: BACKUP_FORMAT,
    version: BACKUP_VERSION,
    schema: RECORDS_SCHEMA,
    madeAt: now,
    ...written,
  };
  await zip.add(MANIFEST, new Blob([JSON.stringify(manifest, null, 2)]).stream());
  await zip.close();
  return { manifest, leftOut };
}

/** The records as lines of JSON, read from the store as fast as they are taken; fills `named` with their pictures. */
function recordLines(
  store: GardenStore,
  named: Set<string>,
  written: () => void,
): ReadableStream<Uint8Array> {
  const records = store.eachRecord()[Symbol.asyncIterator]();
  const encoder = new TextEncoder();
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      for (;;) {
        const { done, value } = await records.next();
        if (done) return controller.close();
        if (value.demo) continue;
        const { revision: _revision, ...record } = value;
        for (const id of picturesAndSmall(value)) named.add(id);
        written();
        return controller.enqueue(encoder.encode(`${JSON.stringify(record)}\n`));
      }
    },
  });
}
