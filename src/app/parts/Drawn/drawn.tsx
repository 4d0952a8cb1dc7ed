import './drawn.css';
import { comesLater } from '../OnUse/comes-later.ts';

/* The drawings are a part of their own and come after the first screen; words alone still answer the question. */
const drawing = comesLater<{ readonly of: string }>(() =>
  import('../../drawings/index.tsx').then((part) => part.Drawing),
);

/** A drawing of a sign or check (crossed out: not this), or nothing where there is none. The words beside it say the same. */
export function Drawn({ of, crossed = false }: { readonly of: string; readonly crossed?: boolean }) {
  const Drawing = drawing();
  return (
    <span class={crossed ? 'drawn crossed' : 'drawn'} aria-hidden="true">
      {Drawing && <Drawing of={of} />}
    </span>
  );
}
