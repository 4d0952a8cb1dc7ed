/**
 * The mathematics of the pot test against the outside: jStat 1.9.6 (a general statistics library that had no part in it), germination counts
 * and their published beta-binomial fit (Crowder 1978, Applied Statistics 27:34; data and fit as printed in the reference of the R
 * package agridat, data set crowder.seeds), litters of treated and untreated rats (Weil 1970, data as printed in the SAS/STAT
 * guide, NLMIXED example "Probit-Normal Model with Binomial Data"), and dried weights of plants (Dobson 1983, R's PlantGrowth).
 */
import fc from 'fast-check';
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { betaBelow, betaBinomial, logBeta, logGamma } from '../../../src/compare/pot-test/beta-functions.ts';
import { midpoints, normalised, weighEffect } from '../../../src/compare/pot-test/weigh-effect.ts';
import { EMERGENCE_PRIOR, weighEmergence } from '../../../src/compare/pot-test/weigh-emergence.ts';
import { HARMFUL_INJURY, weighInjury } from '../../../src/compare/pot-test/weigh-injury.ts';
import { likelihoodOfLag, weighSize } from '../../../src/compare/pot-test/weigh-size.ts';

const { jStat } = jstat;
const relative = (a: number, b: number): number => Math.abs(a - b) / Math.max(1e-12, Math.abs(b));

describe('special functions', () => {
  it('agree with jStat', () => {
    const shape = fc.double({ min: 0.05, max: 80, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), shape, shape, (x, a, b) => {
        expect(Math.abs(logGamma(a) - jStat.gammaln(a))).toBeLessThan(1e-8);
        expect(Math.abs(logBeta(a, b) - jStat.betaln(a, b))).toBeLessThan(1e-8);
        expect(Math.abs(betaBelow(x, a, b) - jStat.ibeta(x, a, b))).toBeLessThan(1e-7);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it('give a distribution with the stated mean and variance, and the binomial where pots are alike', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: 0.001, max: 0.9, noNaN: true }),
        (n, p, rho) => {
          const counts = Array.from({ length: n + 1 }, (_, y) => y);
          const chances = counts.map((y) => betaBinomial(y, n, p, rho));
          const total = chances.reduce((sum, chance) => sum + chance, 0);
          const mean = counts.reduce((sum, y) => sum + y * chances[y]!, 0);
          const variance = counts.reduce((sum, y) => sum + (y - mean) ** 2 * chances[y]!, 0);
          expect(Math.abs(total - 1)).toBeLessThan(1e-8);
          expect(relative(mean, n * p)).toBeLessThan(1e-7);
          expect(relative(variance, n * p * (1 - p) * (1 + (n - 1) * rho))).toBeLessThan(1e-6);
          for (const y of counts)
            expect(Math.abs(betaBinomial(y, n, p, 0) - jStat.binomial.pdf(y, n, p))).toBeLessThan(1e-9);
        },
      ),
      { seed: 12, numRuns: 100 },
    );
  });
});

/** Broomrape seeds that germinated, of so many, by plate. */
const CROWDER = {
  'O73 bean': [
    [8, 16],
    [10, 30],
    [8, 28],
    [23, 45],
    [0, 4],
  ],
  'O75 bean': [
    [10, 39],
    [23, 62],
    [23, 81],
    [26, 51],
    [17, 39],
  ],
  'O73 cucumber': [
    [3, 12],
    [22, 41],
    [15, 30],
    [32, 51],
    [3, 7],
  ],
  'O75 cucumber': [
    [5, 6],
    [53, 74],
    [55, 72],
    [32, 51],
    [46, 79],
    [10, 13],
  ],
} as const;

/** The four groups' log-odds and the correlation that fit best, by a search that halves its steps. */
function fitCrowder(): { readonly logOdds: Record<keyof typeof CROWDER, number>; readonly rho: number } {
  const groups = Object.keys(CROWDER) as (keyof typeof CROWDER)[];
  const best = (from: number, to: number, score: (x: number) => number): number => {
    let [low, high] = [from, to];
    for (let i = 0; i < 60; i++) {
      const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
      if (score(a) < score(b)) low = a;
      else high = b;
    }
    return (low + high) / 2;
  };
  const fitOf = (group: keyof typeof CROWDER, odds: number, rho: number): number =>
    CROWDER[group].reduce(
      (sum, [y, n]) => sum + Math.log(betaBinomial(y, n, 1 / (1 + Math.exp(-odds)), rho)),
      0,
    );
  const oddsAt = (group: keyof typeof CROWDER, rho: number): number =>
    best(-3, 3, (odds) => fitOf(group, odds, rho));
  const rho = best(1e-4, 0.3, (r) =>
    groups.reduce((sum, group) => sum + fitOf(group, oddsAt(group, r), r), 0),
  );
  return {
    rho,
    logOdds: Object.fromEntries(groups.map((group) => [group, oddsAt(group, rho)])) as Record<
      keyof typeof CROWDER,
      number
    >,
  };
}

