import { TERM_WORDS, TERMS, termsIn } from '../../words/terms.ts';
import { TermButton } from './term-button.tsx';

/** The terms that stand in what is said, in a line of their own; nothing where there are none. */
export function TermLine({ says }: { readonly says: readonly string[] }) {
  const terms = termsIn(says);
  if (terms.length === 0) return null;
  return (
    <p class="small term-line">
      <span class="soft">{TERM_WORDS.line}</span>
      {terms.map((id) => (
        <TermButton key={id} of={id}>
          {TERMS[id].name}
        </TermButton>
      ))}
    </p>
  );
}
