/**
 * Hue angle of a CIELAB colour in degrees, −180 to 180, 0 for greys: `atan2(b, a)` by the polynomial of Abramowitz and
 * Stegun 4.4.47 (off by at most 0.0006 degrees), at a third of the cost, since every pixel of a leaf is asked many times.
 */
export function measureHue(a: number, b: number): number {
  const x = Math.abs(a);
  const y = Math.abs(b);
  const most = Math.max(x, y);
  if (most === 0) return 0;
  const t = Math.min(x, y) / most;
  const s = t * t;
  let angle = ((((0.0208351 * s - 0.085133) * s + 0.180141) * s - 0.3302995) * s + 0.999866) * t * DEGREES;
  if (y > x) angle = 90 - angle;
  if (a < 0) angle = 180 - angle;
  return b < 0 ? -angle : angle;
}

const DEGREES = 180 / Math.PI;
