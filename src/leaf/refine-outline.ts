import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { addFlowEdge, createFlowGraph, cutGraph } from './cut-graph.ts';
import { colourStep, STEP_X, STEP_Y } from './grow-from-seed.ts';
import { measureDistances } from './measure-distances.ts';

/** A mask on a grid of its own. */
export interface GridMask {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/**
 * Carries an outline from a coarse grid to a finer one: only a band about it is cut again (banded graph cuts; Lombaert
 * et al. 2005), each pixel against the mean colours that lie inside and outside near that very place, because a leaf
 * may meet soil on one side and another leaf on the other.
 *
 * @param coarse mask to refine, and `coarseLab`, the picture on the same grid.
 * @param lab the picture on the finer grid; the result lies on it.
 */
export function refineOutline(coarse: GridMask, coarseLab: LabPlanes, lab: LabPlanes): GridMask {
  const { width, height } = lab;
  const ratio = width / coarse.width;
  const near = averageNearby(coarse, coarseLab, NEARBY_CELLS);
  const data = enlargeMask(coarse, width, height);
  const bandPx = Math.min(MOST_BAND_PX, 1.1 * ratio + 1.2);
  const inner = measureDistances(data, width, height, 255, bandPx + 1);
  const outer = measureDistances(data, width, height, 0, bandPx + 1);

  const nodeOf = new Int32Array(width * height).fill(-1);
  const pixels: number[] = [];
  for (let i = 0; i < data.length; i++) {
    if ((data[i] === 255 ? inner[i]! : outer[i]!) <= bandPx) {
      nodeOf[i] = pixels.length;
      pixels.push(i);
    }
  }
  if (pixels.length === 0) return { width, height, data };
  const graph = createFlowGraph(pixels.length, pixels.length * 4);
  const beta = 1 / Math.max(4, 2 * meanSquaredStep(lab, pixels));
  for (const [node, i] of pixels.entries()) {
    const x = i % width;
    const y = (i / width) | 0;
    const depth = data[i] === 255 ? inner[i]! - 0.5 : 0.5 - outer[i]!;
    const evidence = judgePixel(lab, i, near, coarse.width, x / ratio, y / ratio) + (0.8 * depth) / ratio;
    graph.terminal[node]! += Math.round(UNIT * evidence);
    for (let k = 0; k < 8; k++) {
      const nx = x + STEP_X[k]!;
      const ny = y + STEP_Y[k]!;
      if (nx < 0 || ny < 0 || nx >= width || ny >= height) continue;
      const j = ny * width + nx;
      const other = nodeOf[j]!;
      if (other >= 0 && k >= 4) continue;
      const length = STEP_X[k] !== 0 && STEP_Y[k] !== 0 ? Math.SQRT2 : 1;
      const weight = Math.round(
        (UNIT * SMOOTHNESS * (0.05 + Math.exp(-beta * colourStep(lab, i, j) ** 2))) / length,
      );
      if (other >= 0) addFlowEdge(graph, node, other, weight);
      else graph.terminal[node]! += data[j] === 255 ? weight : -weight;
    }
  }
  const sides = cutGraph(graph);
  for (const [node, i] of pixels.entries()) data[i] = sides[node] === 1 ? 255 : 0;
  return { width, height, data };
}

const UNIT = 100;
const SMOOTHNESS = 1.6;
const MOST_BAND_PX = 9;
/** Half width, in coarse cells, of the neighbourhood whose mean colour a pixel is held against. */
const NEARBY_CELLS = 5;

/** Nats in favour of leaf: nearer to the leaf's colour here than to the ground's, in units of their spread. */
function judgePixel(
  lab: LabPlanes,
  i: number,
  near: Nearby,
  coarseWidth: number,
  cx: number,
  cy: number,
): number {
  const cell = (cy | 0) * coarseWidth + (cx | 0);
  const k = cell * 4;
  const { inside, outside } = near;
  const L = lab.L[i]!;
  const a = lab.a[i]!;
  const b = lab.b[i]!;
  if (!(inside[k + 3]! > 0) || !(outside[k + 3]! > 0)) return 0;
  const toIn = (0.5 * (L - inside[k]!)) ** 2 + (a - inside[k + 1]!) ** 2 + (b - inside[k + 2]!) ** 2;
  const toOut = (0.5 * (L - outside[k]!)) ** 2 + (a - outside[k + 1]!) ** 2 + (b - outside[k + 2]!) ** 2;
  // One spread for both sides puts the border where a pixel is half leaf, half ground; two would shift it to the
  // more even side.
  const spread = 0.5 * (inside[k + 3]! + outside[k + 3]!);
  const nats = (0.5 * (toOut - toIn)) / spread;
  return Math.max(-3, Math.min(3, nats));
}

interface Nearby {
  /** Per coarse cell: mean L*, a*, b* and variance (one number, L* at half weight) of the side's pixels nearby. */
  readonly inside: Float32Array;
  readonly outside: Float32Array;
}

/** Means over boxes of the inside and the outside, leaving out the mixed cells right on the outline. */
function averageNearby(mask: GridMask, lab: LabPlanes, radius: number): Nearby {
  const { width, height, data } = mask;
  const mixed = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const differs =
        (x > 0 && data[i - 1] !== data[i]) ||
        (x < width - 1 && data[i + 1] !== data[i]) ||
        (y > 0 && data[i - width] !== data[i]) ||
        (y < height - 1 && data[i + width] !== data[i]);
      mixed[i] = differs ? 1 : 0;
    }
  }
  // Only cells that a band may ask for: the mixed ones and two rings about them.
  const onBorder = spread(spread(mixed, width, height), width, height);
  return {
    inside: averageSide(mask, lab, mixed, radius, 255, onBorder),
    outside: averageSide(mask, lab, mixed, radius, 0, onBorder),
  };
}

