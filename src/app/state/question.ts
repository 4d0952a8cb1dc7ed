import { computed, effect, signal } from '@preact/signals';
import type { NextCheck } from '../../ranker/types.ts';
import { isAnswered } from './change-draft.ts';
import { change } from './change-look.ts';
import { draft } from './look-in-hand.ts';
import { ranking, weighingAnswer } from './weigh-look.ts';

/** The question on show. It stays until it is answered, so that no other slips under the thumb. */
const pinned = signal<string | undefined>(undefined);

/** The question to put next: the one on show while it is open, else the best one. */
export const question = computed<NextCheck | undefined>(() => {
  const result = ranking.value.result;
  if (!result) return undefined;
  const isOpen = ({ id }: NextCheck): boolean => !isAnswered(draft.value, id);
  const { check } = result.verdict;
  const kept = [...result.nextChecks, ...result.openQuestions, ...(check ? [check] : [])].find(
    ({ id }) => id === pinned.value,
  );
  if (kept && isOpen(kept)) return kept;
  // Once nothing else is worth its minutes, the check that the verdict waits for comes before what hardly matters.
  return (
    result.nextChecks.find(isOpen) ??
    (check && isOpen(check) ? check : undefined) ??
    result.openQuestions.find(isOpen)
  );
});

/** Is anything that is left to ask worth its minutes? While nothing has been said, everything is. */
export const worthAsking = computed(() => {
  const result = ranking.value.result;
  if (!result) return false;
  return result.nothingSeen || result.nextChecks.some(({ id }) => !isAnswered(draft.value, id));
});

/** Kept among what could not be said once the first question is passed over, so that a look opened again does not start over. */
export const OPENING = 'opening';

/** The look in which the person chose a question: theirs goes before the first one. */
const chosenIn = signal<string | undefined>(undefined);

/** Nothing has been said of any sign yet, and the first question was neither passed over nor gone round. */
export const isOpening = computed(() => {
  const { id, answers, cannotSay } = draft.value;
  const untouched = Object.keys(answers.signs).length === 0 && !cannotSay.includes(OPENING);
  return untouched && chosenIn.value !== id;
});

export function followQuestion(): void {
  effect(() => {
    const { pending } = ranking.value;
    // What nobody has seen is not held on to.
    if (isOpening.value) pinned.value = undefined;
    else if (!pending && !weighingAnswer.value) pinned.value = question.value?.id;
  });
}

/** Puts one question of the person's own choice on show. */
export function askAbout(id: string): void {
  pinned.value = id;
  chosenIn.value = draft.value.id;
}

/** Takes back the last answer and puts its question again. */
export function undoAnswer(): void {
  const about = draft.value.steps.at(-1)?.about;
  change({ kind: 'undo' });
  // A check is noted last, after the signs that it settled.
  pinned.value = about?.at(-1);
}
