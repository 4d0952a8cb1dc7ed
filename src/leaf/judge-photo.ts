import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import type { Pixels } from '../photo/types.ts';
import { blurPlane } from './blur-inside.ts';

/** Exposure of a region: shares of pixels that are nearly black, and that have lost colour to full white. */
export interface Exposure {
  readonly medianL: number;
  readonly dark: number;
  readonly burnt: number;
}

/** Exposure inside a mask, or of the whole frame. */
export function judgeExposure(frame: Pixels, lab: LabPlanes, mask?: Uint8Array): Exposure {
  const histogram = new Int32Array(101);
  let n = 0;
  let burnt = 0;
  for (let i = 0; i < lab.L.length; i++) {
    if (mask !== undefined && mask[i] !== 255) continue;
    n++;
    const L = Math.max(0, Math.min(100, Math.round(lab.L[i]!)));
    histogram[L]!++;
    const p = i * 4;
    if (Math.min(frame.data[p]!, frame.data[p + 1]!, frame.data[p + 2]!) >= 250) burnt++;
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
export function judgeSharpness(lab: LabPlanes, mask?: Uint8Array): number {
  const { width, height } = lab;
  const soft = blurPlane(lab.L, width, height, 1.5);
  let before = 0;
  let after = 0;
  for (let y = 0; y < height - 1; y++) {
    for (let x = 0; x < width - 1; x++) {
      const i = y * width + x;
      if (mask !== undefined && mask[i] !== 255) continue;
      before += Math.abs(lab.L[i + 1]! - lab.L[i]!) + Math.abs(lab.L[i + width]! - lab.L[i]!);
      after += Math.abs(soft[i + 1]! - soft[i]!) + Math.abs(soft[i + width]! - soft[i]!);
    }
  }
  if (before === 0) return 0;
  return Math.max(0, Math.min(1, (1 - after / before) / CRISP_LOSS));
}

/** Share of the change that a crisp photograph of a leaf loses. */
const CRISP_LOSS = 0.6;
