import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { PlainTable } from '../../parts/PlainTable/plain-table.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import './taught-page.css';
import type { CaseRecord } from '../../../garden/records.ts';
import type { GardenLessons, TaughtRate } from '../../../ranker/learn-lessons.ts';
import type { GardenScore } from '../../../ranker/learn-score.ts';
import { cases, forgetLessons, forgetUntil, nowStamp } from '../../state/kept.ts';
import { lessons, putAside } from '../../state/learning.ts';
import { hashOf } from '../../state/route.ts';
import { offerUndo } from '../../state/undo-bar.ts';
import { BOOK_WORDS } from '../../words/book.ts';
import { capitalise } from '../../words/causes.ts';
import { describeDayAndYear } from '../../words/dates.ts';
import { endName } from '../../words/outcome.ts';
import {
  describeScore,
  FEWEST_CASES,
  perThousand,
  sayBin,
  sayCameTrue,
  sayGardenRate,
  TAUGHT_WORDS as WORDS,
} from '../../words/taught.ts';

/** What this garden has taught: each cause's rate in general and here, the tool's own score, and a way to forget. */
export function TaughtPage() {
  const learnt = lessons.value;
  return (
    <article class="taught stack-wide">
      <div>
        <BackLink to={{ place: 'book' }} says={BOOK_WORDS.toBook} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
        {cases.value && <p>{learnt ? WORDS.lead(learnt.teaching) : WORDS.nothing}</p>}
      </div>
      {learnt && <Rates learnt={learnt} />}
      <Score first={learnt?.score.first} last={learnt?.score.last} />
      <section class="stack-close">
        <h2>{WORDS.how}</h2>
        {WORDS.howLines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </section>
      <p class="rule-above">
        <a class="link-line" href={hashOf({ place: 'book', page: 'leaves' })}>
          {WORDS.leaves}
        </a>
      </p>
      <Unsettled />
      <Forget />
    </article>
  );
}

function Rates({ learnt: { rates } }: { readonly learnt: GardenLessons }) {
  const met = rates.filter((rate) => rate.cases.length > 0);
  const others = rates.filter((rate) => rate.cases.length === 0);
  return (
    <section class="stack">
      <h2>{WORDS.rates}</h2>
      <RateTable rates={met} withCases />
      <details>
        <summary>{WORDS.others(others.length)}</summary>
        <RateTable rates={others} />
      </details>
    </section>
  );
}

interface RateTableProps {
  readonly rates: readonly TaughtRate[];
  readonly withCases?: boolean;
}

function RateTable({ rates, withCases = false }: RateTableProps) {
  return (
    <PlainTable
      caption={WORDS.caption}
      columns={[WORDS.cause, WORDS.table, WORDS.garden]}
      rows={rates.map(({ cause, table, cases: from, ...here }) => ({
        key: cause,
        head: (
          <>
            <WithTerms>{capitalise(endName(cause))}</WithTerms>
            {withCases && <From ids={from} />}
          </>
        ),
        figures: [perThousand(table), sayGardenRate(here)],
      }))}
    />
  );
}

/** The cases that a rate was learnt from. */
function From({ ids }: { readonly ids: readonly string[] }) {
  const found = ids
    .map((id) => cases.value?.find((kept) => kept.id === id))
    .filter((kept): kept is CaseRecord => kept !== undefined);
  return (
    <ul class="taught-from" aria-label={WORDS.from}>
      {found.map((kept) => (
        <li key={kept.id}>
          <a class="small" href={hashOf({ place: 'book', caseId: kept.id })}>
            {WORDS.caseOf(kept.plant, describeDayAndYear(kept.openedOn))}
          </a>
        </li>
      ))}
    </ul>
  );
}

interface ScoreProps {
  readonly first: GardenScore | undefined;
  readonly last: GardenScore | undefined;
}

function Score({ first, last }: ScoreProps) {
  return (
    <section class="stack">
      <h2>{WORDS.score}</h2>
      {!first || first.cases < FEWEST_CASES ? (
        <p>{WORDS.tooFew(first?.cases ?? 0)}</p>
      ) : (
        <>
          {describeScore(first, last).map((line) => (
            <p key={line}>{line}</p>
          ))}
          <PlainTable
            caption={WORDS.bins.caption}
            columns={[WORDS.bins.shown, WORDS.bins.cameTrue]}
            rows={first.reliability.map((bin) => ({
              key: bin.from,
              head: sayBin(bin),
              figures: [sayCameTrue(bin)],
            }))}
          />
        </>
      )}
    </section>
  );
}

/** Closed cases that could still say how they ended. */
function Unsettled() {
  const open = (cases.value ?? []).filter(
    ({ closedOn, outcome, deletedAt }) => closedOn && !outcome && !deletedAt,
  );
  if (open.length === 0) return null;
  return (
    <details class="rule-above">
      <summary>
        {WORDS.unsettled} ({open.length})
      </summary>
      <p class="small soft">{WORDS.unsettledWhy}</p>
      <ul class="taught-from">
        {open.map((kept) => (
          <li key={kept.id}>
            <a href={hashOf({ place: 'book', caseId: kept.id, page: 'ended' })}>
              {WORDS.caseOf(kept.plant, describeDayAndYear(kept.openedOn))}
            </a>
          </li>
        ))}
      </ul>
    </details>
  );
}

async function forget(): Promise<void> {
  const before = forgetUntil.value;
  await forgetLessons(nowStamp());
  offerUndo({ says: WORDS.resetDone, undo: () => forgetLessons(before) });
}

async function restore(): Promise<void> {
  const before = forgetUntil.value;
  await forgetLessons(undefined);
  offerUndo({ says: WORDS.restored, undo: () => forgetLessons(before) });
}

/** Reset, and its way back for when the bar with the undo has gone. */
function Forget() {
  const aside = putAside.value;
  if (!lessons.value && aside === 0) return null;
  return (
    <section class="stack-close rule-above">
      {lessons.value && (
        <>
          <button type="button" class="button" onClick={() => void forget()}>
            {WORDS.reset}
          </button>
          <p class="small soft">{WORDS.resetWhy}</p>
        </>
      )}
      {aside > 0 && (
        <p>
          {WORDS.putAside(aside)}{' '}
          <button type="button" class="button-plain" onClick={() => void restore()}>
            {WORDS.restore}
          </button>
        </p>
      )}
    </section>
  );
}
