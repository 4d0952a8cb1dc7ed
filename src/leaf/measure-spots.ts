import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import type { InsideBlurs } from './blur-inside.ts';
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
 * @param tissue 255 = counts; `blurs` are over it
 */
export function measureSpots(
  sample: LeafSample,
  lab: LabPlanes,
  tissue: Uint8Array,
  blurs: InsideBlurs,
): Spots {
  const { width, height, sizePx } = sample;
  const spot = fillHoles(standOut(sample, lab, tissue, blurs), width, height);
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

function standOut(
  { sizePx, depth }: LeafSample,
  lab: LabPlanes,
  tissue: Uint8Array,
  blurs: InsideBlurs,
): Uint8Array {
  const here = blurs(Math.max(0.7, FINE * sizePx));
  const near = blurs(AROUND * sizePx);
  const red = freeOfShading(lab.a, lab, tissue);
  const yellow = freeOfShading(lab.b, lab, tissue);
  const redHere = here(red);
  const redNear = near(red);
  const yellowHere = here(yellow);
  const yellowNear = near(yellow);
  const out = new Uint8Array(tissue.length);
  for (let i = 0; i < out.length; i++) {
    if (tissue[i] !== 255 || depth[i]! < 1.5) continue;
    const redder = redHere[i]! - redNear[i]!;
    if (redder > REDDER && yellowHere[i]! - yellowNear[i]! > -YELLOW_LOST * redder) out[i] = 255;
  }
  return out;
}

/** A plane of colour over L* + 16, as at L* 50: both grow with the cube root of the light. */
function freeOfShading(colour: Float32Array, lab: LabPlanes, tissue: Uint8Array): Float32Array {
  const plane = new Float32Array(colour.length);
  for (let i = 0; i < plane.length; i++) {
    if (tissue[i] === 255) plane[i] = (66 * colour[i]!) / (lab.L[i]! + 16);
  }
  return plane;
}
