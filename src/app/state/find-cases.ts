/** The search in the book: what is asked, kept while the grower reads a case; and its index, made once for a list of cases. */
import { computed, signal } from '@preact/signals';
import { type Narrowing, narrowCases } from '../../garden/narrow-cases.ts';
import { placesOf } from '../../garden/place-cases.ts';
import type { CaseRecord } from '../../garden/records.ts';
import { searchOver } from '../../garden/search-cases.ts';
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
const search = computed(() => searchOver(casesAlive.value, searchWords));

/** What is asked for, newest look first. */
export const casesFound = computed(() =>
  narrowCases(search.value(query.value), narrowing.value, placeOfCase.value, dayOf(new Date())),
);
