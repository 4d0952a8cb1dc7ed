import { useRef, useState } from 'preact/hooks';
import { groupByBed } from '../../../garden/group-by-bed.ts';
import { landOn } from '../../parts/OnUse/keep-focus.ts';
import { goToHeading } from '../../parts/OnUse/page-heading.ts';
import { change } from '../../state/change-look.ts';
import { keepLook } from '../../state/keep-draft.ts';
import { cases } from '../../state/kept.ts';
import { draft } from '../../state/look-in-hand.ts';
import { discardLook, leaveLook } from '../../state/look-session.ts';
import { worthAsking } from '../../state/question.ts';
import { goTo } from '../../state/route.ts';
import { ranking } from '../../state/weigh-look.ts';
import { cropName } from '../../words/crops.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';

/** Bed and plant in words, a note, and the button that keeps the look as a case. */
export function KeepForm() {
  const { caseId, bed, plant, note } = draft.value;
  const [state, setState] = useState<'ready' | 'keeping' | 'unnamed' | 'refused'>('ready');
  const fields = useRef<HTMLDivElement>(null);
  const keep = async (event: Event): Promise<void> => {
    event.preventDefault();
    // The plant offered in grey is taken as it stands.
    if (plant.trim() === '' && suggestedPlant() !== '')
      change({ kind: 'set-words', words: { plant: suggestedPlant() } });
    if (bed.trim() === '' || draft.value.plant.trim() === '') {
      setState('unnamed');
      // To what is missing.
      landOn([...(fields.current?.querySelectorAll('input') ?? [])].find(({ value }) => value.trim() === ''));
      return;
    }
    setState('keeping');
    const kept = await keepLook();
    if (!kept) {
      setState('refused');
      return;
    }
    goTo({ place: 'book', caseId: kept });
    leaveLook();
  };
  // The one next thing, once there is nothing worth asking left.
  const isNext =
    ranking.value.result !== undefined && !ranking.value.result.nothingSeen && !worthAsking.value;
  return (
    <section class="keep stack" aria-labelledby="keep-title">
      <h2 id="keep-title">{WORDS.keep}</h2>
      <form class="stack" onSubmit={(event) => void keep(event)} noValidate>
        <p class="soft">{WORDS.keepLead}</p>
        <div class="keep-fields" ref={fields}>
          <Words
            label={WORDS.bed}
            value={bed}
            onWords={(words) => change({ kind: 'set-words', words: { bed: words } })}
          />
          <Words
            label={WORDS.plant}
            value={plant}
            placeholder={suggestedPlant()}
            onWords={(words) => change({ kind: 'set-words', words: { plant: words } })}
          />
        </div>
        <KnownBeds />
        <label class="field">
          <span>{WORDS.note}</span>
          <textarea
            rows={2}
            value={note}
            onInput={(event) => change({ kind: 'set-words', words: { note: event.currentTarget.value } })}
          />
        </label>
        <button type="submit" class={`button${isNext ? ' next' : ''}`} disabled={state === 'keeping'}>
          {state === 'keeping' ? WORDS.keeping : caseId ? WORDS.keepLater : WORDS.keepCase}
        </button>
        <p role="alert">
          {state === 'unnamed' && (bed.trim() === '' || plant.trim() === '') && WORDS.needsNames}
          {state === 'refused' && WORDS.keptNot}
        </p>
      </form>
      <p class="small soft">
        {WORDS.draftKept}{' '}
        <button
          type="button"
          class="button-plain small"
          onClick={() => {
            void discardLook(WORDS.thrownAway);
            // A fresh look begins at its head.
            scrollTo(0, 0);
            goToHeading();
          }}
        >
          {WORDS.throwAway}
        </button>
      </p>
    </section>
  );
}

function suggestedPlant(): string {
  const { crop, variety } = draft.value.answers;
  return [cropName(crop), variety].filter(Boolean).join(', ');
}

interface WordsProps {
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly onWords: (words: string) => void;
}

function Words({ label, value, placeholder = '', onWords }: WordsProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        type="text"
        value={value}
        placeholder={placeholder}
        autocomplete="off"
        onInput={(event) => onWords(event.currentTarget.value)}
      />
    </label>
  );
}

/** As many as fit two lines on a phone. */
const BEDS_OFFERED = 6;

/** Beds that other cases name, to be taken with one tap while the field is empty. */
function KnownBeds() {
  const beds = groupByBed(cases.value ?? []).filter(({ key }) => key !== '');
  if (draft.value.bed.trim() !== '' || beds.length === 0) return null;
  return (
    <ul class="crops" aria-label={WORDS.knownBeds}>
      {beds.slice(0, BEDS_OFFERED).map(({ key, name }) => (
        <li key={key}>
          <button
            type="button"
            class="crop"
            onClick={() => change({ kind: 'set-words', words: { bed: name } })}
          >
            {name}
          </button>
        </li>
      ))}
    </ul>
  );
}
