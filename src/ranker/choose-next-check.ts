import { type Check, LITTLE_TO_LOSE, type PlantSpent } from '../causes/checks.ts';
import { minutesToLook } from '../signs/effort.ts';
import { eyeReliability } from '../signs/findings-from-answers.ts';
import { membersOf } from '../signs/members-of.ts';
import { SETTINGS, type Setting, type SettingId } from '../signs/settings.ts';
import type { FactorId, WorkedLeaning } from '../signs/types.ts';
import {
  type AskableId,
  BROADER_MARKS,
  type BroaderMarkId,
  type CauseId,
  type SignId,
} from '../signs/vocabulary.ts';
import { isToTheMatter, placeInStory } from '../signs/when-to-ask.ts';
import { broadComponents, signsOfComponent } from './broad-components.ts';
import {
  bestPlan,
  type DecisionTable,
  type Plan,
  type PossibleAnswer,
  worthOfAnswers,
} from './decide-plan.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { workedLean } from './gather-evidence.ts';
import { expectByCause, type JointChances, sumJointChances } from './joint-chances.ts';
import { decisionTable, EFFORT, type Facts, type KnowledgeModel, networkUnder } from './knowledge-model.ts';
import { absentRow, factorLikelihood, fillProducts } from './likelihoods.ts';
import { type Touched, touchedByFactors, touchedBySigns } from './local-likelihoods.ts';
import { type EvidenceWeight, meanTables } from './network.ts';
import { raise } from './raise.ts';
import { signChances } from './sign-chances.ts';
import type { NextCheck, NextCheckTarget } from './types.ts';
import { marginals } from './weigh-sets.ts';

/** What has been asked and what not. */
export interface Asked {
  /** Signs a person has answered. */
  readonly signs: ReadonlySet<SignId>;
  readonly settings: ReadonlySet<string>;
  /** Ids answered "can't say": not offered again. */
  readonly cannotSay: ReadonlySet<string>;
}

export interface Scored extends NextCheck {
  /** Gain after its cost in effort: below 0 it is not worth doing. */
  readonly net: number;
  /** Whether it is put to the grower: worth its price and able to turn the verdict, or part of the plant's story. */
  readonly offered: boolean;
  /** Its price as minutes, for the order. */
  readonly effort: number;
  /** Place among what is asked first; none for the rest. */
  readonly early?: number;
}

/** One answer to a question, and the fact that it would settle. */
interface Answer {
  readonly chance: number;
  /** P(answer and cause), by index of the network. */
  readonly byCause: Float64Array;
  readonly fact?: string | undefined;
}

/** What a question or check takes. */
interface Takes {
  readonly minutes: number;
  readonly waitDays: number;
  /** Percent of the bed's crop that is given up for it. */
  readonly spent: number;
}

/** Price of a question or check in percent of a bed's crop. */
function priceOf({ minutes, waitDays, spent }: Takes, isCheck: boolean): number {
  const effort = minutes * EFFORT.perMinute + waitDays * EFFORT.perDayWaited;
  return effort + spent + (isCheck ? EFFORT.perCheck : 0);
}

/** Reading, looking and answering take at least this long, in minutes, however quick the thing itself is. */
const LEAST_MINUTES = 1;
/** What is known by heart is answered without looking. */
const LEAST_MINUTES_BY_HEART = 0.25;

/** The price as minutes at the bed. */
function effortOf({ minutes, waitDays, spent }: Takes, isSetting: boolean): number {
  const least = isSetting ? LEAST_MINUTES_BY_HEART : LEAST_MINUTES;
  return Math.max(least, minutes) + (waitDays * EFFORT.perDayWaited + spent) / EFFORT.perMinute;
}

/** A plant given up for a check, in percent of the bed's crop. */
function spentOn(spends: PlantSpent | undefined, facts: Facts): number {
  if (!spends) return 0;
  return LITTLE_TO_LOSE.some((sign) => facts.has(sign)) ? spends.lost : spends.sound;
}

/** An answer that is less likely than this is not waited for. */
export const PLAUSIBLE = 0.03;
/** What tells fewer bits about the causes is no part of the story. */
const TELLS = 0.02;

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

