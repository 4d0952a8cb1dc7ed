import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attributeEvidence, DECIBANS_PER_NAT, gaussLegendre } from '../../src/ranker/attribute-evidence.ts';
import { drawBeta, seededUniform } from '../../src/ranker/draw-beta.ts';
import { drawRanges } from '../../src/ranker/draw-ranges.ts';
import { enumerateSets, listSets } from '../../src/ranker/enumerate-sets.ts';
import { type Evidence, NO_EVIDENCE } from '../../src/ranker/evidence.ts';
import { absentGivenSets } from '../../src/ranker/likelihoods.ts';
import { meanTables } from '../../src/ranker/network.ts';
import { signChances } from '../../src/ranker/sign-chances.ts';
import { marginals, normalise, weighSets } from '../../src/ranker/weigh-sets.ts';
import { anyEvidence, reportOn } from './any-evidence.ts';
import { bruteForceWeights, buildNetwork, type SmallTables, subsets } from './small-network.ts';

const certain = (at: number, there: boolean) => reportOn(at, there ? 1 : 0, there ? 0 : 1);

describe('noisy-OR', () => {
  it('gives the textbook fever table (AIMA, via SAMBUZ; trade fact L1)', () => {
    const network = buildNetwork({ priors: [0.1, 0.1, 0.1], q: [[0.4], [0.8], [0.9]], leak: [0] });
    const sets = enumerateSets(3, [0, 1, 2], { empty: true });
    const absent = absentGivenSets(network, meanTables(network), sets, 0);
    const fever = Object.fromEntries(listSets(sets).map((set, s) => [set.join(''), 1 - absent[s]!] as const));
    const published = { '': 0, 2: 0.9, 1: 0.8, 12: 0.98, 0: 0.4, '02': 0.94, '01': 0.88, '012': 0.988 };
    for (const [set, p] of Object.entries(published)) expect(fever[set]).toBeCloseTo(p, 12);
  });

  it('adds the leak as one more cause (NETICA-NOR; trade fact L2)', () => {
    const network = buildNetwork({ priors: [0.1, 0.1], q: [[0.2], [0.4]], leak: [0.1] });
    const sets = enumerateSets(2, [0, 1], { empty: true });
    const there = Array.from(absentGivenSets(network, meanTables(network), sets, 0), (p) => 1 - p);
    // Empty, first, first and second, second: the order in which sets are listed.
    [0.1, 0.28, 0.568, 0.46].forEach((p, s) => {
      expect(there[s]).toBeCloseTo(p, 12);
    });
  });
});

describe('posterior over sets', () => {
  it('agrees with Quickscore on the worked network (HECKERMAN-1989, JAAKKOLA-1999; trade fact L5)', () => {
    const tables: SmallTables = {
      priors: [0.1, 0.05, 0.01],
      q: [
        [0.4, 0.2, 0],
        [0.8, 0.6, 0.7],
        [0.9, 0.3, 0.5],
      ],
      leak: [0.01, 0.02, 0.05],
    };
    const network = buildNetwork(tables);
    const sets = enumerateSets(3, [0, 1, 2], { empty: true });
    const evidence: Evidence = {
      ...NO_EVIDENCE,
      signs: [certain(0, true), certain(1, true), certain(2, false)],
    };
    const logWeights = weighSets(network, meanTables(network), sets, evidence);
    const found = marginals(3, sets, normalise(logWeights));
    [0.540748, 0.431805, 0.084687].forEach((p, cause) => {
      expect(found[cause]).toBeCloseTo(p, 6);
    });
    // The weights are odds; the chance of no cause at all turns their sum into P(evidence).
    const none = tables.priors.reduce((product, p) => product * (1 - p), 1);
    const sum = logWeights.reduce((total, w) => total + Math.exp(w), 0);
    expect(sum * none).toBeCloseTo(0.01643228, 8);
  });

  it('reproduces the base-rate example: 1 in 100, seen 80 %, false alarm 9.6 % (EDDY; trade fact L8)', () => {
    // Two causes that exclude each other: sets of one. The second stands for "without the first".
    const network = buildNetwork({ priors: [0.01, 0.5], q: [[1], [0]], leak: [0] });
    const sets = enumerateSets(2, [0, 1], { most: 1 });
    const tables = { rate: Float64Array.of(0.01 / 1.01, 0.99 / 1.99), q: network.q };
    // Prior odds 0.01 : 0.99 as products of odds of single sets.
    const evidence: Evidence = { ...NO_EVIDENCE, signs: [reportOn(0, 0.8, 0.096)] };
    expect(marginals(2, sets, normalise(weighSets(network, tables, sets, evidence)))[0]).toBeCloseTo(
      0.0776,
      4,
    );
  });
});

