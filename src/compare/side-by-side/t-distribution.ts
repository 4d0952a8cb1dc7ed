import { betaBelow, logGamma } from '../pot-test/beta-functions.ts';
import { normalCdf } from './normal-distribution.ts';

/** Distribution function of Student's t with any positive degrees of freedom (Abramowitz and Stegun 26.7.1 by way of the incomplete beta function). */
export function tCdf(t: number, df: number): number {
  const tail = betaBelow(df / (df + t * t), df / 2, 0.5) / 2;
  return t > 0 ? 1 - tail : tail;
}

/** Value that Student's t stays under with chance p, by halving. @param p between 0 and 1 */
export function tQuantile(p: number, df: number): number {
  if (p === 0.5) return 0;
  if (p < 0.5) return -tQuantile(1 - p, df);
  let low = 0;
  let high = 1;
  while (tCdf(high, df) < p) {
    low = high;
    high *= 2;
  }
  for (let step = 0; step < 200 && high - low > 1e-13 * high; step += 1) {
    const middle = (low + high) / 2;
    if (tCdf(middle, df) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Distribution function of the noncentral t: the series of Lenth (1989, Applied Statistics 38, algorithm AS 243), each term worked from
 * logarithms so that a large shift does not underflow.
 * @param shift noncentrality, 0 to about 40
 */
export function noncentralTCdf(t: number, df: number, shift: number): number {
  if (shift === 0) return tCdf(t, df);
  if (t < 0) return 1 - noncentralTCdf(-t, df, -shift);
  const base = normalCdf(-shift);
  if (t === 0) return base;
  const x = (t * t) / (t * t + df);
  const half = (shift * shift) / 2;
  let sum = 0;
  let weight = 0;
  for (let j = 0; j < 5000 && (weight < 1 - 1e-13 || j < half); j += 1) {
    const p = Math.exp(-half + j * Math.log(half) - logGamma(j + 1));
    const q = (shift / Math.SQRT2) * Math.exp(-half + j * Math.log(half) - logGamma(j + 1.5));
    weight += p;
    sum += p * betaBelow(x, j + 0.5, df / 2) + q * betaBelow(x, j + 1, df / 2);
    if (j > half && p < 1e-16) break;
  }
  return Math.min(1, Math.max(0, base + sum / 2));
}
