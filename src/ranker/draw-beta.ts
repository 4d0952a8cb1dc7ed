/** A source of uniform numbers in (0, 1), reproducible from its seed (mulberry32, public domain, from memory). */
export function seededUniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
}

/** A 32-bit fingerprint of a text (FNV-1a), to seed draws by name so that they do not depend on order. */
export function fingerprint(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

function drawNormal(uniform: () => number): number {
  return Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** One draw from Gamma(shape, 1) (Marsaglia and Tsang 2000, from memory). */
function drawGamma(shape: number, uniform: () => number): number {
  if (shape < 1) return drawGamma(shape + 1, uniform) * uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = drawNormal(uniform);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/**
 * One draw from the Beta distribution with this mean and equivalent number of observations, kept off 0 and 1.
 * @param mean in (0, 1)
 * @param observations α + β, positive; 0 or less gives the mean itself
 */
export function drawBeta(mean: number, observations: number, uniform: () => number): number {
  if (observations <= 0 || mean <= 0 || mean >= 1) return mean;
  const a = drawGamma(mean * observations, uniform);
  const b = drawGamma((1 - mean) * observations, uniform);
  return Math.min(1 - 1e-6, Math.max(1e-6, a / (a + b)));
}
