import './book-place.css';
import { useEffect, useState } from 'preact/hooks';
import type { CaseRecord } from '../../../garden/records.ts';
import { Asking } from '../../parts/Asking/asking.tsx';
import { DemoWayIn } from '../../parts/Demo/demo-parts.tsx';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { casesAlive, casesFound, gatherWords, narrowing, query } from '../../state/find-cases.ts';
import { garden } from '../../state/garden.ts';
import { bringBackCase, cases, eraseCase } from '../../state/kept.ts';
import { hashOf, route } from '../../state/route.ts';
import { BOOK_WORDS as WORDS } from '../../words/book.ts';
import { SHEET_WORDS } from '../../words/sheet.ts';
import { CaseEntry, sayMade } from './case-entry.tsx';
import { CasePage } from './case-page.tsx';

/* A kept look shows its photos large: it comes with the part that draws over them. */
const LookPage = onUse(
  () => import('./look-page.tsx').then((part) => part.LookPage),
  <h1 tabIndex={-1}>…</h1>,
);

const OutcomePage = onUse(
  () => import('./outcome-page.tsx').then((part) => part.OutcomePage),
  <h1 tabIndex={-1}>…</h1>,
);
const TaughtPage = onUse(
  () => import('./taught-page.tsx').then((part) => part.TaughtPage),
  <h1 tabIndex={-1}>{WORDS.taught}</h1>,
);
const LeavesPage = onUse(
  () => import('./Leaves/leaves-page.tsx').then((part) => part.LeavesPage),
  <h1 tabIndex={-1}>…</h1>,
);
const TrialPlace = onUse(
  () => import('./Trial/trial-place.tsx').then((part) => part.TrialPlace),
  <h1 tabIndex={-1}>…</h1>,
);
const TrialList = onUse(() => import('./Trial/trial-list.tsx').then((part) => part.TrialList));
const SheetPlace = onUse(
  () => import('./Sheet/sheet-place.tsx').then((part) => part.SheetPlace),
  <h1 tabIndex={-1}>{SHEET_WORDS.waiting}</h1>,
);
const RecurringPage = onUse(
  () => import('./Recurring/recurring-page.tsx').then((part) => part.RecurringPage),
  <h1 tabIndex={-1}>{WORDS.recurring}</h1>,
);

const PotTestPlace = onUse(
  () => import('./PotTest/pot-test-place.tsx').then((part) => part.PotTestPlace),
  <h1 tabIndex={-1}>{WORDS.potTests}</h1>,
);

/** Book: cases past and open, searched in words; one case, its looks and its end; what this garden has taught. */
export function BookPlace() {
  const at = route.value;
  if (at.place !== 'book') return null;
  if (at.sheet && at.of) {
    const { sheet, of, year } = at;
    return <SheetPlace key={`${sheet} ${of} ${year}`} sheet={sheet} of={of} year={year} />;
  }
  if (at.trial !== undefined) return <TrialPlace at={{ ...at, trial: at.trial }} />;
  if (at.page === 'recurring') {
    const { cause, bed, year } = at;
    return <RecurringPage key={`${cause} ${bed} ${year}`} cause={cause} bed={bed} year={year} />;
  }
  if (at.pots) {
    const { pots: page, pot, on } = at;
    return <PotTestPlace key={`${page} ${pot} ${on}`} page={page} pot={pot} on={on} />;
  }
  if (at.page === 'taught') return <TaughtPage />;
  if (at.page === 'leaves') return <LeavesPage />;
  if (at.caseId && at.page === 'ended') return <OutcomePage key={at.caseId} caseId={at.caseId} />;
  if (at.caseId && at.look) return <LookPage key={at.look} caseId={at.caseId} lookId={at.look} />;
  if (at.caseId) return <CasePage key={at.caseId} caseId={at.caseId} />;
  return <CaseList />;
}

const NarrowList = onUse(() => import('./narrow-list.tsx').then((part) => part.NarrowList));

