import { findTerms } from '../../words/terms.ts';
import { TermButton } from './term-button.tsx';

/** The sentence with its terms as buttons. */
export function TermText({ children }: { readonly children: string }) {
  return (
    <>
      {findTerms(children).map(({ text, term }, at) =>
        term === undefined ? (
          text
        ) : (
          <TermButton key={at} of={term}>
            {text}
          </TermButton>
        ),
      )}
    </>
  );
}
