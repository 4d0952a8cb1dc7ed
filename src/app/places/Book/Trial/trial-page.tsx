import { useState } from 'preact/hooks';
import type { TrialRecord } from '../../../../garden/trial-record.ts';
import { Asking } from '../../../parts/Asking/asking.tsx';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { DayField } from '../../../parts/DayField/day-field.tsx';
import { deleteGround, onRecord } from '../../../state/garden.ts';
import { warningsOf } from '../../../state/plan-trial.ts';
import { stateOf } from '../../../state/read-kept-trial.ts';
import { goTo, hashOf } from '../../../state/route.ts';
import { setFields, touchTrial } from '../../../state/trials.ts';
import { BOOK_WORDS } from '../../../words/book.ts';
import { capitalise } from '../../../words/causes.ts';
import { dayOf, describeDay, describeDayAndYear, describeDistance } from '../../../words/dates.ts';
import { wayNameOf } from '../../../words/say-trial.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';
import { BedPlan, PlanSheet } from './bed-plan.tsx';
import { ResultPart } from './result-part.tsx';
import { TypedField } from './typed-field.tsx';

/** One trial: where it stands, what came out, the plan of its beds, its end. */
export function TrialPage({ trial }: { readonly trial: TrialRecord }) {
  const kept = onRecord('trial', trial.id);
  if (!kept || kept.deletedAt)
    return (
      <div class="trial stack">
        <BackLink to={{ place: 'book' }} says={WORDS.toBook} />
        <h1 tabIndex={-1}>{WORDS.notFound}</h1>
      </div>
    );
  const { id, ended, layouts, readings, lookOn } = trial;
  const today = dayOf(new Date());
  const state = stateOf(trial);
  const newest = layouts.at(-1);
  return (
    <div class="trial stack-wide">
      <div>
        <BackLink to={{ place: 'book' }} says={WORDS.toBook} />
        <h1 tabIndex={-1}>{trial.name || WORDS.unnamed}</h1>
        <p class="soft">{trial.ways.map((way) => wayNameOf(trial, way.id)).join(' · ')}</p>
        <p>
          {ended
            ? (ended.as === 'read' ? WORDS.endedOn : WORDS.givenUpOn)(describeDayAndYear(ended.date))
            : `${capitalise(WORDS.states[state])}.`}{' '}
          {!ended &&
            lookOn &&
            WORDS.nextOn(describeDay(lookOn, today), describeDistance(lookOn, today), readings.length === 0)}
        </p>
        {ended && trial.note && <p class="kept-note trial-takes">{trial.note}</p>}
      </div>
      {!ended && (
        <div class="trial-actions">
          {state === 'planned' ? (
            <a class="button next" href={hashOf({ place: 'book', trial: id, step: 'plan' })}>
              {WORDS.plan}
            </a>
          ) : (
            <a class="button next" href={hashOf({ place: 'book', trial: id, step: 'measure' })}>
              {WORDS.measureNow}
            </a>
          )}
        </div>
      )}
      <div class="open-pages">
        <div class="page-left stack-wide">
          {' '}
          {readings.length > 0 && <ResultPart trial={trial} />}
          {readings.length === 0 && layouts.length > 0 && <LayoutWarnings trial={trial} />}
        </div>
        <div class="page-right stack-wide">
          {' '}
          {!ended && layouts.length > 0 && (
            <DayField
              label={readings.length === 0 ? WORDS.firstDay : WORDS.nextDay}
              wide="trial-next"
              value={lookOn ?? ''}
              onDay={(day) => void setFields(id, { lookOn: day || undefined })}
            />
          )}
          {[...layouts].reverse().map((layout) => (
            <section key={layout.id} class="stack-close">
              <h2>
                {WORDS.theLayout}
                {layouts.length > 1 && `: ${WORDS.season(layout.id)}`}
              </h2>
              <BedPlan trial={trial} layout={layout} />
              {layout === newest && !ended && (
                <p class="trial-actions">
                  <button type="button" class="button" onClick={() => print()}>
                    {WORDS.print}
                  </button>
                  <TakeBack trial={trial} />
                </p>
              )}
            </section>
          ))}
          <Losses trial={trial} />
          <End trial={trial} today={today} />
        </div>
      </div>
      <p class="trial-actions rule-above">
        {layouts.length > 0 && (
          <a class="button-plain" href={hashOf({ place: 'book', sheet: 'trial', of: id })}>
            {SHEET_WORDS.make}
          </a>
        )}
        <a class="button-plain" href={hashOf({ place: 'book', trial: id, step: 'plan' })}>
          {WORDS.changePlan}
        </a>
        {layouts.length > 0 && (
          <a class="button-plain" href={hashOf({ place: 'book', trial: id, step: 'lay-out' })}>
            {WORDS.layOutAgain}
          </a>
        )}
        <button
          type="button"
          class="button-plain"
          onClick={() =>
            void deleteGround(kept, WORDS.deleted(kept.name)).then((done) => done && goTo({ place: 'book' }))
          }
        >
          {WORDS.delete}
        </button>
      </p>
      {newest && <PlanSheet trial={trial} layout={newest} />}
    </div>
  );
}