const probability = fc.double({ min: 0.02, max: 0.95, noNaN: true });
const CAUSES = 4;
const SIGNS = 5;
const tablesOf = fc.record({
  priors: fc.array(fc.double({ min: 0.01, max: 0.5, noNaN: true }), { minLength: CAUSES, maxLength: CAUSES }),
  q: fc.array(fc.array(probability, { minLength: SIGNS, maxLength: SIGNS }), {
    minLength: CAUSES,
    maxLength: CAUSES,
  }),
  leak: fc.array(fc.double({ min: 0.01, max: 0.2, noNaN: true }), { minLength: SIGNS, maxLength: SIGNS }),
  further: fc.double({ min: 0.1, max: 1, noNaN: true }),
  weight: fc.constantFrom({ signs: 1, setting: 1 }, { signs: 2, setting: 1.4 }),
  factors: fc.array(
    fc.record({
      rates: fc.double({ min: 0.1, max: 0.9, noNaN: true }).map((p) => [p, 1 - p]),
      lean: fc.array(fc.array(fc.double({ min: 0.1, max: 9, noNaN: true }), { minLength: 2, maxLength: 2 }), {
        minLength: CAUSES,
        maxLength: CAUSES,
      }),
    }),
    { minLength: 1, maxLength: 1 },
  ),
});
/** Likelihoods as they stand: only then are they chances of what will be answered. */
const plainTablesOf = tablesOf.map((tables) => ({ ...tables, weight: { signs: 1, setting: 1 } }));
const evidenceOf = anyEvidence({
  signs: SIGNS,
  context: fc.array(fc.double({ min: 0.2, max: 5, noNaN: true }), { minLength: CAUSES, maxLength: CAUSES }),
  likelihood: probability,
  mostSigns: 3,
  mostBroad: 3,
  mostMembers: 4,
});

describe('against brute force over every set and every state of every sign', () => {
  const ALIVE = [0, 1, 2, 3];
  const listed = subsets(CAUSES, 1, 3);

  it('the posterior is exact, broader marks and several reporters included', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, (tables, evidence) => {
        const network = buildNetwork(tables);
        const sets = enumerateSets(CAUSES, ALIVE);
        const posterior = normalise(weighSets(network, meanTables(network), sets, evidence));
        const weights = bruteForceWeights(tables, evidence, listed);
        const total = weights.reduce((a, b) => a + b, 0);
        listSets(sets).forEach((set, s) => {
          const at = listed.findIndex((other) => other.join() === set.join());
          expect(posterior[s]).toBeCloseTo(weights[at]! / total, 10);
        });
        expect(posterior.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  it('the reasons of each cause add up to its odds', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, (tables, evidence) => {
        const network = buildNetwork(tables);
        const sets = enumerateSets(CAUSES, ALIVE);
        const posterior = marginals(
          CAUSES,
          sets,
          normalise(weighSets(network, meanTables(network), sets, evidence)),
        );
        const { labels, decibans, priorDecibans } = attributeEvidence(
          network,
          meanTables(network),
          sets,
          evidence,
        );
        for (let cause = 0; cause < CAUSES; cause++) {
          const row = decibans.subarray(cause * labels.length, (cause + 1) * labels.length);
          const sum = row.reduce((a, b) => a + b, priorDecibans[cause]!);
          const p = posterior[cause]!;
          expect(sum).toBeCloseTo(DECIBANS_PER_NAT * Math.log(p / (1 - p)), 6);
        }
      }),
      { numRuns: 100, seed: 12 },
    );
  });

  it('the chance of a sign not yet looked for is exact', () => {
    fc.assert(
      fc.property(plainTablesOf, evidenceOf, fc.nat(SIGNS - 1), (tables, evidence, at) => {
        const network = buildNetwork(tables);
        const sets = enumerateSets(CAUSES, ALIVE);
        const posterior = normalise(weighSets(network, meanTables(network), sets, evidence));
        const there = signChances(network, meanTables(network), sets, evidence)(at);
        const found = there.reduce((sum, p, s) => sum + p * posterior[s]!, 0);
        const weightOf = (more: Evidence['signs']): number =>
          bruteForceWeights(tables, { ...evidence, signs: [...evidence.signs, ...more] }, listed).reduce(
            (a, b) => a + b,
            0,
          );
        expect(found).toBeCloseTo(weightOf([certain(at, true)]) / weightOf([]), 9);
      }),
      { numRuns: 100, seed: 13 },
    );
  });

  it('what is expected to be believed after an answer is what is believed now (trade fact L13)', () => {
    fc.assert(
      fc.property(plainTablesOf, evidenceOf, fc.nat(SIGNS - 1), (tables, evidence, at) => {
        const network = buildNetwork(tables);
        const sets = enumerateSets(CAUSES, ALIVE);
        const tablesNow = meanTables(network);
        const chancesOf = (known: Evidence): Float64Array =>
          marginals(CAUSES, sets, normalise(weighSets(network, tablesNow, sets, known)));
        const posterior = normalise(weighSets(network, tablesNow, sets, evidence));
        const there = signChances(network, tablesNow, sets, evidence)(at);
        const chance = there.reduce((sum, p, s) => sum + p * posterior[s]!, 0);
        const believedIf = (yes: boolean): Float64Array => {
          const before = evidence.signs.find((report) => report.sign === at);
          const rest = evidence.signs.filter((report) => report !== before);
          const report = reportOn(
            at,
            (before?.ifPresent ?? 1) * Number(yes),
            (before?.ifAbsent ?? 1) * Number(!yes),
          );
          return chancesOf({ ...evidence, signs: [...rest, report] });
        };
        const [seen, notSeen] = [believedIf(true), believedIf(false)];
        chancesOf(evidence).forEach((now, cause) => {
          expect(chance * seen[cause]! + (1 - chance) * notSeen[cause]!).toBeCloseTo(now, 9);
        });
      }),
      { numRuns: 60, seed: 14 },
    );
  });
});

