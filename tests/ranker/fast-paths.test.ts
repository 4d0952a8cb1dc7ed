import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attributeEvidence, DECIBANS_PER_NAT } from '../../src/ranker/attribute-evidence.ts';
import { drawChances } from '../../src/ranker/draw-chances.ts';
import { drawTables } from '../../src/ranker/draw-tables.ts';
import { enumerateSets, listSets } from '../../src/ranker/enumerate-sets.ts';
import { type Evidence, NO_EVIDENCE } from '../../src/ranker/evidence.ts';
import { expectByCause, sumJointChances } from '../../src/ranker/joint-chances.ts';
import { absentGivenSets } from '../../src/ranker/likelihoods.ts';
import { localLikelihoods, touchedBySigns } from '../../src/ranker/local-likelihoods.ts';
import { meanTables, type Network, type Tables } from '../../src/ranker/network.ts';
import { signChances } from '../../src/ranker/sign-chances.ts';
import { marginals, normalise, weighSets } from '../../src/ranker/weigh-sets.ts';
import { anyEvidence, reportOn } from './any-evidence.ts';
import { bruteForceWeights, buildNetwork, type SmallTables, subsets } from './small-network.ts';

/**
 * Every shortcut against brute force over all states of all signs, on networks whose signs are each shown by some causes only:
 * there the paths through "the few causes that touch it" are taken, and on full tables the paths through all sets.
 */
const CAUSES = 6;
const SIGNS = 5;
const ALIVE = Array.from({ length: CAUSES }, (_, cause) => cause);
const LISTED = subsets(CAUSES, 1, 3);

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const many = <T>(one: fc.Arbitrary<T>, length: number) =>
  fc.array(one, { minLength: length, maxLength: length });
const rareQ = fc.oneof(
  { weight: 3, arbitrary: fc.constant(0) },
  { weight: 4, arbitrary: between(0.02, 0.95) },
);
const odds = fc.oneof({ weight: 2, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: between(0.1, 9) });
const tablesOf: fc.Arbitrary<SmallTables> = fc.record({
  priors: many(between(0.01, 0.4), CAUSES),
  q: many(many(rareQ, SIGNS), CAUSES),
  leak: many(between(0.01, 0.2), SIGNS),
  further: between(0.1, 1),
  weight: fc.constantFrom(
    { signs: 1, setting: 1 },
    { signs: 2, setting: 1.4 },
    { signs: 1.75, setting: 1 },
    { signs: 1.3, setting: 1.3 },
  ),
  factors: many(
    fc.record({
      rates: between(0.1, 0.9).map((p) => [p, 1 - p]),
      lean: many(many(odds, 2), CAUSES),
    }),
    1,
  ),
});
const evidenceOf = anyEvidence({
  signs: SIGNS,
  context: many(odds, CAUSES),
  likelihood: between(0.02, 0.98),
  mostSigns: 4,
  mostBroad: 2,
  mostMembers: 3,
});

/** P(each cause acts) the long way, under any tables. */
function bruteChances(tables: SmallTables, { rate, q }: Tables, evidence: Evidence): number[] {
  const drawn: SmallTables = {
    ...tables,
    priors: [...rate],
    q: tables.q.map((_, cause) => [...q.subarray(cause * SIGNS, (cause + 1) * SIGNS)]),
  };
  const weights = bruteForceWeights(drawn, evidence, LISTED);
  const total = weights.reduce((a, b) => a + b, 0);
  return ALIVE.map((cause) =>
    LISTED.reduce((sum, set, s) => (set.includes(cause) ? sum + weights[s]! / total : sum), 0),
  );
}

const believe = (network: Network, evidence: Evidence): Float64Array =>
  normalise(weighSets(network, meanTables(network), enumerateSets(CAUSES, ALIVE), evidence));
const closeTo = (p: number) => expect.closeTo(p, 9);

