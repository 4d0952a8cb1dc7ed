import './look-place.css';
import { useEffect } from 'preact/hooks';
import { landOn } from '../../parts/OnUse/keep-focus.ts';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { VerdictWords } from '../../parts/Verdict/verdict.tsx';
import { Weighing } from '../../parts/Weighing/weighing.tsx';
import { garden } from '../../state/garden.ts';
import { cases } from '../../state/kept.ts';
import {
  draft,
  draftOpened,
  lastEffect,
  openDraft,
  rankAgain,
  ranking,
  recordsOfLook,
} from '../../state/look-session.ts';
import { askAbout } from '../../state/question.ts';
import { goTo, route } from '../../state/route.ts';
import { dayOf } from '../../words/dates.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeVerdict } from '../../words/verdicts.ts';
import { WEIGHING_WORDS } from '../../words/weighing.ts';
import { CropPicker } from './crop-picker.tsx';
import { LookDate } from './look-date.tsx';
import { PhotoDesk } from './photo-desk.tsx';
import { QuestionPanel } from './question-panel.tsx';

/* Without a photo, now or before, the camera has nothing to report. */
const CameraReport = onUse(() => import('./camera-report.tsx').then((part) => part.CameraReport));
/* Only a garden with records has some that answer. */
const FromRecords = onUse(
  () => import('./from-records.tsx').then((part) => part.FromRecordsPart),
  <p class="link-line" />,
);
/* It stands at the end of the page. */
const KeepForm = onUse(() => import('./keep-form.tsx').then((part) => part.KeepForm));
/* Only a later look has something to ask again. */
const SeenBefore = onUse(() => import('./seen-before.tsx').then((part) => part.SeenBefore));

/** Look: one plant, now. Photos and questions on one side, the verdict and the weighing on the other. */
export function LookPlace() {
  const wanted = route.value.place === 'look' ? route.value.draft : undefined;
  const current = draft.value.id;
  useEffect(() => {
    if (draftOpened.value && wanted === current) return;
    void openDraft(wanted).then((id) => {
      if (route.value.place === 'look') goTo({ place: 'look', draft: id }, 'replace');
    });
  }, [wanted, current]);
  if (!draftOpened.value)
    return (
      <h1 tabIndex={-1} class="soft">
        {WORDS.opening}
      </h1>
    );
  return (
    <>
      <h1 class="look-title" tabIndex={-1}>
        {titleOf()}
      </h1>
      <div class="look">
        <div class="look-side stack-wide">
          <div class="plant-line">
            <CropPicker />
            <LookDate />
            {(recordsOfLook.value !== undefined || (garden.value?.beds.length ?? 0) > 0) && <FromRecords />}
          </div>
          {draft.value.caseId && <SeenBefore />}
          <PhotoDesk />
          {(draft.value.photos.length > 0 || draft.value.caseId) && <CameraReport />}
          <QuestionPanel />
        </div>
        <div class="look-side look-result stack-wide">
          <Result />
        </div>
        <div class="look-keep">
          <KeepForm />
        </div>
      </div>
      <VerdictStrip />
    </>
  );
}

function titleOf(): string {
  const { caseId } = draft.value;
  const kept = caseId ? cases.value?.find(({ id }) => id === caseId) : undefined;
  return kept ? WORDS.titleLater(kept.plant) : WORDS.title;
}

function Result() {
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
function VerdictStrip() {
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
