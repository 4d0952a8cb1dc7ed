import { fork } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Measures } from '../src/leaf/measures.ts';

export const PHOTOS = fileURLToPath(new URL('../../shared/photos/', import.meta.url));
const CACHE = fileURLToPath(new URL('../.cache/', import.meta.url));
const SHARE = fileURLToPath(new URL('./read-share-of-photos.ts', import.meta.url));

export interface LabelledPhoto {
  readonly set: string;
  readonly label: string;
  readonly file: string;
  /** Photos of one leaf or one shoot share a group: split by it, never by file. */
  readonly group: string;
  /** Reading of the chlorophyll meter, where there is one. */
  readonly spad?: number;
}

/** One labelled photo with what the camera measured on it. */
export interface LabelledReading extends LabelledPhoto {
  readonly trouble: readonly string[];
  readonly measures: Measures;
}

/** At most this many photos of one label are read: enough for a density, and minutes instead of an hour. */
const MOST_PER_LABEL = Number(process.env.PHOTOS_PER_LABEL ?? 48);

/**
 * The photos to read: of each label so many, one of each group in turn before a second of any.
 * @throws Error when the folder of photos is not there
 */
export function chooseLabelledPhotos(most: number = MOST_PER_LABEL): LabelledPhoto[] {
  if (!existsSync(`${PHOTOS}manifest.csv`))
    throw new Error(`No photos at ${PHOTOS}: they are needed to fit anything.`);
  const [, ...lines] = readFileSync(`${PHOTOS}manifest.csv`, 'utf8').trim().split(/\r?\n/);
  const taken = new Map<string, number>();
  const byLabel = new Map<string, { photo: LabelledPhoto; turn: number }[]>();
  for (const line of lines) {
    const [set = '', label = '', file = '', group = '', note = ''] = line.split(',');
    if (set === 'other') continue;
    const spad = /spad=([\d.]+)/.exec(note)?.[1];
    const photo = { set, label, file, group: group || file, ...(spad ? { spad: Number(spad) } : {}) };
    const turnKey = `${set}/${label}/${photo.group}`;
    const turn = taken.get(turnKey) ?? 0;
    taken.set(turnKey, turn + 1);
    byLabel.set(`${set}/${label}`, [...(byLabel.get(`${set}/${label}`) ?? []), { photo, turn }]);
  }
  return [...byLabel.values()].flatMap((photos) =>
    photos
      .sort((a, b) => a.turn - b.turn)
      .slice(0, most)
      .map(({ photo }) => photo),
  );
}

/**
 * Measure the labelled photos in as many processes as there are cores, each photo written down as soon as it is read:
 * a run that was broken off goes on where it stopped, and one with the same code reads nothing again.
 * @param fingerprint changes whenever the code that measures does
 */
export async function readLabelledPhotos(fingerprint: string): Promise<LabelledReading[]> {
  const photos = chooseLabelledPhotos();
  const folder = `${CACHE}readings-${fingerprint}/`;
  mkdirSync(folder, { recursive: true });
  const shares = availableParallelism();
  if (photos.some(({ file }) => !existsSync(readingPath(folder, file)))) {
    await Promise.all(Array.from({ length: shares }, (_, share) => readShare(folder, share, shares)));
  }
  return photos.flatMap(({ file }) => {
    const text = readFileSync(readingPath(folder, file), 'utf8');
    return text === 'null' ? [] : [JSON.parse(text) as LabelledReading];
  });
}

/** Where the reading of one photo is kept; `null` in it means that the file could not be read. */
export const readingPath = (folder: string, file: string): string =>
  `${folder}${file.replaceAll('/', '__')}.json`;

function readShare(folder: string, share: number, shares: number): Promise<void> {
  return new Promise((done, fail) => {
    fork(SHARE, [folder, String(share), String(shares)]).on('exit', (code) =>
      code === 0 ? done() : fail(new Error(`Reading photos ended with ${code}.`)),
    );
  });
}
