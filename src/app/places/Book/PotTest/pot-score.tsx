import { useState } from 'preact/hooks';
import { INJURY_STEPS } from '../../../../compare/pot-test/injury-scale.ts';
import type { PotSown, PotTestRecord } from '../../../../garden/ground-records.ts';
import { Segments } from '../../../parts/Choice/segments.tsx';
import { Drawn } from '../../../parts/Drawn/drawn.tsx';
import { readNumber } from '../../../state/edit-ground.ts';
import {
  emergedSoFar,
  isScored,
  lookAsked,
  type ScorePatch,
  scoreAt,
  scoreBefore,
} from '../../../state/pot-tests.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';
import { figureShown, fromShown, type RecordUnit } from '../../../words/units.ts';
import { PotPhoto } from './pot-photo.tsx';

const WORDS = POT_WORDS.look;

interface PotScoreProps {
  readonly test: PotTestRecord;
  readonly pot: PotSown;
  readonly day: string;
  readonly onScore: (patch: ScorePatch) => void;
}

/** So many numbers stand side by side; with more seeds in a pot the number is typed. */
const MOST_SIDE_BY_SIDE = 8;
const LEAF_SETS = ['0', '1', '2', '3'] as const;

/** One pot at one look. What is up is taken from the last look; each touch is kept at once. */
export function PotScore({ test, pot, day, onScore }: PotScoreProps) {
  const now = scoreAt(test, day, pot.id);
  const before = scoreBefore(test, day, pot.id);
  const emerged = emergedSoFar(test, day, pot.id);
  const residue = test.question === 'residue';
  const isCount = lookAsked(test, day) === 'count';
  // What was up is taken over only where something else will be said of the pot: else a touch must say that it was looked at.
  const shown = now ? now.emerged : residue && !isCount && emerged ? emerged : undefined;
  const leaves = (
    <div class="stack">
      {residue && (
        <InjuryChoice
          label={pot.label}
          crop={test.crop}
          value={now?.injury}
          before={before?.injury}
          onChange={(injury) => onScore({ injury })}
        />
      )}
      {residue && (
        <Segments
          legend={`${WORDS.leafSets}${before?.leafSets === undefined ? '' : ` (${WORDS.lastTime(String(before.leafSets))})`}`}
          name={`leaf-sets-${pot.id}`}
          options={LEAF_SETS.map((id) => ({ id, says: id === '3' ? WORDS.leafSetsMore : id }))}
          value={now?.leafSets === undefined ? undefined : LEAF_SETS[Math.min(3, Math.round(now.leafSets))]}
          onChange={(sets) => onScore({ leafSets: Number(sets) })}
        />
      )}
      <NumberField
        key={`height ${pot.id}`}
        label={WORDS.height()}
        unit="mm"
        how={WORDS.heightHow}
        value={now?.heightMm}
        before={before?.heightMm}
        onChange={(heightMm) => onScore({ heightMm })}
      />
      {test.crop === 'tomato' && lookAsked(test, day) === 'last' && (
        <NumberField label={WORDS.grams} value={now?.grams} onChange={(grams) => onScore({ grams })} />
      )}
    </div>
  );
  return (
    <section class="stack" aria-label={WORDS.pot(pot.label)}>
      <h2 class="pot-letter">
        {isScored(test, day, pot.id) ? WORDS.potDone(pot.label) : WORDS.pot(pot.label)}
      </h2>
      {pot.seeds <= MOST_SIDE_BY_SIDE ? (
        <Segments
          legend={`${WORDS.emerged(pot.seeds)}${before ? ` (${WORDS.lastTime(String(before.emerged))})` : ''}`}
          name={`emerged-${pot.id}`}
          options={Array.from({ length: pot.seeds + 1 }, (_, count) => String(count)).map((id) => ({
            id,
            says: id,
            open: now === undefined,
          }))}
          value={shown === undefined ? undefined : String(shown)}
          onChange={(count) => onScore({ emerged: Number(count) })}
        />
      ) : (
        <NumberField
          label={WORDS.emerged(pot.seeds)}
          value={now?.emerged}
          before={before?.emerged}
          onChange={(count) => count !== undefined && onScore({ emerged: Math.round(count) })}
        />
      )}
      {!before && <p class="small soft">{emerged === undefined ? WORDS.emergedFirst : WORDS.emergedHow}</p>}
      {emerged === 0 && now && <p class="small soft">{WORDS.nothingUp}</p>}
      {emerged !== undefined &&
        emerged > 0 &&
        (isCount ? (
          <details open={now?.injury !== undefined}>
            <summary class="small">{WORDS.leavesToo}</summary>
            {leaves}
          </details>
        ) : (
          leaves
        ))}
      {emerged !== undefined && <PotPhoto test={test} pot={pot} day={day} onScore={onScore} />}
    </section>
  );
}