describe('on networks whose signs are shown by some causes only', () => {
  const sets = enumerateSets(CAUSES, ALIVE);

  it('the chance of every cause is that of brute force', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, (tables, evidence) => {
        const network = buildNetwork(tables);
        const expected = bruteChances(tables, meanTables(network), evidence);
        expect([...marginals(CAUSES, sets, believe(network, evidence))]).toEqual(expected.map(closeTo));
      }),
      { numRuns: 120, seed: 31 },
    );
  });

  it('every draw of the tables gives the chances of brute force under that draw, so their means agree too', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, (tables, evidence) => {
        const network = buildNetwork(tables);
        const signs = Array.from({ length: SIGNS }, (_, sign) => sign);
        const draws = drawTables(network, signs, 6);
        const now = marginals(CAUSES, sets, believe(network, evidence));
        const found = drawChances(network, sets, evidence, now, draws, 0);
        const means = new Array<number>(CAUSES).fill(0);
        for (let draw = 0; draw < draws.count; draw++) {
          const expected = bruteChances(tables, draws.tables(draw), evidence);
          expect(found.map((column) => column[draw])).toEqual(expected.map(closeTo));
          expected.forEach((p, cause) => {
            means[cause]! += p / draws.count;
          });
        }
        const averages = found.map((column) => column.reduce((sum, p) => sum + p, 0) / draws.count);
        expect(averages).toEqual(means.map(closeTo));
      }),
      { numRuns: 60, seed: 32 },
    );
  });

  it('blocks left out of the draws change no chance by more than a little over their share', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, (tables, evidence) => {
        const network = buildNetwork({ ...tables, further: 0.01 });
        const draws = drawTables(network, [0, 1, 2, 3, 4], 4);
        const now = marginals(CAUSES, sets, believe(network, evidence));
        const all = drawChances(network, sets, evidence, now, draws, 0);
        const some = drawChances(network, sets, evidence, now, draws, 1e-4);
        all.forEach((column, cause) => {
          column.forEach((p, draw) => {
            expect(Math.abs(p - some[cause]![draw]!)).toBeLessThan(1e-2);
          });
        });
      }),
      { numRuns: 60, seed: 33 },
    );
  });

  it('reports that rule sets out altogether are no trouble', () => {
    fc.assert(
      fc.property(tablesOf, fc.nat(SIGNS - 1), fc.boolean(), (tables, at, seen) => {
        const q = tables.q.map((row, cause) => row.map((p, sign) => (sign === at && cause === 1 ? 1 : p)));
        const leak = tables.leak.map((p, sign) => (sign === at ? 0 : p));
        const network = buildNetwork({ ...tables, q, leak });
        const evidence: Evidence = { ...NO_EVIDENCE, signs: [reportOn(at, Number(seen), Number(!seen))] };
        const posterior = believe(network, evidence);
        const expected = bruteChances({ ...tables, q, leak }, meanTables(network), evidence);
        const now = marginals(CAUSES, sets, posterior);
        expect([...now]).toEqual(expected.map(closeTo));
        const draws = drawTables(network, [at], 2);
        const drawn = bruteChances({ ...tables, q, leak }, draws.tables(1), evidence);
        const found = drawChances(network, sets, evidence, now, draws, 0);
        expect(found.map((column) => column[1])).toEqual(drawn.map(closeTo));
        const { decibans } = attributeEvidence(network, meanTables(network), sets, evidence);
        now.forEach((p, cause) => {
          if (p > 1e-9 && p < 1 - 1e-9) expect(Number.isFinite(decibans[cause])).toBe(true);
        });
      }),
      { numRuns: 40, seed: 34 },
    );
  });

  it('decibans add up to the odds', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, (tables, evidence) => {
        const network = buildNetwork(tables);
        const chances = bruteChances(tables, meanTables(network), evidence);
        const { labels, decibans, priorDecibans } = attributeEvidence(
          network,
          meanTables(network),
          sets,
          evidence,
        );
        chances.forEach((p, cause) => {
          const row = decibans.subarray(cause * labels.length, (cause + 1) * labels.length);
          const sum = row.reduce((a, b) => a + b, priorDecibans[cause]!);
          expect(sum).toBeCloseTo(DECIBANS_PER_NAT * Math.log(p / (1 - p)), 6);
        });
      }),
      { numRuns: 60, seed: 35 },
    );
  });

  it('a sum over all sets by cause is the plain sum, of a sign as of any likelihood', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, fc.nat(SIGNS - 1), (tables, evidence, at) => {
        const network = buildNetwork(tables);
        const posterior = believe(network, evidence);
        const joint = sumJointChances(sets, posterior);
        const byCause = new Float64Array(CAUSES);
        const touched = touchedBySigns(network, sets, [at]);
        const values = absentGivenSets(network, meanTables(network), touched.subsets, at);
        const everywhere = absentGivenSets(network, meanTables(network), sets, at);
        const sum = expectByCause(joint, { ...touched, values }, byCause);
        const members = listSets(sets);
        const plain = (holds: (set: readonly number[]) => boolean): number =>
          members.reduce((total, set, s) => (holds(set) ? total + posterior[s]! * everywhere[s]! : total), 0);
        expect(sum).toBeCloseTo(
          plain(() => true),
          12,
        );
        expect([...byCause]).toEqual(
          ALIVE.map((cause) =>
            expect.closeTo(
              plain((set) => set.includes(cause)),
              12,
            ),
          ),
        );
        for (const likelihood of localLikelihoods(network, meanTables(network), sets, evidence)) {
          const ones = { ...likelihood, values: likelihood.values.map(() => 1) };
          expect(expectByCause(joint, ones, byCause)).toBeCloseTo(1, 12);
        }
      }),
      { numRuns: 80, seed: 36 },
    );
  });

  it('the chance of a sign and of a broader mark, given all that was said, is that of brute force', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, fc.nat(SIGNS - 1), (given, evidence, at) => {
        const tables = { ...given, weight: { signs: 1, setting: 1 } };
        const network = buildNetwork(tables);
        const posterior = believe(network, evidence);
        const there = signChances(network, meanTables(network), sets, evidence)(at);
        const found = there.reduce((sum, p, s) => sum + p * posterior[s]!, 0);
        const chanceOf = (more: Partial<Evidence>): number =>
          bruteForceWeights(tables, { ...evidence, ...more }, LISTED).reduce((a, b) => a + b, 0);
        const known = evidence.signs.find(({ sign }) => sign === at);
        const certain = reportOn(at, known?.ifPresent ?? 1, 0);
        const signs = [...evidence.signs.filter(({ sign }) => sign !== at), certain];
        expect(found).toBeCloseTo(chanceOf({ signs }) / chanceOf({}), 9);
      }),
      { numRuns: 80, seed: 37 },
    );
  });
});

