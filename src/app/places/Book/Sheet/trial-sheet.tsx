import '../Trial/trial.css';
import { groundRecords } from '../../../state/garden.ts';
import { trialOn } from '../../../state/trials.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { wayNameOf } from '../../../words/say-trial.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { SHEET_PARTS, TRIAL_CAUTIONS } from '../../../words/sheet-parts.ts';
import { TRIAL_WORDS } from '../../../words/trial.ts';
import { BedPlan } from '../Trial/bed-plan.tsx';
import { ResultPart } from '../Trial/result-part.tsx';
import { Lines } from './lines.tsx';
import { Sheet, SheetPart } from './sheet.tsx';
import { TrialPhotos } from './trial-photos.tsx';

/** A trial side by side: what was tried, how it was laid out, what came out. */
export function TrialSheet({ trialId }: { readonly trialId: string }) {
  if (!groundRecords.value) return <h1 tabIndex={-1}>{SHEET_WORDS.waiting}</h1>;
  const trial = trialOn(trialId);
  const { ended, layouts, readings, note } = trial;
  return (
    <Sheet
      title={trial.name || TRIAL_WORDS.unnamed}
      back={{ place: 'book', trial: trialId }}
      backSays={TRIAL_WORDS.toTrial}
    >
      <SheetPart title={SHEET_PARTS.trial.asked}>
        <p>{trial.ways.map((way) => wayNameOf(trial, way.id)).join(' · ')}</p>
        {ended && (
          <p>
            {(ended.as === 'read' ? TRIAL_WORDS.endedOn : TRIAL_WORDS.givenUpOn)(
              describeDayAndYear(ended.date),
            )}
          </p>
        )}
        {note && <p>{note}</p>}
      </SheetPart>
      {readings.length > 0 && <ResultPart trial={trial} />}
      <TrialPhotos trial={trial} />
      {layouts.length > 0 && (
        <SheetPart title={SHEET_PARTS.trial.plan}>
          {layouts.map((layout) => (
            <BedPlan key={layout.id} trial={trial} layout={layout} />
          ))}
        </SheetPart>
      )}
      <SheetPart title={SHEET_PARTS.cautions}>
        <Lines lines={TRIAL_CAUTIONS} />
      </SheetPart>
    </Sheet>
  );
}
