import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { warnOfLayout } from '../../../src/compare/side-by-side/find-independent.ts';
import {
  SPREAD_WORDS,
  spreadFromRange,
  spreadOfBedMeans,
  worthInPlants,
} from '../../../src/compare/side-by-side/guess-spread.ts';
import { layOutTrial } from '../../../src/compare/side-by-side/lay-out-trial.ts';
import {
  chanceByT,
  chanceToSee,
  reachByRanks,
  smallestSeen,
  unitsNeeded,
} from '../../../src/compare/side-by-side/plan-numbers.ts';
import type { TrialError } from '../../../src/compare/side-by-side/trial-error.ts';
import r from './references/r-answers.json';

const code = (work: () => unknown): string | undefined => {
  try {
    work();
  } catch (error) {
    return (error as TrialError).code;
  }
  return undefined;
};

describe('how many it takes', () => {
  it("gives R's power of the t test (power.t.test, both sides counted)", () => {
    for (const { n, delta, level, paired, power } of r.power) {
      const [shift, df] = paired ? [delta * Math.sqrt(n), n - 1] : [delta * Math.sqrt(n / 2), 2 * n - 2];
      expect(chanceByT(shift, df, level)).toBeCloseTo(power, 7);
    }
  });
  it("gives Cohen's numbers (1988, table 2.4.1 and section 2.3; from memory): 5 %, both sides, 8 in 10", () => {
    const enough = (chanceOf: (n: number) => number): number => {
      let n = 2;
      while (chanceOf(n) < 0.8) n += 1;
      return n;
    };
    const two = (d: number) => enough((n) => chanceByT(d * Math.sqrt(n / 2), 2 * n - 2, 0.05));
    const paired = (d: number) => enough((n) => chanceByT(d * Math.sqrt(n), n - 1, 0.05));
    expect([two(0.2), two(0.5), two(0.8)]).toEqual([394, 64, 26]);
    expect(paired(0.5)).toBe(34);
  });
  it('asks for more the smaller the difference, the larger the spread, the more treatments', () => {
    const wish = { treatments: 2, how: 'random', spread: 0.25 } as const;
    const half = unitsNeeded(wish, 0.5, 0.8)!;
    const fifth = unitsNeeded(wish, 0.2, 0.8)!;
    expect(half).toBeLessThan(fifth);
    expect(unitsNeeded({ ...wish, spread: 0.45 }, 0.5, 0.8)).toBeGreaterThan(half);
    expect(unitsNeeded({ ...wish, treatments: 4 }, 0.5, 0.8)).toBeGreaterThan(half);
    expect(unitsNeeded({ ...wish, how: 'blocks', likeness: 0.6 }, 0.2, 0.8)).toBeLessThan(fifth);
    expect(unitsNeeded(wish, 0.01, 0.8)).toBeUndefined();
    expect(chanceToSee(wish, fifth, 0.2)).toBeGreaterThanOrEqual(0.8);
    expect(chanceToSee(wish, fifth + 1, 0.2)).toBeGreaterThanOrEqual(0.8);
  });
  it('needs what the README says', () => {
    const needed = Object.values(SPREAD_WORDS).map((spread) =>
      [0.1, 0.2, 0.3, 0.5].map((difference) =>
        unitsNeeded({ treatments: 2, how: 'random', spread }, difference, 0.8),
      ),
    );
    expect(needed).toEqual([
      [8, 3, 3, 3],
      [30, 9, 5, 3],
      [82, 22, 11, 5],
      [undefined, 67, 30, 12],
    ]);
  });
  it('turns round: what so many see is what so many are needed for', () => {
    fc.assert(
      fc.property(
        fc.record({
          treatments: fc.integer({ min: 2, max: 4 }),
          how: fc.constantFrom('random' as const, 'blocks' as const),
          spread: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        }),
        fc.integer({ min: 3, max: 30 }),
        (wish, units) => {
          const seen = smallestSeen(wish, units, 0.8);
          if (seen === undefined) return;
          expect(chanceToSee(wish, units, seen)).toBeGreaterThanOrEqual(0.8);
          expect(chanceToSee(wish, units, seen * 0.95)).toBeLessThan(0.8);
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });
  it('says what few units can reach by ranks at most', () => {
    // 2 / C(6, 3), 2 / C(4, 2), 2 / 2^4: counted by hand.
    expect(reachByRanks('random', 3)).toBeCloseTo(0.9, 12);
    expect(reachByRanks('random', 2)).toBeCloseTo(2 / 3, 12);
    expect(reachByRanks('blocks', 4)).toBeCloseTo(0.875, 12);
    expect(reachByRanks('random', 1)).toBe(0);
    expect(reachByRanks('blocks', 1)).toBe(0);
  });
  it('refuses numbers that are none', () => {
    const wish = { treatments: 2, how: 'random', spread: 0.25 } as const;
    expect(code(() => chanceToSee({ ...wish, treatments: 5 }, 5, 0.2))).toBe('treatments');
    expect(code(() => chanceToSee({ ...wish, spread: 0 }, 5, 0.2))).toBe('plan');
    expect(code(() => chanceToSee({ ...wish, likeness: 1 }, 5, 0.2))).toBe('plan');
    expect(code(() => chanceToSee(wish, 2.5, 0.2))).toBe('plan');
    expect(code(() => chanceToSee(wish, 5, 0))).toBe('plan');
    expect(code(() => chanceToSee(wish, 101, 0.2))).toBe('too-many-units');
    expect(code(() => unitsNeeded(wish, 0.2, 1))).toBe('plan');
    expect(code(() => smallestSeen(wish, 4, 0))).toBe('plan');
    expect(chanceToSee(wish, 1, 5)).toBe(0);
  });
});

describe('how much plants differ', () => {
  it("has the range of normal values that R's integrals give (Tippett 1925)", () => {
    r.rangeOfNormals.forEach((d2, i) => {
      // Middle of the two 1, range d₂: one standard deviation to the mean of one.
      const spread = spreadFromRange(1 - d2 / 2 / 4, 1 + d2 / 2 / 4, i + 2);
      expect(spread).toBeCloseTo(0.25, 3);
    });
  });
  it('keeps the words in order, and beside measured plots', () => {
    const words = Object.values(SPREAD_WORDS);
    expect([...words].sort((a, b) => a - b)).toEqual(words);
    const peas = r.blocks.spread / r.blocks.mean;
    const growth = r.plantGrowth.ctrl;
    const mean = growth.reduce((a, b) => a + b, 0) / growth.length;
    const sd = Math.sqrt(growth.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (growth.length - 1));
    expect(peas).toBeCloseTo(0.08, 2);
    expect(sd / mean).toBeCloseTo(0.12, 2);
    expect(peas).toBeLessThan(SPREAD_WORDS['a-little-uneven']);
    expect(sd / mean).toBeLessThan(SPREAD_WORDS['a-little-uneven']);
  });
  it('never lets plants make up for beds', () => {
    expect(spreadOfBedMeans(0.1, 0.3, 9)).toBeCloseTo(Math.hypot(0.1, 0.1), 12);
    expect(spreadOfBedMeans(0.1, 0.3, 1e6)).toBeGreaterThan(0.1);
    // Kish: 10 plants with likeness 0.5 are worth 10 / 5.5.
    expect(worthInPlants(10, 0.5)).toBeCloseTo(10 / 5.5, 12);
    expect(worthInPlants(10, 1)).toBe(1);
    expect(worthInPlants(10, 0)).toBe(10);
  });
  it('refuses ranges that are none', () => {
    for (const [low, high, of] of [
      [3, 2, 5],
      [1, 2, 1],
      [1, 2, 26],
      [-1, 2, 5],
      [1, Infinity, 5],
    ] as const)
      expect(code(() => spreadFromRange(low, high, of))).toBe('plan');
  });
});

describe('laying out', () => {
  const wish = {
    treatments: ['dug', 'not'],
    beds: [
      { bed: 'east', places: 9 },
      { bed: 'west', places: 6 },
    ],
    seed: 3,
  } as const;

  it('puts one of each into every block, neighbours in a bed', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 4 }),
        fc.array(fc.integer({ min: 4, max: 14 }), { minLength: 1, maxLength: 4 }),
        fc.nat(),
        (count, places, seed) => {
          const treatments = ['a', 'b', 'c', 'd'].slice(0, count);
          const beds = places.map((n, i) => ({ bed: `b${i}`, places: n }));
          const { units, spare } = layOutTrial({ treatments, beds, how: 'blocks', seed });
          const blocks = new Map<string, string[]>();
          for (const { block, treatment } of units)
            blocks.set(block!, [...(blocks.get(block!) ?? []), treatment]);
          for (const met of blocks.values()) expect([...met].sort()).toEqual(treatments);
          expect(units.length + spare.length).toBe(places.reduce((a, b) => a + b, 0));
          expect(new Set(units.map(({ id }) => id)).size).toBe(units.length);
          expect(warnOfLayout({ units })).toEqual([]);
        },
      ),
      { seed: 11, numRuns: 80 },
    );
  });
  it('gives every treatment as many places by lot, and the same for the same seed', () => {
    for (const how of ['random', 'blocks', 'whole-beds'] as const) {
      const layout = layOutTrial({ ...wish, how });
      expect(layOutTrial({ ...wish, how })).toEqual(layout);
      expect(
        Array.from({ length: 20 }, (_, i) => i + 4).some(
          (seed) => JSON.stringify(layOutTrial({ ...wish, how, seed })) !== JSON.stringify(layout),
        ),
      ).toBe(true);
      const dug = layout.units.filter(({ treatment }) => treatment === 'dug').length;
      if (how !== 'whole-beds') expect(dug * 2).toBe(layout.units.length);
    }
  });
  it('draws every order equally often: 6 orders of three, 6000 draws', () => {
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 6000; seed += 1) {
      const { units } = layOutTrial({
        treatments: ['a', 'b', 'c'],
        beds: [{ bed: 'x', places: 3 }],
        how: 'blocks',
        seed,
      });
      const order = units.map(({ treatment }) => treatment).join('');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(6);
    // Chi-square with 5 degrees of freedom: 20.5 is its 99.9 % point (standard tables).
    const chi = [...counts.values()].reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    expect(chi).toBeLessThan(20.5);
  });
  it('gives either of two beds either treatment equally often', () => {
    const beds = [
      { bed: 'east', places: 1 },
      { bed: 'west', places: 1 },
    ];
    let dug = 0;
    for (let seed = 0; seed < 2000; seed += 1)
      if (layOutTrial({ ...wish, beds, how: 'whole-beds', seed }).units[0]!.treatment === 'dug') dug += 1;
    // Three standard errors of a half in 2000 draws.
    expect(Math.abs(dug / 2000 - 0.5)).toBeLessThan(0.034);
  });
  it('warns when beds are the only units', () => {
    const two = layOutTrial({ ...wish, how: 'whole-beds' });
    expect(warnOfLayout(two)).toEqual([
      'beds-are-the-units',
      'plants-in-bed-not-independent',
      'one-bed-a-side',
    ]);
    const four = layOutTrial({
      ...wish,
      how: 'whole-beds',
      beds: ['a', 'b', 'c', 'd'].map((bed) => ({ bed, places: 1 })),
    });
    expect(warnOfLayout(four)).toEqual(['beds-are-the-units']);
    const strips = Array.from({ length: 8 }, (_, i) => ({
      id: `${i}`,
      treatment: i < 4 ? 'dug' : 'not',
      bed: 'east',
      place: i + 1,
    }));
    expect(warnOfLayout({ units: strips })).toEqual(['stands-in-strips']);
    const turned = strips.map((unit, i) => ({ ...unit, treatment: i % 2 ? 'dug' : 'not' }));
    expect(warnOfLayout({ units: turned })).toEqual([]);
    const alone = [...turned, { id: 'x', treatment: 'dug', bed: 'west', place: 1 }];
    expect(warnOfLayout({ units: alone })).toEqual(['treatment-alone-in-block']);
  });
  it('refuses what has no room', () => {
    expect(code(() => layOutTrial({ ...wish, how: 'blocks', beds: [{ bed: 'x', places: 1 }] }))).toBe(
      'places',
    );
    expect(code(() => layOutTrial({ ...wish, how: 'random', beds: [{ bed: 'x', places: 1 }] }))).toBe(
      'places',
    );
    expect(code(() => layOutTrial({ ...wish, how: 'whole-beds', beds: [{ bed: 'x', places: 9 }] }))).toBe(
      'places',
    );
    expect(code(() => layOutTrial({ ...wish, how: 'random', beds: [{ bed: 'x', places: 1.5 }] }))).toBe(
      'places',
    );
    expect(
      code(() =>
        layOutTrial({
          ...wish,
          how: 'random',
          beds: [
            { bed: 'x', places: 2 },
            { bed: 'x', places: 2 },
          ],
        }),
      ),
    ).toBe('places');
    expect(code(() => layOutTrial({ ...wish, how: 'random', treatments: ['dug', 'dug'] }))).toBe(
      'treatments',
    );
  });
});
