/**
 * Distribution function of the normal distribution: the all-positive series of Abramowitz and Stegun 26.2.11 near the middle, the continued
 * fraction 26.2.14 in the tails.
 */
export function normalCdf(z: number): number {
  const size = Math.abs(z);
  const density = Math.exp((-size * size) / 2) / Math.sqrt(2 * Math.PI);
  let upper: number;
  if (size < 3) {
    let term = size;
    let sum = size;
    for (let k = 1; term > 1e-18 * sum; k += 1) {
      term *= (size * size) / (2 * k + 1);
      sum += term;
    }
    upper = 0.5 - density * sum;
  } else {
    let fraction = size;
    for (let k = 200; k > 0; k -= 1) fraction = size + k / fraction;
    upper = density / fraction;
  }
  return z > 0 ? 1 - upper : upper;
}
