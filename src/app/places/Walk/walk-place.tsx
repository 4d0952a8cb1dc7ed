import './walk-place.css';
import { useEffect } from 'preact/hooks';
import { type DueCase, dueCases } from '../../../garden/due-cases.ts';
import type { Garden } from '../../../garden/gather-garden.ts';
import type { CaseRecord, DraftRecord } from '../../../garden/records.ts';
import { DemoWayIn } from '../../parts/Demo/demo-parts.tsx';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { Stamp } from '../../parts/Stamp/stamp.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { type Draft, hasContent } from '../../state/draft.ts';
import { garden } from '../../state/garden.ts';
import { cases, drafts, refreshDrafts } from '../../state/kept.ts';
import { discardDraft } from '../../state/look-session.ts';
import { hashOf } from '../../state/route.ts';
import { waitingPhotos } from '../../state/shared-photos.ts';
import { cropName } from '../../words/crops.ts';
import { dayOf, describeDay, describeDistance } from '../../words/dates.ts';
import { sayLook } from '../../words/verdicts.ts';
import { WALK_WORDS as WORDS } from '../../words/walk.ts';

/* What crops bear of cold, and how heaps are judged, comes with it. */
const TodayPath = onUse(
  () => import('./today-path.tsx').then((part) => part.TodayPath),
  <h2>{WORDS.onThePath}</h2>,
);

/** Walk: what is due a look today, in the order of the days, and the one way in. */
export function WalkPlace() {
  useEffect(() => void refreshDrafts(), []);
  const today = dayOf(new Date());
  const alive = (cases.value ?? []).filter(({ deletedAt }) => !deletedAt);
  const all = dueCases(alive, today);
  const coming = all.filter(({ when }) => when === 'coming');
  const begun = drafts.value.filter(({ body }) => hasContent(body));
  return (
    <div class="walk stack-wide">
      <h1 tabIndex={-1}>{describeDay(today, today)}</h1>
      {cases.value && alive.length === 0 && begun.length === 0 && <p>{WORDS.lead}</p>}
      <div class="open-pages">
        <div class="page-left stack-wide">
          {garden.value && hasPath(garden.value) && <TodayPath garden={garden.value} today={today} />}
          {waitingPhotos.value > 0 && (
            <p>
              <a class="line-link" href={hashOf({ place: 'look', draft: 'shared' })}>
                {WORDS.waiting(waitingPhotos.value)}
              </a>
            </p>
          )}
          {begun.length > 0 && <Begun begun={begun} today={today} />}
        </div>
        {coming.length > 0 && (
          <div class="page-right">
            <Path title={WORDS.coming} stops={coming} today={today} />
          </div>
        )}
      </div>
      <p class="way-in">
        <a class="button next" href={hashOf({ place: 'look', draft: 'new' })}>
          {WORDS.wayIn}
        </a>
      </p>
      {cases.value && alive.length === 0 && begun.length === 0 && <DemoWayIn />}
    </div>
  );
}

const hasPath = ({ cases: kept, batches, plantings, trials }: Garden): boolean =>
  kept.some(({ deletedAt }) => !deletedAt) || batches.length > 0 || plantings.length > 0 || trials.length > 0;

const sayMade = ({ looks }: CaseRecord): string => sayLook(looks.at(-1) ?? { verdict: '', leading: [] });

interface PathProps {
  readonly title: string;
  readonly stops: readonly DueCase[];
  readonly today: string;
}

function Path({ title, stops, today }: PathProps) {
  return (
    <section class="stack-close">
      <h2>{title}</h2>
      <ol class="path">
        {stops.map((stop) => (
          <Stop key={stop.kept.id} stop={stop} today={today} />
        ))}
      </ol>
      <TermsOf says={stops.map(({ kept }) => sayMade(kept))} />
    </section>
  );
}

function Stop({ stop: { kept, lookAgain }, today }: { readonly stop: DueCase; readonly today: string }) {
  const [photoId] = kept.looks.at(-1)?.photos ?? [];
  return (
    <li class="stop coming">
      <a href={hashOf({ place: 'book', caseId: kept.id })}>
        <span class="stop-words">
          <span class="stop-when small">
            {describeDay(lookAgain, today)}, {describeDistance(lookAgain, today)}
          </span>
          <span class="stop-plant">{kept.plant}</span>
          <span class="soft">
            {kept.bed || WORDS.unnamedBed} · {sayMade(kept)}
          </span>
        </span>
        {photoId && <Stamp photoId={photoId} />}
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