/** The cause whose chance the answers move most, and the one that most moves the other way. */
function toldApart(
  model: KnowledgeModel,
  chancesNow: Float64Array,
  answers: readonly PossibleAnswer[],
): CauseId[] {
  const moved = (one: number, other: number): number =>
    answers.reduce(
      (sum, { chance, chances }) =>
        sum + chance * (chances[one]! - chancesNow[one]!) * (chances[other]! - chancesNow[other]!),
      0,
    );
  const spread = chancesNow.map((_, cause) => moved(cause, cause));
  const most = spread.indexOf(Math.max(...spread));
  const along = chancesNow.map((_, cause) => moved(most, cause));
  const against = along.indexOf(Math.min(...along));
  return [most, against]
    .filter((cause, at, both) => spread[cause]! > LEAST_MOVE ** 2 && both.indexOf(cause) === at)
    .map((cause) => model.causes[cause]!.id);
}

/** A chance that an answer moves by less is not told apart. */
const LEAST_MOVE = 1e-6;

/** Everything about the present state that every candidate is weighed against. */
interface Weighing {
  readonly model: KnowledgeModel;
  readonly sets: CauseSets;
  readonly joint: JointChances;
  readonly facts: Facts;
  /** The losses that hold once this fact is settled as well. */
  readonly tableWith: (fact: string | undefined) => DecisionTable;
  /** Chance of each cause before any further answer. */
  readonly chancesNow: Float64Array;
  readonly planNow: Plan;
  /** Gain that makes a question worth putting: what is left alone needs no hair's breadth. */
  readonly leastGain: number;
  readonly openLeanings: ReadonlyMap<FactorId, readonly WorkedLeaning[]>;
  /** The powers that the answers will be weighed with once they are given. */
  readonly evidenceWeight: EvidenceWeight;
}

/**
 * Pairs of causes that act together with no more than this chance are passed over. Of 1,378 pairs all would together change
 * a chance by less than 6e-9.
 */
const NEGLIGIBLE = 1e-12;

/** Expectation of a function of the set, alone and together with every cause. */
function weigh({ model, sets, joint }: Weighing, { at, subsets }: Touched, values: Float64Array): Answer {
  const byPlace = new Float64Array(sets.alive.length);
  const chance = expectByCause(joint, { at, subsets, values }, byPlace, NEGLIGIBLE);
  const byCause = new Float64Array(model.causes.length);
  for (let i = 0; i < byPlace.length; i++) byCause[sets.alive[i]!] = byPlace[i]!;
  return { chance, byCause };
}

/** What is believed after an answer, and what is at stake then. Rounding must not make a chance out of nothing. */
function possibleAnswer({ tableWith }: Weighing, { chance, byCause, fact }: Answer): PossibleAnswer {
  const chances = new Float64Array(byCause.length);
  if (chance > 0) {
    for (let c = 0; c < chances.length; c++) chances[c] = Math.min(1, Math.max(0, byCause[c]! / chance));
  }
  return { chance: Math.max(0, chance), chances, table: tableWith(fact) };
}

function score(
  weighing: Weighing,
  target: NextCheckTarget,
  id: string,
  takes: Takes,
  answers: readonly Answer[],
): Scored {
  const { minutes, waitDays } = takes;
  const possible = answers.map((answer) => possibleAnswer(weighing, answer));
  const { gain, turns, turnsTo } = worthOfAnswers(weighing.planNow, possible);
  const bits = informationOf(weighing.chancesNow, possible);
  const net = gain - priceOf(takes, target.kind === 'check');
  const place =
    target.kind === 'setting' && weighing.planNow.kind !== 'leave' && bits >= TELLS
      ? placeInStory(target.setting, weighing.facts)
      : undefined;
  return {
    id,
    target,
    minutes,
    waitDays,
    gain,
    bits,
    tellsApart: toldApart(weighing.model, weighing.chancesNow, possible),
    turns,
    turnsTo,
    net,
    offered: place !== undefined || (net > 0 && gain > weighing.leastGain && turns >= PLAUSIBLE),
    effort: effortOf(takes, target.kind === 'setting'),
    ...(place === undefined ? {} : { early: place }),
  };
}

/** Chances that some signs are there, under the subsets of the causes that touch any of them. */
interface SignsThere extends Touched {
  readonly there: readonly Float64Array[];
}

/**
 * P(a person reports the sign | set), as sharp as the report will be weighed: raised to the power that it will count with
 * and made a chance again, so that what is expected to be believed after the answer is still what is believed now.
 */
