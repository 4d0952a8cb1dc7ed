import { leakOf, UNLISTED_Q } from '../../../src/causes/leaks.ts';
import type { Cause } from '../../../src/causes/schema.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import { FREQUENCY_WORDS, type SignId } from '../../../src/signs/vocabulary.ts';
import { nodesOf } from './nodes-of.ts';
import type { Rule } from './rule.ts';

/** 10 decibans would be "strong" on Jeffreys' scale; half of that, 5 dB = a factor of 3.16, is "substantial" (STATLECT-J). */
const SUBSTANTIAL_DECIBANS = 5;

/** P(sign | this cause alone): its own rate over the background, by the noisy-OR. */
function signChances(cause: Cause): Map<SignId, number> {
  const words = new Map(cause.signs.flatMap(nodesOf).map(({ sign, word }) => [sign, FREQUENCY_WORDS[word]]));
  return new Map(
    ALL_SIGNS.map((sign) => {
      const q = cause.id === 'unlisted' ? UNLISTED_Q : (words.get(sign) ?? 0);
      return [sign, 1 - (1 - leakOf(sign)) * (1 - q)];
    }),
  );
}

/** The weight of the finding that parts two causes best, seen or looked for in vain. */
function bestDecibans(one: Map<SignId, number>, two: Map<SignId, number>): number {
  return Math.max(
    ...ALL_SIGNS.map((sign) => {
      const [p, q] = [one.get(sign)!, two.get(sign)!];
      return 10 * Math.max(Math.abs(Math.log10(p / q)), Math.abs(Math.log10((1 - p) / (1 - q))));
    }),
  );
}

export const pairsApart: Rule = {
  name: 'pairs apart',
  says: `every pair of causes can be told apart by some finding of ${SUBSTANTIAL_DECIBANS} decibans or more`,
  check(causes) {
    const listed = causes.filter(({ id }) => id !== 'unlisted');
    const chances = listed.map(signChances);
    return listed.flatMap(({ id }, one) =>
      listed.slice(one + 1).flatMap((other, offset) => {
        const best = bestDecibans(chances[one]!, chances[one + 1 + offset]!);
        return best >= SUBSTANTIAL_DECIBANS ? [] : [`${id} and ${other.id}: at best ${best.toFixed(1)} dB`];
      }),
    );
  },
};
