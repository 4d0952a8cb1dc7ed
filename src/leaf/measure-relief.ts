import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import type { InsideBlurs } from './blur-inside.ts';
import type { LeafSample } from './sample-leaf.ts';

/** Scales of the hollows, over the root of the leaf's area; finer than the bulge between two side veins of a flat leaf. */
const HOLLOWS = [0.014, 0.024] as const;
/** Most of a leaf is no hollow, and smoothing flattens those there are: this brings the value near the steps one sees. */
const SCALE = 10;
/** The rim is turned, torn and mixed with the ground: it is left out. */
const RIM = 0.03;

/**
 * How much the surface is dimpled: mean depth of hollows in the light, in per cent, as the geometric mean over two scales.
 * A hollow is where both curvatures of log light (eigenvalues of the Hessian; Lindeberg 1998) go upwards, and its depth the
 * smaller of them over the scale's own width. A fold or a vein bends the light one way only and counts next to nothing;
 * bright bumps are left out because the glare of a waxy leaf makes them without any relief. Undefined on too few pixels.
 */
export function measureRelief(
  sample: LeafSample,
  lab: LabPlanes,
  living: Uint8Array,
  blurs: InsideBlurs,
): number | undefined {
  const light = new Float32Array(living.length);
  for (let i = 0; i < light.length; i++) {
    if (living[i] === 255) light[i] = 100 * Math.log((lab.L[i]! + 16) / 66);
  }
  const depths = HOLLOWS.map((scale) => depthAt(scale, sample, light, living, blurs));
  const [fine, broad] = depths;
  return fine === undefined || broad === undefined ? undefined : SCALE * Math.sqrt(fine * broad);
}

function depthAt(
  scale: number,
  sample: LeafSample,
  light: Float32Array,
  living: Uint8Array,
  blurs: InsideBlurs,
): number | undefined {
  const { width, height, sizePx, depth } = sample;
  const sigma = Math.max(0.8, scale * sizePx);
  const plane = blurs(sigma)(light);
  const step = Math.max(1, Math.round(0.7 * sigma));
  const row = step * width;
  let sunk = 0;
  let n = 0;
  for (let y = step; y < height - step; y++) {
    for (let x = step; x < width - step; x++) {
      const i = y * width + x;
      if (living[i] !== 255 || depth[i]! < RIM * sizePx) continue;
      n++;
      const xx = plane[i - step]! - 2 * plane[i]! + plane[i + step]!;
      const yy = plane[i - row]! - 2 * plane[i]! + plane[i + row]!;
      const xy =
        (plane[i + row + step]! - plane[i + row - step]! - plane[i - row + step]! + plane[i - row - step]!) /
        4;
      const half = (xx - yy) / 2;
      const depthHere = (xx + yy) / 2 - Math.sqrt(half * half + xy * xy);
      if (depthHere > 0) sunk += depthHere;
    }
  }
  return n > 100 ? sunk / n : undefined;
}
