import { describe, expect, it } from 'vitest';
import { type BlockValues, estimateShift } from '../../../src/compare/side-by-side/estimate-shift.ts';

/** Every way to take so many of these. */
function* choices<T>(items: readonly T[], take: number): Generator<{ taken: T[]; left: T[] }> {
  if (take === 0) {
    yield { taken: [], left: [...items] };
    return;
  }
  const [first, ...rest] = items;
  if (first === undefined) return;
  for (const { taken, left } of choices(rest, take - 1)) yield { taken: [first, ...taken], left };
  for (const { taken, left } of choices(rest, take)) yield { taken, left: [first, ...left] };
}

/** Every layout of a trial by lot: each block's units given to either treatment in every way. */
function* layouts(
  blocks: readonly { values: readonly number[]; second: number }[],
): Generator<BlockValues[]> {
  const [block, ...rest] = blocks;
  if (!block) {
    yield [];
    return;
  }
  for (const { taken, left } of choices(block.values, block.second))
    for (const others of layouts(rest)) yield [{ first: left, second: taken }, ...others];
}

/** What plants would have weighed untreated: skewed, one of them wild, none alike. */
const PLANTS = [3.1, 3.7, 4.9, 5.2, 6.8, 8.3, 11.9, 15.1, 16.2, 19.7, 33.3, 240];
const EFFECT = 7.3;
const some = (from: number, count: number): number[] => PLANTS.slice(from, from + count);

describe('drawing every layout by lot', () => {
  // An exact interval holds the effect in just so many of all layouts as it says (Fisher's randomisation; Hollander and Wolfe 1973).
  const designs: [string, { values: number[]; second: number }[]][] = [
    ['4 and 4', [{ values: some(0, 8), second: 4 }]],
    ['3 and 6', [{ values: some(3, 9), second: 6 }]],
    [
      '6 pairs',
      [0, 1, 2, 3, 4, 5].map((i) => ({ values: [PLANTS[i]!, PLANTS[11 - i]! + i / 7], second: 1 })),
    ],
    ['3 blocks of 2 and 2', [0, 4, 8].map((i) => ({ values: some(i, 4), second: 2 }))],
    [
      'blocks of 1 and 1, 2 and 2, 2 and 3',
      [
        { values: some(0, 2), second: 1 },
        { values: some(2, 4), second: 2 },
        { values: some(6, 5), second: 3 },
      ],
    ],
  ];
  it.each(designs)('holds in exactly the share it says: %s', (_, design) => {
    let held = 0;
    let all = 0;
    let said = 0;
    for (const blocks of layouts(design)) {
      const treated = blocks.map(({ first, second }) => ({ first, second: second.map((v) => v + EFFECT) }));
      const { interval } = estimateShift(treated, 0.9);
      expect(interval!.method).toBe('ranks');
      said = interval!.reached;
      all += 1;
      if (interval!.low <= EFFECT + 1e-9 && interval!.high >= EFFECT - 1e-9) held += 1;
    }
    expect(said).toBeGreaterThanOrEqual(0.9);
    expect(held / all).toBeCloseTo(said, 10);
  });
});
