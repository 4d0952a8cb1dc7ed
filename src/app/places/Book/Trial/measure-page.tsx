import { useState } from 'preact/hooks';
import { dayAfter } from '../../../../days/days.ts';
import type { TrialLayout, TrialRecord } from '../../../../garden/trial-record.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { DayField } from '../../../parts/DayField/day-field.tsx';
import { garden } from '../../../state/garden.ts';
import { bedsToWalk, measuredOn, measureOf } from '../../../state/read-kept-trial.ts';
import { hashOf } from '../../../state/route.ts';
import { setFields } from '../../../state/trials.ts';
import { dayOf } from '../../../words/dates.ts';
import { measureWords, nameWithUnit } from '../../../words/say-trial.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';
import { UnitLine } from './unit-line.tsx';

/** One day's measuring: every plant in the order of the walk, each number kept as it is typed. */
export function MeasurePage({ trial }: { readonly trial: TrialRecord }) {
  const today = dayOf(new Date());
  const [date, setDate] = useState(today);
  const [season, setSeason] = useState(trial.layouts.at(-1)?.id ?? '');
  const [covered, setCovered] = useState(true);
  const layout = trial.layouts.find(({ id }) => id === season) ?? trial.layouts.at(-1);
  const measure = measureOf(trial);
  return (
    <div class="trial stack-wide">
      <div>
        <BackLink to={{ place: 'book', trial: trial.id }} says={WORDS.toTrial} />
        <h1 tabIndex={-1}>{trial.name || WORDS.measureTitle}</h1>
        {measure && <p class="soft">{nameWithUnit(measureWords(measure, trial))}</p>}
      </div>
      {(!layout || !measure) && <p>{layout ? WORDS.trouble['no-measure'] : WORDS.states.planned}</p>}
      {layout && measure && (
        <>
          <div class="ground-fields">
            <DayField label={WORDS.day} value={date} max={today} onDay={(day) => day && setDate(day)} />
            {trial.layouts.length > 1 && (
              <label class="field">
                <span>{WORDS.whichSeason}</span>
                <select value={layout.id} onChange={({ currentTarget: { value } }) => setSeason(value)}>
                  {trial.layouts.map(({ id }) => (
                    <option key={id} value={id}>
                      {WORDS.season(id)}
                    </option>
                  ))}
                </select>
              </label>
            )}
          </div>
          <div>
            {covered && <p class="small soft">{WORDS.lettersHidden}</p>}
            <button type="button" class="button-plain small" onClick={() => setCovered(!covered)}>
              {covered ? WORDS.showLetters : WORDS.hideLetters}
            </button>
          </div>
          {bedsToWalk(layout, garden.value?.beds ?? []).map(
            (bed) =>
              bed.units.length > 0 && (
                <section key={bed.at}>
                  <h2>{bed.name}</h2>
                  <ol class="unit-lines">
                    {bed.units.map((unit) => (
                      <UnitLine
                        key={`${unit.id} ${date}`}
                        trial={trial}
                        unit={unit}
                        bed={bed.name}
                        measure={measure}
                        date={date}
                        covered={covered}
                      />
                    ))}
                  </ol>
                </section>
              ),
          )}
          <p class="small soft">{WORDS.several}</p>
          <Progress trial={trial} layout={layout} date={date} />
        </>
      )}
    </div>
  );
}

function Progress({
  trial,
  layout,
  date,
}: {
  readonly trial: TrialRecord;
  readonly layout: TrialLayout;
  readonly date: string;
}) {
  const [done, all] = measuredOn(trial, layout, date);
  const isDone = all > 0 && done === all;
  return (
    <section class="stack rule-above">
      <p role="status" class="trial-progress figures">
        {isDone ? WORDS.allDone : WORDS.progress(done, all)}
      </p>
      {done > 0 && (
        <fieldset class="stack-close">
          <legend class="field-label">{WORDS.next}</legend>
          <div class="trial-actions">
            {Object.entries(WORDS.nextIn).map(([days, says]) => {
              const lookOn = days === 'none' ? undefined : dayAfter(date, Number(days));
              return (
                <button
                  key={days}
                  type="button"
                  class="button"
                  aria-pressed={trial.lookOn === lookOn}
                  onClick={() => void setFields(trial.id, { lookOn })}
                >
                  {says}
                </button>
              );
            })}
          </div>
        </fieldset>
      )}
      {done > 0 && (
        <p>
          <a class={isDone ? 'button next' : 'button'} href={hashOf({ place: 'book', trial: trial.id })}>
            {WORDS.toResult}
          </a>
        </p>
      )}
    </section>
  );
}
