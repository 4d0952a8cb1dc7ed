/** What this garden has taught: worked out anew whenever a case is settled, and handed to every ranking. */
import { computed, effect, signal } from '@preact/signals';
import type { Zone } from '../../days/growing-year.ts';
import type { CaseRecord } from '../../garden/records.ts';
import { outbreaksOf, type Settled, settledCases } from '../../garden/settle-case.ts';
import type { GardenLessons, LessonCase } from '../../ranker/learn-lessons.ts';
import type { ShownChances } from '../../ranker/learn-score.ts';
import { SURENESS, type Sureness } from '../../ranker/learn-sureness.ts';
import { CAUSES, type CauseId, type CropId } from '../../signs/vocabulary.ts';
import type { LearnInput } from '../../triage.ts';
import { dayOf } from '../words/dates.ts';
import { cases, forgetUntil } from './kept.ts';
import { rankingBridge } from './workers.ts';
import { zone } from './zone.ts';

/** `undefined` while no case teaches anything. */
export const lessons = signal<GardenLessons | undefined>(undefined);

const KNOWN = new Set<string>(CAUSES.map(({ id }) => id));

const isSureness = (word: string): word is Sureness => Object.hasOwn(SURENESS, word);

/** Settled cases as the ranker learns from them. Causes that this version does not know are left out. */
export function lessonsOf(settled: readonly Settled[], where: Zone): Omit<LessonCase, 'season'>[] {
  const outbreaks = outbreaksOf(settled, where);
  return settled.map((kept) => lessonOf(kept, outbreaks.get(kept.id)!));
}

function lessonOf(kept: Settled, outbreak: string): Omit<LessonCase, 'season'> {
  const { outcome } = kept;
  const { first, last } = outcome;
  return {
    id: kept.id,
    causes: outcome.causes.filter((id): id is CauseId => KNOWN.has(id)),
    sureness: isSureness(outcome.sureness) ? SURENESS[outcome.sureness] : 0,
    date: kept.openedOn,
    outbreak,
    ...(kept.crop ? { crop: kept.crop as CropId } : {}),
    ...(first ? { first: first.chances as ShownChances } : {}),
    ...(last ? { last: last.chances as ShownChances } : {}),
  };
}

/** The settled cases that may teach: all, or those said after learning was reset. */
export const teachingCases = (all: readonly CaseRecord[], since: string | undefined): Settled[] =>
  settledCases(all).filter(({ outcome }) => since === undefined || outcome.settledAt > since);

/** How many settled cases a reset has put aside. */
export const putAside = computed(
  () => settledCases(cases.value ?? []).length - teachingCases(cases.value ?? [], forgetUntil.value).length,
);

const learnInput = computed<LearnInput>(() => ({
  cases: lessonsOf(teachingCases(cases.value ?? [], forgetUntil.value), zone.value),
  today: dayOf(new Date()),
  zone: zone.value,
}));

let lastAsked = '';

/** Called once, when the app starts. */
export function followLessons(): void {
  effect(() => {
    const input = learnInput.value;
    const written = JSON.stringify(input);
    if (written === lastAsked) return;
    lastAsked = written;
    void learn(input);
  });
}

async function learn(input: LearnInput): Promise<void> {
  if (input.cases.length === 0) {
    lessons.value = undefined;
    return;
  }
  const outcome = await rankingBridge.ask({ kind: 'learn', input }, 'learn');
  if (outcome.state !== 'done' || !outcome.reply.ok || outcome.reply.kind !== 'learn') return;
  // All of it may have been reset while the worker was at it.
  if (learnInput.peek().cases.length === 0) return;
  lessons.value = outcome.reply.lessons.teaching > 0 ? outcome.reply.lessons : undefined;
}
