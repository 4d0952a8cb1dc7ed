import { useState } from 'preact/hooks';
import type { SignCheck } from '../../../causes/checks.ts';
import type { NextCheckTarget } from '../../../ranker/types.ts';
import type { AskableId } from '../../../signs/vocabulary.ts';
import { Segments } from '../../parts/Choice/segments.tsx';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { SoundLeaf, UnseenLeaf } from '../../parts/Drawn/plain-leaf.tsx';
import type { SignAnswer } from '../../state/change-draft.ts';
import { change } from '../../state/change-look.ts';
import { draft } from '../../state/look-in-hand.ts';
import { capitalise } from '../../words/causes.ts';
import { answerWords, shortAnswers } from '../../words/checks.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeSign, sayShortly } from '../../words/signs.ts';

/** Seen, not there, can't say: three answers of one size, each with its drawing. */
export function SignAnswers({ target }: { readonly target: Extract<NextCheckTarget, { kind: 'sign' }> }) {
  const { sign } = target;
  const words = answerWords(target);
  const answer = (given: SignAnswer): void => change({ kind: 'answer-signs', signs: { [sign]: given } });
  return (
    <div class="answers drawn-answers">
      <button type="button" class="answer" onClick={() => answer('seen')}>
        <Drawn of={sign} />
        {words.seen}
      </button>
      <button type="button" class="answer" onClick={() => answer('absent')}>
        {describeSign(sign).group === 'mark' ? <SoundLeaf /> : <Drawn of={sign} crossed />}
        {words.absent}
      </button>
      <button type="button" class="answer" onClick={() => answer('cannot-say')}>
        <UnseenLeaf />
        {WORDS.cannotSay}
      </button>
    </div>
  );
}

function alreadySaid(signs: readonly AskableId[]): Readonly<Record<string, SignAnswer>> {
  const said = draft.value.answers.signs;
  return Object.fromEntries(signs.flatMap((sign) => (said[sign] ? [[sign, said[sign]]] : [])));
}

/** A check that settles several signs at once: each gets its answer, those left alone stay unknown. */
export function CheckAnswers({ check }: { readonly check: SignCheck }) {
  const { signs } = check.settles;
  // What was said before stands there already; saying it again changes nothing.
  const [found, setFound] = useState<Readonly<Record<string, SignAnswer>>>(() => alreadySaid(signs));
  const done = (): void => change({ kind: 'answer-signs', signs: found, check: check.id });
  return (
    <div class="stack">
      <p>{WORDS.checkFinds}</p>
      {signs.map((sign) => (
        <div key={sign} class="check-sign">
          <Drawn of={sign} />
          <Segments
            legend={capitalise(sayShortly(sign))}
            name={`check-${sign}`}
            options={[
              { id: 'seen', says: shortAnswers(sign).seen },
              { id: 'absent', says: shortAnswers(sign).absent },
              { id: 'cannot-say', says: WORDS.cannotSay },
            ]}
            value={found[sign]}
            onChange={(value) => setFound({ ...found, [sign]: value })}
          />
        </div>
      ))}
      <div class="answers">
        <button type="button" class="answer done" disabled={Object.keys(found).length === 0} onClick={done}>
          {WORDS.done}
        </button>
        <button type="button" class="answer" onClick={() => change({ kind: 'cannot-say', id: check.id })}>
          {WORDS.notNow}
        </button>
      </div>
    </div>
  );
}
