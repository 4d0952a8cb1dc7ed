import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { afterPaint } from '../../state/after-paint.ts';

/**
 * A part that is fetched the first time that something asks for it, and stays; `undefined` until then, and where it could not be
 * fetched: then the next asking tries again, and so does the signal coming back. For what a screen can do without.
 */
export function comesLater<Props>(
  load: () => Promise<ComponentType<Props>>,
): () => ComponentType<Props> | undefined {
  const part = signal<ComponentType<Props> | undefined>(undefined);
  let asked = false;
  const fetchPart = (): void => {
    if (asked) return;
    asked = true;
    // What it adds to is painted first.
    afterPaint()
      .then(load)
      .then(
        (loaded) => {
          part.value = loaded;
        },
        () => {
          asked = false;
          addEventListener('online', fetchPart, { once: true });
        },
      );
  };
  return () => {
    fetchPart();
    return part.value;
  };
}
