import { TermButton } from '../../parts/Terms/term-button.tsx';
import { TERM_IDS, TERM_WORDS, TERMS } from '../../words/terms.ts';

const BY_NAME = [...TERM_IDS].sort((a, b) => TERMS[a].name.localeCompare(TERMS[b].name, 'en-GB'));

/** Every term of the trade that the app uses, in the order of the alphabet. */
export function TermsPart() {
  return (
    <section class="stack-close">
      <h2>{TERM_WORDS.all}</h2>
      <p>{TERM_WORDS.how}</p>
      <ul class="term-list">
        {BY_NAME.map((id) => (
          <li key={id}>
            <TermButton of={id}>{TERMS[id].name}</TermButton>
          </li>
        ))}
      </ul>
    </section>
  );
}
