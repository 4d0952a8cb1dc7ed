import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { leakOf, UNLISTED_Q } from '../../src/causes/leaks.ts';
import { compileKnowledge } from '../../src/ranker/knowledge-model.ts';
import { type RankInput, rank, rankChancesOnly } from '../../src/ranker/rank.ts';
import type { Ranking } from '../../src/ranker/types.ts';
import { circumstancesFromAnswers } from '../../src/signs/circumstances-from-answers.ts';
import { findingFromEye } from '../../src/signs/findings-from-answers.ts';
import { ALL_SIGNS } from '../../src/signs/members-of.ts';
import type { Answers, Finding } from '../../src/signs/types.ts';
import type { AskableId, CauseId } from '../../src/signs/vocabulary.ts';
import { workOutLeanings } from '../../src/signs/work-out-leanings.ts';

const model = compileKnowledge(KNOWLEDGE, leakOf, UNLISTED_Q);
const DRAWS = 20;
const TODAY = '2026-06-18';

const weigh = (findings: readonly Finding[], more: Partial<RankInput> = {}): Ranking =>
  rank(model, { findings, circumstances: [], today: TODAY, draws: DRAWS, ...more });
const seen = (...signs: AskableId[]): Finding[] => signs.map((sign) => findingFromEye(sign, 'seen'));
const absent = (...signs: AskableId[]): Finding[] => signs.map((sign) => findingFromEye(sign, 'absent'));
const setting = (values: Answers['setting']) => {
  const answers = { setting: values, signs: {} };
  return circumstancesFromAnswers(answers, workOutLeanings(answers, { zone: 'north' }));
};
const chance = (ranking: Ranking, id: CauseId): number =>
  ranking.causes.find((cause) => cause.id === id)!.probability;
const logOdds = (p: number): number => 10 * Math.log10(p / (1 - p));

describe('a ranking over the whole knowledge base', () => {
  it('with nothing said is the prior, says so, and is ordered as the base rates are', () => {
    const ranking = weigh([]);
    expect(ranking.nothingSaid).toBe(true);
    expect(ranking.causes).toHaveLength(53);
    expect(ranking.causes.every((cause) => cause.for.length + cause.against.length === 0)).toBe(true);
    const rates = ranking.causes.map(({ id }) => KNOWLEDGE.find((cause) => cause.id === id)!.baseRate.rate);
    expect(rates).toEqual([...rates].sort((a, b) => b - a));
  });

  it('has reasons that reproduce the odds of every cause', () => {
    const ranking = weigh([...seen('yellow-even@old', 'stunted', 'holes@some'), ...absent('aphids')], {
      circumstances: setting({ 'compost-kinds': ['horse-manure', 'straw-or-hay'], 'recent-rain': 'wet' }),
      crop: 'kale',
      season: 'summer',
    });
    for (const { probability, priorDecibans, for: pro, against, ruledOut } of ranking.causes) {
      if (ruledOut !== undefined) continue;
      const sum = [...pro, ...against].reduce((total, { decibans }) => total + decibans, priorDecibans);
      expect(sum).toBeCloseTo(logOdds(probability), 6);
    }
  });

  it('does not depend on the order of the answers', () => {
    const report = fc.record({ sign: fc.constantFrom(...ALL_SIGNS), yes: fc.boolean() });
    fc.assert(
      fc.property(
        fc.uniqueArray(report, { selector: ({ sign }) => sign, minLength: 2, maxLength: 6 }),
        (reports) => {
          const findings = reports.map(({ sign, yes }) => findingFromEye(sign, yes ? 'seen' : 'absent'));
          const { causes, verdict } = weigh(findings);
          const turned = weigh([...findings].reverse());
          expect(turned.causes).toEqual(causes);
          expect(turned.verdict).toEqual(verdict);
        },
      ),
      { numRuns: 5, seed: 21 },
    );
  });

  it('is not moved by "can\'t say", which only takes the question away', () => {
    const before = weigh(seen('yellow-even@old'));
    const id = before.openQuestions[0]!.id;
    const after = weigh(seen('yellow-even@old'), { cannotSay: [id] });
    expect(after.causes).toEqual(before.causes);
    expect(after.openQuestions.map((question) => question.id)).not.toContain(id);
  });

  it('rules birds out under a net, keeps them last and says what did it (common practice, no source)', () => {
    const ranking = weigh(seen('veins-left@old'), { circumstances: setting({ netted: true }), crop: 'kale' });
    const birds = ranking.causes.find(({ id }) => id === 'birds')!;
    expect(birds).toMatchObject({ probability: 0, low: 0, high: 0, ruledOut: 'netted=yes' });
    expect(
      chance(
        weigh(seen('veins-left@old'), { circumstances: setting({ netted: false }), crop: 'kale' }),
        'birds',
      ),
    ).toBeGreaterThan(0.2);
  });

  it('rules late blight out where no nightshade grows (common practice, no source)', () => {
    const signs = seen('spreading-blotches@old', 'grey-mould-under@old');
    expect(chance(weigh(signs, { crop: 'lettuce' }), 'blight')).toBe(0);
    expect(chance(weigh(signs, { crop: 'potato' }), 'blight')).toBeGreaterThan(0.5);
  });
});

