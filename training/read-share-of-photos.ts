/** Reads every n-th labelled photo into a folder: one process of several, started by `read-labelled-photos.ts`. */
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { readLeaf } from '../src/leaf/read-leaf.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import { PhotoError } from '../src/photo/types.ts';
import { chooseLabelledPhotos, PHOTOS, readingPath } from './read-labelled-photos.ts';

const [folder = '', share = '0', shares = '1'] = process.argv.slice(2);
const mine = chooseLabelledPhotos().filter((_, i) => i % Number(shares) === Number(share));
for (const photo of mine) {
  const path = readingPath(folder, photo.file);
  if (existsSync(path)) continue;
  let reading: unknown = null;
  try {
    const { pixels } = await decodeInNode(readFileSync(PHOTOS + photo.file));
    const { trouble, measures } = readLeaf(pixels, { role: 'old' }).reading;
    reading = { ...photo, trouble, measures };
  } catch (error) {
    if (!(error instanceof PhotoError)) throw error;
    process.stderr.write(`${photo.file}: ${error.code}\n`);
  }
  // Whole or not at all: a run broken off must not leave half a reading.
  writeFileSync(`${path}.part`, JSON.stringify(reading));
  renameSync(`${path}.part`, path);
}
