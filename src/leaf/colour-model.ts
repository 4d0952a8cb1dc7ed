import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';

/**
 * How often each colour occurs in a region: a smoothed histogram over CIELAB. Cells are 8 units in L* and 6 in a*, b*,
 * fine enough to part two leaf greens (about 1–2 cells) and coarse enough to fill from a few hundred pixels.
 */
const L_CELLS = 13;
const AB_CELLS = 24;
const AB_FROM = -72;
const AB_STEP = 6;
export const COLOUR_CELLS: number = L_CELLS * AB_CELLS * AB_CELLS;

/** Index of the histogram cell of every pixel. */
export function indexColours(lab: LabPlanes): Uint16Array {
  const n = lab.width * lab.height;
  const cells = new Uint16Array(n);
  for (let i = 0; i < n; i++) {
    const l = Math.min(L_CELLS - 1, Math.max(0, (lab.L[i]! / 8) | 0));
    const a = Math.min(AB_CELLS - 1, Math.max(0, ((lab.a[i]! - AB_FROM) / AB_STEP) | 0));
    const b = Math.min(AB_CELLS - 1, Math.max(0, ((lab.b[i]! - AB_FROM) / AB_STEP) | 0));
    cells[i] = (l * AB_CELLS + a) * AB_CELLS + b;
  }
  return cells;
}

/**
 * Density of colours under pixel weights, smoothed by the kernel ¼ ½ ¼ along each axis so that a colour near a cell's
 * edge counts in both. Sums to 1 over all cells (0 everywhere if all weights are 0).
 */
export function modelColours(cells: Uint16Array, weights: Float32Array | Uint8Array): Float32Array {
  const raw = new Float32Array(COLOUR_CELLS);
  let total = 0;
  for (let i = 0; i < cells.length; i++) {
    const weight = weights[i]!;
    if (weight === 0) continue;
    raw[cells[i]!]! += weight;
    total += weight;
  }
  if (total === 0) return raw;
  const smooth = smoothAlong(
    smoothAlong(smoothAlong(raw, 1, AB_CELLS), AB_CELLS, AB_CELLS),
    AB_CELLS ** 2,
    L_CELLS,
  );
  for (let i = 0; i < COLOUR_CELLS; i++) smooth[i]! /= total;
  return smooth;
}

/** ¼ ½ ¼ along the axis whose neighbours are `stride` apart; what would fall off an end stays. */
function smoothAlong(from: Float32Array, stride: number, length: number): Float32Array {
  const to = new Float32Array(COLOUR_CELLS);
  for (let start = 0; start < COLOUR_CELLS; start += stride * length) {
    for (let offset = 0; offset < stride; offset++) {
      for (let place = 0; place < length; place++) {
        const i = start + offset + place * stride;
        const before = place > 0 ? from[i - stride]! : from[i]!;
        const after = place < length - 1 ? from[i + stride]! : from[i]!;
        to[i] = 0.25 * before + 0.5 * from[i]! + 0.25 * after;
      }
    }
  }
  return to;
}
