/**
 * Draws the outline that the camera finds under a tap in the middle onto a seeded sample of the field photographs, so that
 * a person can count how many are followed. Writes sheets of 20 photographs to `.cache/contact-sheet/`, never into the
 * repository; the sheet's number and place are printed beside each file.
 *
 *     npx tsx training/draw-contact-sheet.ts [--seed 1] [--most 100] [--sets bean-uganda,chilli-india] [--no-tap] [--left-out]
 *
 * With `--left-out`, only photographs that neither the network was trained on nor the sheet of seed 1 shows.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import sharp, { type OverlayOptions } from 'sharp';
import { findLeaf } from '../src/leaf/find-leaf.ts';
import { looksLikeLeaf } from '../src/leaf/looks-like-leaf.ts';
import { convertPixelsToLab } from '../src/photo/convert-pixels-to-lab.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../src/photo/scale-to-working-frame.ts';
import type { Pixels } from '../src/photo/types.ts';
import { listPhotos, PHOTOS, type PhotoRow } from './list-photos.ts';

const CACHE = fileURLToPath(new URL('../.cache/', import.meta.url));
const COLUMNS = 5;
const ROWS = 4;
const TILE_PX = 340;
const FIELD_SETS = ['bean-uganda', 'blackgram-india', 'chilli-india'];

/** The sample: every set in turn, photographs of a set by a seeded draw without putting back. */
function drawSample(
  sets: readonly string[],
  most: number,
  seed: number,
  without: ReadonlySet<string> = new Set(),
): PhotoRow[] {
  const bySet = sets.map((set) =>
    shuffle(
      listPhotos().filter((row) => row.set === set && !without.has(row.file)),
      seed,
    ),
  );
  const sample: PhotoRow[] = [];
  for (let k = 0; sample.length < most && bySet.some((rows) => k < rows.length); k++) {
    for (const rows of bySet) if (k < rows.length && sample.length < most) sample.push(rows[k]!);
  }
  return sample;
}

/** Fisher and Yates with a small seeded generator (mulberry32). */
function shuffle<T>(items: readonly T[], seed: number): T[] {
  const out = items.slice();
  let state = seed >>> 0;
  const random = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}

/** Photographs that the network has learnt from, and those of the first sheet. */
function listSeen(): Set<string> {
  const kept = readFileSync(new URL('./outline-network/kept-outlines.json', import.meta.url), 'utf8');
  const learnt = Object.values(JSON.parse(kept) as Record<string, string[]>).flat();
  return new Set([...learnt, ...drawSample(FIELD_SETS, 100, 1).map((row) => row.file)]);
}

/** Red along the border of the outline, yellow round what was taken for holes; grey over all where no leaf was found. */
async function drawTile(pixels: Pixels, tapped: boolean): Promise<{ tile: Buffer; found: boolean }> {
  const frame = scaleToWorkingFrame(pixels);
  const { width, height } = frame;
  const lab = convertPixelsToLab(frame);
  const leaf = findLeaf(frame, lab, tapped ? { leaf: { x: 0.5, y: 0.5 } } : {});
  const data = frame.data.slice();
  const found = leaf !== undefined && looksLikeLeaf(lab, leaf, tapped);
  if (leaf !== undefined) {
    drawBorder(data, leaf.remaining, width, [255, 220, 0], 1);
    drawBorder(data, leaf.outline, width, [255, 0, 40], 1);
  }
  if (!found) for (let i = 0; i < data.length; i += 4) data[i + 2] = 255;
  const tile = await sharp(Buffer.from(data.buffer), { raw: { width, height, channels: 4 } })
    .resize(TILE_PX, TILE_PX, { fit: 'contain', background: '#fff' })
    .png()
    .toBuffer();
  return { tile, found };
}

function drawBorder(
  data: Uint8ClampedArray,
  mask: Uint8Array,
  width: number,
  rgb: readonly [number, number, number],
  thick: number,
): void {
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] !== 255) continue;
    const inner = [1, -1, width, -width].every(
      (d) => mask[i + d * thick] === 255 || mask[i + d * thick] === undefined,
    );
    if (inner) continue;
    for (const d of [0, 1, width]) data.set(rgb, Math.min(mask.length - 1, i + d) * 4);
  }
}

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    most: { type: 'string', default: '100' },
    sets: { type: 'string', default: FIELD_SETS.join(',') },
    'no-tap': { type: 'boolean', default: false },
    'left-out': { type: 'boolean', default: false },
    to: { type: 'string', default: 'contact-sheet' },
  },
});
const without = values['left-out'] ? listSeen() : undefined;
const sample = drawSample(values.sets.split(','), Number(values.most), Number(values.seed), without);
mkdirSync(`${CACHE}${values.to}`, { recursive: true });
for (let from = 0; from < sample.length; from += COLUMNS * ROWS) {
  const sheet = 1 + from / (COLUMNS * ROWS);
  const tiles: OverlayOptions[] = [];
  for (const [k, row] of sample.slice(from, from + COLUMNS * ROWS).entries()) {
    const { pixels } = await decodeInNode(readFileSync(PHOTOS + row.file));
    const left = (k % COLUMNS) * (TILE_PX + 4);
    const top = Math.floor(k / COLUMNS) * (TILE_PX + 4);
    const { tile, found } = await drawTile(pixels, !values['no-tap']);
    tiles.push({ input: tile, left, top });
    process.stdout.write(
      `sheet ${sheet}, row ${Math.floor(k / COLUMNS) + 1}, place ${(k % COLUMNS) + 1}: ${row.file}${found ? '' : ' (no leaf found)'}\n`,
    );
  }
  const size = { width: COLUMNS * (TILE_PX + 4), height: ROWS * (TILE_PX + 4), channels: 3 as const };
  const picture = sharp({ create: { ...size, background: '#fff' } }).composite(tiles);
  writeFileSync(`${CACHE}${values.to}/sheet-${sheet}.png`, await picture.png().toBuffer());
}