interface InjuryChoiceProps {
  readonly label: string;
  readonly crop: string;
  readonly value: number | undefined;
  readonly before: number | undefined;
  readonly onChange: (injury: number | undefined) => void;
}

/** The eleven steps as drawings to point at; the words of the one that is chosen beneath. */
function InjuryChoice({ label, crop, value, before, onChange }: InjuryChoiceProps) {
  const chosen = INJURY_STEPS.find(({ score }) => score === value);
  return (
    <fieldset class="injury-choice">
      <legend>{WORDS.injury}</legend>
      <div class="injury-steps">
        {INJURY_STEPS.map(({ score, says }) => (
          <label key={score} class={score === before ? 'injury-step before' : 'injury-step'}>
            <input
              type="radio"
              name={`injury-${label}`}
              class="unseen"
              aria-label={`${score}: ${says}${score === before ? ` (${WORDS.lastTime(String(score))})` : ''}`}
              checked={value === score}
              onChange={() => onChange(score)}
            />
            <Drawn of={`injury-${score}`} />
            <span class="figures" aria-hidden="true">
              {score}
            </span>
          </label>
        ))}
        <label class="injury-step none">
          <input
            type="radio"
            name={`injury-${label}`}
            class="unseen"
            checked={false}
            onChange={() => onChange(undefined)}
          />
          <span>{WORDS.injuryNo}</span>
        </label>
      </div>
      <p class="injury-says" aria-live="polite">
        {chosen
          ? `${chosen.score}: ${chosen.says}`
          : before === undefined
            ? ''
            : WORDS.lastTime(String(before))}
      </p>
      <p class="small soft">
        {WORDS.injuryHow} {crop.endsWith('bean') || crop === 'pea' ? '' : WORDS.notBeans}
      </p>
    </fieldset>
  );
}

interface NumberFieldProps {
  readonly label: string;
  readonly how?: string;
  /** Of the record; it is shown and typed in the one that was chosen. */
  readonly unit?: RecordUnit;
  readonly value: number | undefined;
  readonly before?: number | undefined;
  readonly onChange: (value: number | undefined) => void;
}

/** A number that is kept while it is typed; what is none is said, and nothing is kept of it. */
function NumberField({ label, how, unit, value, before, onChange }: NumberFieldProps) {
  const shown = (number: number): string => String(unit ? figureShown(unit, number) : number);
  const [typed, setTyped] = useState(value === undefined ? '' : shown(value));
  const [wrong, setWrong] = useState(false);
  return (
    <label class="field pot-number">
      <span>
        {label}
        {before === undefined ? '' : ` (${WORDS.lastTime(shown(before))})`}
      </span>
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={typed}
        onInput={({ currentTarget }) => {
          setTyped(currentTarget.value);
          const said = readNumber(currentTarget.value);
          const number = said !== undefined && unit ? fromShown(unit, said) : said;
          const isWrong = number !== undefined && !(number > 0 && number <= 2000);
          setWrong(isWrong);
          if (!isWrong) onChange(number);
        }}
      />
      {wrong ? <span role="alert">{WORDS.notANumber}</span> : how && <span class="small soft">{how}</span>}
    </label>
  );
}
