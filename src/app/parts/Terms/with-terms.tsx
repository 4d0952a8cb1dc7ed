import { signal } from '@preact/signals';
import type { ComponentChildren, ComponentType } from 'preact';

type TermText = ComponentType<{ readonly children: string }>;

/** Terms and what they mean come after the first screen, once, and stay. */
const part = signal<TermText | undefined>(undefined);
let asked = false;

function fetchTerms(): void {
  if (asked) return;
  asked = true;
  import('./term-text.tsx').then(
    ({ TermText }) => {
      part.value = TermText;
    },
    () => {
      // The sentence stands without them; the next one tries again.
      asked = false;
    },
  );
}

/** A sentence whose terms of the trade can be touched to be explained. */
export function WithTerms({ children }: { readonly children: string }): ComponentChildren {
  fetchTerms();
  const Text = part.value;
  return Text ? <Text>{children}</Text> : children;
}
