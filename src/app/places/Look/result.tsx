import { useMemo } from 'preact/hooks';
import type { Answers } from '../../../signs/types.ts';
import type { TriageResult } from '../../../triage.ts';
import { showPart } from '../../parts/OnUse/keep-focus.ts';
import { VerdictWords } from '../../parts/Verdict/verdict.tsx';
import { Weighing } from '../../parts/Weighing/weighing.tsx';
import { openingOfLook } from '../../state/parts-of-look.ts';
import { askAbout } from '../../state/question.ts';
import { rankAgain, ranking } from '../../state/weigh-look.ts';
import { dayOf } from '../../words/dates.ts';
import { WEIGHING_WORDS } from '../../words/weighing.ts';

/** What has been found so far: the verdict in words, and the weighing. */
export function Result() {
  const { result, answers, about, pending, failed } = ranking.value;
  // While the next one is weighed the last one stands, untouched.
  const found = useMemo(
    () => result && answers && <Found result={result} answers={answers} newest={about ?? []} />,
    [result],
  );
  return (
    <div class="result stack-wide" aria-busy={pending}>
      {failed && (
        <p role="alert">
          {WEIGHING_WORDS.failed}{' '}
          <button type="button" class="button-plain" onClick={rankAgain}>
            {WEIGHING_WORDS.failedAgain}
          </button>
        </p>
      )}
      {!result && !failed && <p class="soft">{WEIGHING_WORDS.reckoned}</p>}
      {found}
    </div>
  );
}

interface FoundProps {
  readonly result: TriageResult;
  readonly answers: Answers;
  readonly newest: readonly string[];
}

function Found({ result, answers, newest }: FoundProps) {
  return (
    <>
      {result.nothingSeen ? (
        <p class="no-verdict" id="verdict">
          {openingOfLook.value?.seen.length ? WEIGHING_WORDS.noVerdictYet : WEIGHING_WORDS.noVerdict}
        </p>
      ) : (
        <VerdictWords
          judged={result}
          today={dayOf(new Date())}
          onAsk={(id) => {
            askAbout(id);
            showPart('question');
          }}
        />
      )}
      <Weighing result={result} answers={answers} newest={newest} />
    </>
  );
}
