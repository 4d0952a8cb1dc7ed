import type { Check } from '../causes/checks.ts';
import { minutesToLook } from '../signs/effort.ts';
import { EYE } from '../signs/findings-from-answers.ts';
import { SETTINGS, type Setting, type SettingId } from '../signs/settings.ts';
import type { CauseId, SignId } from '../signs/vocabulary.ts';
import { bestPlan, type DecisionTable, type PossibleAnswer, valueOfAnswers } from './decide-plan.ts';
import { type CauseSets, pickSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { decisionTable, EFFORT, type Facts, type KnowledgeModel, temperingFacts } from './knowledge-model.ts';
import { factorLikelihood } from './likelihoods.ts';
import { meanTables } from './network.ts';
import { signChances } from './sign-chances.ts';
import type { NextCheck, NextCheckTarget } from './types.ts';

/** What has been asked and what not. */
export interface Asked {
  /** Signs a person has answered. */
  readonly signs: ReadonlySet<SignId>;
  readonly settings: ReadonlySet<string>;
  /** Ids answered "can't say": not offered again. */
  readonly cannotSay: ReadonlySet<string>;
}

interface Scored extends NextCheck {
  /** Gain after its cost in effort: below 0 it is not worth doing. */
  readonly net: number;
}

/** One answer to a question: how likely it is under each set, and the fact it would settle. */
interface Answer {
  readonly givenSets: Float64Array;
  readonly fact?: string;
}

/** Sets lighter than this are left out: together they hold less than one part in ten thousand. */
const LIGHTEST = 1e-9;

/** Price of a question or check in percent of a bed's crop. */
function priceOf(minutes: number, waitDays: number, isCheck: boolean): number {
  return minutes * EFFORT.perMinute + waitDays * EFFORT.perDayWaited + (isCheck ? EFFORT.perCheck : 0);
}

/** Expected information about which set acts, in bits: H(answer) − Σ P(set) H(answer | set). */
function informationOf(
  posterior: Float64Array,
  answers: readonly Answer[],
  chances: readonly number[],
): number {
  const entropy = (p: number): number => (p > 0 ? -p * Math.log2(p) : 0);
  let bits = chances.reduce((sum, p) => sum + entropy(p), 0);
  for (let s = 0; s < posterior.length; s++) {
    if (posterior[s]! < 1e-5) continue;
    let within = 0;
    for (const { givenSets } of answers) within += entropy(givenSets[s]!);
    bits -= posterior[s]! * within;
  }
  return Math.max(0, bits);
}

/** The cause that the first answer lifts most and the one that it lowers most. */
function toldApart(model: KnowledgeModel, answers: readonly PossibleAnswer[]): CauseId[] {
  const [one, ...others] = answers;
  if (!one || one.chance <= 0) return [];
  const rest = others.filter(({ chance }) => chance > 0);
  const change = (cause: number): number => {
    const elsewhere = rest.reduce((sum, { chance, chances }) => sum + chance * chances[cause]!, 0);
    return (
      one.chances[cause]! -
      elsewhere /
        Math.max(
          1e-12,
          rest.reduce((sum, { chance }) => sum + chance, 0),
        )
    );
  };
  const changes = model.causes.map((_, cause) => change(cause));
  const up = changes.indexOf(Math.max(...changes));
  const down = changes.indexOf(Math.min(...changes));
  return [up, down]
    .filter((cause) => Math.abs(changes[cause]!) > 1e-6)
    .map((cause) => model.causes[cause]!.id);
}

/** Everything about the present state that every candidate is weighed against. */
interface Weighing {
  readonly model: KnowledgeModel;
  readonly sets: CauseSets;
  readonly posterior: Float64Array;
  readonly facts: Facts;
  readonly tempering: ReadonlySet<string>;
  readonly table: DecisionTable;
  readonly planNow: ReturnType<typeof bestPlan>['plan'];
}

function possibleAnswer(weighing: Weighing, { givenSets, fact }: Answer): PossibleAnswer {
  const { model, sets, posterior } = weighing;
  const sums = new Float64Array(model.causes.length + 1);
  let chance = 0;
  for (let s = 0; s < sets.count; s++) {
    const p = posterior[s]! * givenSets[s]!;
    chance += p;
    sums[sets.first[s]!]! += p;
    sums[sets.second[s]!]! += p;
    sums[sets.third[s]!]! += p;
  }
  const chances = sums.subarray(0, model.causes.length);
  if (chance > 0) for (let c = 0; c < chances.length; c++) chances[c]! /= chance;
  const changesStakes = fact !== undefined && weighing.tempering.has(fact);
  const table = changesStakes ? decisionTable(model, new Set([...weighing.facts, fact])) : weighing.table;
  return { chance, chances, table };
}

function score(
  weighing: Weighing,
  target: NextCheckTarget,
  id: string,
  minutes: number,
  waitDays: number,
  answers: readonly Answer[],
): Scored {
  const possible = answers.map((answer) => possibleAnswer(weighing, answer));
  const gain = valueOfAnswers(weighing.planNow, possible);
  const bits = informationOf(
    weighing.posterior,
    answers,
    possible.map(({ chance }) => chance),
  );
  const net = gain - priceOf(minutes, waitDays, target.kind === 'check');
  return { id, target, minutes, waitDays, gain, bits, tellsApart: toldApart(weighing.model, possible), net };
}

/** "Seen" and "not there" as a person would report them. */
function eyeAnswers(there: Float64Array, sign: SignId): Answer[] {
  const seen = there.map((p) => p * EYE.seenIfPresent + (1 - p) * EYE.seenIfAbsent);
  return [{ givenSets: seen, fact: sign }, { givenSets: seen.map((p) => 1 - p) }];
}

/** All joint results of a check on several signs, which are independent given the causes. */
function jointAnswers(there: readonly Float64Array[], signs: readonly SignId[]): Answer[] {
  return there.reduce<Answer[]>(
    (joint, chances, i) =>
      joint.flatMap(({ givenSets, fact }) =>
        eyeAnswers(chances, signs[i]!).map((answer) => {
          const settled = fact ?? answer.fact;
          return {
            givenSets: answer.givenSets.map((p, s) => p * givenSets[s]!),
            ...(settled === undefined ? {} : { fact: settled }),
          };
        }),
      ),
    [{ givenSets: new Float64Array(there[0]!.length).fill(1) }],
  );
}

/** P(each answer to a setting | set). An any-of list is weighed as if exactly one of its options were named. */
function settingAnswers(weighing: Weighing, id: SettingId): Answer[] {
  const { model, sets } = weighing;
  const setting: Setting = SETTINGS[id];
  const single = setting.kind !== 'any-of';
  const named = single
    ? model.network.factors[model.factorIndex.get(id)!]!.outcomes.map((outcome, at) => ({
        outcome,
        factor: id,
        at,
      }))
    : setting.options.map((option) => ({ outcome: option.id, factor: `${id}:${option.id}`, at: 0 }));
  const answers = named.map(({ outcome, factor, at }): Answer => {
    const index = model.factorIndex.get(factor)!;
    const givenSets = new Float64Array(sets.count);
    factorLikelihood(model.network, sets, { label: id, factor: index, outcome: at, from: [] }, givenSets);
    const rate = model.network.factors[index]!.rates[at]!;
    for (let s = 0; s < sets.count; s++) givenSets[s]! *= rate;
    return { givenSets, fact: `${id}=${outcome}` };
  });
  if (single) return answers;
  for (let s = 0; s < sets.count; s++) {
    const sum = answers.reduce((total, { givenSets }) => total + givenSets[s]!, 0);
    for (const { givenSets } of answers) givenSets[s]! /= sum;
  }
  return answers;
}

/** Expected fall in expected loss per minute; of equals the one that tells more, then the id that sorts first. */
function byWorth(a: Scored, b: Scored): number {
  const perMinute = ({ gain, minutes, waitDays }: Scored): number =>
    gain < 1e-6 ? 0 : gain / (minutes + waitDays * (EFFORT.perDayWaited / EFFORT.perMinute));
  return perMinute(b) - perMinute(a) || b.bits / b.minutes - a.bits / a.minutes || (a.id < b.id ? -1 : 1);
}

function checkIsOpen({ id, settles }: Check, asked: Asked): boolean {
  if (asked.cannotSay.has(id)) return false;
  return 'setting' in settles
    ? !asked.settings.has(settles.setting)
    : settles.signs.some((sign) => !asked.signs.has(sign));
}

export interface NextChecks {
  /** Every open question and check, best first. */
  readonly all: readonly Scored[];
  /** The hands-on check with the greatest gain after its cost, if one is worth doing. */
  readonly worthwhile?: Scored;
}

/**
 * Weigh every unanswered question and every doable check by what its answer would be worth, by enumerating its answers
 * over the joint posterior.
 */
export function chooseNextCheck(
  model: KnowledgeModel,
  allSets: CauseSets,
  allPosterior: Float64Array,
  evidence: Evidence,
  facts: Facts,
  asked: Asked,
): NextChecks {
  const places = Array.from(allPosterior.keys()).filter((s) => allPosterior[s]! > LIGHTEST);
  const sets = pickSets(allSets, places);
  const posterior = Float64Array.from(places, (s) => allPosterior[s]!);
  const table = decisionTable(model, facts);
  const base = { model, sets, posterior, facts, tempering: temperingFacts(model), table };
  const now = possibleAnswer(
    { ...base, planNow: { kind: 'leave' } },
    { givenSets: new Float64Array(sets.count).fill(1) },
  );
  const weighing: Weighing = { ...base, planNow: bestPlan(table, now.chances).plan };
  const chancesOf = signChances(model.network, meanTables(model.network), sets, evidence);
  const there = new Map<SignId, Float64Array>();
  const chance = (sign: SignId): Float64Array => {
    const known = there.get(sign) ?? chancesOf(model.signIndex.get(sign)!);
    there.set(sign, known);
    return known;
  };
  const signs = [...model.signIndex.keys()]
    .filter((sign) => sign !== 'pot-test-injury' && !asked.signs.has(sign) && !asked.cannotSay.has(sign))
    .map((sign) =>
      score(weighing, { kind: 'sign', sign }, sign, minutesToLook(sign), 0, eyeAnswers(chance(sign), sign)),
    );
  const settings = (Object.keys(SETTINGS) as SettingId[])
    .filter((id) => !asked.settings.has(id) && !asked.cannotSay.has(id))
    .map((setting) =>
      score(
        weighing,
        { kind: 'setting', setting },
        setting,
        SETTINGS[setting].minutes,
        0,
        settingAnswers(weighing, setting),
      ),
    );
  const checks = model.checks
    .filter((check) => checkIsOpen(check, asked))
    .map(({ id, minutes, waitDays, settles }) => {
      const open = 'setting' in settles ? [] : settles.signs.filter((sign) => !asked.signs.has(sign));
      const answers =
        'setting' in settles
          ? settingAnswers(weighing, settles.setting)
          : jointAnswers(open.map(chance), open);
      return score(weighing, { kind: 'check', check: id as never }, id, minutes, waitDays, answers);
    });
  const all = [...signs, ...settings, ...checks].sort(byWorth);
  const [best] = all
    .filter(({ target, net }) => target.kind === 'check' && net > 0)
    .sort((a, b) => b.net - a.net);
  return { all, ...(best ? { worthwhile: best } : {}) };
}
