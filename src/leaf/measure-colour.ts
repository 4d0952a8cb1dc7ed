import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { convertLinearToSrgb, LINEAR_OF_BYTE } from '../photo/convert-srgb-to-linear.ts';
import { measureDarkGreen } from '../photo/measure-dark-green.ts';
import type { LeafSample } from './sample-leaf.ts';

export interface LeafColour {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
  readonly 'dark-green-index'?: number;
}

/**
 * Mean colour of the tissue that `counts` (255): CIELAB L*, C* and h in degrees 0–360, and the dark green colour index of
 * the mean light. On `papaya-spad` the index of the mean light follows the meter more closely (0.953) than the median of the
 * pixels' own indices (0.946) or the index of any half of them, lighter or darker: what is half lit or glossy is averaged
 * out before the index bends it.
 *
 * @param gains multipliers of linear R, G, B that `lab` was taken under.
 */
export function measureColour(
  sample: LeafSample,
  lab: LabPlanes,
  gains: readonly [number, number, number],
  counts: Uint8Array,
): LeafColour | undefined {
  const data = sample.pixels.data;
  let L = 0;
  let a = 0;
  let b = 0;
  let n = 0;
  let red = 0;
  let green = 0;
  let blue = 0;
  for (let i = 0; i < counts.length; i++) {
    if (counts[i] !== 255) continue;
    n++;
    L += lab.L[i]!;
    a += lab.a[i]!;
    b += lab.b[i]!;
    red += LINEAR_OF_BYTE[data[i * 4]!]!;
    green += LINEAR_OF_BYTE[data[i * 4 + 1]!]!;
    blue += LINEAR_OF_BYTE[data[i * 4 + 2]!]!;
  }
  if (n === 0) return undefined;
  const coded = (gain: number, light: number): number =>
    255 * convertLinearToSrgb(Math.min(1, (gain * light) / n));
  const hue = (Math.atan2(b, a) * 180) / Math.PI;
  const index = measureDarkGreen(coded(gains[0], red), coded(gains[1], green), coded(gains[2], blue));
  return {
    lightness: L / n,
    chroma: Math.hypot(a, b) / n,
    hue: hue < 0 ? hue + 360 : hue,
    ...(index === undefined ? {} : { 'dark-green-index': index }),
  };
}
