import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';

/**
 * How plant-like a colour is, 0–1, before any leaf is known: green to yellow hues at some chroma count most, the browns
 * and purples of sick leaves not (soil and skin have them too), nor blue and grey. Hue counts fully from 95 to 170 degrees,
 * falling to nothing at 80 and at 215 (deep bluish greens in open shade). Bounds set on the photographs by eye; healthy
 * to yellow leaves of all sets lie at CIELAB hues of 85–150 degrees.
 */
export function judgePlantColour(a: number, b: number): number {
  const chroma = Math.sqrt(a * a + b * b);
  if (chroma <= 2) return 0;
  const angle = (Math.atan2(b, a) * 180) / Math.PI;
  const hue = angle < 0 ? angle + 360 : angle;
  const byHue = hue < 95 ? (hue - 80) / 15 : hue > 170 ? (215 - hue) / 45 : 1;
  return Math.max(0, Math.min(1, byHue)) * Math.min(1, (chroma - 2) / 5);
}

/** The same for every pixel of a picture. */
export function judgePlant(lab: LabPlanes): Float32Array {
  return lab.a.map((a, i) => judgePlantColour(a, lab.b[i]!));
}
