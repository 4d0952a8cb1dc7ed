import { useEffect, useRef } from 'preact/hooks';
import type { AskableId } from '../../../signs/vocabulary.ts';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { landOn } from '../../parts/OnUse/keep-focus.ts';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { change } from '../../state/change-look.ts';
import type { Opening } from '../../state/draft.ts';
import { openingOfLook } from '../../state/parts-of-look.ts';
import { OPENING } from '../../state/question.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { type Lying, type PlacedId, placeMarks, toPlace } from './place-marks.ts';

/** What strikes the eye from where one stands, before anything is looked at closely. */
const STRIKING = [
  'yellowing@some',
  'purple-tint@some',
  'curled@some',
  'holes@some',
  'spotted@some',
  'browning@some',
  'pale-marks@some',
  'white-powder@some',
  'mottled@some',
  'dull-limp@some',
  'stunted',
  'aphids',
] as const satisfies readonly AskableId[];

const NOTHING_YET: Opening = { seen: [] };

/**
 * The first questions: what is seen, several at once; then of marks that mean one thing on old leaves and another on
 * young ones, on which. All of it is one answer, weighed at the end. What is left alone stays unknown.
 */
export function OpeningQuestion() {
  const { seen, lying } = openingOfLook.value ?? NOTHING_YET;
  const note = (next: Opening): void => change({ kind: 'note-opening', opening: next });
  const setLying = (where: Lying): void => note({ seen, lying: where });
  const finish = (where: Lying): void => change({ kind: 'answer-signs', signs: placeMarks(seen, where) });
  const done = (): void => {
    if (seen.length === 0) change({ kind: 'cannot-say', id: OPENING });
    else if (toPlace(seen, {})) setLying({});
    else finish({});
  };
  const open = lying && toPlace(seen, lying);
  if (open)
    return (
      <WhichLeaves
        key={open}
        mark={open}
        onSaid={(where) => {
          const said = { ...lying, [open]: where };
          if (toPlace(seen, said)) setLying(said);
          else finish(said);
        }}
      />
    );
  return (
    <div class="question stack">
      <div class="question-text">
        <div>
          <p class="question-where small soft">{WORDS.openingWhere}</p>
          <p class="question-asks">
            <WithTerms>{WORDS.openingAsks}</WithTerms>
          </p>
        </div>
      </div>
      <div class="answers drawn-answers">
        {STRIKING.map((sign) => (
          <button
            key={sign}
            type="button"
            class={`answer${seen.includes(sign) ? ' chosen' : ''}`}
            aria-pressed={seen.includes(sign)}
            onClick={() =>
              note({ seen: seen.includes(sign) ? seen.filter((other) => other !== sign) : [...seen, sign] })
            }
          >
            <Drawn of={sign} />
            {WORDS.striking[sign]}
          </button>
        ))}
      </div>
      <TermsOf says={STRIKING.map((sign) => WORDS.striking[sign])} />
      <div class="answers">
        <button type="button" class="answer done" onClick={done}>
          {seen.length === 0 ? WORDS.cannotSay : WORDS.done}
        </button>
      </div>
    </div>
  );
}

const WHERE = ['only-old', 'most-old', 'most-new', 'both'] as const;

interface WhichLeavesProps {
  readonly mark: PlacedId;
  readonly onSaid: (where: NonNullable<Lying[PlacedId]>) => void;
}

function WhichLeaves({ mark, onSaid }: WhichLeavesProps) {
  const heading = useRef<HTMLParagraphElement>(null);
  // The button that was pressed is gone: a keyboard goes on from here, and the question comes into view.
  useEffect(() => {
    landOn(heading.current);
    heading.current?.closest('.question-text')?.scrollIntoView({ block: 'nearest' });
  }, []);
  return (
    <div class="question stack">
      <div class="question-text">
        <Drawn of={mark} />
        <div>
          <p class="question-where small soft">{WORDS.striking[mark]}</p>
          <p class="question-asks" ref={heading} tabIndex={-1}>
            {WORDS.whichLeaves}
          </p>
        </div>
      </div>
      <div class="answers drawn-answers in-pairs">
        {WHERE.map((where) => (
          <button key={where} type="button" class="answer" onClick={() => onSaid(where)}>
            <Drawn of={`lying-${where}`} />
            {WORDS.lying[where]}
          </button>
        ))}
        <button type="button" class="answer whole-row" onClick={() => onSaid('open')}>
          {WORDS.cannotSay}
        </button>
      </div>
      <p class="small soft">{WORDS.whichLeavesWhy}</p>
    </div>
  );
}
