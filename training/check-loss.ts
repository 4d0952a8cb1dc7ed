/**
 * Holds the outline, the loss and the count of holes against masks and known bites. Prints; writes nothing.
 *
 *     npx tsx training/check-loss.ts [--every 1] [--bites]
 *
 * First the scans of `soybean-holes` against their masks. With `--bites` also leaves drawn with known bites, and leaves
 * photographed on white (papaya) or scanned, bitten here by a seeded draw: whole leaf and bitten leaf are measured, and
 * what the bites took is known to the pixel.
 */

import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import sharp from 'sharp';
import { LEAST_HOLE } from '../src/leaf/count-holes.ts';
import { drawLeaf } from '../src/leaf/draw-leaf.ts';
import { labelRegions } from '../src/leaf/label-regions.ts';
import { measureHull } from '../src/leaf/measure-hull.ts';
import { overlapOfMasks } from '../src/leaf/overlap-of-masks.ts';
import { readLeaf } from '../src/leaf/read-leaf.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../src/photo/scale-to-working-frame.ts';
import type { Pixels } from '../src/photo/types.ts';
import { biteLeaf } from '../tests/pictures/bite-leaf.ts';
import { listPhotos, PHOTOS, type PhotoRow } from './list-photos.ts';

const { values } = parseArgs({
  options: {
    every: { type: 'string', default: '1' },
    bites: { type: 'boolean', default: false },
    'no-scans': { type: 'boolean', default: false },
    verbose: { type: 'boolean', default: false },
  },
});
const say = (line: string): void => void process.stdout.write(`${line}\n`);
const mean = (xs: readonly number[]): number => xs.reduce((s, x) => s + x, 0) / xs.length;
const middle = (xs: readonly number[]): number => [...xs].sort((p, q) => p - q)[xs.length >> 1]!;
const points = (x: number): string => (100 * x).toFixed(2);

function correlation(x: readonly number[], y: readonly number[]): number {
  const mx = mean(x);
  const my = mean(y);
  const both = mean(x.map((v, i) => (v - mx) * (y[i]! - my)));
  return both / Math.sqrt(mean(x.map((v) => (v - mx) ** 2)) * mean(y.map((v) => (v - my) ** 2)));
}

async function readMask(file: string): Promise<{ width: number; height: number; data: Uint8Array }> {
  const { data, info } = await sharp(readFileSync(PHOTOS + file))
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data: Uint8Array.from(data, (v) => (v > 127 ? 255 : 0)) };
}

const share = (mask: Uint8Array): number => mask.reduce((s, v) => s + (v === 255 ? 1 : 0), 0);

/** Pieces lost that tissue closes all round, by the definition of `countHoles`. */
function countHoles(whole: Uint8Array, remaining: Uint8Array, width: number, height: number): number {
  const gone = remaining.map((v) => (v === 255 ? 0 : 255));
  const regions = labelRegions(gone, width, height, 255, 8);
  const open = new Set<number>();
  for (let i = 0; i < gone.length; i++) if (whole[i] !== 255 && gone[i] === 255) open.add(regions.labels[i]!);
  const least = LEAST_HOLE * share(whole);
  let count = 0;
  for (let k = 1; k <= regions.count; k++) if (!open.has(k) && regions.sizes[k]! >= least) count++;
  return count;
}

async function checkScans(rows: readonly PhotoRow[]): Promise<void> {
  const overlaps: number[] = [];
  const lost: [number, number, number][] = [];
  const counts: [number, number, number][] = [];
  for (const row of rows) {
    const { pixels } = await decodeInNode(readFileSync(PHOTOS + row.file));
    const analysis = readLeaf(pixels, { role: 'old' });
    if (analysis.mask === undefined) {
      say(`no leaf: ${row.file}`);
      continue;
    }
    const name = (kind: string): string =>
      row.file.replace('/images/', `/mask_${kind}/`).replace('.jpg', '.png');
    const remaining = await readMask(name('remaining'));
    const whole = await readMask(name('whole_leaf'));
    const iou = overlapOfMasks(analysis.mask.data, remaining.data);
    overlaps.push(iou);
    const { measures } = analysis.reading;
    const truth = 1 - share(remaining.data) / share(whole.data);
    const taken = measures['lost-fraction'];
    if (taken !== undefined) lost.push([taken.value, truth, taken.se]);
    const holes = countHoles(whole.data, remaining.data, whole.width, whole.height);
    const counted = measures['hole-count'];
    if (counted !== undefined) counts.push([counted.value, holes, counted.se]);
    if (values.verbose && (iou < 0.97 || Math.abs((taken?.value ?? 9) - truth) > 0.012)) {
      say(
        `${row.file} overlap ${iou.toFixed(3)} lost ${points(taken?.value ?? Number.NaN)} truth ${points(truth)} edge ${points(measures['edge-loss-fraction']?.value ?? Number.NaN)}`,
      );
    }
  }
  const off = lost.map(([a, b]) => Math.abs(a - b));
  say(
    `scans: ${overlaps.length}; overlap with the tissue that is left: median ${middle(overlaps).toFixed(4)}, least ${Math.min(...overlaps).toFixed(3)}`,
  );
  say(
    `lost: ${lost.length} judged, mean miss ${points(mean(off))} points, r ${correlation(
      lost.map((v) => v[0]),
      lost.map((v) => v[1]),
    ).toFixed(
      4,
    )}, within one stated error ${points(mean(lost.map(([a, b, se]) => (Math.abs(a - b) <= se ? 1 : 0))))} %`,
  );
  say(
    `holes: counted the same on ${counts.filter(([a, b]) => a === b).length} of ${counts.length}, mean miss ${mean(counts.map(([a, b]) => Math.abs(a - b))).toFixed(2)}, r ${correlation(
      counts.map((v) => v[0]),
      counts.map((v) => v[1]),
    ).toFixed(
      3,
    )}, off by one at most on ${counts.filter(([a, b]) => Math.abs(a - b) <= 1).length}, within one stated error ${points(mean(counts.map(([a, b, se]) => (Math.abs(a - b) <= se ? 1 : 0))))} %`,
  );
}

