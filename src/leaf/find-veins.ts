import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import type { InsideBlurs } from './blur-inside.ts';
import { boxesOf } from './boxes-of.ts';
import { labelRegions } from './label-regions.ts';
import type { LeafSample } from './sample-leaf.ts';

/**
 * Veins as a mask on the sample: lines that are lighter, darker, greener or yellower than what lies on both sides.
 * A ridge is where the greatest second derivative (eigenvalue of the Hessian; Lindeberg 1998) of lightness
 * or of hue stands out and dominates the other; pieces shorter than an eighth of the leaf are dropped as grain and spots. `blurs` are over the sample's tissue.
 */
export function findVeins(
  sample: LeafSample,
  lab: LabPlanes,
  greenness: Float32Array,
  blurs: InsideBlurs,
): Uint8Array {
  const { width, height, tissue, sizePx } = sample;
  const strength = new Float32Array(tissue.length);
  for (const [plane, unit] of [
    [lab.L, 1],
    [greenness, 0.5],
  ] as const) {
    for (const sigma of [0.008, 0.016]) {
      addRidges(blurs(Math.max(1, sigma * sizePx))(plane), sample, unit, strength);
    }
  }
  const lines = new Uint8Array(tissue.length);
  const rim = 0.02 * sizePx;
  for (let i = 0; i < lines.length; i++) {
    if (tissue[i] === 255 && sample.depth[i]! > rim && strength[i]! > LEAST_RIDGE) lines[i] = 255;
  }
  const regions = labelRegions(lines, width, height, 255, 8);
  const reach = spansOf(regions.labels, regions.count, width);
  for (let i = 0; i < lines.length; i++) {
    if (lines[i] === 255 && reach[regions.labels[i]!]! < 0.125 * sizePx) lines[i] = 0;
  }
  return lines;
}

/** Second difference, in units of L* over the ridge's own width, that stands out of a camera's grain. */
const LEAST_RIDGE = 0.55;

/** Largest of |λ| where it dominates, over both signs, kept if above what is there already. */
function addRidges(plane: Float32Array, sample: LeafSample, unit: number, strength: Float32Array): void {
  const { width, height, tissue } = sample;
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      if (tissue[i] !== 255) continue;
      const xx = plane[i - 1]! - 2 * plane[i]! + plane[i + 1]!;
      const yy = plane[i - width]! - 2 * plane[i]! + plane[i + width]!;
      const xy =
        (plane[i + width + 1]! - plane[i + width - 1]! - plane[i - width + 1]! + plane[i - width - 1]!) / 4;
      const mean = (xx + yy) / 2;
      const half = (xx - yy) / 2;
      const root = Math.sqrt(half * half + xy * xy);
      const one = Math.abs(mean + root);
      const other = Math.abs(mean - root);
      const ridge = unit * (one > other ? one - 2 * other : other - 2 * one);
      if (ridge > strength[i]!) strength[i] = ridge;
    }
  }
}

/** Longer side of the box round each region. */
function spansOf(labels: Int32Array, count: number, width: number): Float32Array {
  const bounds = boxesOf(labels, count, width);
  return Float32Array.from({ length: count + 1 }, (_, k) =>
    Math.max(bounds[k * 4 + 1]! - bounds[k * 4]!, bounds[k * 4 + 3]! - bounds[k * 4 + 2]!),
  );
}