function reported(there: Float64Array, sign: AskableId, power: number, facts: Facts): Float64Array {
  const { seenIfPresent, seenIfAbsent } = eyeReliability(sign, facts);
  const out = new Float64Array(there.length);
  for (let s = 0; s < out.length; s++) {
    const seen = seenIfAbsent + (seenIfPresent - seenIfAbsent) * there[s]!;
    out[s] = (1 - seen) / seen;
  }
  raise(out, power);
  for (let s = 0; s < out.length; s++) out[s] = 1 / (1 + out[s]!);
  return out;
}

/**
 * Every answer of a person who looks for some signs, which are independent given the causes; all seen comes first.
 *
 * P(answers | set) is a product of r or 1 − r, one for each sign. So the chance that each choice of the signs is
 * reported together is all that has to be summed over the sets.
 */
function eyeAnswers(
  weighing: Weighing,
  { there, ...touched }: SignsThere,
  signs: readonly AskableId[],
): Answer[] {
  const reports = signs.map((sign, bit) =>
    reported(there[bit]!, sign, weighing.evidenceWeight.signs, weighing.facts),
  );
  const choices = 2 ** signs.length;
  const products: (Float64Array | undefined)[] = [undefined];
  const weighed: Answer[] = [{ chance: 1, byCause: weighing.chancesNow }];
  for (let choice = 1; choice < choices; choice++) {
    const last = 31 - Math.clz32(choice);
    const others = products[choice - 2 ** last];
    const product = others ? reports[last]!.map((p, s) => p * others[s]!) : reports[last]!;
    products.push(product);
    weighed.push(weigh(weighing, touched, product));
  }
  return Array.from({ length: choices }, (_, i): Answer => {
    const seen = choices - 1 - i;
    const byCause = new Float64Array(weighing.chancesNow.length);
    let chance = 0;
    // Inclusion and exclusion over the signs that are not reported.
    weighed.forEach((one, choice) => {
      if ((choice & seen) !== seen) return;
      const share = bitCount(choice ^ seen) % 2 === 0 ? 1 : -1;
      chance += share * one.chance;
      for (let c = 0; c < byCause.length; c++) byCause[c]! += share * one.byCause[c]!;
    });
    return { chance, byCause, fact: signs.find((_, bit) => seen & (1 << bit)) };
  });
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest &= rest - 1) count++;
  return count;
}

/** P(each answer to a setting). An any-of list is weighed as if exactly one of its options were named. */
function settingAnswers(weighing: Weighing, id: SettingId): Answer[] {
  const { model, sets, openLeanings } = weighing;
  const { network, factorIndex } = model;
  const setting: Setting = SETTINGS[id];
  const single = setting.kind !== 'any-of';
  const named = single
    ? network.factors[factorIndex.get(id)!]!.outcomes.map((outcome, at) => ({ outcome, factor: id, at }))
    : setting.options.map((option) => ({ outcome: option.id, factor: `${id}:${option.id}`, at: 0 }));
  const asked = named.map(({ outcome, factor, at }) => {
    const index = factorIndex.get(factor)!;
    const worked = openLeanings.get(factor as FactorId);
    const lean = worked && { lean: workedLean(model, index, worked) };
    return { fact: `${id}=${outcome}`, factor: index, outcome: at, ...lean };
  });
  const touched = touchedByFactors(network, sets, asked);
  const given = asked.map(({ fact, ...factor }) => {
    const values = factorLikelihood(network, touched.subsets, { ...factor, label: fact, from: [] });
    const rate = network.factors[factor.factor]!.rates[factor.outcome]!;
    // As sharp as the answer will be weighed: the leaning to its power, and made a chance again below.
    return raise(values, weighing.evidenceWeight.setting).map((leaning) => rate * leaning);
  });
  shareOut(given);
  // The last answer needs no pass of its own: the answers together are what is believed now.
  const rest = { chance: 1, byCause: weighing.chancesNow.slice() };
  return asked.map(({ fact }, i): Answer => {
    if (i === asked.length - 1) return { ...rest, fact };
    const { chance, byCause } = weigh(weighing, touched, given[i]!);
    rest.chance -= chance;
    for (let c = 0; c < byCause.length; c++) rest.byCause[c]! -= byCause[c]!;
    return { chance, byCause, fact };
  });
}

