import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { blurInside } from './blur-inside.ts';
import { boxesOf } from './boxes-of.ts';
import { fillHoles, labelRegions } from './label-regions.ts';
import type { LeafSample } from './sample-leaf.ts';

export interface Spots {
  readonly count: number;
  /** Pixels in spots. */
  readonly area: number;
}

/** Steps against what lies round it by which a spot stands out of the grain of leaves: redness, and degrees of hue. */
const REDDER = 6;
const BROWNER = 6;
/** How far round a spot it is compared with, over the root of the leaf's area. */
const AROUND = 0.08;
/** Least share of the square round a spot that it fills: a disc fills 0.79, a line along a vein next to nothing. */
const COMPACT = 0.35;

/**
 * Dead spots: pieces both redder (a* freed of shading) and of a browner hue than what lies round them, filled where the middle
 * is pale, that are compact, off the very edge and no larger than a thirtieth of the leaf. Glare is less green too, but its
 * hue does not turn to brown: that is why both are asked for.
 * @param hue hue smoothed over the leaf, degrees; `tissue` 255 = counts
 */
export function measureSpots(
  sample: LeafSample,
  lab: LabPlanes,
  hue: Float32Array,
  tissue: Uint8Array,
): Spots {
  const { width, height, sizePx } = sample;
  const spot = fillHoles(standOut(sample, lab, hue, tissue), width, height);
  const regions = labelRegions(spot, width, height, 255, 8);
  const least = Math.max(4, 1e-4 * sizePx * sizePx);
  const most = (sizePx * sizePx) / 30;
  const bounds = boxesOf(regions.labels, regions.count, width);
  let count = 0;
  let area = 0;
  for (let k = 1; k <= regions.count; k++) {
    const size = regions.sizes[k]!;
    const w = bounds[k * 4 + 1]! - bounds[k * 4]! + 1;
    const h = bounds[k * 4 + 3]! - bounds[k * 4 + 2]! + 1;
    if (size < least || size > most || size < COMPACT * Math.max(w, h) ** 2) continue;
    count++;
    area += size;
  }
  return { count, area };
}

function standOut(sample: LeafSample, lab: LabPlanes, hue: Float32Array, tissue: Uint8Array): Uint8Array {
  const { width, height, sizePx, depth } = sample;
  // a* over L* + 16 is free of shading: both grow with the cube root of the light.
  const redness = lab.a.map((a, i) => (66 * a) / (lab.L[i]! + 16));
  const redNear = blurInside(redness, tissue, width, height, AROUND * sizePx);
  const hueNear = blurInside(hue, tissue, width, height, AROUND * sizePx);
  return Uint8Array.from(tissue, (inside, i) =>
    inside === 255 &&
    depth[i]! >= 1.5 &&
    redness[i]! - redNear[i]! > REDDER &&
    hueNear[i]! - hue[i]! > BROWNER
      ? 255
      : 0,
  );
}
