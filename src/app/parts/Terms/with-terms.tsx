import type { ComponentChildren } from 'preact';
import { comesLater } from '../OnUse/comes-later.ts';

/* Terms and what they mean come after the first screen. */
const termText = comesLater<{ readonly children: string }>(() =>
  import('./term-text.tsx').then((part) => part.TermText),
);

/** A sentence whose terms of the trade can be touched to be explained; without them it stands as it is. */
export function WithTerms({ children }: { readonly children: string }): ComponentChildren {
  const Text = termText();
  return Text ? <Text>{children}</Text> : children;
}
