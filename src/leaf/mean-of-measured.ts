import type { Measured } from './measures.ts';

/** The mean of one measure over several leaves, with the error of that mean: their own errors and how far they differ. */
export function meanOfMeasured(all: readonly Measured[]): Measured | undefined {
  if (all.length < 2) return all[0];
  const n = all.length;
  const value = all.reduce((sum, one) => sum + one.value, 0) / n;
  const own = all.reduce((sum, { se }) => sum + se ** 2, 0) / n;
  const among = all.reduce((sum, one) => sum + (one.value - value) ** 2, 0) / (n - 1);
  return { value, se: Math.sqrt(Math.max(own, among) / n) };
}
