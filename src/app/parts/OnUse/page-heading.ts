import { SHELL_WORDS as WORDS } from '../../words/shell.ts';
import { landOn } from './keep-focus.ts';

const heading = (): HTMLElement | null => document.querySelector('main h1');

/** Names the browser's tab by the heading of the page on show. */
export function nameTab(): void {
  const says = heading()?.textContent;
  document.title = says && says !== '…' ? `${says} · ${WORDS.name}` : WORDS.name;
}

/** Puts the reader at the head of the page. */
export const goToHeading = (): void => landOn(heading());
