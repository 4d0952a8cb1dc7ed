import { findTerms } from '../../words/terms.ts';
import { TermButton } from './term-button.tsx';

const OPENS = /[(“‘]+$/;
const CLOSES = /^[)”’.,;:?!…]+/;

/** The sentence with its terms as buttons. No line breaks between a term and the bracket or stop beside it. */
export function TermText({ children }: { readonly children: string }) {
  const pieces = findTerms(children);
  const isTerm = (at: number): boolean => pieces[at]?.term !== undefined;
  const opening = (at: number): string => OPENS.exec(pieces[at]?.text ?? '')?.[0] ?? '';
  const closing = (at: number): string => CLOSES.exec(pieces[at]?.text ?? '')?.[0] ?? '';
  return (
    <>
      {pieces.map(({ text, term }, at) => {
        if (term === undefined) {
          const from = isTerm(at - 1) ? closing(at).length : 0;
          const to = text.length - (isTerm(at + 1) ? opening(at).length : 0);
          return text.slice(from, Math.max(from, to));
        }
        return (
          <span key={at} class="term-held">
            {isTerm(at - 1) ? '' : opening(at - 1)}
            <TermButton of={term}>{text}</TermButton>
            {isTerm(at + 1) ? '' : closing(at + 1)}
          </span>
        );
      })}
    </>
  );
}
