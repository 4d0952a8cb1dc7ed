import type { TrialNumber, TrialRecord, TrialUnitKept } from '../../../../garden/trial-record.ts';
import { measureOf } from '../../../state/read-kept-trial.ts';
import { sayMeasure } from '../../../words/changes.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { wayNameOf } from '../../../words/say-trial.ts';
import { SHEET_PARTS as WORDS } from '../../../words/sheet-parts.ts';
import { TRIAL_WORDS } from '../../../words/trial.ts';
import { SheetPart } from './sheet.tsx';
import { SheetPhoto } from './sheet-photo.tsx';

/** Three rows on paper. */
const MOST_PHOTOS = 8;

/** The photos of the last day on which any were taken, way beside way. */
export function TrialPhotos({ trial }: { readonly trial: TrialRecord }) {
  const taken = trial.readings.filter(({ photoId }) => photoId !== undefined);
  const date = taken.at(-1)?.date;
  if (!date) return null;
  const units = new Map(trial.layouts.flatMap((layout) => layout.units.map((unit) => [unit.id, unit])));
  const shown = wayBesideWay(
    trial,
    taken.flatMap((reading) => {
      const unit = units.get(reading.unitId);
      return reading.date === date && unit ? [{ reading, unit }] : [];
    }),
  ).slice(0, MOST_PHOTOS);
  const more = taken.length - shown.length;
  return (
    <SheetPart title={WORDS.trial.photos(describeDayAndYear(date))}>
      <div class="sheet-photos">
        {shown.map(({ reading, unit }) => (
          <SheetPhoto
            key={reading.id}
            photoId={reading.photoId ?? ''}
            caption={`${wayNameOf(trial, unit.way)}. ${TRIAL_WORDS.plantAt(trial.unit ?? 'plant', unit.place)}`}
            lines={measured(trial, reading)}
            size="small"
          />
        ))}
      </div>
      {more > 0 && <p class="small soft">{WORDS.morePhotos(more, 'trial')}</p>}
    </SheetPart>
  );
}

interface Taken {
  readonly reading: TrialNumber;
  readonly unit: TrialUnitKept;
}

/** One of each way, then the next of each: what stands side by side can be compared. */
function wayBesideWay({ ways }: TrialRecord, taken: readonly Taken[]): Taken[] {
  const ofWays = ways.map(({ id }) => taken.filter(({ unit }) => unit.way === id));
  const rows = Math.max(0, ...ofWays.map((mine) => mine.length));
  return Array.from({ length: rows }, (_, row) => ofWays.flatMap((mine) => mine[row] ?? [])).flat();
}

function measured(trial: TrialRecord, { value, se = 0 }: TrialNumber): string[] {
  const measure = measureOf(trial);
  if (value === undefined) return [TRIAL_WORDS.photoNone];
  return measure?.by === 'photo' ? [sayMeasure(measure.measure, { value, se })] : [];
}
