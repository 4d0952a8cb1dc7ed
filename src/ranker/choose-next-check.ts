import type { Check } from '../causes/checks.ts';
import { minutesToLook } from '../signs/effort.ts';
import { eyeReliability } from '../signs/findings-from-answers.ts';
import { membersOf } from '../signs/members-of.ts';
import { isToTheMatter, SETTINGS, type Setting, type SettingId } from '../signs/settings.ts';
import type { FactorId, WorkedLeaning } from '../signs/types.ts';
import {
  type AskableId,
  BROADER_MARKS,
  type BroaderMarkId,
  type CauseId,
  type SignId,
} from '../signs/vocabulary.ts';
import {
  bestPlan,
  type DecisionTable,
  type Plan,
  type PossibleAnswer,
  valueOfAnswers,
} from './decide-plan.ts';
import { type CauseSets, pickSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { workedLean } from './gather-evidence.ts';
import { decisionTable, EFFORT, type Facts, type KnowledgeModel } from './knowledge-model.ts';
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

/** The lightest sets are left out as long as together they hold less than this share of the posterior. */
const LEFT_OUT = 1e-2;

/** Price of a question or check in percent of a bed's crop. */
function priceOf(minutes: number, waitDays: number, isCheck: boolean): number {
  return minutes * EFFORT.perMinute + waitDays * EFFORT.perDayWaited + (isCheck ? EFFORT.perCheck : 0);
}

const entropy = (p: number): number => (p > 0 ? -p * Math.log2(p) : 0);

/** Entropy of "does it act or not" over all causes, in bits. */
function doubtOf(chances: Float64Array): number {
  let bits = 0;
  for (let c = 0; c < chances.length; c++) bits += entropy(chances[c]!) + entropy(1 - chances[c]!);
  return bits;
}

/** Expected information in bits: how much doubt about the causes, one by one, an answer is expected to take away. */
function informationOf(chancesNow: Float64Array, answers: readonly PossibleAnswer[]): number {
  let left = 0;
  for (const { chance, chances } of answers) if (chance > 0) left += chance * doubtOf(chances);
  return Math.max(0, doubtOf(chancesNow) - left);
}

/** The cause that the first answer lifts most against the others, and the one that it lowers most. */
function toldApart(model: KnowledgeModel, [first, ...others]: readonly PossibleAnswer[]): CauseId[] {
  if (!first || first.chance <= 0) return [];
  const rest = others.reduce((sum, { chance }) => sum + chance, 0);
  if (rest <= 0) return [];
  const change = Float64Array.from(first.chances);
  for (const { chance, chances } of others) {
    for (let c = 0; c < change.length; c++) change[c]! -= (chance / rest) * chances[c]!;
  }
  const up = change.indexOf(Math.max(...change));
  const down = change.indexOf(Math.min(...change));
  return [up, down]
    .filter((cause) => Math.abs(change[cause]!) > 1e-6)
    .map((cause) => model.causes[cause]!.id);
}

/** Everything about the present state that every candidate is weighed against. */
interface Weighing {
  readonly model: KnowledgeModel;
  readonly sets: CauseSets;
  readonly posterior: Float64Array;
  readonly facts: Facts;
  readonly table: DecisionTable;
  /** Chance of each cause before any further answer. */
  readonly chancesNow: Float64Array;
  readonly planNow: Plan;
  readonly openLeanings: ReadonlyMap<FactorId, readonly WorkedLeaning[]>;
}

/** P(answer) and P(answer, cause) for every cause. */
function weighAnswer(
  { model, sets, posterior }: Pick<Weighing, 'model' | 'sets' | 'posterior'>,
  givenSets: Float64Array,
) {
  const { first, second, third, count } = sets;
  const sums = new Float64Array(model.causes.length + 1);
  let chance = 0;
  for (let s = 0; s < count; s++) {
    const p = posterior[s]! * givenSets[s]!;
    chance += p;
    sums[first[s]!]! += p;
    sums[second[s]!]! += p;
    sums[third[s]!]! += p;
  }
  return { chance, joint: sums.subarray(0, model.causes.length) };
}

function possibleAnswer(
  weighing: Weighing,
  chance: number,
  joint: Float64Array,
  fact?: string,
): PossibleAnswer {
  const changesStakes = fact !== undefined && weighing.model.tempering.has(fact);
  const table = changesStakes
    ? decisionTable(weighing.model, new Set([...weighing.facts, fact]))
    : weighing.table;
  const chances = new Float64Array(joint.length);
  if (chance > 0) for (let c = 0; c < joint.length; c++) chances[c] = joint[c]! / chance;
  return { chance, chances, table };
}

/** The last answer needs no pass of its own: the answers together are what is believed now. */
function possibleAnswers(weighing: Weighing, answers: readonly Answer[]): PossibleAnswer[] {
  const restJoint = Float64Array.from(weighing.chancesNow);
  let rest = 1;
  return answers.map(({ givenSets, fact }, i) => {
    if (i === answers.length - 1) return possibleAnswer(weighing, rest, restJoint, fact);
    const { chance, joint } = weighAnswer(weighing, givenSets);
    rest = Math.max(0, rest - chance);
    for (let c = 0; c < joint.length; c++) restJoint[c] = Math.max(0, restJoint[c]! - joint[c]!);
    return possibleAnswer(weighing, chance, joint, fact);
  });
}

function score(
  weighing: Weighing,
  target: NextCheckTarget,
  id: string,
  minutes: number,
  waitDays: number,
  answers: readonly Answer[],
): Scored {
  const possible = possibleAnswers(weighing, answers);
  const gain = valueOfAnswers(weighing.planNow, possible);
  const bits = informationOf(weighing.chancesNow, possible);
  const net = gain - priceOf(minutes, waitDays, target.kind === 'check');
  return { id, target, minutes, waitDays, gain, bits, tellsApart: toldApart(weighing.model, possible), net };
}

/** "Seen" and "not there" as a person would report them, times what was reported before. */
function eyeAnswers(there: Float64Array, sign: AskableId, before?: Answer): Answer[] {
  const { length } = there;
  const { seenIfPresent, seenIfAbsent } = eyeReliability(sign);
  const seen = new Float64Array(length);
  const notSeen = new Float64Array(length);
  for (let s = 0; s < length; s++) {
    const soFar = before ? before.givenSets[s]! : 1;
    seen[s] = soFar * (seenIfAbsent + (seenIfPresent - seenIfAbsent) * there[s]!);
    notSeen[s] = soFar - seen[s]!;
  }
  const settled = before?.fact;
  return [
    { givenSets: seen, fact: settled ?? sign },
    { givenSets: notSeen, ...(settled === undefined ? {} : { fact: settled }) },
  ];
}

/** All joint results of a check on several signs, which are independent given the causes. */
function jointAnswers(there: readonly Float64Array[], signs: readonly SignId[]): Answer[] {
  const [first, ...rest] = there;
  return rest.reduce<Answer[]>(
    (joint, chances, i) => joint.flatMap((before) => eyeAnswers(chances, signs[i + 1]!, before)),
    eyeAnswers(first!, signs[0]!),
  );
}

/** P(each answer to a setting | set). An any-of list is weighed as if exactly one of its options were named. */
function settingAnswers(weighing: Weighing, id: SettingId): Answer[] {
  const { model, sets, openLeanings } = weighing;
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
    const worked = openLeanings.get(factor as FactorId);
    const lean = worked && { lean: workedLean(model, index, worked) };
    factorLikelihood(
      model.network,
      sets,
      { label: id, factor: index, outcome: at, from: [], ...lean },
      givenSets,
    );
    const rate = model.network.factors[index]!.rates[at]!;
    for (let s = 0; s < sets.count; s++) givenSets[s]! *= rate;
    return { givenSets, fact: `${id}=${outcome}` };
  });
  if (!single) shareOut(answers, sets.count);
  return answers;
}