it('gives the same chances where nothing but chances is asked for', () => {
  const findings = [...seen('yellow-even@old', 'stunted', 'holes@some'), ...absent('aphids')];
  const more = {
    circumstances: setting({ 'compost-kinds': ['horse-manure'], netted: true }),
    crop: 'kale',
  } as const;
  const { causes } = weigh(findings, more);
  const only = rankChancesOnly(model, { findings, ...more });
  expect(only.size).toBe(causes.length);
  for (const { id, probability } of causes) expect(only.get(id)).toBe(probability);
});

describe('several reporters of one sign', () => {
  const camera = (ifPresent: number, ifAbsent: number): Finding => ({
    sign: 'mottled@new',
    from: 'camera',
    ifPresent,
    ifAbsent,
  });

  it('combine on the sign and give one reason that names both', () => {
    const both = weigh([...seen('mottled@new'), camera(0.6, 0.2)], { crop: 'courgette' });
    const reasons = both.causes
      .find(({ id }) => id === 'virus')!
      .for.filter(({ sign }) => sign === 'mottled@new');
    expect(reasons).toHaveLength(1);
    expect([...reasons[0]!.from].sort()).toEqual(['camera', 'eye']);
    expect(chance(both, 'virus')).toBeGreaterThan(
      chance(weigh(seen('mottled@new'), { crop: 'courgette' }), 'virus'),
    );
  });

  it('can never say more than the sign itself would', () => {
    const sure = weigh([{ ...camera(1, 1e-9) }], { crop: 'courgette' });
    const many = weigh([...seen('mottled@new'), camera(0.9, 0.05)], { crop: 'courgette' });
    expect(chance(many, 'virus')).toBeLessThanOrEqual(chance(sure, 'virus') + 1e-9);
  });

  it('of equal strength on both sides change nothing', () => {
    const plain = weigh(seen('stunted'));
    const idle = weigh([...seen('stunted'), camera(0.4, 0.4)]);
    expect(chance(idle, 'virus')).toBeCloseTo(chance(plain, 'virus'), 12);
  });
});

describe('what comes with a ranking', () => {
  it('a verdict has a date after today, a cause that carries it, and what should be seen by then', () => {
    for (const findings of [
      [],
      seen('aphids'),
      seen('spreading-blotches@new'),
      seen('whole-colour-golden@new'),
    ]) {
      const { verdict } = weigh(findings, { crop: 'tomato' });
      expect(verdict.lookAgain > TODAY).toBe(true);
      expect(verdict.because.causes.length).toBeGreaterThan(0);
      expect(verdict.recovery.map(({ cause }) => cause)).toEqual(verdict.because.causes);
      const losses = verdict.because.expectedLoss;
      const least = Math.min(...Object.values(losses));
      expect(losses[verdict.id]).toBeCloseTo(least, 9);
    }
  });

  it('next checks are worth their price; questions already answered are not asked again', () => {
    const ranking = weigh(seen('stunted', 'whole-bed'), {
      crop: 'tomato',
      circumstances: setting({ 'compost-kinds': ['horse-manure'] }),
    });
    expect(ranking.nextChecks.length).toBeGreaterThan(0);
    for (const { gain, bits } of ranking.nextChecks) expect(gain + bits).toBeGreaterThan(0);
    const open = new Set(ranking.openQuestions.map(({ id }) => id));
    for (const id of ['stunted', 'whole-bed', 'compost-kinds']) expect(open.has(id)).toBe(false);
    expect(open.size).toBe(ranking.openQuestions.length);
  });

  it('cautions stand wherever residue is in question (design: never without the usual cautions)', () => {
    const { verdict } = weigh(seen('cupped-up@new', 'twisted-narrow@new', 'same-compost-only'), {
      crop: 'french-bean',
      circumstances: setting({ 'compost-kinds': ['horse-manure'] }),
    });
    expect(verdict.cautions).toEqual(expect.arrayContaining(['residue', 'local-rules']));
  });

  it('lists what was left open only where it leans on a leading cause', () => {
    const { assumed } = weigh(seen('veins-left@old'), { crop: 'kale' });
    expect(assumed.map((entry) => entry.setting)).toContain('netted');
    const told = weigh(seen('veins-left@old'), { crop: 'kale', circumstances: setting({ netted: false }) });
    expect(told.assumed.map((entry) => entry.setting)).not.toContain('netted');
  });
});
