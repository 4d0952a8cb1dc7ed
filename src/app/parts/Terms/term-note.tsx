import './terms.css';
import { useEffect, useRef } from 'preact/hooks';
import { TERM_WORDS, TERMS, type TermId } from '../../words/terms.ts';
import { Drawn } from '../Drawn/drawn.tsx';
import { explained } from './explained.ts';

/** What a term means, over the page's lower edge, until it is closed, Escape is pressed or anything else is touched. */
export function TermNote() {
  const note = useRef<HTMLDivElement>(null);
  const term = TERMS[explained.value as TermId];
  useEffect(() => {
    if (term) note.current?.showPopover();
  }, [term]);
  if (!term) return null;
  return (
    <div
      class="term-note"
      popover="auto"
      role="dialog"
      aria-labelledby="term-name"
      ref={note}
      onToggle={({ currentTarget }) => {
        // Another term may have been touched while this one was closing.
        if (!currentTarget.matches(':popover-open')) explained.value = undefined;
      }}
    >
      <Drawn of={term.drawing} />
      <div class="stack-close">
        <h2 id="term-name">{term.name}</h2>
        <p>{term.says}</p>
        <button type="button" class="button" autofocus onClick={() => note.current?.hidePopover()}>
          {TERM_WORDS.close}
        </button>
      </div>
    </div>
  );
}
