import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { SeenAtLook } from '../../signs/seen-at-look.ts';
import { type KeptLook, store, tryRead } from './kept.ts';
import { reportsHere } from './own-reports.ts';

const looksRead = signal<readonly KeptLook[]>([]);

/** What earlier looks at the plant in hand showed, for the ranking; empty for a new plant and until they are read. */
export const earlierLooks = computed(() => looksRead.value.map(seenAt));

/** The one before this, as it was kept. */
export const lookBefore = computed(() =>
  [...looksRead.value].sort((a, b) => (a.date < b.date ? 1 : -1)).at(0),
);

/** What the ranking needs of a kept look. Readings of photos whose role was left open say nothing. */
export function seenAt(look: KeptLook): SeenAtLook {
  const photos = look.photos.filter(({ reading, role }) => reading?.role === role);
  return {
    date: look.date,
    answers: look.answers,
    photos: photos.flatMap(({ reading }) => reading ?? []),
    network: photos.flatMap(({ network, reading }) => reportsHere(network, reading!.role)),
  };
}

/** Reads the looks of a case whenever another one is taken in hand. */
export function followEarlierLooks(caseInHand: ReadonlySignal<string | undefined>): void {
  effect(() => {
    const caseId = caseInHand.value;
    looksRead.value = [];
    if (caseId === undefined) return;
    void tryRead(() => store.listLooks(caseId)).then((looks) => {
      if (caseInHand.peek() !== caseId || !looks) return;
      looksRead.value = (looks as KeptLook[]).filter(({ deletedAt }) => !deletedAt);
    });
  });
}
