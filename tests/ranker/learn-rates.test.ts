import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countOutcomes,
  fullYearsBetween,
  gardenOdds,
  LEARNING,
  learnRate,
  learntRange,
  type SettledCase,
  shareOut,
  weightToday,
} from '../../src/ranker/learn-rates.ts';
import type { CauseId } from '../../src/signs/vocabulary.ts';
import { knowledgeModel } from '../../src/triage.ts';

const model = knowledgeModel();
const TODAY = '2026-09-01';
const settled = (id: string, causes: CauseId[], more: Partial<SettledCase> = {}): SettledCase => ({
  id,
  causes,
  sureness: 1,
  date: '2026-06-01',
  ...more,
});
const rateOf = (id: CauseId) => model.network.rate[model.causes.findIndex((cause) => cause.id === id)]!;
const at = (values: Float64Array, id: CauseId): number =>
  values[model.causes.findIndex((cause) => cause.id === id)]!;

describe('a base rate as a Beta distribution', () => {
  // 2 % of plants: the table counts as 2 meetings in 100 plants, Beta(2, 98).
  const rare = { mean: 0.02, observations: 600 };

  it('is the table’s own while nothing is known', () => {
    expect(learnRate(rare, { seen: 0, outOf: 0 })).toBeCloseTo(0.02, 12);
  });

  it('moves as worked out by hand', () => {
    // Beta(2, 98) and one meeting in one plant: Beta(3, 98), mean 3/101.
    expect(learnRate(rare, { seen: 1, outOf: 1 })).toBeCloseTo(3 / 101, 12);
    // Three in ten: Beta(5, 105), mean 5/110.
    expect(learnRate(rare, { seen: 3, outOf: 10 })).toBeCloseTo(5 / 110, 12);
    // None in ten: Beta(2, 108), mean 2/110.
    expect(learnRate(rare, { seen: 0, outOf: 10 })).toBeCloseTo(2 / 110, 12);
    // A common cause: 5 % counts as 2 in 40. Two in five: 4/45.
    expect(learnRate({ mean: 0.05, observations: 240 }, { seen: 2, outOf: 5 })).toBeCloseTo(4 / 45, 12);
  });

  it('has a range that holds the rate, by the quantiles of Beta(2, 98), and narrows as cases come in', () => {
    const table = { mean: 0.02, observations: 1000 };
    // 10 and 90 % points of Beta(2, 98): 0.0054 and 0.0385 (regularised incomplete beta function, 1 − Σ of the binomial).
    const range = learntRange('clubroot', table, { seen: 0, outOf: 0 });
    const below = (x: number): number => 1 - (1 - x) ** 99 - 99 * x * (1 - x) ** 98;
    expect(below(range.high)).toBeGreaterThan(0.86);
    expect(below(range.high)).toBeLessThan(0.94);
    // The lower end is held at half the table's odds.
    expect(range.low / (1 - range.low)).toBeCloseTo(0.5 * (0.02 / 0.98), 6);
    const later = learntRange('clubroot', table, { seen: 6, outOf: 300 });
    expect(later.high - later.low).toBeLessThan(0.7 * (range.high - range.low));
    fc.assert(
      fc.property(fc.nat(40), fc.nat(200), (seen, more) => {
        const count = { seen, outOf: seen + more };
        const { low, high } = learntRange('virus', table, count);
        expect(low).toBeLessThanOrEqual(learnRate(table, count));
        expect(high).toBeGreaterThanOrEqual(learnRate(table, count));
      }),
      { seed: 7 },
    );
  });

  it('takes the table’s own observations where they are fewer', () => {
    // Beta(0.4, 19.6) and one in one: 1.4/21.
    expect(learnRate({ mean: 0.02, observations: 20 }, { seen: 1, outOf: 1 })).toBeCloseTo(1.4 / 21, 12);
  });

  it('stays within its bounds whatever a garden has met', () => {
    const odds = 0.02 / 0.98;
    const never = learnRate(rare, { seen: 0, outOf: 100_000 });
    expect(never / (1 - never)).toBeCloseTo(odds / 2, 12);
    const always = learnRate(rare, { seen: 500, outOf: 500 });
    expect(always / (1 - always)).toBeCloseTo(odds * 8, 12);
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.3, noNaN: true }),
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        (mean, observations, seen, outOf) => {
          const rate = learnRate({ mean, observations }, { seen, outOf });
          const factor = rate / (1 - rate) / (mean / (1 - mean));
          expect(factor).toBeGreaterThanOrEqual(LEARNING.leastOdds * (1 - 1e-9));
          expect(factor).toBeLessThanOrEqual(LEARNING.mostOdds * (1 + 1e-9));
        },
      ),
    );
  });
});

