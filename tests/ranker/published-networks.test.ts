import { describe, expect, it } from 'vitest';
import { enumerateSets } from '../../src/ranker/enumerate-sets.ts';
import { type Evidence, NO_EVIDENCE } from '../../src/ranker/evidence.ts';
import { meanTables } from '../../src/ranker/network.ts';
import { signChances } from '../../src/ranker/sign-chances.ts';
import { marginals, normalise, weighSets } from '../../src/ranker/weigh-sets.ts';
import { reportOn } from './any-evidence.ts';
import { buildNetwork, type SmallTables } from './small-network.ts';

/** Posterior of every cause and of a sign, and the chance of the evidence itself. */
function infer(tables: SmallTables, evidence: Evidence) {
  const network = buildNetwork(tables);
  const count = tables.priors.length;
  const sets = enumerateSets(
    count,
    Array.from({ length: count }, (_, i) => i),
    { empty: true },
  );
  const logWeights = weighSets(network, meanTables(network), sets, evidence);
  const posterior = normalise(logWeights);
  const none = tables.priors.reduce((product, p) => product * (1 - p), 1);
  const there = signChances(network, meanTables(network), sets, evidence);
  return {
    causes: marginals(count, sets, posterior),
    evidence: none * logWeights.reduce((sum, w) => sum + Math.exp(w), 0),
    sign: (at: number): number => there(at).reduce((sum, p, s) => sum + p * posterior[s]!, 0),
  };
}

/**
 * The burglary network (AIMA, via BURG-WIKI; trade fact L3): burglary and earthquake sound an alarm, John and Mary call.
 * The two callers are reporters of one hidden sign. The printed alarm table is a noisy-OR but for its last entry (0.95,
 * where the noisy-OR has 0.9574), which weighs two in a million: three digits must agree, not six.
 */
describe('burglary: two reporters of one hidden sign', () => {
  const LEAK = 0.001;
  const q = (alarm: number): number => 1 - (1 - alarm) / (1 - LEAK);
  const ALARM: SmallTables = { priors: [0.001, 0.002], q: [[q(0.94)], [q(0.29)]], leak: [LEAK] };
  const john = { ifPresent: 0.9, ifAbsent: 0.05 };
  const mary = { ifPresent: 0.7, ifAbsent: 0.01 };
  const heard = (...callers: readonly (typeof john)[]): Evidence => ({
    ...NO_EVIDENCE,
    signs: [
      reportOn(
        0,
        callers.reduce((product, { ifPresent }) => product * ifPresent, 1),
        callers.reduce((product, { ifAbsent }) => product * ifAbsent, 1),
      ),
    ],
  });

  it('both call: burglary 0.2842, earthquake 0.1761, the alarm itself 0.7607', () => {
    const { causes, sign } = infer(ALARM, heard(john, mary));
    expect(causes[0]).toBeCloseTo(0.284172, 3);
    expect(causes[1]).toBeCloseTo(0.176067, 3);
    expect(sign(0)).toBeCloseTo(0.760692, 3);
  });

  it('one calls: 0.0163 by John, 0.0561 by Mary', () => {
    expect(infer(ALARM, heard(john)).causes[0]).toBeCloseTo(0.016284, 4);
    expect(infer(ALARM, heard(mary)).causes[0]).toBeCloseTo(0.056117, 4);
  });

  it('with nobody calling yet the alarm has the published chance, and a call its share of it', () => {
    const alarm = infer(ALARM, NO_EVIDENCE).sign(0);
    expect(alarm).toBeCloseTo(0.002516, 5);
    expect(0.9 * alarm + 0.05 * (1 - alarm)).toBeCloseTo(0.052139, 5);
    expect(0.7 * alarm + 0.01 * (1 - alarm)).toBeCloseTo(0.011736, 5);
  });

  it('the alarm rings: burglary 0.3736 and earthquake 0.2310; a lecture prints 0.376 (IIT-BN; trade fact L4)', () => {
    const { causes } = infer(ALARM, { ...NO_EVIDENCE, signs: [reportOn(0, 1, 0)] });
    expect(causes[0]).toBeCloseTo(0.373551, 4);
    expect(causes[1]).toBeCloseTo(0.231009, 3);
  });

  it('an earthquake explains the alarm away: burglary falls to 0.0033', () => {
    // The earthquake as known: a cause that nothing else can be.
    const known: SmallTables = { ...ALARM, priors: [0.001, 1 - 1e-12] };
    const { causes } = infer(known, { ...NO_EVIDENCE, signs: [reportOn(0, 1, 0)] });
    expect(causes[0]).toBeCloseTo(0.003268, 4);
  });
});

/**
 * The chest clinic (Lauritzen & Spiegelhalter 1988, LS-1988; trade fact L6), as far as it has two layers: tuberculosis
 * and cancer each show themselves; the X-ray reports that either is there.
 */
describe('chest clinic: a report on either of two signs', () => {
  const CHEST: SmallTables = {
    priors: [0.0104, 0.055],
    q: [
      [1, 0],
      [0, 1],
    ],
    leak: [0, 0],
  };
  const xray = (ifPresent: number, ifAbsent: number): Evidence => ({
    ...NO_EVIDENCE,
    broad: [{ label: 'either', members: [0, 1], ifPresent, ifAbsent, from: ['eye'] }],
  });

  it('a dark X-ray has the published chance 0.110290, and either illness 0.064828', () => {
    expect(infer(CHEST, xray(0.98, 0.05)).evidence).toBeCloseTo(0.11029, 6);
    expect(infer(CHEST, xray(1, 0)).evidence).toBeCloseTo(0.064828, 6);
  });

  it('and divides between them as Bayes’ rule says', () => {
    const { causes } = infer(CHEST, xray(0.98, 0.05));
    expect(causes[0]).toBeCloseTo((0.0104 * 0.98) / 0.11029, 5);
    expect(causes[1]).toBeCloseTo((0.055 * 0.98) / 0.11029, 5);
  });
});