describe('emergence', () => {
  it('has the likelihood that was published for Crowder’s seeds', () => {
    const { logOdds } = fitCrowder();
    const base = logOdds['O73 bean'];
    // Printed: intercept −0.44, variety −0.10, extract 0.52, both 0.80.
    expect(base).toBeCloseTo(-0.44, 2);
    expect(logOdds['O75 bean'] - base).toBeCloseTo(-0.1, 2);
    expect(logOdds['O73 cucumber'] - base).toBeCloseTo(0.52, 2);
    const both = logOdds['O75 cucumber'] - logOdds['O75 bean'] - (logOdds['O73 cucumber'] - base);
    expect(both).toBeCloseTo(0.8, 2);
  });

  /** Pups alive at 21 days of those alive at 4, by litter: pots and seeds of another kind. */
  const alive = (text: string): { seeds: number; emerged: number }[] =>
    text.split(',').map((pair) => {
      const [seeds, emerged] = pair.trim().split(' ').map(Number);
      return { seeds: seeds!, emerged: emerged! };
    });
  const control = alive('13 13,12 12,9 9,9 9,8 8,8 8,13 12,12 11,10 9,10 9,9 8,13 11,5 4,7 5,10 7,10 7');
  const treated = alive('12 12,11 11,10 10,9 9,11 10,10 9,10 9,9 8,9 8,5 4,9 7,7 4,10 5,6 3,10 3,7 0');

  it('reads Weil’s litters as a sum over a much finer grid does, done with jStat', () => {
    // The same model over 100 chances by 101 losses, each count from jStat's beta function.
    const chances = midpoints(0, 1, 100);
    const losses = [0, ...midpoints(0, 1, 100)];
    const { comesUp, seedsWorth, noLoss, correlations } = EMERGENCE_PRIOR;
    const weights = normalised(
      chances.map((p) => jStat.beta.pdf(p, comesUp * seedsWorth, (1 - comesUp) * seedsWorth)),
    );
    const logOf = (arm: typeof control, p: number, rho: number): number =>
      arm.reduce((sum, { seeds, emerged }) => {
        if (rho === 0) return sum + Math.log(jStat.binomial.pdf(emerged, seeds, p));
        const [a, b] = [(p * (1 - rho)) / rho, ((1 - p) * (1 - rho)) / rho];
        const ways = -Math.log(seeds + 1) - jStat.betaln(emerged + 1, seeds - emerged + 1);
        return sum + ways + jStat.betaln(emerged + a, seeds - emerged + b) - jStat.betaln(a, b);
      }, 0);
    const likelihood = losses.map(() => 0);
    for (const [rho, share] of correlations)
      for (const [at, p] of chances.entries()) {
        const start = Math.log(share * weights[at]!) + logOf(control, p, rho);
        for (const [l, loss] of losses.entries())
          likelihood[l]! += Math.exp(start + logOf(treated, p * (1 - loss), rho) + 80);
      }
    const prior = losses.map((_, at) => (at === 0 ? noLoss : (1 - noLoss) / (losses.length - 1)));
    const fine = weighEffect({ values: losses, prior, likelihood }, 0.2);
    const ours = weighEmergence(treated, control);
    expect(relative(ours.ratio, fine.ratio)).toBeLessThan(0.2);
    expect(Math.abs(ours.effect.mean - fine.effect.mean)).toBeLessThan(0.01);
    // 142 of 158 and 112 of 145 live: a loss of 14 %. Between litters so unlike, neither harm nor none is proven.
    expect(ours.effect.low).toBeLessThanOrEqual(0.14);
    expect(ours.effect.high).toBeGreaterThanOrEqual(0.14);
    expect(ours.chanceFrom(0.5)).toBeGreaterThan(0.05);
    expect(ours.chanceFrom(0.5)).toBeLessThan(0.5);
  });

  it('rises with every seedling lost', () => {
    const full = Array.from({ length: 4 }, () => ({ seeds: 3, emerged: 3 }));
    const ratios = [12, 10, 8, 6, 4, 2, 0].map((up) => {
      const test = full.map((pot, at) => ({ ...pot, emerged: Math.max(0, Math.min(3, up - 3 * at)) }));
      return weighEmergence(test, full).ratio;
    });
    expect(ratios).toEqual([...ratios].sort((a, b) => a - b));
    expect(ratios[0]).toBeLessThan(0.1);
    expect(ratios.at(-1)).toBeGreaterThan(20);
  });
});

