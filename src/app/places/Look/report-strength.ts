/** Likelihood ratios below this say so little that a line would only be noise. */
export const LEAST_RATIO = 1.6;

/** Three words for a likelihood ratio: 10 and 3 are the usual marks of strong and moderate evidence (from memory). */
export function strengthOf(ratio: number): 'strong' | 'some' | 'faint' {
  const size = Math.max(ratio, 1 / ratio);
  if (size >= 10) return 'strong';
  return size >= 3 ? 'some' : 'faint';
}
