import { isAskable } from './members-of.ts';
import type { Answers, Finding } from './types.ts';
import type { AskableId } from './vocabulary.ts';

/**
 * How far a person's report can be trusted: they see a sign that is there nine times in ten, and report one that is not
 * there once in twenty-five. Stated reliabilities of our own (common practice, no source): visual keys are unreliable
 * when used alone (MPA-FERT, HYD-AU), so a report is never proof.
 */
export const EYE = { seenIfPresent: 0.9, seenIfAbsent: 0.04 } as const;

/** The finding that a person's "seen" or "looked and did not find" amounts to. */
export function findingFromEye(sign: AskableId, answer: 'seen' | 'absent'): Finding {
  return answer === 'seen'
    ? { sign, from: 'eye', ifPresent: EYE.seenIfPresent, ifAbsent: EYE.seenIfAbsent }
    : { sign, from: 'eye', ifPresent: 1 - EYE.seenIfPresent, ifAbsent: 1 - EYE.seenIfAbsent };
}

/** The findings of the eye, in the order of the answers. Signs nobody looked for give none. */
export function findingsFromAnswers(answers: Answers): Finding[] {
  return Object.entries(answers.signs).flatMap(([sign, answer]) =>
    answer !== undefined && isAskable(sign) ? [findingFromEye(sign, answer)] : [],
  );
}
