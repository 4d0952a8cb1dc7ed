import type { Measured } from '../../../leaf/measures.ts';
import { isDoubtful } from '../../words/measures.ts';

/** Likelihood ratios below this say so little that a line would only be noise. */
export const LEAST_RATIO = 1.6;

/** Three words for a likelihood ratio: 10 and 3 are the usual marks of strong and moderate evidence (from memory). */
export function strengthOf(ratio: number): 'strong' | 'some' | 'faint' {
  const size = Math.max(ratio, 1 / ratio);
  if (size >= 10) return 'strong';
  return size >= 3 ? 'some' : 'faint';
}

/** The same for a sign that is seen by how much of it was measured: nobody sees clearly what may well be none. */
export function strengthSeenBy(ratio: number, amount: Measured | undefined): ReturnType<typeof strengthOf> {
  const strength = strengthOf(ratio);
  return strength === 'strong' && amount && isDoubtful(amount) ? 'some' : strength;
}