/** Scale the answers so that under every subset they sum to 1. */
function shareOut(given: readonly Float64Array[]): void {
  const sums = new Float64Array(given[0]!.length);
  for (const values of given) for (let s = 0; s < sums.length; s++) sums[s]! += values[s]!;
  for (const values of given) for (let s = 0; s < sums.length; s++) values[s]! /= sums[s]!;
}

/**
 * What is asked first comes first, in its own order. Then expected fall in expected loss per minute. In the order, what is
 * learnt counts a little besides (`EFFORT.worthOfBit`): the choice looks one answer ahead, and what is learnt now also
 * serves the answers after that. Of equals the id that sorts first.
 */
function byWorth(a: Scored, b: Scored): number {
  const place = ({ early = Number.POSITIVE_INFINITY }: Scored): number => early;
  if (place(a) !== place(b)) return place(a) - place(b);
  const worth = ({ gain, bits, effort }: Scored): number => (gain + EFFORT.worthOfBit * bits) / effort;
  return worth(b) - worth(a) || (a.id < b.id ? -1 : 1);
}

function checkIsOpen({ id, settles }: Check, asked: Asked, facts: Facts): boolean {
  if (asked.cannotSay.has(id)) return false;
  return 'setting' in settles
    ? !asked.settings.has(settles.setting) || facts.has(`${settles.setting}=unknown`)
    : settles.signs.some((sign) => !asked.signs.has(sign) && !asked.cannotSay.has(sign));
}

export interface NextChecks {
  /** Every open question and check, best first. */
  readonly all: readonly Scored[];
  /** The hands-on check with the greatest gain after its cost, if one is worth doing. */
  readonly worthwhile?: Scored;
}

/** What takes this long to look for is asked as a check, with what to do, and not as a plain question. */
const NEEDS_HANDS_MINUTES = 3;

type ChancesOf = (signs: readonly SignId[]) => SignsThere;

/**
 * Signs that a broad report ties together depend on all causes of its members; what is worked out on the same subsets
 * is worked out once.
 */
function chancesOfSigns(
  { network, signIndex }: KnowledgeModel,
  sets: CauseSets,
  evidence: Evidence,
): ChancesOf {
  const tables = meanTables(network);
  const tied = broadComponents(evidence).map(signsOfComponent);
  const known = new Map<string, Touched & { readonly chanceOf: (sign: number) => Float64Array }>();
  const prepare = (signs: readonly number[]) => {
    const touched = touchedBySigns(network, sets, signs);
    return { ...touched, chanceOf: signChances(network, tables, touched.subsets, evidence) };
  };
  return (signs) => {
    const asked = signs.map((sign) => signIndex.get(sign)!);
    const others = tied.filter((members) => members.some((member) => asked.includes(member))).flat();
    const together = [...new Set([...asked, ...others])].sort((a, b) => a - b);
    const key = together.join();
    const { chanceOf, ...touched } = known.get(key) ?? prepare(together);
    known.set(key, { chanceOf, ...touched });
    return { ...touched, there: asked.map(chanceOf) };
  };
}

const look = (minutes: number): Takes => ({ minutes, waitDays: 0, spent: 0 });

function signQuestions(weighing: Weighing, chancesOf: ChancesOf, asked: Asked): Scored[] {
  return [...weighing.model.signIndex.keys()]
    .filter(
      (sign) =>
        sign !== 'pot-test-injury' &&
        minutesToLook(sign) < NEEDS_HANDS_MINUTES &&
        !asked.signs.has(sign) &&
        !asked.cannotSay.has(sign) &&
        isToTheMatter(sign, weighing.facts),
    )
    .map((sign) => {
      const answers = eyeAnswers(weighing, chancesOf([sign]), [sign]);
      return score(weighing, { kind: 'sign', sign }, sign, look(minutesToLook(sign)), answers);
    });
}

/** A glance over the plant, in minutes. */
const QUICK_MINUTES = 0.25;

