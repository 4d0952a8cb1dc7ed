import './drawn.css';
import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';

type DrawingPart = ComponentType<{ readonly of: string }>;

/** The drawings are a part of their own: they come after the first screen, once, and stay. */
const drawings = signal<DrawingPart | undefined>(undefined);
let asked = false;

function fetchDrawings(): void {
  if (asked) return;
  asked = true;
  import('../../drawings/index.tsx').then(
    ({ Drawing }) => {
      drawings.value = Drawing;
    },
    () => {
      // Words alone still answer the question; the next drawing tries again.
      asked = false;
    },
  );
}

/** A drawing of a sign or check (crossed out: not this), or nothing where there is none. The words beside it say the same. */
export function Drawn({ of, crossed = false }: { readonly of: string; readonly crossed?: boolean }) {
  fetchDrawings();
  const Drawing = drawings.value;
  return (
    <span class={crossed ? 'drawn crossed' : 'drawn'} aria-hidden="true">
      {Drawing && <Drawing of={of} />}
    </span>
  );
}
