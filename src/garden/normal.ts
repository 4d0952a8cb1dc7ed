/** P(Z ≤ z) of the standard normal distribution (Abramowitz and Stegun 7.1.26, from memory; error below 2e-7). */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (poly * Math.exp(-x * x)) / 2;
  return z > 0 ? 1 - tail : tail;
}

/** A positive number known only so well: its logarithm is normal. */
export interface LogNormal {
  readonly logMean: number;
  readonly logSd: number;
}

/** Where one and nine in ten lie from the middle, in standard deviations. */
const DECILE = 1.2815515655446004;

/** From the points that one in ten, half and nine in ten lie below. */
export function logNormalOf(low: number, middle: number, high: number): LogNormal {
  return { logMean: Math.log(middle), logSd: Math.log(high / low) / (2 * DECILE) };
}

/** Chance that it exceeds a limit, which may itself be uncertain by a factor e^limitSd. */
export function chanceAbove({ logMean, logSd }: LogNormal, limit: number, limitSd = 0): number {
  const sd = Math.hypot(logSd, limitSd);
  const by = logMean - Math.log(limit);
  return sd > 0 ? normalBelow(by / sd) : by > 0 ? 1 : 0;
}
