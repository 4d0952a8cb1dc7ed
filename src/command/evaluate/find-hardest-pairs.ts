import type { KnowledgeModel } from '../../ranker/knowledge-model.ts';
import { eyeReliability } from '../../signs/findings-from-answers.ts';
import type { CauseId, SignId } from '../../signs/vocabulary.ts';

/** How well two causes can be told apart by what a person can be asked, both being equally likely beforehand. */
export interface Pair {
  readonly causes: readonly [CauseId, CauseId];
  /** Expected information of the best single question, in bits: at most 1. */
  readonly bestBits: number;
  /** Of all questions together, in bits, by seeded simulation (standard error about 0.01). */
  readonly allBits: number;
  /** The questions that tell most, best first, each with the cause that its "seen", or its telling outcome, speaks for. */
  readonly questions: readonly { readonly id: string; readonly bits: number; readonly speaksFor: CauseId }[];
}

/** A question and the chance of each of its answers given each cause alone: `chances[cause][answer]`. */
interface Question {
  readonly id: string;
  readonly answers: readonly string[];
  readonly chances: readonly (readonly number[])[];
}

const entropy = (chances: readonly number[]): number =>
  chances.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);

/** Information of one answer about which of two equally likely causes acts, in bits. */
export function bitsOfAnswer(one: readonly number[], other: readonly number[]): number {
  const mixed = one.map((p, at) => (p + other[at]!) / 2);
  return Math.max(0, entropy(mixed) - (entropy(one) + entropy(other)) / 2);
}

/** Every sign that a person can look for, as a person would report it, and every setting that leans on some cause. */
function questionsOf({ network }: KnowledgeModel): Question[] {
  const width = network.signs.length;
  const signs = network.signs.flatMap((sign, at): Question[] => {
    if (sign === 'pot-test-injury') return [];
    const { seenIfPresent, seenIfAbsent } = eyeReliability(sign as SignId);
    const chances = network.causes.map((_, cause) => {
      const there = 1 - (1 - network.leak[at]!) * (1 - network.q[cause * width + at]!);
      const seen = seenIfAbsent + (seenIfPresent - seenIfAbsent) * there;
      return [seen, 1 - seen];
    });
    return [{ id: sign, answers: ['seen', 'absent'], chances }];
  });
  const settings = network.factors.map(({ id, outcomes, rates, lean }): Question => {
    const chances = network.causes.map((_, cause) => {
      const weights = outcomes.map((_, at) => rates[at]! * lean[cause * outcomes.length + at]!);
      const sum = weights.reduce((a, b) => a + b, 0);
      return weights.map((weight) => weight / sum);
    });
    return { id, answers: outcomes, chances };
  });
  return [...signs, ...settings];
}

/** Seeded numbers between 0 and 1 (mulberry32, public domain, from memory). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const PLANTS_PER_CAUSE = 250;

/** 1 − expected uncertainty that is left after all questions, over simulated plants with either cause. */
function bitsOfAll(questions: readonly Question[], a: number, b: number): number {
  const next = seeded(1);
  // Questions that both causes answer alike tell nothing.
  const telling = questions
    .map(({ chances }) => [chances[a]!, chances[b]!] as const)
    .filter(([one, other]) => one.some((p, at) => Math.abs(p - other[at]!) > 1e-3));
  let left = 0;
  for (let plant = 0; plant < 2 * PLANTS_PER_CAUSE; plant++) {
    let logOdds = 0;
    for (const [one, other] of telling) {
      const truth = plant < PLANTS_PER_CAUSE ? one : other;
      let rest = next();
      let answer = 0;
      while (answer < truth.length - 1 && rest >= truth[answer]!) rest -= truth[answer++]!;
      logOdds += Math.log(Math.max(1e-9, one[answer]!) / Math.max(1e-9, other[answer]!));
    }
    const chance = 1 / (1 + Math.exp(-logOdds));
    left += entropy([chance, 1 - chance]);
  }
  return 1 - left / (2 * PLANTS_PER_CAUSE);
}

/** The question with the answer that speaks most for one of the two: `recent-rain=wet`, or just the sign. */
function nameOf({ id, answers, chances }: Question, a: number, b: number) {
  const [one, other] = [chances[a]!, chances[b]!];
  const isSign = answers[0] === 'seen';
  const weights = answers.map((_, at) => Math.abs(one[at]! - other[at]!));
  const answer = isSign ? 0 : weights.indexOf(Math.max(...weights));
  return { id: isSign ? id : `${id}=${answers[answer]}`, speaksFor: one[answer]! > other[answer]! ? a : b };
}

const MOST_QUESTIONS = 4;

/** Every pair of listed causes, hardest to tell apart first. Asks no more than can be answered at the bed. */
export function findHardestPairs(model: KnowledgeModel): Pair[] {
  const { causes } = model.network;
  const listed = causes.flatMap((cause, at) => (cause === 'unlisted' ? [] : [at]));
  const questions = questionsOf(model);
  const pairOf = (a: number, b: number): Pair => {
    const telling = questions
      .map((question) => ({ question, bits: bitsOfAnswer(question.chances[a]!, question.chances[b]!) }))
      .sort((x, y) => y.bits - x.bits)
      .slice(0, MOST_QUESTIONS);
    return {
      causes: [causes[a] as CauseId, causes[b] as CauseId],
      bestBits: telling[0]!.bits,
      allBits: bitsOfAll(questions, a, b),
      questions: telling.map(({ question, bits }) => {
        const { id, speaksFor } = nameOf(question, a, b);
        return { id, bits, speaksFor: causes[speaksFor] as CauseId };
      }),
    };
  };
  return listed
    .flatMap((a) => listed.filter((b) => b > a).map((b) => pairOf(a, b)))
    .sort((x, y) => x.allBits - y.allBits || x.bestBits - y.bestBits);
}
