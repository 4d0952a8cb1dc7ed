/** What the garden's records say of the look in hand, and what its causes weigh. */
import { batch, computed, effect, signal } from '@preact/signals';
import type { PlantOfRecords } from '../../signs/settings-from-records.ts';
import type { Answers } from '../../signs/types.ts';
import type { TriageInput, TriageResult } from '../../triage.ts';
import { dayOf } from '../words/dates.ts';
import { afterPaint } from './after-paint.ts';
import { findShifts, type Shift } from './describe-effect.ts';
import { dateOfLook, hasContent } from './draft.ts';
import { earlierLooks } from './earlier-looks.ts';
import { lessons } from './learning.ts';
import { draft, draftOpened } from './look-in-hand.ts';
import { besideNormal, normalReadingsFor } from './normal-leaves.ts';
import { reportsHere } from './own-reports.ts';
import { fillFromRecords, readRecords } from './read-records.ts';
import { rankingBridge, restarted } from './workers.ts';
import { zone } from './zone.ts';

export interface RankingState {
  /** The last ranking that arrived; it stays while a newer one is made. */
  readonly result?: TriageResult;
  /** What had been said when it was weighed. */
  readonly answers?: Answers;
  /** Ids that the answer before it was about. */
  readonly about?: readonly string[];
  readonly pending: boolean;
  readonly failed: boolean;
}
export const ranking = signal<RankingState>({ pending: true, failed: false });
/** What the last answer moved, once the new ranking has come. */
export const lastEffect = signal<
  { readonly about: readonly string[]; readonly shifts: readonly Shift[] } | undefined
>(undefined);
/** True from an answer until its ranking has come: the next question is not known before. */
export const weighingAnswer = signal(false);
/** What stood before the answer that is being weighed. */
let beforeAnswer: { about: readonly string[]; result: TriageResult | undefined } | undefined;

/** @param about ids that the answer is about, which is given now and not in the draft yet */
export function answerGiven(about: readonly string[]): void {
  lastEffect.value = undefined;
  beforeAnswer = { about, result: ranking.value.result };
  weighingAnswer.value = true;
}

/** Another look is opened. */
export function forgetWeighing(): void {
  lastEffect.value = undefined;
  beforeAnswer = undefined;
  weighingAnswer.value = false;
  ranking.value = { pending: true, failed: false };
}

/* Records. */

/** As text, so that typing a note does not read the records again. */
const plantOfLook = computed(() => {
  const { where, answers } = draft.value;
  const plant: PlantOfRecords = {
    bedId: where?.bedId,
    plantingId: where?.plantingId,
    date: dateOfLook(draft.value).day,
    zone: zone.value,
    crop: answers.crop,
    place: answers.setting.place,
  };
  return JSON.stringify(plant);
});

/** What the garden's records say of the plant in hand. */
export const recordsOfLook = computed(() =>
  draftOpened.value ? readRecords(JSON.parse(plantOfLook.value) as PlantOfRecords) : undefined,
);

const filled = computed(() => fillFromRecords(draft.value.answers, recordsOfLook.value));
/** What was said, and what the records supply, each marked. */
export const answersInHand = computed(() => filled.value.answers);

/* Ranking. */

/** Only what bears on the ranking, so that typing a bed's name does not weigh everything again. */
const triageInput = computed<TriageInput>(() => {
  const { photos, cannotSay } = draft.value;
  const { answers, covered, ...soil } = filled.value;
  // What a photo shows must be said, and it must have been read as that, before anything is concluded from it.
  const said = photos.filter(({ reading, role, roleOpen }) => !roleOpen && reading?.role === role);
  return {
    photos: [...said.flatMap(({ reading }) => reading ?? []), ...normalReadingsFor(answers)],
    network: said.flatMap(({ network, role }) => reportsHere(network, role)),
    answers: { ...answers, date: dateOfLook(draft.value).day },
    today: dayOf(new Date()),
    zone: zone.value,
    cannotSay: [...cannotSay, ...covered],
    ...soil,
    ...(earlierLooks.value.length > 0 ? { earlier: earlierLooks.value.map(besideNormal) } : {}),
    ...(lessons.value ? { garden: lessons.value.counts } : {}),
  };
});

let lastInput = '';
/** Counts what was sent to be weighed: only the newest is shown. */
let sent = 0;

async function rank(input: TriageInput): Promise<void> {
  ranking.value = { ...ranking.value, pending: true };
  const { answers } = draft.value;
  sent += 1;
  const own = sent;
  // An untouched look has its first question already, and comes before its weighing.
  if (!hasContent(draft.value)) {
    await afterPaint();
    if (own !== sent) return;
  }
  const [outcome] = await Promise.all([rankingBridge.ask({ kind: 'rank', input }, 'rank'), afterPaint()]);
  if (outcome.state === 'superseded' || own !== sent) return;
  if (outcome.state === 'failed' || !outcome.reply.ok || outcome.reply.kind !== 'rank') {
    batch(() => {
      ranking.value = { ...ranking.value, pending: false, failed: true };
      weighingAnswer.value = false;
    });
    return;
  }
  const { result } = outcome.reply;
  batch(() => {
    if (restarted.value === 'ranking') restarted.value = undefined;
    const about = beforeAnswer?.about ?? [];
    if (beforeAnswer) {
      const before = beforeAnswer.result;
      // Said before anything had been weighed: there is nothing it could have moved.
      lastEffect.value = before && { about, shifts: findShifts(before.causes, result.causes) };
      beforeAnswer = undefined;
    }
    ranking.value = { result, answers, about, pending: false, failed: false };
    weighingAnswer.value = false;
  });
}

export function rankAgain(): void {
  void rank(triageInput.value);
}

/** Weighs the look in hand whenever something changes that bears on it. Called once, when the app starts. */
export function followWeighing(): void {
  // What weighs may not have been fetched before the signal went.
  addEventListener('online', () => {
    if (draftOpened.peek() && ranking.peek().failed) rankAgain();
  });
  effect(() => {
    if (!draftOpened.value || recordsOfLook.value === 'reading') return;
    const input = triageInput.value;
    const written = `${draft.value.id} ${JSON.stringify(input)}`;
    if (written === lastInput) {
      // An answer that changes nothing has nothing to wait for, unless the one before is still being weighed.
      if (!ranking.peek().pending) weighingAnswer.value = false;
      return;
    }
    lastInput = written;
    void rank(input);
  });
}
