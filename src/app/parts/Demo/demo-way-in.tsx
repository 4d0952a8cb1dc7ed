import './demo.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import { enterDemo } from '../../state/enter-demo.ts';
import { dayOf } from '../../words/dates.ts';
import { DEMO_WORDS as WORDS } from '../../words/demo.ts';

/** One tap loads the invented garden; meanwhile it says how far it is, and can be stopped. Going to another page stops it too. */
export function DemoWayIn() {
  const [says, setSays] = useState('');
  const [making, setMaking] = useState<AbortController | undefined>(undefined);
  const way = useRef<HTMLButtonElement>(null);
  useEffect(() => () => making?.abort(), [making]);
  const enter = async (): Promise<void> => {
    if (making) return;
    const stopper = new AbortController();
    const { signal } = stopper;
    setMaking(stopper);
    setSays(WORDS.begins);
    const onCase = (done: number, of: number): void => {
      if (!signal.aborted) setSays(WORDS.making(done, of));
    };
    if (await enterDemo(dayOf(new Date()), onCase, signal)) return;
    setSays(signal.aborted ? WORDS.stopped : WORDS.failed);
    setMaking(undefined);
  };
  const stop = (): void => {
    making?.abort();
    setSays(WORDS.stopping);
    // The button that was pressed goes away.
    way.current?.focus();
  };
  return (
    <section class="demo-way-in stack-close">
      <h2>{WORDS.name}</h2>
      <p>{WORDS.lead}</p>
      <p class="demo-buttons">
        <button
          ref={way}
          type="button"
          class="button"
          aria-disabled={making !== undefined}
          onClick={() => void enter()}
        >
          {WORDS.enter}
        </button>
        {making && (
          <button type="button" class="button" onClick={stop}>
            {WORDS.stop}
          </button>
        )}
      </p>
      <p role="status">{says}</p>
    </section>
  );
}
