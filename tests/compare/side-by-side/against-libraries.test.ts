import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { betaBelow, logGamma } from '../../../src/compare/pot-test/beta-functions.ts';
import { orderChances, signChances } from '../../../src/compare/side-by-side/count-orders.ts';
import {
  type BlockValues,
  blockMeans,
  centreOf,
  estimateShift,
  welch,
} from '../../../src/compare/side-by-side/estimate-shift.ts';
import { normalCdf } from '../../../src/compare/side-by-side/normal-distribution.ts';
import { noncentralTCdf, tCdf, tQuantile } from '../../../src/compare/side-by-side/t-distribution.ts';
import r from './references/r-answers.json';

const { jStat } = jstat;

/** Pairs are blocks of one each. */
const blocksOf = (first: readonly number[], second: readonly number[], paired: boolean): BlockValues[] =>
  paired ? first.map((a, i) => ({ first: [a], second: [second[i]!] })) : [{ first, second }];

describe('distributions beside R 4.2.2 (package stats) and jstat 1.9.6', () => {
  it('gives the t distribution of R', () => {
    for (const [t, df, p] of r.tCdf as [number, number, number][]) expect(tCdf(t, df)).toBeCloseTo(p, 12);
    for (const [p, df, t] of r.tQuantile as [number, number, number][])
      expect(tQuantile(p, df) / (t || 1)).toBeCloseTo(t === 0 ? 0 : 1, 9);
  });
  it('gives the noncentral t of R', () => {
    for (const [t, df, shift, p] of r.noncentralT as [number, number, number, number][])
      expect(Math.abs(noncentralTCdf(t, df, shift) - p), `${t} ${df} ${shift}`).toBeLessThan(1e-9);
  });
  it('gives the normal, gamma and beta functions of jstat', () => {
    for (const z of [-8, -3.2, -2.99, -1, 0, 0.3, 1.96, 2.999, 3.001, 5])
      expect(normalCdf(z)).toBeCloseTo(jStat.normal.cdf(z, 0, 1), 8);
    for (const x of [0.5, 1, 1.5, 2, 7.25, 10, 63.5, 300])
      expect(logGamma(x)).toBeCloseTo(jStat.gammaln(x), 8);
    for (const [x, a, b] of [
      [0.1, 0.5, 4],
      [0.5, 2, 3],
      [0.93, 30, 0.5],
      [0.4, 12, 18],
    ] as const)
      expect(betaBelow(x, a, b)).toBeCloseTo(jStat.ibeta(x, a, b), 7);
    for (const [t, df] of [
      [1.1, 3],
      [-2, 17.8],
      [4, 9],
    ] as const)
      expect(tCdf(t, df)).toBeCloseTo(jStat.studentt.cdf(t, df), 8);
  });
  it('gives the distributions of ranks of R', () => {
    for (const { m, n, chances } of r.orders) {
      const own = orderChances(m, n);
      expect(own).toHaveLength(m * n + 1);
      // Of the largest, R was asked for the lower half. To a hundred-millionth of each chance, the rarest too.
      chances.forEach((p, u) => {
        expect(Math.abs(own[u]! / p - 1)).toBeLessThan(1e-8);
      });
    }
    for (const { n, chances } of r.signs)
      chances.forEach((p, u) => {
        expect(signChances(n)[u]).toBeCloseTo(p, 13);
      });
  });
});

