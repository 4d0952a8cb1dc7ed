import type { ComponentChildren } from 'preact';
import { comesLater } from '../OnUse/comes-later.ts';

const termLine = comesLater<{ readonly says: readonly string[] }>(() =>
  import('./term-line.tsx').then((part) => part.TermLine),
);

/** Explains the terms of buttons, labels and links, which cannot hold a button of their own: a line to stand beside them. */
export function TermsOf({ says }: { readonly says: readonly string[] }): ComponentChildren {
  const Line = termLine();
  return Line ? <Line says={says} /> : null;
}
