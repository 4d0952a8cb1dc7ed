import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { leakOf, UNLISTED_Q } from '../../src/causes/leaks.ts';
import { chooseNextCheck } from '../../src/ranker/choose-next-check.ts';
import { bestPlan, valueOfAnswers } from '../../src/ranker/decide-plan.ts';
import { enumerateSets, listSets } from '../../src/ranker/enumerate-sets.ts';
import type { Evidence } from '../../src/ranker/evidence.ts';
import { gatherEvidence, ruledOut } from '../../src/ranker/gather-evidence.ts';
import { compileKnowledge, decisionTable, networkUnder } from '../../src/ranker/knowledge-model.ts';
import { factorLikelihood } from '../../src/ranker/likelihoods.ts';
import { meanTables } from '../../src/ranker/network.ts';
import { signChances } from '../../src/ranker/sign-chances.ts';
import { normalise, weighSets } from '../../src/ranker/weigh-sets.ts';
import { eyeReliability, findingFromEye } from '../../src/signs/findings-from-answers.ts';
import type { AskableId, SignId } from '../../src/signs/vocabulary.ts';

const model = compileKnowledge(KNOWLEDGE, leakOf, UNLISTED_Q);
const { network, signIndex, factorIndex } = model;
const seen = (...signs: AskableId[]) => signs.map((sign) => findingFromEye(sign, 'seen'));

const LOOKS = {
  'nothing yet': seen(),
  'a broader mark and one of its members': seen('yellowing@some', 'yellow-even@old', 'stunted'),
  'a few plain signs': seen('aphids', 'cupped-down@new', 'cast-skins'),
} as const;

describe.each(Object.entries(LOOKS))('the worth of asking, with %s', (_, findings) => {
  const evidence: Evidence = gatherEvidence(model, {
    findings,
    circumstances: [],
    crop: 'tomato',
    season: 'summer',
  });
  const out = ruledOut(model, evidence);
  const sets = enumerateSets(
    model.causes.length,
    model.causes.map((_, cause) => cause).filter((cause) => !out.has(cause)),
  );
  const under = networkUnder(model, evidence);
  const power = under.evidenceWeight;
  const posterior = normalise(weighSets(under, meanTables(network), sets, evidence));
  /** Chances of answers, each raised to a power and made chances again. */
  const sharpened = (chances: readonly number[], by: number): number[] => {
    const raised = chances.map((p) => p ** by);
    const sum = raised.reduce((a, b) => a + b, 0);
    return raised.map((p) => p / sum);
  };
  const members = listSets(sets);
  const table = decisionTable(model, new Set());
  const asked = { signs: new Set<SignId>(), settings: new Set<string>(), cannotSay: new Set<string>() };
  const { all } = chooseNextCheck(model, sets, posterior, evidence, new Set(), table, asked);

  /** Chance of an answer and of every cause after it, summed over all sets the plain way. */
  function believedAfter(given: (set: number) => number) {
    const byCause = new Float64Array(model.causes.length);
    let chance = 0;
    members.forEach((set, s) => {
      const p = posterior[s]! * given(s);
      chance += p;
      for (const cause of set) byCause[cause]! += p;
    });
    return { chance, chances: byCause.map((p) => p / chance), table };
  }
  const planNow = bestPlan(table, believedAfter(() => 1).chances).plan;

  it('is that of a plain sum over all sets for every sign', () => {
    const there = signChances(network, meanTables(network), sets, evidence);
    const signs = all.filter(({ target }) => target.kind === 'sign' && signIndex.has(target.sign as SignId));
    expect(signs.length).toBeGreaterThan(100);
    for (const { target, gain } of signs) {
      if (target.kind !== 'sign' || model.tempering.has(target.sign)) continue;
      const chances = there(signIndex.get(target.sign as SignId)!);
      const { seenIfPresent, seenIfAbsent } = eyeReliability(target.sign);
      const answers = (s: number): number[] => {
        const ifSeen = seenIfAbsent + (seenIfPresent - seenIfAbsent) * chances[s]!;
        return sharpened([ifSeen, 1 - ifSeen], power.signs);
      };
      const both = [0, 1].map((answer) => believedAfter((s) => answers(s)[answer]!));
      expect(gain).toBeCloseTo(valueOfAnswers(planNow, both), 6);
    }
  });

  it('is that of a plain sum over all sets for settings of one answer', () => {
    const settings = all.filter(({ id, target }) => target.kind === 'setting' && factorIndex.has(id));
    expect(settings.length).toBeGreaterThan(5);
    for (const { id, gain } of settings) {
      const factor = factorIndex.get(id)!;
      const { outcomes, rates } = network.factors[factor]!;
      if (outcomes.some((outcome) => model.tempering.has(`${id}=${outcome}`))) continue;
      const leans = outcomes.map((_, outcome) =>
        factorLikelihood(network, sets, { label: id, factor, outcome, from: [] }),
      );
      const weight = (s: number, outcome: number): number =>
        rates[outcome]! * leans[outcome]![s]! ** power.setting;
      const answers = outcomes.map((_, outcome) =>
        believedAfter(
          (s) => weight(s, outcome) / outcomes.reduce((sum, __, other) => sum + weight(s, other), 0),
        ),
      );
      expect(gain).toBeCloseTo(valueOfAnswers(planNow, answers), 6);
    }
  });

  it('is never negative, and telling more than nothing is no reason by itself', () => {
    for (const { gain, bits } of all) {
      expect(gain).toBeGreaterThanOrEqual(0);
      expect(bits).toBeGreaterThanOrEqual(0);
    }
    expect(all.some(({ bits, net }) => bits > 0 && net < 0)).toBe(true);
  });
});
