import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { blurPlane } from './blur-inside.ts';
import { measureDistances } from './measure-distances.ts';
import type { Measured } from './measures.ts';

/** Step of L* by which a dot stands out from its ring. */
const DOT_STEP = 4;

/**
 * Tiny pale dots per 1,000 px of leaf at the working frame: local maxima of a difference of Gaussians of L* (1 px and
 * 2.2 px, dots of about 2–4 px) that stand out on all sides, away from the outline. Error: counting noise and a tenth
 * of the value for the threshold.
 *
 * @param fine L* blurred by 1 px or little more, as `softenLightness` gives it: the narrowest blur there is
 */
export function measureStipples(
  lab: LabPlanes,
  remaining: Uint8Array,
  outline: Uint8Array,
  fine: Float32Array,
): Measured | undefined {
  const { width, height } = lab;
  const depth = measureDistances(outline, width, height, 255, 6);
  const broad = blurPlane(lab.L, width, height, 2.2);
  let dots = 0;
  let area = 0;
  for (let y = 2; y < height - 2; y++) {
    for (let x = 2; x < width - 2; x++) {
      const i = y * width + x;
      if (remaining[i] !== 255 || depth[i]! < 4) continue;
      area++;
      const here = fine[i]! - broad[i]!;
      if (here < DOT_STEP * 0.4) continue;
      let isDot = true;
      for (let dy = -1; dy <= 1 && isDot; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const j = i + dy * width + dx;
          if (j !== i && fine[j]! - broad[j]! >= here) {
            isDot = false;
            break;
          }
        }
      }
      // A vein is as bright two steps on in some direction; a dot is not in any.
      if (isDot && isRound(fine, i, width)) dots++;
    }
  }
  if (area < 500) return undefined;
  const value = (1000 * dots) / area;
  return { value, se: RETAKEN * Math.hypot((1000 * Math.sqrt(dots + 1)) / area, 0.1 * value) };
}

function isRound(fine: Float32Array, i: number, width: number): boolean {
  const here = fine[i]!;
  for (const d of [2, 2 * width, 2 * width + 2, 2 * width - 2]) {
    if (here - Math.max(fine[i - d]!, fine[i + d]!) < DOT_STEP * 0.5) return false;
  }
  return true;
}

/** Dots at the limit of sight come and go between two shots more than counting alone says (`training/check-errors.ts`). */
const RETAKEN = 1.4;
