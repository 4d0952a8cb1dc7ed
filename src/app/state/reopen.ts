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

/** What can be typed into: a box or a dot to tick has a value of its own. */
const FIELDS = 'main :is(input:not([type="checkbox"], [type="radio"]), textarea)';

/** Is there something typed on the page as it stands? Whether a form or the store holds it as well is not asked. */
export const isTypedIn = (): boolean =>
  [...document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>(FIELDS)].some(
    ({ value, defaultValue }) => value !== defaultValue,
  );

/**
 * Whether the page can be loaded anew by itself: nothing is typed or chosen on it, no bar offers to undo or tells of
 * trouble, which a page loaded anew would know nothing of.
 */
export const isSafeToReopen = (): boolean =>
  !isTypedIn() && !document.querySelector('main :is(:checked, [aria-pressed="true"]), .bars .bar');
