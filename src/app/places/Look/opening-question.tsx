import { useState } from 'preact/hooks';
import type { AskableId } from '../../../signs/vocabulary.ts';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { change } from '../../state/look-session.ts';
import { OPENING } from '../../state/question.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';

/** What strikes the eye from where one stands, before anything is looked at closely. */
const STRIKING = [
  'yellowing@some',
  'curled@some',
  'holes@some',
  'spotted@some',
  'browning@some',
  'pale-marks@some',
  'dull-limp@some',
  'stunted',
  'aphids',
] as const satisfies readonly AskableId[];

/** The first question: what is seen, several at once. What is left alone stays unknown. */
export function OpeningQuestion() {
  const [seen, setSeen] = useState<readonly AskableId[]>([]);
  const done = (): void => {
    if (seen.length === 0) change({ kind: 'cannot-say', id: OPENING });
    else change({ kind: 'answer-signs', signs: Object.fromEntries(seen.map((sign) => [sign, 'seen'])) });
  };
  return (
    <div class="question stack">
      <div class="question-text">
        <div>
          <p class="question-where small soft">{WORDS.openingWhere}</p>
          <p class="question-asks">{WORDS.openingAsks}</p>
        </div>
      </div>
      <div class="answers drawn-answers">
        {STRIKING.map((sign) => (
          <button
            key={sign}
            type="button"
            class={`answer striking${seen.includes(sign) ? ' chosen' : ''}`}
            aria-pressed={seen.includes(sign)}
            onClick={() =>
              setSeen(seen.includes(sign) ? seen.filter((other) => other !== sign) : [...seen, sign])
            }
          >
            <Drawn of={sign} />
            {WORDS.striking[sign]}
          </button>
        ))}
      </div>
      <div class="answers">
        <button type="button" class="answer done" onClick={done}>
          {seen.length === 0 ? WORDS.cannotSay : WORDS.done}
        </button>
      </div>
    </div>
  );
}
