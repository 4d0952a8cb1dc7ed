import { describe, expect, it } from 'vitest';
import { chanceToSee, smallestSeen } from '../../../src/compare/side-by-side/plan-numbers.ts';
import { BEDS, PAIRS, RANDOM, SHAPES, simulateChance, simulateCoverage } from './simulate-trials.ts';

/** Trials a cell; the whole table is made by `training/check-trial-coverage.ts`. */
const RUNS = 400;
/** Three standard errors of a share of 9 in 10. */
const CHANCE = 3 * Math.sqrt((0.9 * 0.1) / RUNS);

describe('a part of the coverage table once more', () => {
  for (const design of [RANDOM(3), RANDOM(6), PAIRS(8), RANDOM(5, 3), BEDS(3)])
    for (const shape of SHAPES) {
      // Counting orders promises nothing where one side spreads twice as far as the other.
      const least = shape === 'unequal' ? 0.85 : 0.9;
      it(`holds at least ${least * 100} in 100: ${design.name}, ${shape}`, () => {
        const { held } = simulateCoverage(design, shape, RUNS, 4711);
        expect(held).toBeGreaterThan(least - CHANCE);
      });
    }
  it('does not hold for the treatment with one bed a side, which is why it is an indication', () => {
    expect(simulateCoverage(BEDS(1), 'normal', RUNS, 4711).held).toBeLessThan(0.8);
  });
});

describe('chances stated before sowing, tried', () => {
  for (const [design, how, units] of [
    [RANDOM(4), 'random', 4],
    [RANDOM(10), 'random', 10],
    [PAIRS(8), 'blocks', 8],
    [RANDOM(6, 3), 'random', 6],
  ] as const)
    it(`comes out within 6 in 100: ${design.name}`, () => {
      const wish = { treatments: design.treatments, how, spread: 0.25 };
      const difference = smallestSeen(wish, units, 0.8)!;
      const came = simulateChance(design, difference, RUNS, 99);
      expect(Math.abs(came - chanceToSee(wish, units, difference))).toBeLessThan(
        0.06 + 2 * Math.sqrt((0.8 * 0.2) / RUNS),
      );
    });
});
