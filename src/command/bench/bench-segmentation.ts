import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cpuUsage } from 'node:process';
import { fileURLToPath } from 'node:url';
import { findLeaf } from '../../leaf/find-leaf.ts';
import { measureDistances } from '../../leaf/measure-distances.ts';
import { overlapOfMasks } from '../../leaf/overlap-of-masks.ts';
import { enlargeMask } from '../../leaf/refine-outline.ts';
import { convertPixelsToLab } from '../../photo/convert-pixels-to-lab.ts';
import { scaleToWorkingFrame } from '../../photo/scale-to-working-frame.ts';
import type { Pixels, Spot } from '../../photo/types.ts';
import type { LibraryCut, LibraryTask } from './cut-by-library.ts';
import { type Scene, segmentationScenes } from './make-segmentation-scenes.ts';

/** One picture cut here and by the library, told where the leaf is in two ways. Processor time, since machines are shared. */
export interface SegmentationRow {
  readonly what: string;
  readonly megapixels: number;
  readonly ms: number;
  readonly iou: number;
  readonly byTap: LibraryCut;
  readonly byRectangle: LibraryCut;
}

/** A photo's own size; the most that the library's build holds; and about the working frame, on which ours works. */
const SIZES = { photo: 12, most: 3, working: 0.75 } as const;
const RUNS = 5;

/**
 * The mask under a tap beside the usual interactive cut of a general library (GrabCut of OpenCV 4.12.0, WebAssembly), on
 * pictures with known leaves. Both get the same pixels; the scaling down and up again of ours counts.
 */
export async function* benchSegmentation(): AsyncGenerator<SegmentationRow> {
  const { drawn, scans } = segmentationScenes();
  const first = [drawn[1]!, ...scans.slice(0, 1)];
  for (const [makers, megapixels] of [
    [first, SIZES.photo],
    [first, SIZES.most],
    [[...drawn, ...scans], SIZES.working],
  ] as const) {
    for (const make of makers) yield benchScene(await make(megapixels), megapixels);
  }
}

/** @param runs how often ours is timed; the middle one is told */
export function benchScene(
  { what, pixels, truth }: Scene,
  megapixels: number,
  runs: number = RUNS,
): SegmentationRow {
  const tap = findTap(truth, pixels);
  const times: number[] = [];
  let mask = cutHere(pixels, tap);
  for (let run = 0; run < runs; run++) {
    const start = busyMs();
    mask = cutHere(pixels, tap);
    times.push(busyMs() - start);
  }
  const folder = mkdtempSync(join(tmpdir(), 'bedside-bench-'));
  try {
    const pixelsFile = join(folder, 'pixels');
    const truthFile = join(folder, 'truth');
    const hintsFile = join(folder, 'hints');
    writeFileSync(pixelsFile, pixels.data);
    writeFileSync(truthFile, truth);
    writeFileSync(hintsFile, hintsFrom(tap, pixels));
    const files = { width: pixels.width, height: pixels.height, pixelsFile, truthFile };
    return {
      what,
      megapixels,
      ms: times.sort((p, q) => p - q)[runs >> 1]!,
      iou: overlapOfMasks(mask, truth),
      byTap: cutThere(folder, { ...files, hintsFile }),
      byRectangle: cutThere(folder, { ...files, rectangle: rectangleRound(truth, pixels) }),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function cutHere(pixels: Pixels, tap: Spot): Uint8Array {
  const frame = scaleToWorkingFrame(pixels);
  const leaf = findLeaf(frame, convertPixelsToLab(frame), { leaf: tap });
  if (leaf === undefined) return new Uint8Array(pixels.width * pixels.height);
  if (frame === pixels) return leaf.remaining;
  const small = { width: frame.width, height: frame.height, data: leaf.remaining };
  return enlargeMask(small, pixels.width, pixels.height);
}

function cutThere(folder: string, task: LibraryTask): LibraryCut {
  const taskFile = join(folder, 'task.json');
  writeFileSync(taskFile, JSON.stringify(task));
  const script = fileURLToPath(new URL('cut-by-library.ts', import.meta.url));
  const args = ['--import', 'tsx', script, taskFile];
  try {
    return JSON.parse(
      execFileSync(process.execPath, args, { encoding: 'utf8', stdio: 'pipe' }),
    ) as LibraryCut;
  } catch {
    return { failed: 'process ended' };
  }
}

/** Where a person would tap: the place deepest inside the tissue. */
function findTap(truth: Uint8Array, { width, height }: Pixels): Spot {
  const depth = measureDistances(truth, width, height, 255);
  let best = 0;
  for (let i = 0; i < depth.length; i++) if (depth[i]! > depth[best]!) best = i;
  return { x: ((best % width) + 0.5) / width, y: (Math.floor(best / width) + 0.5) / height };
}

/** The same tap as the library takes it: under the finger surely leaf (1), along the frame surely ground (0), else perhaps leaf (3). */
function hintsFrom(tap: Spot, { width, height }: Pixels): Uint8Array {
  const hints = new Uint8Array(width * height).fill(3);
  const short = Math.min(width, height);
  const rim = Math.max(1, Math.round(0.02 * short));
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (Math.hypot(x - tap.x * width, y - tap.y * height) <= 0.03 * short) hints[i] = 1;
      else if (x < rim || y < rim || x >= width - rim || y >= height - rim) hints[i] = 0;
    }
  }
  return hints;
}

/** A rectangle drawn neatly round the leaf: more than a tap tells. */
function rectangleRound(truth: Uint8Array, { width, height }: Pixels): [number, number, number, number] {
  let [left, right, top, bottom] = [width, 0, height, 0];
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (truth[i] !== 255) continue;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  const margin = Math.round(0.02 * Math.min(width, height));
  const [x0, y0] = [Math.max(1, left - margin), Math.max(1, top - margin)];
  return [x0, y0, Math.min(width - 1, right + margin) - x0, Math.min(height - 1, bottom + margin) - y0];
}

function busyMs(): number {
  const { user, system } = cpuUsage();
  return (user + system) / 1000;
}
