import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import type { InsideBlurs } from './blur-inside.ts';
import type { LeafSample } from './sample-leaf.ts';

/** Half the width of the green band along a vein, over the root of the leaf's area. */
const BAND = 0.018;
/** Smoothing flattens lines, and most of a leaf is not line: this brings the value to the size of the steps one sees. */
const SCALE = 10;

/**
 * How much less yellow (b*) lines are than what lies on both their sides, averaged over the leaf, less the same for lines that
 * are yellower; undefined on too few pixels. A line is where the second derivative across is more than twice that along
 * (Hessian eigenvalues; Lindeberg 1998); patches and spots have no such direction. On b* because the green bands along veins
 * in `chilli-india/nutritional` stand out there most, on hue and L* less. Greener lines count 1.3-fold: in a pattern of plain
 * stripes both kinds are equally strong, and the veins of a leaf are the greener.
 */
export function contrastVeins(
  sample: LeafSample,
  lab: LabPlanes,
  living: Uint8Array,
  blurs: InsideBlurs,
): number | undefined {
  const { width, height, sizePx, depth } = sample;
  const sigma = BAND * sizePx;
  const plane = blurs(Math.max(0.8, sigma))(lab.b);
  const step = Math.max(1, Math.round(0.7 * sigma));
  const row = step * width;
  let greener = 0;
  let yellower = 0;
  let n = 0;
  for (let y = step; y < height - step; y++) {
    for (let x = step; x < width - step; x++) {
      const i = y * width + x;
      if (living[i] !== 255 || depth[i]! < 0.03 * sizePx) continue;
      n++;
      const xx = plane[i - step]! - 2 * plane[i]! + plane[i + step]!;
      const yy = plane[i - row]! - 2 * plane[i]! + plane[i + row]!;
      const xy =
        (plane[i + row + step]! - plane[i + row - step]! - plane[i - row + step]! + plane[i - row - step]!) /
        4;
      const mean = (xx + yy) / 2;
      const half = (xx - yy) / 2;
      const root = Math.sqrt(half * half + xy * xy);
      // Half the second difference is the line's own step against the mean of its two sides.
      if (mean + root > 2 * Math.abs(mean - root)) greener += (mean + root) / 2;
      else if (root - mean > 2 * Math.abs(mean + root)) yellower += (root - mean) / 2;
    }
  }
  return n > 100 ? (SCALE * (1.3 * greener - yellower)) / n : undefined;
}