describe('reasons', () => {
  it('equal the plain log likelihood ratio where findings are independent (GOOD-WOE; trade fact L9)', () => {
    // Two causes that exclude each other: each finding has one likelihood ratio and no order can change it.
    const network = buildNetwork({
      priors: [0.2, 0.3],
      q: [
        [1, 1],
        [0, 0],
      ],
      leak: [0, 0],
    });
    const sets = enumerateSets(2, [0, 1], { most: 1 });
    const evidence: Evidence = { ...NO_EVIDENCE, signs: [reportOn(0, 0.5, 0.05), reportOn(1, 0.2, 0.8)] };
    const { decibans } = attributeEvidence(network, meanTables(network), sets, evidence);
    expect(decibans[0]).toBeCloseTo(10, 9);
    expect(decibans[1]).toBeCloseTo(-6.0206, 4);
  });

  it('prior odds 1:9 and ten decibans make 0.526316 (trade fact L9)', () => {
    const odds = 10 ** ((-9.5424 + 10) / 10);
    expect(odds / (1 + odds)).toBeCloseTo(0.526316, 5);
    expect(DECIBANS_PER_NAT).toBeCloseTo(4.3429, 4);
    expect(DECIBANS_PER_NAT * Math.log(2)).toBeCloseTo(3.0103, 4);
  });

  it('integrate with nodes that are exact for polynomials (Gauss–Legendre, from memory: degree 2n − 1)', () => {
    const rule = gaussLegendre(10);
    for (const degree of [0, 1, 7, 19]) {
      const integral = rule.reduce((sum, { node, weight }) => sum + weight * node ** degree, 0);
      expect(integral).toBeCloseTo(1 / (degree + 1), 12);
    }
  });
});

describe('ranges', () => {
  it('draw from Beta distributions of the right mean and spread (closed form: mean ab/((a+b)²(a+b+1)))', () => {
    for (const [mean, observations] of [
      [0.3, 12],
      [0.95, 4],
      [0.02, 600],
    ] as const) {
      const uniform = seededUniform(5);
      const draws = Array.from({ length: 20_000 }, () => drawBeta(mean, observations, uniform));
      const average = draws.reduce((a, b) => a + b, 0) / draws.length;
      const variance = draws.reduce((sum, x) => sum + (x - average) ** 2, 0) / draws.length;
      const expected = (mean * (1 - mean)) / (observations + 1);
      expect(Math.abs(average - mean)).toBeLessThan(4 * Math.sqrt(expected / draws.length));
      expect(variance / expected).toBeGreaterThan(0.93);
      expect(variance / expected).toBeLessThan(1.07);
    }
  });

  it('hold the chance, lie within 0 and 1, repeat exactly, and narrow as more is known of the tables', () => {
    const tables: SmallTables = {
      priors: [0.1, 0.05, 0.2],
      q: [
        [0.8, 0.1],
        [0.3, 0.6],
        [0.05, 0.3],
      ],
      leak: [0.05, 0.05],
    };
    const network = buildNetwork(tables);
    const sets = enumerateSets(3, [0, 1, 2]);
    const evidence: Evidence = { ...NO_EVIDENCE, signs: [reportOn(0, 0.9, 0.05)] };
    const posterior = normalise(weighSets(network, meanTables(network), sets, evidence));
    const chances = marginals(3, sets, posterior);
    const { low, high } = drawRanges(network, sets, evidence, posterior);
    for (let cause = 0; cause < 3; cause++) {
      expect(low[cause]).toBeGreaterThan(0);
      expect(low[cause]).toBeLessThan(chances[cause]!);
      expect(high[cause]).toBeGreaterThan(chances[cause]!);
      expect(high[cause]).toBeLessThan(1);
    }
    expect(drawRanges(network, sets, evidence, posterior)).toEqual({ low, high });
    const surer = { ...network, qObservations: network.qObservations.map((n) => n * 20) };
    const narrow = drawRanges(surer, sets, evidence, posterior);
    expect(narrow.high[0]! - narrow.low[0]!).toBeLessThan(high[0]! - low[0]!);
  });
});
