import type { TrialRecord } from '../../../../garden/trial-record.ts';
import { garden } from '../../../state/garden.ts';
import { stateOf } from '../../../state/read-kept-trial.ts';
import { hashOf } from '../../../state/route.ts';
import { capitalise } from '../../../words/causes.ts';
import { dayOf, describeDay, describeDayAndYear, describeDistance } from '../../../words/dates.ts';
import { wayNameOf } from '../../../words/say-trial.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';

/** The trials in the book: those that run, and those that have ended. */
export function TrialList() {
  const trials = garden.value?.trials ?? [];
  const running = trials.filter(({ ended }) => !ended);
  const past = trials.filter(({ ended }) => ended).reverse();
  return (
    <>
      <Lines title={WORDS.running} trials={running} />
      <Lines title={WORDS.past} trials={past} />
    </>
  );
}

function Lines({ title, trials }: { readonly title: string; readonly trials: readonly TrialRecord[] }) {
  if (trials.length === 0) return null;
  return (
    <section>
      <h2 class="list-title">{title}</h2>
      <ul>
        {trials.map((trial) => (
          <li key={trial.id}>
            <a class="look-line trial-line" href={hashOf({ place: 'book', trial: trial.id })}>
              <span class="entry-words">
                <span class="entry-plant">{trial.name || WORDS.unnamed}</span>
                <span class="soft">{trial.ways.map(({ id }) => wayNameOf(trial, id)).join(' · ')}</span>
                <span class="look-note">{sayState(trial, dayOf(new Date()))}</span>
              </span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function sayState(trial: TrialRecord, today: string): string {
  const { ended, lookOn } = trial;
  if (ended)
    return [
      (ended.as === 'read' ? WORDS.endedOn : WORDS.givenUpOn)(describeDayAndYear(ended.date)),
      trial.note,
    ]
      .filter(Boolean)
      .join(' ');
  const state = `${capitalise(WORDS.states[stateOf(trial)])}.`;
  return lookOn
    ? `${state} ${WORDS.nextOn(describeDay(lookOn, today), describeDistance(lookOn, today), trial.readings.length === 0)}`
    : state;
}
