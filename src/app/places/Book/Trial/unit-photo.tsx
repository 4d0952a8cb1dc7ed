import { useEffect, useRef, useState } from 'preact/hooks';
import type { TrialMeasure } from '../../../../compare/side-by-side/trial.ts';
import type { TrialNumber } from '../../../../garden/trial-record.ts';
import type { LeafReading, Taps } from '../../../../leaf/types.ts';
import { PhotoTroubles } from '../../../parts/PhotoTroubles/photo-troubles.tsx';
import { Specimen } from '../../../parts/Specimen/specimen.tsx';
import { addTap } from '../../../state/change-draft.ts';
import { dropPhotos, thumbnailOf, usePicture } from '../../../state/pictures.ts';
import { dropReading, measureTrialPhoto, touchTrial } from '../../../state/trials.ts';
import { sayMeasure } from '../../../words/changes.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { OVERLAY_WORDS } from '../../../words/layers.ts';
import type { PHOTO_WORKER_WORDS } from '../../../words/photo-troubles.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';

interface UnitPhotoProps {
  readonly trialId: string;
  readonly reading: TrialNumber;
  readonly measure: TrialMeasure;
  readonly name: string;
}

/** The photo of a unit with what was measured in it; a photo whose measuring was cut short is measured now. */
export function UnitPhoto({ trialId, reading, measure, name }: UnitPhotoProps) {
  const [busy, setBusy] = useState(false);
  const [seen, setSeen] = useState<LeafReading | undefined>(undefined);
  const [failed, setFailed] = useState<keyof typeof PHOTO_WORKER_WORDS | undefined>(undefined);
  const [open, setOpen] = useState(false);
  const turn = useRef(0);
  const small = usePicture(thumbnailOf(reading.photoId ?? ''), reading.photoId ?? '');
  const taps = (reading.taps ?? {}) as Taps;
  const read = async (next: Taps): Promise<void> => {
    const mine = ++turn.current;
    setBusy(true);
    setFailed(undefined);
    const found = await measureTrialPhoto(trialId, reading, next);
    if (mine !== turn.current || found === 'superseded') return;
    setBusy(false);
    if ('failed' in found) setFailed(found.failed);
    else setSeen(found.reading);
  };
  useEffect(() => {
    if (reading.value === undefined) void read(taps);
  }, []);
  const drop = async (): Promise<void> => {
    if (await touchTrial(trialId, (found) => dropReading(found, reading.id)))
      await dropPhotos([reading.photoId ?? '']);
  };
  const { value, se = 0 } = reading;
  const says =
    value !== undefined && measure.by === 'photo'
      ? sayMeasure(measure.measure, { value, se })
      : busy
        ? ''
        : seen
          ? WORDS.photoNone
          : WORDS.photoWaits;
  const outline = seen?.leaf.outline;
  return (
    <div class="unit-photo">
      {!open && <span class="unit-picture">{small && <img src={small} alt="" />}</span>}
      <div class="unit-photo-words">
        <p>{says}</p>
        <PhotoTroubles
          reading={busy ? WORDS.photoReading : undefined}
          trouble={seen?.trouble}
          failed={failed}
          onAgain={() => void read(taps)}
        />
        <button
          type="button"
          class="button-plain small"
          aria-expanded={open}
          onClick={() => {
            setOpen(!open);
            if (!open && !seen) void read(taps);
          }}
        >
          {WORDS.openPhoto}
        </button>
        <button
          type="button"
          class="button-plain small"
          aria-label={WORDS.photoDropOf(name)}
          onClick={() => void drop()}
        >
          {WORDS.photoDrop}
        </button>
      </div>
      {open && (
        <div class="unit-specimen">
          <Specimen
            photoId={reading.photoId ?? ''}
            caption={`${name} · ${describeDayAndYear(reading.date)}`}
            {...(outline ? { outline } : {})}
            marks={taps}
            showFindings
            busy={busy}
            unshown={seen?.trouble.includes('too-large') ?? false}
            taps={{
              onTap: (spot) => void read(addTap(taps, 'leaf', spot)),
              onUndo: () => void read({}),
              onLeave: () =>
                document.querySelector<HTMLElement>('.unit-photo [aria-expanded="true"]')?.focus(),
              tell: () => OVERLAY_WORDS.offLeaf,
            }}
          />
          <p class="small soft">{OVERLAY_WORDS.taps.leaf.says}</p>
          {Object.keys(taps).length > 0 && (
            <button type="button" class="button-plain small" onClick={() => void read({})}>
              {OVERLAY_WORDS.untapLast}
            </button>
          )}
        </div>
      )}
    </div>
  );
}
