/**
 * Writes what `train.py` learns from: photographs at 256 px with the outline under a tap in the middle, as the camera cuts it
 * today. Only outlines that were looked at and found to follow the leaf (`kept-outlines.json`) are marked as accepted; the
 * others serve as backgrounds, or `train.py` takes what was drawn on them by hand (`drawn-outlines.json`, corners in hundredths of
 * the longest side). The list was made in three rounds: outlines cut by colour alone, then those that a first
 * network put right; then those went where a second network and a second look found them cut off or in shadow. The photographs of the contact sheet (seed 1), and all of their groups, are left out.
 *
 *     npx tsx training/outline-network/label-outlines.ts FOLDER
 */
import { appendFileSync, mkdirSync, readFileSync } from 'node:fs';
import sharp from 'sharp';
import { findLeaf } from '../../src/leaf/find-leaf.ts';
import { convertPixelsToLab } from '../../src/photo/convert-pixels-to-lab.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../../src/photo/scale-to-working-frame.ts';
import { listPhotos, PHOTOS } from '../list-photos.ts';

const SIDE_PX = 256;
const folder = process.argv[2];
if (folder === undefined) throw new Error('Name a folder to write to.');
mkdirSync(folder, { recursive: true });
const lists = JSON.parse(readFileSync(new URL('./kept-outlines.json', import.meta.url), 'utf8')) as {
  byColour: string[];
  byNetwork: string[];
  background: string[];
};
const accepted = new Set([...lists.byColour, ...lists.byNetwork]);
const used = new Set([...accepted, ...lists.background]);
for (const { file, set, group } of listPhotos().filter((row) => used.has(row.file))) {
  const frame = scaleToWorkingFrame((await decodeInNode(readFileSync(PHOTOS + file))).pixels);
  const { width, height } = frame;
  const leaf = findLeaf(frame, convertPixelsToLab(frame), { leaf: { x: 0.5, y: 0.5 } });
  if (leaf === undefined) continue;
  const scale = SIDE_PX / Math.max(width, height);
  const size = [Math.round(width * scale), Math.round(height * scale)] as const;
  const id = file.replaceAll('/', '--').replace(/\.[a-zA-Z]+$/, '');
  const raw = (channels: 1 | 4) => ({ raw: { width, height, channels } });
  await sharp(Buffer.from(frame.data.buffer), raw(4))
    .removeAlpha()
    .resize(...size)
    .jpeg({ quality: 92 })
    .toFile(`${folder}/${id}.jpg`);
  await sharp(Buffer.from(leaf.outline), raw(1))
    .resize(...size, { kernel: 'linear' })
    .png()
    .toFile(`${folder}/${id}.png`);
  const line = { id, set, group: group || file, accepted: accepted.has(file) };
  appendFileSync(`${folder}/index.jsonl`, `${JSON.stringify(line)}\n`);
}
