import { SPREAD_WORDS } from '../../../../compare/side-by-side/guess-spread.ts';
import {
  HAND_MEASURES,
  TRIAL_BETTER,
  TRIAL_LOOKS,
  TRIAL_SCALES,
  TRIAL_UNITS,
  type TrialMeasured,
  type TrialRecord,
} from '../../../../garden/trial-record.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { Segments } from '../../../parts/Choice/segments.tsx';
import { planNumbers, USUAL_CHANCE, USUAL_PER_BED } from '../../../state/plan-trial.ts';
import { measureOf } from '../../../state/read-kept-trial.ts';
import { hashOf } from '../../../state/route.ts';
import { setFields, setPlan, touchTrial } from '../../../state/trials.ts';
import { nameOfMeasure } from '../../../words/changes.ts';
import { type MeasureWords, measureWords, sayPlan, TRIAL_PHOTO_MEASURES } from '../../../words/say-trial.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';
import { NumberField, TypedField } from './typed-field.tsx';

/** Before sowing: the ways, the unit, the measure, and live how many it takes. Every touch is kept. */
export function PlanPage({ trial, bed }: { readonly trial: TrialRecord; readonly bed: string | undefined }) {
  const measure = measureOf(trial);
  const isNew = trial.revision === undefined;
  return (
    <div class="trial stack-wide">
      <div>
        <BackLink
          to={isNew ? { place: 'book' } : { place: 'book', trial: trial.id }}
          says={isNew ? WORDS.toBook : WORDS.toTrial}
        />
        <h1 tabIndex={-1}>{WORDS.plan}</h1>
        <p class="soft">{trial.layouts.length > 0 ? WORDS.planAfter : WORDS.planLead}</p>
      </div>
      <TypedField
        label={WORDS.name}
        hint={WORDS.nameHint}
        value={trial.name}
        onKeep={(name) => void setFields(trial.id, { name })}
      />
      <Ways trial={trial} />
      <div class="stack-close">
        <Segments
          legend={WORDS.unit}
          name="trial-unit"
          options={TRIAL_UNITS.map((id) => ({ id, says: WORDS.units[id] }))}
          value={trial.unit}
          onChange={(unit) => void setFields(trial.id, { unit })}
        />
        {trial.unit && <p class="small soft">{WORDS.unitSays[trial.unit]}</p>}
      </div>
      <MeasureChoice trial={trial} />
      {measure && <HowMany trial={trial} words={measureWords(measure, trial)} />}
      <ToLayOut trial={trial} bed={bed} />
    </div>
  );
}

const LETTERS = ['A', 'B', 'C', 'D'] as const;

function Ways({ trial }: { readonly trial: TrialRecord }) {
  const { id, ways, layouts } = trial;
  const isLaid = layouts.length > 0;
  const next = LETTERS.find((letter) => !ways.some((way) => way.id === letter));
  return (
    <fieldset class="stack-close">
      <legend class="field-label">{WORDS.ways}</legend>
      {ways.map((way, at) => (
        <div key={way.id} class="trial-way">
          <span class={`way-mark way-${way.id}`} aria-hidden="true">
            {way.id}
          </span>
          <TypedField
            label={WORDS.way(way.id)}
            hint={WORDS.wayHints[at] ?? ''}
            value={way.name}
            onKeep={(name) =>
              void touchTrial(id, (found) => ({
                ...found,
                ways: found.ways.map((one) => (one.id === way.id ? { ...one, name } : one)),
              }))
            }
          />
          {!isLaid && ways.length > 2 && at === ways.length - 1 && (
            <button
              type="button"
              class="button-plain small"
              onClick={() => void setFields(id, { ways: ways.slice(0, -1) })}
            >
              {WORDS.dropWay(way.id)}
            </button>
          )}
        </div>
      ))}
      {!isLaid && next && (
        <button
          type="button"
          class="button-plain small"
          onClick={() =>
            void touchTrial(id, (found) => ({ ...found, ways: [...found.ways, { id: next, name: '' }] }))
          }
        >
          {WORDS.addWay}
        </button>
      )}
    </fieldset>
  );
}

