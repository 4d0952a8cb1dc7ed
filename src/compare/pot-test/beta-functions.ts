/** Special functions for exact chances. Held against a general statistics library in `tests/compare/pot-test/`. */

/** Coefficients for g = 7, n = 9 (Lanczos 1964, as tabled by Godfrey; from memory). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** Natural logarithm of the gamma function, x > 0. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  let sum: number = LANCZOS[0];
  for (let i = 1; i < LANCZOS.length; i++) sum += LANCZOS[i]! / (z + i);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

export const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/** Continued fraction of the incomplete beta function (Abramowitz and Stegun 26.5.8), by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const notZero = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / notZero(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m <= 300; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / notZero(1 + even * d);
    c = notZero(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / notZero(1 + odd * d);
    c = notZero(1 + odd / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-14) break;
  }
  return h;
}

/** P(X ≤ x) of a Beta(a, b). */
export function betaBelow(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(x, a, b)) / a
    : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/**
 * P(y of n) where each pot's own chance is a Beta with mean p and intra-pot correlation rho: variance n p (1 − p)
 * (1 + (n − 1) rho) (Williams 1975). `rho` 0: binomial.
 */
export function betaBinomial(y: number, n: number, p: number, rho: number): number {
  if (p <= 0) return y === 0 ? 1 : 0;
  if (p >= 1) return y === n ? 1 : 0;
  const ways = -Math.log(n + 1) - logBeta(y + 1, n - y + 1);
  if (rho <= 0) return Math.exp(ways + y * Math.log(p) + (n - y) * Math.log1p(-p));
  const [a, b] = [(p * (1 - rho)) / rho, ((1 - p) * (1 - rho)) / rho];
  return Math.exp(ways + logBeta(y + a, n - y + b) - logBeta(a, b));
}
