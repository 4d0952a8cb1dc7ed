import { labelRegions } from './label-regions.ts';
import type { Measured } from './measures.ts';
import { boundsOf, cropMask } from './sample-leaf.ts';

/**
 * Least size of a hole that counts, as a share of the filled outline's area: some 1.6 % of the leaf's size across.
 * Smaller ones add to the area that is lost but not to the count, since pictures stop showing them one by one.
 */
export const LEAST_HOLE = 2e-4;

/**
 * Counts holes in the working frame: pieces without tissue that touch each other by sides or corners, closed all round by
 * tissue, of at least `LEAST_HOLE` of the filled outline. The error grows with those near that size, which another
 * picture may show as larger or smaller, and with all of them, since thin bridges between two come and go.
 *
 * @param outline 255 inside the filled outline, on a frame `width` px wide
 * @param remaining 255 where tissue is there
 */
export function countHoles(
  outline: Uint8Array,
  remaining: Uint8Array,
  width: number,
  height: number,
): Measured {
  const box = boundsOf(outline, width, height);
  const within = cropMask(outline, width, box);
  const tissue = cropMask(remaining, width, box);
  let area = 0;
  const gone = new Uint8Array(within.length);
  for (let k = 0; k < gone.length; k++) {
    if (within[k] === 255) area++;
    if (within[k] === 255 && tissue[k] !== 255) gone[k] = 255;
  }
  const { sizes, count } = labelRegions(gone, box.width, box.height, 255, 8);
  const least = Math.max(4, LEAST_HOLE * area);
  let value = 0;
  let uncertain = 0;
  for (let k = 1; k <= count; k++) {
    if (sizes[k]! >= least) value++;
    if (sizes[k]! > least / NEAR_LEAST && sizes[k]! < least * NEAR_LEAST) uncertain++;
  }
  return { value, se: Math.sqrt(COUNT_FLOOR + COUNT_NEAR * uncertain + COUNT_SHARE * value) };
}

/** Sizes within this factor of the least may fall on either side of it. */
const NEAR_LEAST = 2;
const COUNT_FLOOR = 0.15;
const COUNT_NEAR = 0.25;
const COUNT_SHARE = 0.06;