function CaseList() {
  const all = cases.value;
  const alive = casesAlive.value;
  const found = casesFound.value;
  useEffect(gatherWords, [alive]);
  const narrowed = Object.keys(narrowing.value).length > 0;
  const asked = query.value !== '' || narrowed;
  const open = found.filter(({ closedOn }) => !closedOn);
  const closed = found.filter(({ closedOn }) => closedOn);
  const question = JSON.stringify([query.value, narrowing.value]);
  return (
    <div class="book stack-wide">
      <h1 tabIndex={-1}>{WORDS.title}</h1>
      {alive.length > 0 && <Finding narrowed={narrowed} />}
      {all && alive.length === 0 && <p>{WORDS.none}</p>}
      {all && alive.length === 0 && <DemoWayIn />}
      <div class="open-pages">
        <div class={`${alive.length > 0 ? 'page-right' : 'page-left'} stack-wide`}>
          <p class="book-ways">
            <a class="link-line" href={hashOf({ place: 'book', pots: 'list' })}>
              {WORDS.potTests}
            </a>
            <a class="link-line" href={hashOf({ place: 'book', page: 'recurring' })}>
              {WORDS.recurring}
            </a>
            <a class="link-line" href={hashOf({ place: 'book', page: 'taught' })}>
              {WORDS.taught}
            </a>
            <BeginTrial />
          </p>
          {!asked && (garden.value?.trials.length ?? 0) > 0 && <TrialList />}
        </div>
        <div class="page-left stack-wide">
          <div role="status">
            {asked && alive.length > 0 && (
              <p class="small soft">{found.length === 0 ? WORDS.noneFound : WORDS.found(found.length)}</p>
            )}
          </div>
          <Entries question={question} title={WORDS.open} found={open} />
          <Entries question={question} title={WORDS.closed} found={closed} />
        </div>
      </div>
      {all && <Deleted all={all} />}
    </div>
  );
}

/** Leads to a trial that is made at its first touch. */
function BeginTrial() {
  const [id] = useState(() => crypto.randomUUID());
  return (
    <a class="link-line" href={hashOf({ place: 'book', trial: id, step: 'plan' })}>
      {WORDS.beginTrial}
    </a>
  );
}

/** One line to search in words, and a fold with bed, crop, cause, days and state. */
function Finding({ narrowed }: { readonly narrowed: boolean }) {
  const [open, setOpen] = useState(narrowed);
  return (
    <search class="stack-close">
      <label class="field">
        <span>{WORDS.search}</span>
        <input
          type="search"
          value={query.value}
          placeholder={WORDS.searchHint}
          autocomplete="off"
          onInput={(event) => {
            query.value = event.currentTarget.value;
          }}
        />
      </label>
      <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary class="small">{WORDS.narrow}</summary>
        {open && <NarrowList />}
      </details>
      {narrowed && (
        <button
          type="button"
          class="button-plain small"
          onClick={() => {
            narrowing.value = {};
          }}
        >
          {WORDS.narrowNot}
        </button>
      )}
    </search>
  );
}

/** Cases written out at once, and at each wish for more: a book of many years would hold up the page. */
const SHOWN = 20;

interface EntriesProps {
  readonly title: string;
  readonly found: readonly CaseRecord[];
  /** What is asked: a new question begins at the newest again, and entries that stay are not made anew. */
  readonly question: string;
}

function Entries({ title, found, question }: EntriesProps) {
  const [wished, setWished] = useState({ question, shown: SHOWN });
  const shown = wished.question === question ? wished.shown : SHOWN;
  if (found.length === 0) return null;
  const more = found.length - shown;
  return (
    <section>
      <h2 class="list-title">{title}</h2>
      <ul class="entries">
        {found.slice(0, shown).map((kept) => (
          <CaseEntry key={kept.id} kept={kept} />
        ))}
      </ul>
      <TermsOf says={found.slice(0, shown).map(sayMade)} />
      {more > 0 && (
        <button type="button" class="button" onClick={() => setWished({ question, shown: shown + SHOWN })}>
          {WORDS.more(Math.min(SHOWN, more), more)}
        </button>
      )}
    </section>
  );
}

/** Deleted cases that still have something to bring back. */
function Deleted({ all }: { readonly all: readonly CaseRecord[] }) {
  const deleted = all.filter(({ deletedAt, looks }) => deletedAt && looks.length > 0);
  if (deleted.length === 0) return null;
  return (
    <details class="rule-above">
      <summary>
        {WORDS.deleted} ({deleted.length})
      </summary>
      <ul>
        {deleted.map((kept) => (
          <DeletedCase key={kept.id} kept={kept} />
        ))}
      </ul>
    </details>
  );
}

function DeletedCase({ kept }: { readonly kept: CaseRecord }) {
  const [asking, setAsking] = useState(false);
  return (
    <li class="deleted-case">
      <span>
        {kept.plant} <span class="soft">{kept.bed}</span>
      </span>
      <button type="button" class="button-plain small" onClick={() => void bringBackCase(kept.id)}>
        {WORDS.bringBack}
      </button>
      {!asking && (
        <button type="button" class="button-plain small" onClick={() => setAsking(true)}>
          {WORDS.erase}
        </button>
      )}
      {asking && (
        <Asking
          label={WORDS.erase}
          asks={WORDS.eraseAsk(kept.plant)}
          yes={WORDS.erase}
          no={WORDS.case.deleteNo}
          onYes={() => void eraseCase(kept.id)}
          onNo={() => setAsking(false)}
        />
      )}
    </li>
  );
}
