import { useEffect, useRef, useState } from 'preact/hooks';
import type { NextCheck, NextCheckTarget } from '../../../ranker/types.ts';
import { SETTINGS } from '../../../signs/settings.ts';
import { Segments } from '../../parts/Choice/segments.tsx';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { landOn } from '../../parts/OnUse/keep-focus.ts';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { cropOfLook, rankingInHand } from '../../state/parts-of-look.ts';
import { isOpening, question, worthAsking } from '../../state/question.ts';
import { weighingAnswer } from '../../state/weigh-look.ts';
import { checkOf, describeQuestion, describeWhatItTells } from '../../words/checks.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeMinutes } from '../../words/minutes.ts';
import { describeSign } from '../../words/signs.ts';
import { OpeningQuestion } from './opening-question.tsx';
import { SettingAnswers } from './setting-answers.tsx';
import { CheckAnswers, SignAnswers } from './sign-answers.tsx';
import { wordsOnAnswers } from './words-on-answers.ts';

const AnswerEffect = onUse(() => import('./answer-effect.tsx').then((part) => part.AnswerEffect), undefined, {
  beside: true,
});
const AllQuestions = onUse(() => import('./all-questions.tsx').then((part) => part.AllQuestions));

/** The questions: the best one at a time, or all of them as a list. */
export function QuestionPanel() {
  const [all, setAll] = useState(false);
  return (
    <section
      class={`questions stack${worthAsking.value ? ' is-next' : ''}`}
      aria-labelledby="question-title"
      id="question"
    >
      <div class="questions-head">
        <h2 id="question-title" class="question-title" tabIndex={-1}>
          {all ? WORDS.allQuestions : WORDS.question}
        </h2>
        <Segments
          legend={WORDS.question}
          quiet
          name="how-asked"
          options={[
            { id: 'one', says: WORDS.oneAtATime },
            { id: 'all', says: WORDS.allQuestions },
          ]}
          value={all ? 'all' : 'one'}
          onChange={(value) => setAll(value === 'all')}
        />
      </div>
      {all ? <AllQuestions /> : isOpening.value ? <OpeningQuestion /> : <OneQuestion />}
      <AnswerEffect />
    </section>
  );
}

function OneQuestion() {
  const asked = question.value;
  const heading = useRef<HTMLParagraphElement>(null);
  const answered = useRef(false);
  // After an answer the focus goes to the next question, so that a keyboard or a screen reader can go on.
  useEffect(() => {
    if (weighingAnswer.value) answered.current = true;
    else if (answered.current) {
      answered.current = false;
      const { activeElement } = document;
      if (activeElement === document.body || activeElement?.closest('.questions')) landOn(heading.current);
    }
  });
  if (weighingAnswer.value) return <p class="question-wait soft">{WORDS.weighing}</p>;
  if (!asked)
    return (
      <p class="question-wait" ref={heading} tabIndex={-1}>
        {rankingInHand.value ? WORDS.nothingLeft : WORDS.notYet}
      </p>
    );
  const { where, asks } = describeQuestion(asked.target, cropOfLook.value);
  const apart = describeWhatItTells(asked);
  // The verdict waits for this one: no word then of stopping here.
  const isOfVerdict = asked.id === rankingInHand.value?.verdict.check?.id;
  return (
    <div class="question stack" key={asked.id}>
      {!worthAsking.value && !isOfVerdict && <p class="small">{WORDS.notWorth}</p>}
      <div class="question-text">
        <QuestionDrawing target={asked.target} />
        <div>
          <p class="question-where small soft">{where}</p>
          <p class="question-asks" ref={heading} tabIndex={-1}>
            <WithTerms>{asks}</WithTerms>
          </p>
        </div>
      </div>
      <Answers asked={asked} />
      <TermsOf says={wordsOnAnswers(asked.target)} />
      <p class="small soft">
        {apart && <WithTerms>{WORDS.why(apart)}</WithTerms>}{' '}
        {WORDS.takes(describeMinutes(asked.minutes, asked.waitDays))}
      </p>
    </div>
  );
}

/** The check to make, what is asked by yes or no, or where on the plant to look. */
function QuestionDrawing({ target }: { readonly target: NextCheckTarget }) {
  if (target.kind === 'check') return <Drawn of={target.check} />;
  if (target.kind === 'setting')
    return SETTINGS[target.setting].kind === 'yes-no' ? <Drawn of={`setting-${target.setting}`} /> : null;
  const place = target.kind === 'sign' ? describeSign(target.sign).place : undefined;
  return place === 'old' || place === 'new' ? <Drawn of={`position-${place}`} /> : null;
}

function Answers({ asked: { target } }: { readonly asked: NextCheck }) {
  if (target.kind === 'sign') return <SignAnswers target={target} />;
  if (target.kind === 'setting') return <SettingAnswers setting={target.setting} />;
  const check = checkOf(target.check);
  if (!check) return null;
  if ('setting' in check.settles) return <SettingAnswers setting={check.settles.setting} check={check.id} />;
  return <CheckAnswers check={{ ...check, settles: check.settles }} />;
}
