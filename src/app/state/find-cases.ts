/** The search in the book: what is asked, kept while the grower reads a case; and its index, made once for a list of cases. */
import { computed, signal } from '@preact/signals';
import { type Narrowing, narrowCases } from '../../garden/narrow-cases.ts';
import { placesOf } from '../../garden/place-cases.ts';
import type { CaseRecord } from '../../garden/records.ts';
import { plainWords, searchOver } from '../../garden/search-cases.ts';
import { dayOf } from '../words/dates.ts';
import { searchWords } from '../words/describe-case.ts';
import { garden } from './garden.ts';
import { cases } from './kept.ts';

export const query = signal('');
export const narrowing = signal<Narrowing>({});

const NONE: readonly CaseRecord[] = [];

/** Cases that are not deleted; in no order. */
export const casesAlive = computed(() =>
  cases.value ? cases.value.filter(({ deletedAt }) => !deletedAt) : NONE,
);
const beds = computed(() => garden.value?.beds ?? []);
/** The bed of each case, by its record where there is one. */
export const placeOfCase = computed(() => placesOf(beds.value));

/** Words by case, kept from list to list: only a case that has changed is put into words anew. */
const known = new Map<string, { readonly changedAt: string; readonly words: string }>();

function wordsOf(kept: CaseRecord): string {
  const before = known.get(kept.id);
  if (before?.changedAt === kept.changedAt) return before.words;
  const words = plainWords(searchWords(kept));
  known.set(kept.id, { changedAt: kept.changedAt, words });
  return words;
}

const search = computed(() => searchOver(casesAlive.value, wordsOf));

/** What is asked for, newest look first. */
export const casesFound = computed(() =>
  narrowCases(search.value(query.value), narrowing.value, placeOfCase.value, dayOf(new Date())),
);

/** Work in one go and the pause after it, ms: nobody notices, and the first letter finds the words gathered. */
const SLICE = 6;
const PAUSE = 12;

/** Puts the cases into words bit by bit while the list is read. Gives how to stop. */
export function gatherWords(): () => void {
  const all = casesAlive.peek();
  let at = 0;
  let timer: ReturnType<typeof setTimeout>;
  const step = (): void => {
    const until = performance.now() + SLICE;
    for (; at < all.length && performance.now() < until; at++) wordsOf(all[at]!);
    if (at < all.length) timer = setTimeout(step, PAUSE);
    // A search for what nothing has makes the rest of the index.
    else search.peek()('\u0000');
  };
  timer = setTimeout(step, 100);
  return () => clearTimeout(timer);
}
