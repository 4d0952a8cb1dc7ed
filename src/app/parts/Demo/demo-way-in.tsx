import './demo.css';
import { useState } from 'preact/hooks';
import { enterDemo } from '../../state/enter-demo.ts';
import { dayOf } from '../../words/dates.ts';
import { DEMO_WORDS as WORDS } from '../../words/demo.ts';

/** One tap loads the invented garden; meanwhile it says how far it is. */
export function DemoWayIn() {
  const [says, setSays] = useState('');
  const [isMaking, setMaking] = useState(false);
  const enter = async (): Promise<void> => {
    if (isMaking) return;
    setMaking(true);
    setSays(WORDS.begins);
    const made = await enterDemo(dayOf(new Date()), (done, of) => setSays(WORDS.making(done, of)));
    if (made) return;
    setSays(WORDS.failed);
    setMaking(false);
  };
  return (
    <section class="demo-way-in stack-close">
      <h2>{WORDS.name}</h2>
      <p>{WORDS.lead}</p>
      <p>
        <button type="button" class="button" aria-disabled={isMaking} onClick={() => void enter()}>
          {WORDS.enter}
        </button>
      </p>
      <p role="status">{says}</p>
    </section>
  );
}