describe('evidence', () => {
  const sets = enumerateSets(CAUSES, ALIVE);
  const chances = (network: Network, evidence: Evidence): number[] => [
    ...marginals(CAUSES, sets, believe(network, evidence)),
  ];

  it('may come in any order', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, (tables, evidence) => {
        const network = buildNetwork(tables);
        const turned: Evidence = {
          ...evidence,
          signs: [...evidence.signs].reverse(),
          broad: [...evidence.broad].reverse(),
        };
        expect(chances(network, turned)).toEqual(
          chances(network, evidence).map((p) => expect.closeTo(p, 12)),
        );
      }),
      { numRuns: 60, seed: 38 },
    );
  });

  it('that says as much for as against changes nothing: "can\'t say"', () => {
    fc.assert(
      fc.property(tablesOf, evidenceOf, between(0.1, 1), (tables, evidence, p) => {
        const network = buildNetwork(tables);
        const idle = Array.from({ length: SIGNS }, (_, at) => at)
          .filter((at) => !evidence.signs.some(({ sign }) => sign === at))
          .map((at) => reportOn(at, p, p));
        const more: Evidence = { ...evidence, signs: [...evidence.signs, ...idle] };
        expect(chances(network, more)).toEqual(chances(network, evidence).map(closeTo));
      }),
      { numRuns: 60, seed: 39 },
    );
  });

  it('on a broader mark counts as evidence on the OR of its members', () => {
    fc.assert(
      fc.property(tablesOf, between(0.05, 0.95), between(0.05, 0.95), (given, yes, no) => {
        const tables = { ...given, weight: { signs: 1, setting: 1 } };
        // One sign that every cause shows as often as any of the first two signs.
        const either = (row: readonly number[]): number[] => [
          1 - (1 - row[0]!) * (1 - row[1]!),
          ...row.slice(2),
        ];
        const merged = { ...tables, q: tables.q.map(either), leak: either(tables.leak) };
        const broad = {
          label: 'some',
          members: [0, 1],
          ifPresent: yes,
          ifAbsent: no,
          from: ['eye'] as const,
        };
        expect(chances(buildNetwork(tables), { ...NO_EVIDENCE, broad: [broad] })).toEqual(
          chances(buildNetwork(merged), { ...NO_EVIDENCE, signs: [reportOn(0, yes, no)] }).map(closeTo),
        );
      }),
      { numRuns: 60, seed: 40 },
    );
  });
});
