import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { TERM_IDS, TERM_WORDS, TERMS } from '../../words/terms.ts';

/** Every term of the trade that the app uses, with its drawing. */
export function TermsPart() {
  return (
    <section class="stack-close">
      <h2>{TERM_WORDS.all}</h2>
      <p>{TERM_WORDS.how}</p>
      {TERM_IDS.map((id) => {
        const { name, drawing, says } = TERMS[id];
        return (
          <details key={id}>
            <summary>{name}</summary>
            <div class="term-entry">
              <Drawn of={drawing} />
              <p>{says}</p>
            </div>
          </details>
        );
      })}
    </section>
  );
}
