import { isAskable } from './members-of.ts';
import type { Answers, Finding } from './types.ts';
import { type AskableId, CREATURE_SIGNS, PLANT_SIGNS, SPREAD_SIGNS, TEST_SIGNS } from './vocabulary.ts';

/** How often a person reports a sign that is there, and one that is not. */
export interface Reliability {
  readonly seenIfPresent: number;
  readonly seenIfAbsent: number;
}

/**
 * How far a person's report can be trusted; stated reliabilities of our own (common practice, no source). Marks on
 * leaves are taken for one another (visual keys are unreliable used alone: MPA-FERT, HYD-AU). A living thing or its
 * trace is not imagined (a sign outweighs a symptom: ALCA, RUGG), only overlooked. How a trouble lies over the bed and
 * how it began is remembered loosely. The false reports are rates over all marks a plant might show: at 0.015 a grower
 * who looks for all 74 invents about one.
 */
const MARK: Reliability = { seenIfPresent: 0.9, seenIfAbsent: 0.015 };
const THING: Reliability = { seenIfPresent: 0.9, seenIfAbsent: 0.004 };
const MEMORY: Reliability = { seenIfPresent: 0.85, seenIfAbsent: 0.03 };

/**
 * Wood that was mixed in mostly went over the whole bed. Where all of it had the load, "only where one load went?" is
 * answered no for want of ground without it: a yes counts as ever, a no hardly (common practice, no source).
 */
const NO_BARE_GROUND: Reliability = { seenIfPresent: 0.1, seenIfAbsent: 0.0035 };

const NO_FACTS: ReadonlySet<string> = new Set();

const THINGS = new Set<string>([...CREATURE_SIGNS, ...PLANT_SIGNS, ...TEST_SIGNS].map(({ id }) => id));
const MEMORIES = new Set<string>(SPREAD_SIGNS.map(({ id }) => id));

/**
 * Reliability of the eye on one sign or broader mark.
 * @param facts what is known besides, as the ranker keeps it: `setting=outcome`
 */
export function eyeReliability(sign: AskableId, facts = NO_FACTS): Reliability {
  if (sign === 'same-compost-only' && facts.has('wood-in-root-zone=yes')) return NO_BARE_GROUND;
  if (THINGS.has(sign)) return THING;
  return MEMORIES.has(sign) ? MEMORY : MARK;
}

/** The finding that a person's "seen" or "looked and did not find" amounts to. */
export function findingFromEye(sign: AskableId, answer: 'seen' | 'absent', facts = NO_FACTS): Finding {
  const { seenIfPresent, seenIfAbsent } = eyeReliability(sign, facts);
  return answer === 'seen'
    ? { sign, from: 'eye', ifPresent: seenIfPresent, ifAbsent: seenIfAbsent }
    : { sign, from: 'eye', ifPresent: 1 - seenIfPresent, ifAbsent: 1 - seenIfAbsent };
}

/** The findings of the eye, in the order of the answers. Signs nobody looked for give none. */
export function findingsFromAnswers(answers: Answers): Finding[] {
  const facts = answers.setting['wood-in-root-zone'] ? new Set(['wood-in-root-zone=yes']) : NO_FACTS;
  return Object.entries(answers.signs).flatMap(([sign, answer]) =>
    answer !== undefined && isAskable(sign) ? [findingFromEye(sign, answer, facts)] : [],
  );
}
