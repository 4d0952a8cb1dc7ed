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

/** Step of redness (a* as at L* 50) against what lies round it by which a spot stands out of the grain of leaves. */
const REDDER = 5;
/** For each step of redness a spot may lose at most this much yellow: glare and powder, which bleach to white, lose more. */
const YELLOW_LOST = 0.7;
/** Smoothing against the grain of the camera, over the root of the leaf's area. */
const FINE = 0.006;
/** How far round a spot it is compared with, over the root of the leaf's area. */
const AROUND = 0.08;
/** Least share of the square round a spot that it fills: a disc fills 0.79, a line along a vein next to nothing. */
const COMPACT = 0.35;

/**
 * Dead spots: pieces redder than what lies round them and not just bleached, filled where the middle is pale, that are
 * compact, off the very edge and no larger than a thirtieth of the leaf. Told by the way in which colour turns and not by
 * where it ends, so that a colour cast does not hide a spot: a grey one on a leaf that looks blue is still told.
 * @param tissue 255 = counts
 */
export function measureSpots(sample: LeafSample, lab: LabPlanes, tissue: Uint8Array): Spots {
  const { width, height, sizePx } = sample;
  const spot = fillHoles(standOut(sample, lab, tissue), width, height);
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

function standOut(sample: LeafSample, lab: LabPlanes, tissue: Uint8Array): Uint8Array {
  const redder = stepsOf(lab.a, lab, sample, tissue);
  const yellower = stepsOf(lab.b, lab, sample, tissue);
  return Uint8Array.from(tissue, (inside, i) =>
    inside === 255 &&
    sample.depth[i]! >= 1.5 &&
    redder[i]! > REDDER &&
    yellower[i]! > -YELLOW_LOST * redder[i]!
      ? 255
      : 0,
  );
}

/** How far a plane of colour, freed of shading, lies above what is round each pixel. */
function stepsOf(colour: Float32Array, lab: LabPlanes, sample: LeafSample, tissue: Uint8Array): Float32Array {
  const { width, height, sizePx } = sample;
  // Over L* + 16 it is free of shading: both grow with the cube root of the light.
  const plane = colour.map((value, i) => (66 * value) / (lab.L[i]! + 16));
  const here = blurInside(plane, tissue, width, height, Math.max(0.7, FINE * sizePx));
  const near = blurInside(plane, tissue, width, height, AROUND * sizePx);
  return here.map((value, i) => value - near[i]!);
}