/** Scale the answers so that under every set they sum to 1. */
function shareOut(answers: readonly Answer[], count: number): void {
  const sums = new Float64Array(count);
  for (const { givenSets } of answers) for (let s = 0; s < count; s++) sums[s]! += givenSets[s]!;
  for (const { givenSets } of answers) for (let s = 0; s < count; s++) givenSets[s]! /= sums[s]!;
}

/** Answering takes at least this long, in minutes: no question is free. */
const LEAST_MINUTES = 0.25;

/**
 * Expected fall in expected loss per minute; of equals, and of all that is not worth its price by itself, the one that
 * tells more a minute; then the id that sorts first.
 */
function byWorth(a: Scored, b: Scored): number {
  const effort = ({ minutes, waitDays }: Scored): number =>
    Math.max(LEAST_MINUTES, minutes) + waitDays * (EFFORT.perDayWaited / EFFORT.perMinute);
  const worth = (one: Scored): number => (one.net > 0 ? one.gain / effort(one) : 0);
  return worth(b) - worth(a) || b.bits / effort(b) - a.bits / effort(a) || (a.id < b.id ? -1 : 1);
}

function checkIsOpen({ id, settles }: Check, asked: Asked): boolean {
  if (asked.cannotSay.has(id)) return false;
  return 'setting' in settles
    ? !asked.settings.has(settles.setting)
    : settles.signs.some((sign) => !asked.signs.has(sign) && !asked.cannotSay.has(sign));
}

