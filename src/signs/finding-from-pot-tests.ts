import { findingOf, saysNothing } from './finding-from-ratio.ts';
import type { Finding } from './types.ts';

/**
 * How strong a pot test may speak, whatever its pots say: samples can miss the bad corner of a heap, and labels get mixed up. Found injury
 * counts at most as much as a grower's own word for it, which is 225 to 1; none found speaks against it 30 to 1 at most (ours).
 */
export const POT_TEST_BOUNDS = { least: 1 / 30, most: 200 } as const;

/** A test that says more than this, either way, need not be sown again: the chance at which one stops (19 in 20 from even odds). */
const DECIDED = 19;

/** Has the pot test said so much that nobody should be asked to sow another? */
export const isDecided = ({ ifPresent, ifAbsent }: Finding): boolean =>
  Math.max(ifPresent / ifAbsent, ifAbsent / ifPresent) >= DECIDED;

/**
 * What pot tests of the loads under a plant say of the sign `pot-test-injury`. One load that hurts is enough, so the strongest ratio
 * counts where any speaks for it; where none does, the weakest of those that speak against it, since each load would have to be
 * clean. Pure.
 * @param ratios of each tested load: how much likelier what its pots showed is with injury by it than without
 * @param said findings of the looks; where the grower has answered about the pots, that counts and this gives nothing
 * @returns nothing where no test has spoken clearly
 */
export function findingFromPotTests(
  ratios: readonly number[],
  said: readonly Finding[] = [],
): Finding | undefined {
  if (ratios.length === 0 || said.some(({ sign }) => sign === 'pot-test-injury')) return undefined;
  const ratio = Math.min(POT_TEST_BOUNDS.most, Math.max(POT_TEST_BOUNDS.least, ...ratios));
  if (saysNothing(ratio)) return undefined;
  return findingOf('pot-test-injury', ratio, 'records');
}
