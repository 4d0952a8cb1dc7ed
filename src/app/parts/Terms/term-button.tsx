import './terms.css';
import type { TermId } from '../../words/terms.ts';
import { explained } from './explained.ts';

/** A word that explains itself when it is touched. */
export function TermButton({ of, children }: { readonly of: TermId; readonly children: string }) {
  return (
    <button
      type="button"
      class="term"
      aria-haspopup="dialog"
      onClick={() => {
        explained.value = of;
      }}
    >
      {children}
    </button>
  );
}