describe('differences and intervals beside R on published data', () => {
  // Hollander and Wolfe 1973 (depression, permeability), PlantGrowth (Dobson 1983): all by R's wilcox.test and t.test.
  it.each(r.shifts.map((s, i) => [i, s] as const))('agrees on comparison %i', (_, s) => {
    const blocks = blocksOf(s.first, s.second, s.paired);
    const { estimate, interval } = estimateShift(blocks, s.level);
    expect(interval?.method).toBe('ranks');
    expect(estimate).toBeCloseTo(s.rankEstimate, 12);
    expect(interval?.low).toBeCloseTo(s.rankLow, 12);
    expect(interval?.high).toBeCloseTo(s.rankHigh, 12);
    const means = s.paired ? blockMeans(blocks)! : welch(blocks[0]!)!;
    const reach = tQuantile((1 + s.level) / 2, means.df) * means.se;
    expect(means.estimate).toBeCloseTo(s.tEstimate, 12);
    expect(means.estimate - reach).toBeCloseTo(s.tLow, 9);
    expect(means.estimate + reach).toBeCloseTo(s.tHigh, 9);
  });
  it.each(r.tied.map((s, i) => [i, s] as const))(
    "agrees with R's t interval on tied data %i (PlantGrowth; Student 1908)",
    (_, s) => {
      const blocks = blocksOf(s.first, s.second, s.paired);
      const means = s.paired ? blockMeans(blocks)! : welch(blocks[0]!)!;
      const reach = tQuantile((1 + s.level) / 2, means.df) * means.se;
      expect(means.estimate - reach).toBeCloseTo(s.tLow, 9);
      expect(means.estimate + reach).toBeCloseTo(s.tHigh, 9);
      // Ties: the exact interval may only be as wide or wider than without them; it holds the rank centre.
      const { estimate, interval } = estimateShift(blocks, s.level);
      expect(interval!.low).toBeLessThanOrEqual(estimate);
      expect(interval!.high).toBeGreaterThanOrEqual(estimate);
    },
  );
  it("gives R's interval for blocks by least squares (npk: peas in six blocks)", () => {
    const { block, treated, value, estimate, low, high } = r.blocks;
    const blocks = [...new Set(block)].map((b) => ({
      first: value.filter((_, i) => block[i] === b && treated[i] === 0),
      second: value.filter((_, i) => block[i] === b && treated[i] === 1),
    }));
    const means = blockMeans(blocks)!;
    const reach = tQuantile(0.95, means.df) * means.se;
    expect(means.estimate).toBeCloseTo(estimate, 10);
    expect(means.estimate - reach).toBeCloseTo(low, 8);
    expect(means.estimate + reach).toBeCloseTo(high, 8);
    const ranks = estimateShift(blocks, 0.9);
    expect(ranks.interval?.method).toBe('ranks');
    // Both say that nitrogen gave more peas; by ranks the centre lies within the t interval.
    expect(ranks.interval!.low).toBeGreaterThan(0);
    expect(ranks.estimate).toBeGreaterThan(low);
    expect(ranks.estimate).toBeLessThan(high);
  });
  it('finds what Student 1908 and Fisher 1935 printed', () => {
    // Student 1908, sleep: mean difference 1.58 hours, t = 4.06 with 9 degrees of freedom.
    const sleep = blockMeans(blocksOf(r.tied[1]!.first, r.tied[1]!.second, true))!;
    expect(sleep.estimate).toBeCloseTo(1.58, 10);
    expect(sleep.estimate / sleep.se).toBeCloseTo(4.0621, 4);
    // Darwin's maize as in Fisher, The Design of Experiments, chapter 3 (from memory): 15 pairs, crossed less self-fertilised plants, eighths of an inch.
    const maize = [49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48];
    const pairs = maize.map((d) => ({ first: [0], second: [d] }));
    const means = blockMeans(pairs)!;
    expect(means.estimate).toBeCloseTo(20.933, 3);
    expect(means.estimate / means.se).toBeCloseTo(2.148, 3);
    // Two wild pairs (-67, -48): the rank interval is shorter than the t interval of the same level.
    const { interval } = estimateShift(pairs, 0.9);
    expect(interval!.reached).toBeGreaterThanOrEqual(0.9);
    expect(interval!.high - interval!.low).toBeLessThan(2 * tQuantile(0.95, 14) * means.se);
  });
  it('has the centre of Hodges and Lehmann for one set', () => {
    // Middle of the means of two of 1, 2, 4, 100: 1, 1.5, 2, 2.5, 3, 4, 50.5, 51, 52, 100.
    expect(centreOf([1, 2, 4, 100])).toBe(3.5);
  });
});
