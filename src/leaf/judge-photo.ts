import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import type { Pixels } from '../photo/types.ts';
import { blurPlane } from './blur-inside.ts';

/** Exposure of a region: shares of pixels that are nearly black, and that have lost colour to a full channel. */
export interface Exposure {
  readonly medianL: number;
  readonly dark: number;
  readonly burnt: number;
}

/**
 * Byte from which a channel counts as full. One is enough: a leaf's colour is off once its green or red no longer rises,
 * long before it is white (`training/measure-photo-thresholds.ts`).
 */
const FULL = 253;

/** Exposure inside a mask, or of the whole frame. */
export function judgeExposure(frame: Pixels, lab: LabPlanes, mask?: Uint8Array): Exposure {
  const histogram = new Int32Array(101);
  const { data } = frame;
  let n = 0;
  let burnt = 0;
  for (let i = 0; i < lab.L.length; i++) {
    if (mask !== undefined && mask[i] !== 255) continue;
    n++;
    const L = (lab.L[i]! + 0.5) | 0;
    histogram[L < 0 ? 0 : Math.min(100, L)]!++;
    const p = i * 4;
    if (data[p]! >= FULL || data[p + 1]! >= FULL || data[p + 2]! >= FULL) burnt++;
  }
  let seen = 0;
  let medianL = 0;
  let dark = 0;
  for (let L = 0; L <= 100; L++) {
    if (L < 8) dark += histogram[L]!;
    if (2 * seen < n) medianL = L;
    seen += histogram[L]!;
  }
  return { medianL, dark: dark / Math.max(1, n), burnt: burnt / Math.max(1, n) };
}

/**
 * Sharpness 0–1 of a region: how much of the change between neighbouring pixels goes when the picture is blurred a
 * little, compared with what goes from a crisp one (re-blurring; Crete et al. 2007, "The blur effect"). A picture out
 * of focus has little left to lose. At the working frame leaves in focus give 0.6–1, the same blurred by a Gaussian of 2 px
 * 0.25–0.4, of 3 px under 0.22, whatever the leaf.
 */
export function judgeSharpness(
  lab: LabPlanes,
  mask?: Uint8Array,
  soft: Float32Array = softenLightness(lab),
): number {
  const { width, height } = lab;
  const steps = new Int32Array(STEP_BINS);
  let before = 0;
  let after = 0;
  let n = 0;
  for (let y = 0; y < height - 1; y++) {
    for (let x = 0; x < width - 1; x++) {
      const i = y * width + x;
      if (mask !== undefined && mask[i] !== 255) continue;
      const right = Math.abs(lab.L[i + 1]! - lab.L[i]!);
      const below = Math.abs(lab.L[i + width]! - lab.L[i]!);
      steps[Math.min(STEP_BINS - 1, Math.floor(Math.max(right, below) * 10))]!++;
      n++;
      before += right + below;
      after += Math.abs(soft[i + 1]! - soft[i]!) + Math.abs(soft[i + width]! - soft[i]!);
    }
  }
  if (before === 0) return 0;
  const loss = Math.max(0, Math.min(1, (1 - after / before) / CRISP_LOSS));
  // Far out of focus only grain is left, which a blur takes away like detail: no step is steep any more.
  return loss * Math.min(1, stepAt(steps, n, STEEP_SHARE) / STEEP_L);
}

/** L* blurred a little: what sharpness is held against. */
export const softenLightness = ({ L, width, height }: LabPlanes): Float32Array =>
  blurPlane(L, width, height, 1.5);

/** The step in L* that only this share of the pixels exceeds. */
function stepAt(steps: Int32Array, n: number, share: number): number {
  let above = 0;
  for (let bin = STEP_BINS - 1; bin >= 0; bin--) {
    above += steps[bin]!;
    if (above >= share * n) return bin / 10;
  }
  return 0;
}

/** Steps are counted in tenths of L*. */
const STEP_BINS = 400;
/** In a photograph in focus one pixel in a hundred is steeper than this; blurred by 4 px, none reach it. */
const STEEP_SHARE = 0.01;
const STEEP_L = 3;

/** Share of the change that a crisp photograph of a leaf loses. */
const CRISP_LOSS = 0.6;
