import { landOn } from '../../parts/OnUse/keep-focus.ts';
import { VerdictWords } from '../../parts/Verdict/verdict.tsx';
import { Weighing } from '../../parts/Weighing/weighing.tsx';
import { draft, lastEffect, rankAgain, ranking } from '../../state/look-session.ts';
import { askAbout } from '../../state/question.ts';
import { dayOf } from '../../words/dates.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeVerdict } from '../../words/verdicts.ts';
import { WEIGHING_WORDS } from '../../words/weighing.ts';

/** What has been found so far: the verdict in words, and the weighing. */
export function Result() {
  const { result, failed } = ranking.value;
  return (
    <div class="result stack-wide" aria-busy={ranking.value.pending}>
      {failed && (
        <p role="alert">
          {WEIGHING_WORDS.failed}{' '}
          <button type="button" class="button-plain" onClick={rankAgain}>
            {WEIGHING_WORDS.failedAgain}
          </button>
        </p>
      )}
      {!result && !failed && <p class="soft">{WEIGHING_WORDS.reckoned}</p>}
      {result?.nothingSeen && (
        <p class="no-verdict" id="verdict">
          {WEIGHING_WORDS.noVerdict}
        </p>
      )}
      {result && !result.nothingSeen && (
        <VerdictWords
          judged={result}
          today={dayOf(new Date())}
          onAsk={(id) => {
            askAbout(id);
            showPart('question');
          }}
        />
      )}
      {result && (
        <Weighing result={result} answers={draft.value.answers} newest={lastEffect.value?.about ?? []} />
      )}
    </div>
  );
}

function showPart(id: string): void {
  const part = document.getElementById(id);
  // Read on from there, by eye or by ear.
  landOn(part?.querySelector<HTMLElement>('h2') ?? part);
  part?.scrollIntoView();
}

/** On a phone the verdict stands one thumb away, above the tabs. */
export function VerdictStrip() {
  const { result } = ranking.value;
  if (!result || result.nothingSeen) return null;
  const says = describeVerdict(result, dayOf(new Date())).short;
  return (
    <div class="verdict-strip">
      <button
        type="button"
        class="strip-verdict"
        aria-label={`${WORDS.strip}: ${says}`}
        onClick={() => showPart('verdict')}
      >
        <span>{says}</span>
      </button>
      <button type="button" class="strip-question" onClick={() => showPart('question')}>
        {WORDS.stripQuestion}
      </button>
    </div>
  );
}
