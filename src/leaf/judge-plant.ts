import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';

/**
 * How plant-like the colour of every pixel is, 0–1, before any leaf is known: green to yellow hues at some chroma count
 * most, the browns and purples of sick leaves a little (soil and skin have them too), blue and grey not.
 * Bounds set on the photographs by eye; healthy to yellow leaves of all sets lie at CIELAB hues of 85–150 degrees.
 */
export function judgePlant(lab: LabPlanes): Float32Array {
  const n = lab.width * lab.height;
  const plant = new Float32Array(n);
  for (let i = 0; i < n; i++) {
    const a = lab.a[i]!;
    const b = lab.b[i]!;
    const chroma = Math.hypot(a, b);
    const hue = (Math.atan2(b, a) * 180) / Math.PI;
    // Hue: full from 95 to 170, falling to nothing at 80 and 215 (deep bluish greens in open shade).
    const h = hue < 0 ? hue + 360 : hue;
    const byHue = h < 95 ? (h - 80) / 15 : h > 170 ? (215 - h) / 45 : 1;
    plant[i] = Math.max(0, Math.min(1, byHue)) * Math.max(0, Math.min(1, (chroma - 2) / 5));
  }
  return plant;
}