/** Broader marks are the quick first questions, as long as nothing has been said about any of their members. */
function broaderQuestions(weighing: Weighing, asked: Asked, evidence: Evidence): Scored[] {
  const told = new Set([
    ...evidence.signs.map(({ sign }) => sign),
    ...evidence.broad.flatMap(({ members }) => members),
  ]);
  const { model, sets } = weighing;
  const { network, signIndex } = model;
  return (Object.keys(BROADER_MARKS) as BroaderMarkId[])
    .map((id) => `${id}@some` as const)
    .filter(
      (id) => !asked.cannotSay.has(id) && !membersOf(id).some((member) => told.has(signIndex.get(member)!)),
    )
    .map((sign) => {
      // Nothing has been said of any member: P(some member there | set) is one product over causes and members.
      const members = membersOf(sign).map((member) => signIndex.get(member)!);
      const touched = touchedBySigns(network, sets, members);
      const { subsets } = touched;
      const noLeak = members.reduce((product, member) => product * (1 - network.leak[member]!), 1);
      const row = absentRow(network, meanTables(network), subsets, ...members);
      const some = fillProducts(subsets, row, -noLeak, 1, new Float64Array(subsets.count));
      const answers = eyeAnswers(weighing, { ...touched, there: [some] }, [sign]);
      return score(weighing, { kind: 'sign', sign }, sign, look(QUICK_MINUTES), answers);
    });
}

function settingQuestions(weighing: Weighing, asked: Asked): Scored[] {
  return (Object.keys(SETTINGS) as SettingId[])
    .filter((id) => !asked.settings.has(id) && !asked.cannotSay.has(id) && isToTheMatter(id, weighing.facts))
    .map((setting) => {
      const { minutes } = SETTINGS[setting];
      const answers = settingAnswers(weighing, setting);
      return score(weighing, { kind: 'setting', setting }, setting, look(minutes), answers);
    });
}

function doableChecks(weighing: Weighing, chancesOf: ChancesOf, asked: Asked): Scored[] {
  return weighing.model.checks
    .filter((check) => checkIsOpen(check, asked, weighing.facts))
    .map(({ id, minutes, waitDays, settles, spends }) => {
      const open = 'setting' in settles ? [] : settles.signs.filter((sign) => !asked.signs.has(sign));
      const answers =
        'setting' in settles
          ? settingAnswers(weighing, settles.setting)
          : eyeAnswers(weighing, chancesOf(open), open);
      const takes = { minutes, waitDays, spent: spentOn(spends, weighing.facts) };
      return score(weighing, { kind: 'check', check: id }, id, takes, answers);
    });
}

/** The losses that hold once one more fact is settled, each worked out once. */
function tablesByFact(model: KnowledgeModel, facts: Facts, table: DecisionTable): Weighing['tableWith'] {
  const known = new Map<string, DecisionTable>();
  return (fact) => {
    if (fact === undefined || !model.tempering.has(fact)) return table;
    const found = known.get(fact) ?? decisionTable(model, new Set([...facts, fact]));
    known.set(fact, found);
    return found;
  };
}

/**
 * Weigh every unanswered question and every doable check by what its answer would be worth, by enumerating its answers
 * over the joint posterior of all sets, exactly.
 * @param table the losses that hold under `facts`
 * @param openLeanings leanings of unanswered factors that hold here instead of the general ones
 */
export function chooseNextCheck(
  model: KnowledgeModel,
  sets: CauseSets,
  posterior: Float64Array,
  evidence: Evidence,
  facts: Facts,
  table: DecisionTable,
  asked: Asked,
  openLeanings: ReadonlyMap<FactorId, readonly WorkedLeaning[]> = new Map(),
): NextChecks {
  const chancesNow = marginals(model.causes.length, sets, posterior);
  const now = bestPlan(table, chancesNow);
  const weighing: Weighing = {
    model,
    sets,
    joint: sumJointChances(sets, posterior),
    facts,
    tableWith: tablesByFact(model, facts, table),
    chancesNow,
    planNow: now.plan,
    leastGain: now.plan.kind === 'leave' ? EFFORT.leastSavingLeftAlone * now.loss : 0,
    openLeanings,
    evidenceWeight: networkUnder(model, evidence).evidenceWeight,
  };
  const chancesOf = chancesOfSigns(model, sets, evidence);
  const checks = doableChecks(weighing, chancesOf, asked);
  const all = [
    ...signQuestions(weighing, chancesOf, asked),
    ...broaderQuestions(weighing, asked, evidence),
    ...settingQuestions(weighing, asked),
    ...checks,
  ].sort(byWorth);
  // A check that saves a hair's breadth is no reason to put off what is to be done.
  const least = EFFORT.leastSaving * now.loss;
  const [best] = checks.filter(({ net }) => net > least).sort((a, b) => b.net - a.net);
  return { all, ...(best ? { worthwhile: best } : {}) };
}