/** Cells of a mask of ones and all their neighbours. */
function spread(cells: Uint8Array, width: number, height: number): Uint8Array {
  const out = new Uint8Array(cells.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (cells[y * width + x] === 0) continue;
      for (let ny = Math.max(0, y - 1); ny <= Math.min(height - 1, y + 1); ny++) {
        for (let nx = Math.max(0, x - 1); nx <= Math.min(width - 1, x + 1); nx++) out[ny * width + nx] = 1;
      }
    }
  }
  return out;
}

/** Mean colour and spread of one side within `radius` cells, from sums over rectangles (integral images). */
function averageSide(
  mask: GridMask,
  lab: LabPlanes,
  mixed: Uint8Array,
  radius: number,
  wanted: number,
  onBorder: Uint8Array,
): Float32Array {
  const { width, height, data } = mask;
  const sums = new Float64Array((width + 1) * (height + 1) * 5);
  const row = new Float64Array(5);
  for (let y = 0; y < height; y++) {
    row.fill(0);
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (data[i] === wanted && mixed[i] === 0) {
        const L = lab.L[i]!;
        const a = lab.a[i]!;
        const b = lab.b[i]!;
        row[0]! += 1;
        row[1]! += L;
        row[2]! += a;
        row[3]! += b;
        row[4]! += 0.25 * L * L + a * a + b * b;
      }
      const at = ((y + 1) * (width + 1) + x + 1) * 5;
      const above = at - (width + 1) * 5;
      for (let c = 0; c < 5; c++) sums[at + c] = sums[above + c]! + row[c]!;
    }
  }
  const out = new Float32Array(width * height * 4);
  for (let y = 0; y < height; y++) {
    const top = Math.max(0, y - radius);
    const bottom = Math.min(height, y + radius + 1);
    for (let x = 0; x < width; x++) {
      if (onBorder[y * width + x] === 0) continue;
      const left = Math.max(0, x - radius);
      const right = Math.min(width, x + radius + 1);
      const lowRight = (bottom * (width + 1) + right) * 5;
      const topRight = (top * (width + 1) + right) * 5;
      const lowLeft = (bottom * (width + 1) + left) * 5;
      const topLeft = (top * (width + 1) + left) * 5;
      for (let c = 0; c < 5; c++) {
        row[c] = sums[lowRight + c]! - sums[topRight + c]! - sums[lowLeft + c]! + sums[topLeft + c]!;
      }
      const count = row[0]!;
      if (count < 3) continue;
      const k = (y * width + x) * 4;
      const L = row[1]! / count;
      const a = row[2]! / count;
      const b = row[3]! / count;
      out[k] = L;
      out[k + 1] = a;
      out[k + 2] = b;
      // Never below the grain of a camera picture.
      out[k + 3] = Math.max(9, row[4]! / count - (0.25 * L * L + a * a + b * b));
    }
  }
  return out;
}