describe('forgetting', () => {
  it('counts full years by their anniversaries', () => {
    expect(fullYearsBetween('2026-06-01', '2026-09-01')).toBe(0);
    expect(fullYearsBetween('2025-09-02', '2026-09-01')).toBe(0);
    expect(fullYearsBetween('2025-09-01', '2026-09-01')).toBe(1);
    expect(fullYearsBetween('2024-02-29', '2026-02-28')).toBe(1);
    expect(fullYearsBetween('2027-01-01', '2026-09-01')).toBe(0);
  });

  it('leaves four fifths of a case after each year', () => {
    const weight = (date: string): number =>
      weightToday(settled('a', ['aphids'], { date, sureness: 0.5 }), TODAY);
    expect(weight('2026-06-01')).toBeCloseTo(0.5, 12);
    expect(weight('2025-06-01')).toBeCloseTo(0.4, 12);
    expect(weight('2023-06-01')).toBeCloseTo(0.5 * 0.512, 12);
  });
});

describe('counting what the cases of a garden say', () => {
  it('adds up weights; without crop and season every case is one plant for every cause', () => {
    const counts = countOutcomes(
      model,
      [
        settled('a', ['aphids']),
        settled('b', ['aphids', 'virus'], { sureness: 0.5 }),
        settled('c', ['drought'], { date: '2025-06-01' }),
      ],
      TODAY,
    );
    // 1 + 0.5 + 0.8 plants; aphids in the first two.
    expect(counts.aphids).toEqual({ seen: 1.5, outOf: expect.closeTo(2.3, 12) });
    expect(counts.virus).toEqual({ seen: 0.5, outOf: expect.closeTo(2.3, 12) });
    expect(counts.drought).toEqual({ seen: expect.closeTo(0.8, 12), outOf: expect.closeTo(2.3, 12) });
    expect(counts.frost).toEqual({ seen: 0, outOf: expect.closeTo(2.3, 12) });
    // Aphids: 7 % is 2 in 28.571…; (2 + 1.5) / (28.571… + 2.3).
    expect(learnRate(rateOf('aphids'), counts.aphids!)).toBeCloseTo(3.5 / (2 / 0.07 + 2.3), 12);
  });

  it('learns nothing from guesses and from what was never found out', () => {
    const none = [settled('a', ['aphids'], { sureness: 0 }), settled('b', [])];
    expect(countOutcomes(model, none, TODAY)).toEqual({});
    expect([...gardenOdds(model, countOutcomes(model, none, TODAY))].every((odds) => odds === 1)).toBe(true);
  });

  it('counts one outbreak once, at its surest', () => {
    const row = (id: string, sureness: number) => settled(id, ['blight'], { sureness, outbreak: 'long bed' });
    const counts = countOutcomes(model, [row('a', 0.5), row('b', 0.9), row('c', 0.9)], TODAY);
    expect(counts.blight).toEqual({ seen: 0.9, outOf: expect.closeTo(0.9, 12) });
  });

  it('says nothing of a cause that the crop cannot have', () => {
    const counts = countOutcomes(model, [settled('a', ['aphids'], { crop: 'lettuce' })], TODAY);
    expect(counts.clubroot).toBeUndefined();
    // And a report of the impossible is not taken for a meeting.
    const odd = countOutcomes(model, [settled('a', ['clubroot'], { crop: 'lettuce' })], TODAY);
    expect(odd.clubroot).toBeUndefined();
  });

  it('does not count to the garden what is the crop’s doing', () => {
    const usual = at(shareOut(model), 'clubroot');
    const onKale = at(shareOut(model, 'kale'), 'clubroot');
    expect(onKale).toBeGreaterThan(usual);
    const counts = countOutcomes(model, [settled('a', ['clubroot'], { crop: 'kale' })], TODAY);
    expect(counts.clubroot).toEqual({ seen: 1, outOf: expect.closeTo(onKale / usual, 12) });
    // As often as the table expects of kale: the rate stays where it was.
    const asExpected = { seen: rateOf('clubroot').mean * 500, outOf: 500 };
    expect(learnRate(rateOf('clubroot'), asExpected)).toBeCloseTo(rateOf('clubroot').mean, 12);
  });

  it('does not depend on the order of the cases', () => {
    const cases = [
      settled('a', ['aphids'], { crop: 'kale', season: 'summer' }),
      settled('b', ['slugs-snails'], { crop: 'lettuce', season: 'spring', date: '2024-04-01' }),
      settled('c', ['clubroot'], { crop: 'kale', sureness: 0.5 }),
    ];
    const forth = gardenOdds(model, countOutcomes(model, cases, TODAY));
    const back = gardenOdds(model, countOutcomes(model, [...cases].reverse(), TODAY));
    forth.forEach((odds, cause) => {
      expect(odds).toBeCloseTo(back[cause]!, 12);
    });
  });
});
