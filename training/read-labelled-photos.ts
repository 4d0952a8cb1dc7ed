import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Measures } from '../src/leaf/measures.ts';
import { readLeaf } from '../src/leaf/read-leaf.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import { PhotoError } from '../src/photo/types.ts';

const PHOTOS = fileURLToPath(new URL('../../shared/photos/', import.meta.url));
const CACHE = fileURLToPath(new URL('../.cache/', import.meta.url));

/** One labelled photo with what the camera measured on it. */
export interface LabelledReading {
  readonly set: string;
  readonly label: string;
  /** Photos of one leaf or one shoot share a group: split by it, never by file. */
  readonly group: string;
  /** Reading of the chlorophyll meter, where there is one. */
  readonly spad?: number;
  readonly trouble: readonly string[];
  readonly measures: Measures;
}

interface Row {
  readonly set: string;
  readonly label: string;
  readonly file: string;
  readonly group: string;
  readonly note: string;
}

function rows(): Row[] {
  const [, ...lines] = readFileSync(`${PHOTOS}manifest.csv`, 'utf8').trim().split(/\r?\n/);
  return lines.map((line) => {
    const [set = '', label = '', file = '', group = '', note = ''] = line.split(',');
    return { set, label, file, group, note };
  });
}

/** At most this many photos of one label are read: enough for a density, and minutes instead of an hour. */
const MOST_PER_LABEL = 80;

/**
 * Measure the labelled photos, or take what an earlier run measured with the same code.
 * @param fingerprint changes whenever the code that measures does
 * @throws Error when the folder of photos is not there
 */
export async function readLabelledPhotos(fingerprint: string): Promise<LabelledReading[]> {
  if (!existsSync(`${PHOTOS}manifest.csv`))
    throw new Error(`No photos at ${PHOTOS}: they are needed to fit anything.`);
  const cached = `${CACHE}readings-${fingerprint}.json`;
  if (existsSync(cached)) return JSON.parse(readFileSync(cached, 'utf8'));
  const taken = new Map<string, number>();
  const readings: LabelledReading[] = [];
  for (const { set, label, file, group, note } of rows()) {
    if (set === 'other') continue;
    const key = `${set}/${label}`;
    const count = taken.get(key) ?? 0;
    if (count >= MOST_PER_LABEL) continue;
    taken.set(key, count + 1);
    const spad = /spad=([\d.]+)/.exec(note)?.[1];
    try {
      const { pixels } = await decodeInNode(readFileSync(PHOTOS + file));
      const { reading } = readLeaf(pixels, { role: 'old' });
      const { trouble, measures } = reading;
      readings.push({
        set,
        label,
        group: group || file,
        trouble,
        measures,
        ...(spad ? { spad: Number(spad) } : {}),
      });
    } catch (error) {
      if (!(error instanceof PhotoError)) throw error;
      process.stderr.write(`${file}: ${error.code}\n`);
    }
  }
  mkdirSync(CACHE, { recursive: true });
  writeFileSync(cached, JSON.stringify(readings));
  return readings;
}
