/**
 * CIEDE2000 difference of two CIELAB colours (Sharma, Wu and Dalal 2005 [SHARMA-2005], with kL = kC = kH = 1). Symbols are
 * the paper's. Symmetric, 0 for equal colours.
 */
export function measureColourDifference(
  first: readonly [number, number, number],
  second: readonly [number, number, number],
): number {
  const [L1, a1, b1] = first;
  const [L2, a2, b2] = second;
  // Step 1: C'ab and h'ab.
  const C̄ab = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const G = 0.5 * (1 - Math.sqrt(C̄ab ** 7 / (C̄ab ** 7 + 25 ** 7)));
  const a1ʹ = (1 + G) * a1;
  const a2ʹ = (1 + G) * a2;
  const C1ʹ = Math.hypot(a1ʹ, b1);
  const C2ʹ = Math.hypot(a2ʹ, b2);
  const h1ʹ = hueDegrees(a1ʹ, b1);
  const h2ʹ = hueDegrees(a2ʹ, b2);
  // Step 2: differences.
  const ΔLʹ = L2 - L1;
  const ΔCʹ = C2ʹ - C1ʹ;
  let Δhʹ = h2ʹ - h1ʹ;
  if (C1ʹ * C2ʹ === 0) Δhʹ = 0;
  else if (Δhʹ > 180) Δhʹ -= 360;
  else if (Δhʹ < -180) Δhʹ += 360;
  const ΔHʹ = 2 * Math.sqrt(C1ʹ * C2ʹ) * sinDegrees(Δhʹ / 2);
  // Step 3: means and weights.
  const L̄ʹ = (L1 + L2) / 2;
  const C̄ʹ = (C1ʹ + C2ʹ) / 2;
  let h̄ʹ = h1ʹ + h2ʹ;
  if (C1ʹ * C2ʹ !== 0) {
    if (Math.abs(h1ʹ - h2ʹ) <= 180) h̄ʹ /= 2;
    else h̄ʹ = (h̄ʹ + (h̄ʹ < 360 ? 360 : -360)) / 2;
  }
  const T =
    1 -
    0.17 * cosDegrees(h̄ʹ - 30) +
    0.24 * cosDegrees(2 * h̄ʹ) +
    0.32 * cosDegrees(3 * h̄ʹ + 6) -
    0.2 * cosDegrees(4 * h̄ʹ - 63);
  const Δθ = 30 * Math.exp(-(((h̄ʹ - 275) / 25) ** 2));
  const RC = 2 * Math.sqrt(C̄ʹ ** 7 / (C̄ʹ ** 7 + 25 ** 7));
  const SL = 1 + (0.015 * (L̄ʹ - 50) ** 2) / Math.sqrt(20 + (L̄ʹ - 50) ** 2);
  const SC = 1 + 0.045 * C̄ʹ;
  const SH = 1 + 0.015 * C̄ʹ * T;
  const RT = -sinDegrees(2 * Δθ) * RC;
  return Math.sqrt((ΔLʹ / SL) ** 2 + (ΔCʹ / SC) ** 2 + (ΔHʹ / SH) ** 2 + RT * (ΔCʹ / SC) * (ΔHʹ / SH));
}

const RADIANS = Math.PI / 180;
const sinDegrees = (x: number): number => Math.sin(x * RADIANS);
const cosDegrees = (x: number): number => Math.cos(x * RADIANS);

function hueDegrees(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const h = Math.atan2(b, a) / RADIANS;
  return h < 0 ? h + 360 : h;
}
