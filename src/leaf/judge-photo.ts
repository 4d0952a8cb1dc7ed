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
 * Sharpness 0–1 of a region: how much of the change of lightness within 3 px happens within 1 px, at the working frame.
 * A lens out of focus takes the finest change first. On the photographs, sharp leaves give 0.5–0.9; the same blurred by
 * 3 px give less than 0.2.
 */
export function judgeSharpness(lab: LabPlanes, mask?: Uint8Array): number {
  const { width, height } = lab;
  const soft = blurPlane(lab.L, width, height, 1.2);
  const softer = blurPlane(soft, width, height, 2.5);
  let fine = 0;
  let coarse = 0;
  for (let i = 0; i < lab.L.length; i++) {
    if (mask !== undefined && mask[i] !== 255) continue;
    const f = lab.L[i]! - soft[i]!;
    const c = soft[i]! - softer[i]!;
    fine += f * f;
    coarse += c * c;
  }
  const ratio = Math.sqrt(fine / Math.max(1e-6, coarse));
  return ratio / (ratio + SHARP_HALF);
}

/** Ratio at which sharpness is one half. */
const SHARP_HALF = 0.5;