function report(
  name: string,
  misses: readonly number[],
  hull: readonly number[],
  within: readonly number[],
): void {
  say(
    `${name}: ${misses.length}, mean miss ${points(mean(misses.map(Math.abs)))} points (median ${points(middle(misses.map(Math.abs)))}, worst ${points(Math.max(...misses.map(Math.abs)))}, mean too much ${points(mean(misses))}); the hull alone ${points(mean(hull.map(Math.abs)))}; within one stated error ${points(mean(within))} %`,
  );
}

/** Area that the convex hull adds over the whole hull: the plain method. */
function hullLoss(mask: Uint8Array, width: number, height: number): number {
  const { areaPx } = measureHull(mask, width, height);
  return 1 - share(mask) / areaPx;
}

function checkDrawn(): void {
  for (const shape of ['oval', 'toothed', 'lobed', 'palmate', 'heart'] as const) {
    const misses: number[] = [];
    const hull: number[] = [];
    const within: number[] = [];
    for (let seed = 1; seed <= 12; seed++) {
      const { pixels, truth } = drawLeaf({
        shape,
        seed,
        background: 'paper',
        angleDegrees: seed * 31,
        length: 0.62,
        uneven: 0.05,
        bites: { count: seed % 4, radius: 0.05 + 0.01 * (seed % 3) },
      });
      const analysis = readLeaf(pixels, { role: 'old' });
      const lost = analysis.reading.measures['lost-fraction'];
      if (lost === undefined || analysis.mask === undefined) {
        say(`${shape} ${seed}: nothing measured`);
        continue;
      }
      misses.push(lost.value - truth.lostFraction);
      within.push(Math.abs(lost.value - truth.lostFraction) <= lost.se ? 1 : 0);
      hull.push(hullLoss(analysis.mask.data, pixels.width, pixels.height) - truth.lostFraction);
      if (values.verbose)
        say(
          `${shape} ${seed}: ${points(lost.value)} truth ${points(truth.lostFraction)} se ${points(lost.se)}`,
        );
    }
    report(`drawn ${shape}`, misses, hull, within);
  }
}

async function checkBitten(name: string, rows: readonly PhotoRow[]): Promise<void> {
  const misses: number[] = [];
  const hull: number[] = [];
  const within: number[] = [];
  for (const [k, row] of rows.entries()) {
    const { pixels } = await decodeInNode(readFileSync(PHOTOS + row.file));
    const frame: Pixels = scaleToWorkingFrame(pixels);
    const first = readLeaf(frame, { role: 'old' });
    const before = first.reading.measures['lost-fraction'];
    if (first.mask === undefined || before === undefined) continue;
    // Leaves that come with losses of their own would have an unknown truth.
    if (name === 'soybean' && before.value > 0.02) continue;
    const bitten = biteLeaf(frame, first.mask.data, {
      count: 1 + (k % 3),
      radius: 0.12 + 0.03 * (k % 4),
      seed: k + 1,
    });
    const second = readLeaf(bitten.pixels, { role: 'old' });
    const after = second.reading.measures['lost-fraction'];
    if (after === undefined || second.mask === undefined) continue;
    const miss = after.value - bitten.lostFraction;
    misses.push(miss);
    within.push(Math.abs(miss) <= after.se ? 1 : 0);
    hull.push(hullLoss(second.mask.data, frame.width, frame.height) - bitten.lostFraction);
    if (values.verbose)
      say(
        `${row.file}: ${points(after.value)} truth ${points(bitten.lostFraction)} se ${points(after.se)} whole ${points(before.value)}`,
      );
  }
  report(`bitten ${name}`, misses, hull, within);
}

const every = Number(values.every);
const pick = (set: string, label: string): PhotoRow[] =>
  listPhotos()
    .filter((row) => row.set === set && row.label.includes(label))
    .filter((_, i) => i % every === 0);
if (!values['no-scans']) await checkScans(pick('soybean-holes', ''));
if (values.bites) {
  checkDrawn();
  await checkBitten('papaya', pick('papaya-spad', 'white'));
  await checkBitten('soybean', pick('soybean-holes', ''));
}
