import { signal } from '@preact/signals';
import { dayOf } from '../words/dates.ts';
import { type Draft, emptyDraft } from './draft.ts';

/** The look in progress. One is open at a time; it is read from the store when its address is opened. */
export const draft = signal<Draft>(emptyDraft(crypto.randomUUID(), dayOf(new Date())));
export const draftOpened = signal(false);
