import { type Signal, signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { afterPaint } from '../../state/after-paint.ts';
import { isOlder, isSafeToReopen, reopen } from '../../state/reopen.ts';
import { SHELL_WORDS as WORDS } from '../../words/shell.ts';
import { goToHeading, nameTab } from './page-heading.ts';

/**
 * A part that is fetched when it is first shown, so that the first screen stays small; then it stays. Every file is stored
 * at the first visit, so this works without a network too. Where a newer version has taken its place the page is loaded anew,
 * by itself if nothing could be lost by that.
 *
 * @param wait what stands in its place until then
 * @param more `beside`: a part beside others that are needed first; it is fetched once those are painted
 */
export function onUse<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  wait?: preact.ComponentChildren,
  { beside = false }: { readonly beside?: boolean } = {},
) {
  const part = signal<ComponentType<Props> | undefined>(undefined);
  const failed = signal(false);
  let asked = false;
  const fetchPart = (): void => {
    if (asked) return;
    asked = true;
    // Never while the page is drawn: fetching takes its own time.
    (beside ? afterPaint() : Promise.resolve()).then(load).then(
      (loaded) => {
        // What stands in its place may hold the heading: the reader who was put there is put on the new one.
        const wasAtHeading = document.activeElement?.tagName === 'H1';
        part.value = loaded;
        requestAnimationFrame(() => {
          nameTab();
          if (wasAtHeading) goToHeading();
        });
      },
      () => {
        asked = false;
        if (isOlder.value && isSafeToReopen()) void reopen();
        else failed.value = true;
      },
    );
  };
  return function OnUse(props: Props) {
    const Part = part.value;
    if (Part) return <Part {...props} />;
    if (failed.value) return <Missing of={failed} />;
    fetchPart();
    return (
      <>
        <span hidden aria-busy="true" />
        {wait}
      </>
    );
  };
}

/** Parts that are wanted on this page and could not be fetched, the one that tells of them first. */
const missing = signal<readonly Signal<boolean>[]>([]);

function tryAgain(): void {
  for (const failed of missing.peek()) failed.value = false;
}

/** Said once, however many parts of a page are missing. Tried again by itself when the signal comes back. */
function Missing({ of }: { readonly of: Signal<boolean> }) {
  useEffect(() => {
    missing.value = [...missing.peek(), of];
    addEventListener('online', tryAgain);
    return () => {
      missing.value = missing.peek().filter((other) => other !== of);
      removeEventListener('online', tryAgain);
    };
  }, [of]);
  if (missing.value[0] !== of) return null;
  return (
    <p role="alert">
      {isOlder.value ? WORDS.partOlder : WORDS.partMissing}{' '}
      <button type="button" class="button-plain" onClick={() => (isOlder.value ? void reopen() : tryAgain())}>
        {isOlder.value ? WORDS.useUpdate : WORDS.tryAgain}
      </button>
    </p>
  );
}
