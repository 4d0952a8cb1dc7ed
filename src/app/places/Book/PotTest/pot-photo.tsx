import '../../../parts/Stamp/stamp.css';
import { useEffect, useState } from 'preact/hooks';
import type { PotSown, PotTestRecord } from '../../../../garden/ground-records.ts';
import type { LeafReading } from '../../../../leaf/types.ts';
import { FilePicker } from '../../../parts/FilePicker/file-picker.tsx';
import { PhotoTroubles } from '../../../parts/PhotoTroubles/photo-troubles.tsx';
import { keepNewPicture, thumbnailOf, usePicture } from '../../../state/pictures.ts';
import { readPotPhoto } from '../../../state/pot-photos.ts';
import { type ScorePatch, scoreAt } from '../../../state/pot-tests.ts';
import { offerUndo } from '../../../state/undo-bar.ts';
import { photoBridge } from '../../../state/workers.ts';
import { describeMeasures } from '../../../words/measures.ts';
import type { PHOTO_WORKER_WORDS } from '../../../words/photo-troubles.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';

const WORDS = POT_WORDS.look;

interface PotPhotoProps {
  readonly test: PotTestRecord;
  readonly pot: PotSown;
  readonly day: string;
  readonly onScore: (patch: ScorePatch) => void;
}

/** A photo of a pot, if there is one: kept with the look, measured by the same worker as a leaf. */
export function PotPhoto({ test, pot, day, onScore }: PotPhotoProps) {
  const score = scoreAt(test, day, pot.id);
  const photoId = score?.photos.at(-1);
  const reading = score?.reading as LeafReading | undefined;
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<keyof typeof PHOTO_WORKER_WORDS | undefined>(undefined);
  const read = async (id: string): Promise<void> => {
    setBusy(true);
    const read = await readPotPhoto(id);
    setBusy(false);
    if (typeof read === 'string') setFailed(read);
    else if (read) {
      setFailed(undefined);
      onScore({ reading: read });
    }
  };
  const add = async ([file]: readonly File[]): Promise<void> => {
    const id = file && (await keepNewPicture(file));
    if (!id) return;
    onScore({ photos: [id], reading: undefined });
  };
  // Its reading was cut short.
  useEffect(() => {
    if (photoId && !reading && !busy) void read(photoId);
  }, [photoId]);
  if (!photoId)
    return (
      <FilePicker
        class="button-plain pot-photo-add"
        label={WORDS.photo(pot.label)}
        camera
        onOpen={() => photoBridge.rouse()}
        onAdd={(files) => void add(files)}
      >
        {WORDS.photoAdd}
      </FilePicker>
    );
  const measures = reading?.leaf.found
    ? describeMeasures(reading.measures).filter(({ finer }) => !finer)
    : [];
  return (
    <figure class="pot-photo">
      <Picture photoId={photoId} says={WORDS.photo(pot.label)} />
      <figcaption class="small stack-close">
        <PhotoTroubles
          reading={busy ? WORDS.photoMeasuring : undefined}
          trouble={reading?.trouble}
          failed={failed}
          onAgain={() => void read(photoId)}
        />
        {measures.length > 0 && (
          <dl class="measures figures">
            {measures.map(({ id, name, says }) => (
              <div key={id}>
                <dt>{name}</dt>
                <dd>{says}</dd>
              </div>
            ))}
          </dl>
        )}
        {reading && !reading.leaf.found && <p>{WORDS.photoNoLeaf}</p>}
        <button
          type="button"
          class="button-plain small"
          onClick={() => {
            onScore({ photos: [], reading: undefined });
            offerUndo({ says: WORDS.photoGone, undo: () => onScore({ photos: [photoId], reading }) });
          }}
        >
          {WORDS.photoDrop}
        </button>
      </figcaption>
    </figure>
  );
}

function Picture({ photoId, says }: { readonly photoId: string; readonly says: string }) {
  const address = usePicture(thumbnailOf(photoId), photoId);
  return <span class="stamp">{address && <img src={address} alt={says} />}</span>;
}