function LayoutWarnings({ trial }: { readonly trial: TrialRecord }) {
  const warnings = warningsOf(trial);
  return warnings.map((warning) => (
    <p key={warning} class={warning === 'one-bed-a-side' ? 'trial-loud' : 'small'}>
      {WORDS.warnings[warning]}
    </p>
  ));
}

/** A layout of which nothing was measured yet can be taken back. */
function TakeBack({ trial }: { readonly trial: TrialRecord }) {
  const [asking, setAsking] = useState(false);
  const layout = trial.layouts.at(-1);
  const units = new Set(layout?.units.map(({ id }) => id));
  if (!layout || trial.readings.some(({ unitId }) => units.has(unitId))) return null;
  if (!asking)
    return (
      <button type="button" class="button-plain" onClick={() => setAsking(true)}>
        {WORDS.drawAnew}
      </button>
    );
  return (
    <Asking
      label={WORDS.drawAnew}
      asks={WORDS.drawAnewAsk}
      yes={WORDS.drawAnew}
      no={BOOK_WORDS.case.deleteNo}
      onYes={() =>
        void touchTrial(trial.id, ({ lookOn: _lookOn, ...found }) => ({
          ...found,
          layouts: found.layouts.filter(({ id }) => id !== layout.id),
        }))
      }
      onNo={() => setAsking(false)}
    />
  );
}

function Losses({ trial }: { readonly trial: TrialRecord }) {
  const all = trial.layouts.flatMap(({ beds, units }) =>
    units.map((unit) => ({ unit, bed: beds[unit.at]?.bedName ?? '' })),
  );
  const lines = trial.losses.flatMap((loss) => {
    const found = all.find(({ unit }) => unit.id === loss.id);
    if (!found) return [];
    const place = WORDS.inBed(WORDS.plantAt(trial.unit ?? 'plant', found.unit.place), found.bed);
    return [`${place} (${found.unit.way}). ${WORDS.lostOn(loss.why, describeDayAndYear(loss.date))}`];
  });
  if (lines.length === 0) return null;
  return (
    <details>
      <summary class="small">
        {WORDS.lostList} ({lines.length})
      </summary>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}

function End({ trial, today }: { readonly trial: TrialRecord; readonly today: string }) {
  const { id, ended, layouts } = trial;
  if (layouts.length === 0) return null;
  if (ended)
    return (
      <p>
        <button type="button" class="button-plain" onClick={() => void setFields(id, { ended: undefined })}>
          {WORDS.reopen}
        </button>
      </p>
    );
  const end = (as: 'read' | 'given-up'): void =>
    void touchTrial(id, ({ lookOn: _lookOn, ...found }) => ({
      ...found,
      ended: { date: today, as },
    }));
  return (
    <details class="rule-above">
      <summary>{WORDS.end}</summary>
      <div class="stack-close">
        <p>{WORDS.endLead}</p>
        <TypedField
          label={WORDS.takes}
          as="note"
          value={trial.note}
          onKeep={(note) => void setFields(id, { note })}
        />
        <p class="trial-actions">
          <button type="button" class="button" onClick={() => end('read')}>
            {WORDS.endRead}
          </button>
          <button type="button" class="button" onClick={() => end('given-up')}>
            {WORDS.endGivenUp}
          </button>
        </p>
      </div>
    </details>
  );
}
