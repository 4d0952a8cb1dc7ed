import './demo.css';
import { leaveDemo } from '../../state/demo.ts';
import { DEMO_WORDS as WORDS } from '../../words/demo.ts';

export function DemoStrip() {
  return (
    <aside class="demo-strip" aria-label={WORDS.name}>
      <p>{WORDS.strip}</p>
      <button type="button" class="button-plain" onClick={() => leaveDemo()}>
        {WORDS.leave}
      </button>
    </aside>
  );
}
