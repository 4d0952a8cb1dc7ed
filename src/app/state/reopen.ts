import { signal } from '@preact/signals';
import { writesDone } from '../../garden/store/open-database.ts';

/**
 * True once a newer version took this page over because another tab changed to it: the parts of this version that were not
 * fetched yet are gone.
 */
export const isOlder = signal(false);

/** Loads the page anew, once all that was being stored is stored. */
export async function reopen(): Promise<void> {
  await writesDone();
  location.reload();
}

const holds = (field: HTMLInputElement | HTMLTextAreaElement): boolean => field.value !== field.defaultValue;

/** Is there something typed on the page as it stands? Whether a form or the store holds it as well is not asked. */
export const isTypedIn = (): boolean =>
  [...document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>('main :is(input, textarea)')].some(
    holds,
  );

/**
 * Whether the page can be loaded anew by itself: nothing is typed or chosen on it, no bar offers to undo or tells of
 * trouble, which a page loaded anew would know nothing of.
 */
export const isSafeToReopen = (): boolean =>
  !isTypedIn() && !document.querySelector('main :is(:checked, [aria-pressed="true"]), .bars .bar');