const idOfMeasure = (measure: TrialMeasured | undefined): string =>
  !measure ? '' : measure.by === 'hand' ? `hand ${measure.kind}` : `photo ${measure.measure}`;

function measureFrom(said: string): TrialMeasured | undefined {
  const kind = HAND_MEASURES.find((one) => said === `hand ${one}`);
  if (kind) return { by: 'hand', kind };
  const measure = TRIAL_PHOTO_MEASURES.find((one) => said === `photo ${one}`);
  return measure && { by: 'photo', measure };
}

function MeasureChoice({ trial }: { readonly trial: TrialRecord }) {
  const { id, measure } = trial;
  const canBeRatio = measure?.by === 'hand' && ['height', 'weight'].includes(measure.kind);
  return (
    <div class="ground-fields">
      <label class="field">
        <span>{WORDS.measure}</span>
        <select
          value={idOfMeasure(measure)}
          onChange={({ currentTarget: { value } }) =>
            // Another measure has another unit: what was said in the old one would be wrong in it.
            void touchTrial(
              id,
              ({ matters: _matters, scale: _scale, ofWhat: _of, better: _better, plan, ...found }) => {
                const { typical: _typical, smallest: _smallest, largest: _largest, ...kept } = plan ?? {};
                const chosen = measureFrom(value);
                return { ...found, plan: kept, ...(chosen ? { measure: chosen } : {}) };
              },
            )
          }
        >
          <optgroup label={WORDS.byHand}>
            {HAND_MEASURES.map((kind) => (
              <option key={kind} value={`hand ${kind}`}>
                {measureWords({ by: 'hand', kind }).name}
              </option>
            ))}
          </optgroup>
          <optgroup label={WORDS.byPhoto}>
            {TRIAL_PHOTO_MEASURES.map((one) => (
              <option key={one} value={`photo ${one}`}>
                {nameOfMeasure(one)}
              </option>
            ))}
          </optgroup>
        </select>
      </label>
      {measure?.by === 'hand' && WORDS.ofWhat[measure.kind] && (
        <TypedField
          label={WORDS.ofWhat[measure.kind]!}
          hint={WORDS.ofWhatHint}
          value={trial.ofWhat ?? ''}
          onKeep={(ofWhat) => void setFields(id, { ofWhat: ofWhat.trim() || undefined })}
        />
      )}
      {measure && (
        <Segments
          legend={WORDS.better}
          name="trial-better"
          options={TRIAL_BETTER.map((one) => ({ id: one, says: WORDS.betters[one] }))}
          value={trial.better}
          onChange={(better) => void setFields(id, { better })}
        />
      )}
      <label class="field">
        <span>{WORDS.looks}</span>
        <select
          value={trial.looks ?? 'last'}
          onChange={({ currentTarget: { value } }) => {
            const looks = TRIAL_LOOKS.find((one) => one === value);
            if (looks) void setFields(id, { looks });
          }}
        >
          {TRIAL_LOOKS.map((one) => (
            <option key={one} value={one}>
              {WORDS.looksWays[one]}
            </option>
          ))}
        </select>
      </label>
      {canBeRatio && (
        <label class="field">
          <span>{WORDS.scale}</span>
          <select
            value={trial.scale ?? 'difference'}
            onChange={({ currentTarget: { value } }) => {
              const scale = TRIAL_SCALES.find((one) => one === value);
              // "4 cm" is no factor, and a factor no centimetres.
              if (scale) void setFields(id, { scale, matters: undefined });
            }}
          >
            {TRIAL_SCALES.map((one) => (
              <option key={one} value={one}>
                {WORDS.scales[one]}
              </option>
            ))}
          </select>
        </label>
      )}
      {measure?.by === 'photo' && <p class="small soft wide">{WORDS.photoSays}</p>}
    </div>
  );
}

const OWN = 'own';
const SPREADS = Object.keys(SPREAD_WORDS) as (keyof typeof SPREAD_WORDS)[];

