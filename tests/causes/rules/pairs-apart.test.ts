import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { leakOf, UNLISTED_Q } from '../../../src/causes/leaks.ts';
import type { Cause } from '../../../src/causes/schema.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import { FREQUENCY_WORDS, type SignId } from '../../../src/signs/vocabulary.ts';
import { nodesOf } from './nodes-of.ts';

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

const listed = KNOWLEDGE.filter(({ id }) => id !== 'unlisted');
const chances = new Map(listed.map((cause) => [cause.id, signChances(cause)]));

// 10 decibans would be "strong" on Jeffreys' scale; half of that, 5 dB = a factor of 3.16, is "substantial" (STATLECT-J).
describe('every pair of causes can be told apart by some finding of 5 decibans or more', () => {
  it.each(listed)('$id and each other', ({ id }) => {
    const one = chances.get(id)!;
    for (const other of listed) {
      if (other.id === id) continue;
      const two = chances.get(other.id)!;
      const best = Math.max(
        ...ALL_SIGNS.map((sign) => {
          const [p, q] = [one.get(sign)!, two.get(sign)!];
          return Math.max(Math.abs(Math.log10(p / q)), Math.abs(Math.log10((1 - p) / (1 - q)))) * 10;
        }),
      );
      expect(best, `${id} and ${other.id}`).toBeGreaterThanOrEqual(5);
    }
  });
});