/** Places of the sets that hold all but `LEFT_OUT` of the posterior, heaviest first. */
function heaviestPlaces(posterior: Float64Array): Uint32Array {
  const order = Uint32Array.from(posterior.keys()).filter((s) => posterior[s]! > 1e-9);
  order.sort((a, b) => posterior[b]! - posterior[a]!);
  let mass = 0;
  const end = order.findIndex((s) => {
    mass += posterior[s]!;
    return mass > 1 - LEFT_OUT;
  });
  return end < 0 ? order : order.subarray(0, end + 1);
}

export interface NextChecks {
  /** Every open question and check, best first. */
  readonly all: readonly Scored[];
  /** The hands-on check with the greatest gain after its cost, if one is worth doing. */
  readonly worthwhile?: Scored;
}

/** What takes this long to look for is asked as a check, with what to do, and not as a plain question. */
const NEEDS_HANDS_MINUTES = 3;

/** Chance that a sign is there under every kept set, kept once computed. */
type ChanceOf = (sign: SignId) => Float64Array;

function signQuestions(weighing: Weighing, chanceOf: ChanceOf, asked: Asked): Scored[] {
  return [...weighing.model.signIndex.keys()]
    .filter(
      (sign) =>
        sign !== 'pot-test-injury' &&
        minutesToLook(sign) < NEEDS_HANDS_MINUTES &&
        !asked.signs.has(sign) &&
        !asked.cannotSay.has(sign),
    )
    .map((sign) => {
      const answers = eyeAnswers(chanceOf(sign), sign);
      return score(weighing, { kind: 'sign', sign }, sign, minutesToLook(sign), 0, answers);
    });
}

