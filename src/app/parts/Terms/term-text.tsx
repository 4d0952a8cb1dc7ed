import './terms.css';
import { findTerms } from '../../words/terms.ts';
import { explained } from './explained.ts';

/** The sentence with its terms as buttons. */
export function TermText({ children }: { readonly children: string }) {
  return (
    <>
      {findTerms(children).map(({ text, term }, at) =>
        term === undefined ? (
          text
        ) : (
          <button
            key={at}
            type="button"
            class="term"
            aria-haspopup="dialog"
            onClick={() => {
              explained.value = term;
            }}
          >
            {text}
          </button>
        ),
      )}
    </>
  );
}
