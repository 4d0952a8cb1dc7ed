import { useEffect, useRef, useState } from 'preact/hooks';
import type { CropId } from '../../../signs/vocabulary.ts';
import { landOn } from '../../parts/OnUse/keep-focus.ts';
import { change } from '../../state/change-look.ts';
import { draft } from '../../state/look-in-hand.ts';
import { cropOfLook } from '../../state/parts-of-look.ts';
import { CROP_WORDS, cropName, findCrops } from '../../words/crops.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';

/** Without a search only the common crops are offered, so that the line stays one thumb high. */
const OFFERED = 8;

/** The first line of a look: which plant it is, and its variety if known. */
export function CropPicker() {
  const crop = cropOfLook.value;
  const [open, setOpen] = useState(false);
  const isFresh = useRef(false);
  if (crop && !open)
    return <ChosenCrop crop={crop} isFresh={isFresh.current} onChange={() => setOpen(true)} />;
  return (
    <CropSearch
      onChosen={() => {
        isFresh.current = true;
        setOpen(false);
      }}
    />
  );
}

interface ChosenCropProps {
  readonly crop: CropId;
  /** Chosen just now: the list that had the focus is gone. */
  readonly isFresh: boolean;
  readonly onChange: () => void;
}

function ChosenCrop({ crop, isFresh, onChange }: ChosenCropProps) {
  const name = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isFresh) landOn(name.current);
  }, [isFresh]);
  return (
    <div class="chosen-crop">
      <button
        ref={name}
        type="button"
        class="crop-name"
        onClick={onChange}
        aria-label={`${cropName(crop)}. ${WORDS.cropChange}`}
      >
        {cropName(crop)}
      </button>
      <label class="field crop-variety">
        <span>{WORDS.variety}</span>
        <input
          type="text"
          value={draft.value.answers.variety ?? ''}
          placeholder={WORDS.varietyHint}
          autocomplete="off"
          onInput={(event) => change({ kind: 'name-variety', variety: event.currentTarget.value })}
        />
      </label>
    </div>
  );
}

function CropSearch({ onChosen }: { readonly onChosen: () => void }) {
  const [query, setQuery] = useState('');
  const [all, setAll] = useState(false);
  const found = findCrops(query);
  const shown = query === '' && !all ? found.slice(0, OFFERED) : found;
  const choose = (crop: CropId | undefined): void => {
    change({ kind: 'choose-crop', crop });
    onChosen();
  };
  return (
    <fieldset class="crop-search">
      <legend class="ask-plant">{WORDS.whichPlant}</legend>
      <label class="field">
        <span class="crop-find-label">{WORDS.cropSearch}</span>
        <input
          type="search"
          value={query}
          autocomplete="off"
          placeholder={WORDS.cropSearch}
          enterkeyhint="done"
          onInput={(event) => setQuery(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && found[0]) choose(found[0]);
          }}
        />
      </label>
      <ul class="crops">
        {shown.map((crop) => (
          <li key={crop}>
            <button type="button" class="crop" onClick={() => choose(crop)}>
              {CROP_WORDS[crop].name}
            </button>
          </li>
        ))}
        {query === '' && (
          <li>
            <button type="button" class="crop quiet" onClick={() => setAll(!all)} aria-expanded={all}>
              {all ? WORDS.cropFewer : WORDS.cropOthers}
            </button>
          </li>
        )}
        {cropOfLook.value && (
          <li>
            <button type="button" class="crop quiet" onClick={() => choose(undefined)}>
              {WORDS.cropCannotSay}
            </button>
          </li>
        )}
      </ul>
      {query !== '' && found.length <= 1 && <p class="small">{WORDS.cropNone}</p>}
    </fieldset>
  );
}
