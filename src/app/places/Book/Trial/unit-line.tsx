import { useState } from 'preact/hooks';
import { canBe } from '../../../../compare/side-by-side/check-trial.ts';
import type { TrialMeasure } from '../../../../compare/side-by-side/trial.ts';
import type { TrialRecord, TrialUnitKept } from '../../../../garden/trial-record.ts';
import { FilePicker } from '../../../parts/FilePicker/file-picker.tsx';
import { onUse } from '../../../parts/OnUse/on-use.tsx';
import { readNumber } from '../../../state/edit-ground.ts';
import { readingsOn } from '../../../state/read-kept-trial.ts';
import { addTrialPhoto, bringBack, putNumbers, strikeOut, touchTrial } from '../../../state/trials.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { measureWords, typedOf } from '../../../words/say-trial.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';
import { useTyped } from './typed-field.tsx';

/** The leaf's photo comes with the part that draws over it. */
const UnitPhoto = onUse(() => import('./unit-photo.tsx').then((part) => part.UnitPhoto));

interface UnitLineProps {
  readonly trial: TrialRecord;
  readonly unit: TrialUnitKept;
  readonly bed: string;
  readonly measure: TrialMeasure;
  readonly date: string;
  readonly covered: boolean;
}

/** One plant or plot: its number, typed or by photo; or that it is gone. */
export function UnitLine({ trial, unit, bed, measure, date, covered }: UnitLineProps) {
  const [asking, setAsking] = useState(false);
  const loss = trial.losses.find(({ id }) => id === unit.id);
  const short = WORDS.plantAt(trial.unit ?? 'plant', unit.place);
  const name = WORDS.inBed(short, bed);
  const photos = readingsOn(trial, unit.id, date).filter(({ photoId }) => photoId !== undefined);
  return (
    <li class="unit-line">
      <span class="unit-name">
        {short} {!covered && <span class={`way-mark way-${unit.way}`}>{unit.way}</span>}
      </span>
      {loss ? (
        <>
          <span class="unit-lost">{WORDS.lostOn(loss.why, describeDayAndYear(loss.date))}</span>
          <button
            type="button"
            class="button-plain small"
            aria-label={WORDS.backOf(name)}
            onClick={() => void touchTrial(trial.id, (found) => bringBack(found, unit.id))}
          >
            {WORDS.back}
          </button>
        </>
      ) : (
        <>
          <Numbers trial={trial} unit={unit} measure={measure} date={date} name={name} />
          {measure.by === 'photo' && (
            <FilePicker
              class="button file-button"
              camera
              label={WORDS.photoOf(name)}
              onAdd={([file]) => file && void addTrialPhoto(trial.id, unit.id, date, file)}
            >
              {WORDS.photo}
            </FilePicker>
          )}
          <button
            type="button"
            class="button-plain small"
            aria-label={WORDS.lostOf(name)}
            aria-expanded={asking}
            onClick={() => setAsking(!asking)}
          >
            {WORDS.lost}
          </button>
          {asking && (
            <LostForm
              onSay={(why) => {
                setAsking(false);
                void touchTrial(trial.id, (found) => strikeOut(found, unit.id, date, why));
              }}
            />
          )}
          {photos.map((reading) => (
            <UnitPhoto key={reading.id} trialId={trial.id} reading={reading} measure={measure} name={name} />
          ))}
        </>
      )}
    </li>
  );
}

interface NumbersProps {
  readonly trial: TrialRecord;
  readonly unit: TrialUnitKept;
  readonly measure: TrialMeasure;
  readonly date: string;
  readonly name: string;
}

/** How many times the largest or a part of the smallest of the others is worth a question (common practice, no source). */
const FAR_OFF = 3;

function Numbers({ trial, unit, measure, date, name }: NumbersProps) {
  const words = measureWords(measure, trial);
  const mine = readingsOn(trial, unit.id, date).filter(({ photoId }) => photoId === undefined);
  const stored = mine.flatMap(({ value }) => (value === undefined ? [] : [typedOf(value, words)])).join(' ');
  const { typed, wrong, type, keep } = useTyped(stored, (said) => {
    const numbers =
      said.trim() === ''
        ? []
        : said
            .trim()
            .split(/[\s;/]+/)
            .map((one) => readNumber(one) ?? Number.NaN);
    const values = numbers.map((value) => value / words.times);
    if (!values.every((value) => canBe(measure, value))) return WORDS.valueWrong[faultOf(measure)];
    void touchTrial(trial.id, (found) => putNumbers(found, unit.id, date, values));
    return undefined;
  });
  const others = trial.readings.filter((one) => one.date === date && one.unitId !== unit.id);
  const says =
    wrong ??
    (mine.some(({ value }) =>
      isFarOff(
        value,
        others.map((one) => one.value),
      ),
    )
      ? WORDS.farOff
      : '');
  const id = `says-${unit.id}`;
  return (
    <span class="unit-number">
      <input
        type="text"
        inputMode="decimal"
        enterkeyhint="next"
        autocomplete="off"
        class="day-number figures"
        aria-label={name}
        aria-describedby={id}
        {...(wrong ? { 'aria-invalid': true } : {})}
        value={typed}
        onInput={({ currentTarget: { value } }) => type(value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === 'Enter') nextField(event.currentTarget)?.focus();
        }}
      />
      <span class="unit-says small" id={id} role="status">
        {says}
      </span>
    </span>
  );
}

/** The next line's field, for thumbs that press “next”. */
function nextField(field: HTMLInputElement): HTMLInputElement | undefined {
  const all = [...document.querySelectorAll<HTMLInputElement>('.unit-line .day-number')];
  return all[all.indexOf(field) + 1];
}

function faultOf(measure: TrialMeasure): keyof typeof WORDS.valueWrong {
  if (measure.by === 'photo') return measureWords(measure).times === 100 ? 'share' : 'other';
  return measure.kind === 'count' || measure.kind === 'share' || measure.kind === 'score'
    ? measure.kind
    : 'other';
}

function isFarOff(value: number | undefined, others: readonly (number | undefined)[]): boolean {
  const known = others.filter((one) => one !== undefined && one > 0) as number[];
  if (value === undefined || value <= 0 || known.length < 3) return false;
  return value > FAR_OFF * Math.max(...known) || value < Math.min(...known) / FAR_OFF;
}

function LostForm({ onSay }: { readonly onSay: (why: string) => void }) {
  const [other, setOther] = useState('');
  return (
    <fieldset class="unit-lost-form stack-close">
      <legend class="field-label">{WORDS.lostWhy}</legend>
      <div class="trial-actions">
        {WORDS.lostWhys.map((why) => (
          <button key={why} type="button" class="button" onClick={() => onSay(why)}>
            {why}
          </button>
        ))}
      </div>
      <label class="field">
        <span>{WORDS.lostOther}</span>
        <input type="text" value={other} onInput={({ currentTarget: { value } }) => setOther(value)} />
      </label>
      <button type="button" class="button" onClick={() => onSay(other.trim())}>
        {WORDS.lostSay}
      </button>
    </fieldset>
  );
}
