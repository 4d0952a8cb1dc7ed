import { useRef } from 'preact/hooks';
import { TermText } from '../../parts/Terms/term-text.tsx';
import { draft } from '../../state/look-in-hand.ts';
import { undoAnswer } from '../../state/question.ts';
import { lastEffect } from '../../state/weigh-look.ts';
import { capitalise } from '../../words/causes.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { sayShift } from '../../words/weighing.ts';
import { verdictInShort } from './verdict-in-short.ts';

/**
 * What the last answer did to the beams: said only after answering. Terms are there from the first: words that turned into buttons
 * later would be read out once more.
 */
export function AnswerEffect() {
  const moved = lastEffect.value;
  const { steps } = draft.value;
  const verdict = useVerdictMoved(moved);
  return (
    <div class="answer-effect">
      <div role="status">
        {moved && moved.about.length > 0 && !(isFact(moved.about) && moved.shifts.length === 0) && (
          <div class="moved small">
            <p>{sayMoved(moved)}</p>
            <ul>
              {moved.shifts.map((shift) => (
                <li key={shift.cause}>
                  <TermText>{capitalise(sayShift(shift))}</TermText>
                </li>
              ))}
            </ul>
            {verdict ? <p class="unseen">{`${WORDS.strip}: ${verdict}`}</p> : null}
          </div>
        )}
      </div>
      {steps.length > 0 && (
        <button type="button" class="button-plain small" onClick={undoAnswer}>
          {isCrop(steps.at(-1)?.about) ? WORDS.undoCrop : WORDS.undoAnswer}
        </button>
      )}
    </div>
  );
}

/** The verdict in few words if the last answer turned it: said once, together with what moved, for those who cannot see it change. */
function useVerdictMoved(moved: typeof lastEffect.value): string {
  const verdict = verdictInShort.value ?? '';
  const said = useRef({ moved, verdict, says: '' });
  if (moved && said.current.moved !== moved)
    said.current = { moved, verdict, says: verdict === said.current.verdict ? '' : verdict };
  return said.current.says;
}

/** The crop is said, not answered: no question was asked. */
const isCrop = (about: readonly string[] | undefined): boolean => about?.length === 1 && about[0] === 'crop';

/** The crop, and where it stands. */
const isFact = (about: readonly string[]): boolean => isCrop(about) || about.includes('where');

const sayMoved = ({ about, shifts }: NonNullable<typeof lastEffect.value>): string =>
  about.includes('where') && shifts.length > 0
    ? WORDS.movedByRecords
    : shifts.length === 0
      ? WORDS.movedNothing
      : isCrop(about)
        ? WORDS.movedByCrop
        : WORDS.moved;
