import './look-place.css';
import { useEffect } from 'preact/hooks';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { garden } from '../../state/garden.ts';
import { cases } from '../../state/kept.ts';
import { draftOpened } from '../../state/look-in-hand.ts';
import { openDraft } from '../../state/look-session.ts';
import { caseOfLook, idOfLook, photosOfLook } from '../../state/parts-of-look.ts';
import { goTo, route } from '../../state/route.ts';
import { recordsOfLook } from '../../state/weigh-look.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { WEIGHING_WORDS } from '../../words/weighing.ts';
import { CropPicker } from './crop-picker.tsx';
import { LookDate } from './look-date.tsx';
import { PhotoDesk } from './photo-desk.tsx';
import { QuestionPanel } from './question-panel.tsx';

/* Nothing has been weighed yet when a look opens. */
const Result = onUse(
  () => import('./result.tsx').then((part) => part.Result),
  <div class="result" aria-busy="true">
    <p class="soft">{WEIGHING_WORDS.reckoned}</p>
  </div>,
  { beside: true },
);
const VerdictStrip = onUse(() => import('./verdict-strip.tsx').then((part) => part.VerdictStrip), undefined, {
  beside: true,
});

/* Without a photo, now or before, the camera has nothing to report. */
const CameraReport = onUse(() => import('./camera-report.tsx').then((part) => part.CameraReport));
/* Only a garden with records has some that answer. */
const FromRecords = onUse(
  () => import('./from-records.tsx').then((part) => part.FromRecordsPart),
  <p class="link-line" />,
);
/* It stands at the end of the page. */
const KeepForm = onUse(() => import('./keep-form.tsx').then((part) => part.KeepForm), undefined, {
  beside: true,
});
/* Only a later look has something to ask again. */
const SeenBefore = onUse(() => import('./seen-before.tsx').then((part) => part.SeenBefore));

/** Look: one plant, now. Photos and questions on one side, the verdict and the weighing on the other. */
export function LookPlace() {
  const wanted = route.value.place === 'look' ? route.value.draft : undefined;
  const current = idOfLook.value;
  useEffect(() => {
    if (draftOpened.value && wanted === current) return;
    void openDraft(wanted).then((id) => {
      const now = route.value;
      if (now.place === 'look' && now.draft === wanted) goTo({ place: 'look', draft: id }, 'replace');
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
          {caseOfLook.value && <SeenBefore />}
          <PhotoDesk />
          {(photosOfLook.value.length > 0 || caseOfLook.value) && <CameraReport />}
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
  const caseId = caseOfLook.value;
  const kept = caseId ? cases.value?.find(({ id }) => id === caseId) : undefined;
  return kept ? WORDS.titleLater(kept.plant) : WORDS.title;
}
