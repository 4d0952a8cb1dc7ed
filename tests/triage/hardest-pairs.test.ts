import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { bitsOfAnswer, findHardestPairs } from '../../src/command/evaluate/find-hardest-pairs.ts';
import { knowledgeModel } from '../../src/triage.ts';

const pairs = findHardestPairs(knowledgeModel());

describe('pairs of causes', () => {
  it('there is one for every two listed causes, hardest first', () => {
    const listed = KNOWLEDGE.length - 1;
    expect(pairs).toHaveLength((listed * (listed - 1)) / 2);
    for (let at = 1; at < pairs.length; at++)
      expect(pairs[at]!.allBits).toBeGreaterThanOrEqual(pairs[at - 1]!.allBits);
  });

  it('information of a report, by hand: 0.9 against 0.1 gives 1 − H(0.9) = 0.531 bit, equal chances none', () => {
    expect(bitsOfAnswer([0.9, 0.1], [0.1, 0.9])).toBeCloseTo(0.531004, 6);
    expect(bitsOfAnswer([0.3, 0.7], [0.3, 0.7])).toBe(0);
    expect(bitsOfAnswer([1, 0], [0, 1])).toBe(1);
  });

  it('every pair can be told apart by some finding that a person can be asked for', () => {
    for (const { causes, bestBits, allBits } of pairs) {
      // A report of 0.1 bit multiplies the odds by about two and a half either way.
      expect(bestBits, causes.join(' and ')).toBeGreaterThan(0.1);
      expect(allBits, causes.join(' and ')).toBeGreaterThan(0.5);
      expect(allBits).toBeLessThanOrEqual(1);
    }
  });

  it('no question tells more than one bit, and names which cause it speaks for', () => {
    for (const { causes, questions } of pairs)
      for (const { bits, speaksFor } of questions) {
        expect(bits).toBeLessThanOrEqual(1);
        expect(causes).toContain(speaksFor);
      }
  });
});