describe('size', () => {
  // Dobson 1983, table 7.1: dried weight of plants under a control and two treatments.
  const plants = {
    control: [4.17, 5.58, 5.18, 6.11, 4.5, 4.61, 5.17, 4.53, 5.33, 5.14],
    one: [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69],
    two: [6.31, 5.12, 5.54, 5.5, 5.37, 5.29, 4.92, 6.15, 5.8, 5.26],
  };

  it('is Student’s t on the pooled error where nothing is known of the spread', () => {
    const lags = midpoints(-3, 3, 6000);
    const spreads = midpoints(Math.log(0.01), Math.log(3), 400).map((log) => [Math.exp(log), 1] as const);
    for (const test of [plants.one, plants.two]) {
      const weights = normalised(likelihoodOfLag(test, plants.control, lags, spreads));
      const logs = [test, plants.control].map((arm) => arm.map(Math.log));
      const mean = logs.map((arm) => arm.reduce((sum, log) => sum + log, 0) / arm.length);
      const squares = logs.reduce(
        (sum, arm, at) => sum + arm.reduce((all, log) => all + (log - mean[at]!) ** 2, 0),
        0,
      );
      const error = Math.sqrt((squares / 18) * (1 / 10 + 1 / 10));
      for (const limit of [-0.2, 0, 0.1, 0.22]) {
        const ours = lags.reduce((sum, lag, at) => sum + (lag < limit ? weights[at]! : 0), 0);
        const theirs = jStat.studentt.cdf((limit - (mean[1]! - mean[0]!)) / error, 18);
        expect(Math.abs(ours - theirs)).toBeLessThan(0.002);
      }
    }
  });

  it('tells a plant half as tall, and leaves ordinary differences alone', () => {
    const pots = [118, 131, 124, 140];
    expect(
      weighSize(
        pots.map((mm) => mm / 2),
        pots,
      ).chanceFrom(0.5),
    ).toBeGreaterThan(0.95);
    expect(weighSize(pots, [...pots].reverse()).chanceFrom(0.5)).toBeLessThan(0.05);
    expect(weighSize(plants.one, plants.control).chanceFrom(0.5)).toBeLessThan(0.3);
    // Compost that feeds is no harm.
    expect(
      weighSize(
        pots.map((mm) => mm * 1.3),
        pots,
      ).chanceFrom(0.5),
    ).toBeLessThan(0.02);
  });
});

describe('injury', () => {
  it('counts for more the more pots show it, and the more leaves there are to show it', () => {
    const none = [0, 0, 0, 0];
    const ratios = [
      [0, 0, 0, 0],
      [0, 0, 0, 20],
      [0, 0, 20, 20],
      [0, 20, 20, 20],
      [20, 20, 20, 20],
    ].map((test) => weighInjury(test, none, 3).ratio);
    expect(ratios).toEqual([...ratios].sort((a, b) => a - b));
    expect(ratios[0]).toBeLessThan(0.01);
    expect(ratios[4]).toBeGreaterThan(50);
    expect(weighInjury(none, none, 0).ratio).toBeCloseTo(1, 9);
    expect(weighInjury(none, none, 1).ratio).toBeGreaterThan(weighInjury(none, none, 2).ratio);
    expect(weighInjury(none, none, 2).ratio).toBeGreaterThan(weighInjury(none, none, 3).ratio);
  });

  it('is not thrown by one odd pot, nor blames the batch for what the controls show too', () => {
    const odd = weighInjury([0, 0, 0, 80], [0, 0, 0, 0], 3);
    expect(odd.chanceFrom(0.5)).toBeLessThan(0.75);
    const both = weighInjury([20, 10, 20, 10], [10, 20, 10, 20], 3);
    const test = weighInjury([20, 10, 20, 10], [0, 0, 0, 0], 3);
    expect(both.ratio).toBeLessThan(test.ratio / 20);
  });

  it('sums the likelihood as a direct sum does, with jStat for the cut Beta', () => {
    // One background, one sharpness, one injury: what is left is a product of cut Betas.
    const step = (score: number, mean: number): number => {
      const cut = (x: number): number =>
        jStat.beta.cdf(Math.min(1, Math.max(0, x)), mean * 16, (1 - mean) * 16);
      return cut((score + 5) / 100) - cut((score - 5) / 100);
    };
    const chances = Array.from({ length: 11 }, (_, at) => step(10 * at, 0.3));
    expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
    const mean = chances.reduce((sum, chance, at) => sum + (chance * at) / 10, 0);
    expect(mean).toBeCloseTo(0.3, 2);
    // The whole model's posterior for plain injury lies about what was scored.
    const read = weighInjury([30, 30, 40, 20, 30, 30], [0, 0, 0, 0, 0, 0], 3).effect;
    expect(read.low).toBeGreaterThan(HARMFUL_INJURY);
    expect(Math.abs(read.mean - 0.28)).toBeLessThan(0.05);
  });
});