/** Broader marks are the quick first questions, as long as nothing has been said about any of their members. */
function broaderQuestions(
  weighing: Weighing,
  chanceOf: ChanceOf,
  asked: Asked,
  evidence: Evidence,
): Scored[] {
  const told = new Set([
    ...evidence.signs.map(({ sign }) => sign),
    ...evidence.broad.flatMap(({ members }) => members),
  ]);
  const { signIndex } = weighing.model;
  return (Object.keys(BROADER_MARKS) as BroaderMarkId[])
    .map((id) => `${id}@some` as const)
    .filter(
      (id) => !asked.cannotSay.has(id) && !membersOf(id).some((member) => told.has(signIndex.get(member)!)),
    )
    .map((sign) => {
      const there = new Float64Array(weighing.sets.count).fill(1);
      for (const member of membersOf(sign)) {
        const chances = chanceOf(member);
        for (let s = 0; s < there.length; s++) there[s]! *= 1 - chances[s]!;
      }
      for (let s = 0; s < there.length; s++) there[s] = 1 - there[s]!;
      return score(weighing, { kind: 'sign', sign }, sign, LEAST_MINUTES, 0, eyeAnswers(there, sign));
    });
}

function settingQuestions(weighing: Weighing, asked: Asked): Scored[] {
  return (Object.keys(SETTINGS) as SettingId[])
    .filter((id) => !asked.settings.has(id) && !asked.cannotSay.has(id) && isToTheMatter(id, weighing.facts))
    .map((setting) => {
      const { minutes } = SETTINGS[setting];
      return score(
        weighing,
        { kind: 'setting', setting },
        setting,
        minutes,
        0,
        settingAnswers(weighing, setting),
      );
    });
}

function doableChecks(weighing: Weighing, chanceOf: ChanceOf, asked: Asked): Scored[] {
  return weighing.model.checks
    .filter((check) => checkIsOpen(check, asked))
    .map(({ id, minutes, waitDays, settles }) => {
      const open = 'setting' in settles ? [] : settles.signs.filter((sign) => !asked.signs.has(sign));
      const answers =
        'setting' in settles
          ? settingAnswers(weighing, settles.setting)
          : jointAnswers(open.map(chanceOf), open);
      return score(weighing, { kind: 'check', check: id }, id, minutes, waitDays, answers);
    });
}

/**
 * Weigh every unanswered question and every doable check by what its answer would be worth, by enumerating its answers
 * over the joint posterior.
 * @param table the losses that hold under `facts`
 * @param openLeanings leanings of unanswered factors that hold here instead of the general ones
 */
export function chooseNextCheck(
  model: KnowledgeModel,
  allSets: CauseSets,
  allPosterior: Float64Array,
  evidence: Evidence,
  facts: Facts,
  table: DecisionTable,
  asked: Asked,
  openLeanings: ReadonlyMap<FactorId, readonly WorkedLeaning[]> = new Map(),
): NextChecks {
  const places = heaviestPlaces(allPosterior);
  const sets = pickSets(allSets, places);
  const kept = places.reduce((sum, s) => sum + allPosterior[s]!, 0);
  const posterior = Float64Array.from(places, (s) => allPosterior[s]! / kept);
  const chancesNow = weighAnswer({ model, sets, posterior }, new Float64Array(sets.count).fill(1)).joint;
  const now = bestPlan(table, chancesNow);
  const weighing: Weighing = {
    model,
    sets,
    posterior,
    facts,
    table,
    chancesNow,
    planNow: now.plan,
    openLeanings,
  };
  const compute = signChances(model.network, meanTables(model.network), sets, evidence);
  const known = new Map<SignId, Float64Array>();
  const chanceOf: ChanceOf = (sign) => {
    const chances = known.get(sign) ?? compute(model.signIndex.get(sign)!);
    known.set(sign, chances);
    return chances;
  };
  const checks = doableChecks(weighing, chanceOf, asked);
  const all = [
    ...signQuestions(weighing, chanceOf, asked),
    ...broaderQuestions(weighing, chanceOf, asked, evidence),
    ...settingQuestions(weighing, asked),
    ...checks,
  ].sort(byWorth);
  // A check that saves a hair's breadth is no reason to put off what is to be done.
  const least = EFFORT.leastSaving * now.loss;
  const [best] = checks.filter(({ net }) => net > least).sort((a, b) => b.net - a.net);
  return { all, ...(best ? { worthwhile: best } : {}) };
}