function meanSquaredStep(lab: LabPlanes, pixels: readonly number[]): number {
  let sum = 0;
  let count = 0;
  for (let k = 0; k < pixels.length; k += 3) {
    const i = pixels[k]!;
    if (i % lab.width === lab.width - 1) continue;
    sum += colourStep(lab, i, i + 1) ** 2;
    count++;
  }
  return count > 0 ? sum / count : 1;
}

/** Enlarges a mask; a pixel belongs where the coarse mask, taken as smooth between cell centres, is above one half. */
export function enlargeMask(mask: GridMask, width: number, height: number): Uint8Array {
  const out = new Uint8Array(width * height);
  const columns = placesOf(width, mask.width);
  const rows = placesOf(height, mask.height);
  const { data } = mask;
  for (let y = 0; y < height; y++) {
    const top = rows.first[y]! * mask.width;
    const bottom = rows.second[y]! * mask.width;
    const fy = rows.part[y]!;
    for (let x = 0; x < width; x++) {
      const left = columns.first[x]!;
      const right = columns.second[x]!;
      const fx = columns.part[x]!;
      const value =
        (data[top + left]! * (1 - fx) + data[top + right]! * fx) * (1 - fy) +
        (data[bottom + left]! * (1 - fx) + data[bottom + right]! * fx) * fy;
      if (value > 127.5) out[y * width + x] = 255;
    }
  }
  return out;
}

/** A plane on another grid, straight lines between the middles of its cells. */
export function resamplePlane(
  plane: { readonly width: number; readonly height: number; readonly data: Float32Array },
  width: number,
  height: number,
): Float32Array {
  const out = new Float32Array(width * height);
  const columns = placesOf(width, plane.width);
  const rows = placesOf(height, plane.height);
  const { data } = plane;
  for (let y = 0; y < height; y++) {
    const top = rows.first[y]! * plane.width;
    const bottom = rows.second[y]! * plane.width;
    const fy = rows.part[y]!;
    for (let x = 0; x < width; x++) {
      const left = columns.first[x]!;
      const right = columns.second[x]!;
      const fx = columns.part[x]!;
      out[y * width + x] =
        (data[top + left]! * (1 - fx) + data[top + right]! * fx) * (1 - fy) +
        (data[bottom + left]! * (1 - fx) + data[bottom + right]! * fx) * fy;
    }
  }
  return out;
}

/** For each of `to` places, the two of `from` cells that it lies between and how far towards the second. */
function placesOf(to: number, from: number): { first: Int32Array; second: Int32Array; part: Float32Array } {
  const first = new Int32Array(to);
  const second = new Int32Array(to);
  const part = new Float32Array(to);
  for (let k = 0; k < to; k++) {
    const place = ((k + 0.5) * from) / to - 0.5;
    const low = Math.floor(place);
    first[k] = Math.max(0, low);
    second[k] = Math.min(from - 1, low + 1);
    part[k] = place - low;
  }
  return { first, second, part };
}