function HowMany({ trial, words }: { readonly trial: TrialRecord; readonly words: MeasureWords }) {
  const { id, plan = {}, unit = 'plant' } = trial;
  const { times } = words;
  const ratio = trial.scale === 'ratio';
  const scaled = (value: number | undefined): number | undefined =>
    value === undefined ? undefined : value * times;
  const stored = (value: number | undefined): number | undefined =>
    value === undefined ? undefined : value / times;
  const spread = plan.spreadWord ?? (plan.outOf === undefined ? undefined : OWN);
  return (
    <section class="stack">
      <h2>{WORDS.howMany}</h2>
      <div class="ground-fields">
        {!ratio && (
          <NumberField
            label={WORDS.typical(words.unit)}
            value={scaled(plan.typical)}
            onKeep={(typical) => void setPlan(id, { typical: stored(typical) })}
          />
        )}
        <NumberField
          label={ratio ? WORDS.mattersRatio : WORDS.matters(words.unit)}
          value={ratio ? trial.matters : scaled(trial.matters)}
          within={ratio ? [1.01, 100] : [0.0001, 1e6]}
          onKeep={(matters) => void setFields(id, { matters: ratio ? matters : stored(matters) })}
        />
      </div>
      <Segments
        legend={WORDS.spread(unit)}
        name="trial-spread"
        options={[
          ...SPREADS.map((one) => ({ id: one as string, says: WORDS.spreads[one] })),
          { id: OWN, says: WORDS.ownRange },
        ]}
        value={spread}
        onChange={(said) =>
          void setPlan(
            id,
            said === OWN ? { spreadWord: undefined, outOf: plan.outOf ?? 10 } : { spreadWord: said },
          )
        }
      />
      {spread === OWN && (
        <div class="ground-fields">
          <NumberField
            label={WORDS.smallest(words.unit)}
            value={scaled(plan.smallest)}
            onKeep={(smallest) => void setPlan(id, { smallest: stored(smallest) })}
          />
          <NumberField
            label={WORDS.largest(words.unit)}
            value={scaled(plan.largest)}
            onKeep={(largest) => void setPlan(id, { largest: stored(largest) })}
          />
          <NumberField
            label={WORDS.outOf}
            whole
            within={[2, 25]}
            value={plan.outOf}
            onKeep={(outOf) => void setPlan(id, { outOf: outOf ?? 10 })}
          />
        </div>
      )}
      <Segments
        legend={WORDS.chance}
        name="trial-chance"
        options={Object.entries(WORDS.chances).map(([one, says]) => ({ id: one, says }))}
        value={String(plan.chance ?? USUAL_CHANCE)}
        onChange={(chance) => void setPlan(id, { chance: Number(chance) })}
      />
      {unit === 'bed' && (
        <NumberField
          label={WORDS.perBed}
          whole
          within={[1, 100]}
          value={plan.perBed ?? USUAL_PER_BED}
          onKeep={(perBed) => void setPlan(id, { perBed })}
        />
      )}
      <Answer trial={trial} words={words} />
      <NumberField
        label={WORDS.each(unit)}
        whole
        within={[1, 100]}
        value={plan.each}
        onKeep={(each) => void setPlan(id, { each })}
      />
    </section>
  );
}

function Answer({ trial, words }: { readonly trial: TrialRecord; readonly words: MeasureWords }) {
  const [first, ...more] = sayPlan(trial, planNumbers(trial), words);
  return (
    <div class="trial-answer" aria-live="polite">
      <p class="trial-answer-lead">{first}</p>
      {more.map((says) => (
        <p key={says}>{says}</p>
      ))}
      {trial.unit === 'bed' && <p>{WORDS.warnings['beds-are-the-units']}</p>}
    </div>
  );
}

function ToLayOut({ trial, bed }: { readonly trial: TrialRecord; readonly bed: string | undefined }) {
  const named = trial.ways.filter(({ name }) => name.trim() !== '');
  if (trial.layouts.length > 0) return null;
  if (named.length < trial.ways.length || named.length < 2) return <p class="soft">{WORDS.nameWays}</p>;
  return (
    <p>
      <a
        class="button next"
        href={hashOf({ place: 'book', trial: trial.id, step: 'lay-out', ...(bed ? { bed } : {}) })}
      >
        {WORDS.toLayOut}
      </a>
    </p>
  );
}
