import './walk-place.css';
import { type DueCase, dueCases } from '../../../garden/due-cases.ts';
import type { DraftRecord } from '../../../garden/records.ts';
import { type Draft, hasContent } from '../../state/draft.ts';
import { cases, drafts } from '../../state/kept.ts';
import { discardDraft } from '../../state/look-session.ts';
import { hashOf } from '../../state/route.ts';
import { causeName, joinWords } from '../../words/causes.ts';
import { cropName } from '../../words/crops.ts';
import { dayOf, describeDay, describeDistance } from '../../words/dates.ts';
import { verdictWord } from '../../words/verdicts.ts';
import { WALK_WORDS as WORDS } from '../../words/walk.ts';

/** Walk: what is due a look today, in the order of the days, and the one way in. */
export function WalkPlace() {
  const today = dayOf(new Date());
  const alive = (cases.value ?? []).filter(({ deletedAt }) => !deletedAt);
  const all = dueCases(alive, today);
  const due = all.filter(({ when }) => when !== 'coming');
  const coming = all.filter(({ when }) => when === 'coming');
  const begun = drafts.value.filter(({ body }) => hasContent(body));
  return (
    <div class="walk stack-wide">
      <h1 tabIndex={-1}>{describeDay(today, today)}</h1>
      {cases.value && alive.length === 0 && begun.length === 0 && <p>{WORDS.lead}</p>}
      {alive.length > 0 && <Path title={WORDS.onThePath} stops={due} next={coming[0]} today={today} />}
      {begun.length > 0 && <Begun begun={begun} today={today} />}
      {coming.length > 0 && <Path title={WORDS.coming} stops={coming} next={undefined} today={today} />}
      <p class="way-in">
        <a class="button next" href={hashOf({ place: 'look', draft: 'new' })}>
          {WORDS.wayIn}
        </a>
      </p>
    </div>
  );
}

interface PathProps {
  readonly title: string;
  readonly stops: readonly DueCase[];
  /** Said when there is no stop today. */
  readonly next: DueCase | undefined;
  readonly today: string;
}

function Path({ title, stops, next, today }: PathProps) {
  return (
    <section class="stack-close">
      <h2>{title}</h2>
      {stops.length === 0 && (
        <p>
          {next
            ? WORDS.nothingDueNext(
                describeDay(next.lookAgain, today),
                describeDistance(next.lookAgain, today),
              )
            : WORDS.nothingDue}
        </p>
      )}
      <ol class="path">
        {stops.map((stop) => (
          <Stop key={stop.kept.id} stop={stop} today={today} />
        ))}
      </ol>
    </section>
  );
}

function Stop({
  stop: { kept, lookAgain, when },
  today,
}: {
  readonly stop: DueCase;
  readonly today: string;
}) {
  const last = kept.looks.at(-1);
  const day =
    when === 'today' ? WORDS.due.today : `${WORDS.due[when]} ${describeDay(lookAgain, today)}`.trim();
  return (
    <li class={`stop ${when}`}>
      <a href={hashOf({ place: 'book', caseId: kept.id })}>
        <span class="stop-when small">
          {day}
          {when !== 'today' && `, ${describeDistance(lookAgain, today)}`}
        </span>
        <span class="stop-plant">{kept.plant}</span>
        <span class="soft">
          {kept.bed || WORDS.unnamedBed} · {verdictWord(last?.verdict ?? '')}
          {last?.leading[0] && `: ${joinWords(last.leading.slice(0, 2).map(causeName), 'or')}`}
        </span>
      </a>
    </li>
  );
}

/** More than these would push the rest of the day off the page. */
const BEGUN_SHOWN = 3;

interface BegunProps {
  readonly begun: readonly DraftRecord<Draft>[];
  readonly today: string;
}

/** Looks that were begun and not kept, newest first: after what is due, because most of them are forgotten ones. */
function Begun({ begun, today }: BegunProps) {
  const newest = [...begun].sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1));
  const rest = newest.slice(BEGUN_SHOWN);
  return (
    <section class="stack-close">
      <h2>{WORDS.begun}</h2>
      <BegunList begun={newest.slice(0, BEGUN_SHOWN)} today={today} />
      {rest.length > 0 && (
        <details>
          <summary>{WORDS.more(rest.length)}</summary>
          <BegunList begun={rest} today={today} />
        </details>
      )}
    </section>
  );
}

function BegunList({ begun, today }: BegunProps) {
  return (
    <ul>
      {begun.map((record) => {
        const { id, body } = record;
        const says = WORDS.goOn(
          body.plant || cropName(body.answers.crop) || WORDS.noCropYet,
          describeDay(body.begunOn, today),
        );
        return (
          <li key={id} class="begun">
            <a class="line-link" href={hashOf({ place: 'look', draft: id })}>
              {says}
            </a>
            <button
              type="button"
              class="button-plain small"
              aria-label={WORDS.throwAway(says)}
              onClick={() => void discardDraft(record, WORDS.thrownAway)}
            >
              {WORDS.throwAwayShort}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
