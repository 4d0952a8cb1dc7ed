import './book-place.css';
import { useMemo, useState } from 'preact/hooks';
import type { CaseRecord } from '../../../garden/records.ts';
import { searchOver } from '../../../garden/search-cases.ts';
import { Asking } from '../../parts/Asking/asking.tsx';
import { DemoWayIn } from '../../parts/Demo/demo-parts.tsx';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { bringBackCase, cases, eraseCase } from '../../state/kept.ts';
import { hashOf, route } from '../../state/route.ts';
import { BOOK_WORDS as WORDS } from '../../words/book.ts';
import { searchWords } from '../../words/describe-case.ts';
import { CaseEntry } from './case-entry.tsx';
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

/** Book: cases past and open, searched in words; one case, its looks and its end; what this garden has taught. */
export function BookPlace() {
  const at = route.value;
  if (at.place !== 'book') return null;
  if (at.page === 'taught') return <TaughtPage />;
  if (at.caseId && at.page === 'ended') return <OutcomePage key={at.caseId} caseId={at.caseId} />;
  if (at.caseId && at.look) return <LookPage key={at.look} caseId={at.caseId} lookId={at.look} />;
  if (at.caseId) return <CasePage key={at.caseId} caseId={at.caseId} />;
  return <CaseList />;
}

const NONE: readonly CaseRecord[] = [];

function CaseList() {
  const [query, setQuery] = useState('');
  const all = cases.value ?? NONE;
  const alive = useMemo(() => all.filter(({ deletedAt }) => !deletedAt), [all]);
  const search = useMemo(() => searchOver(alive, searchWords), [alive]);
  const found = search(query);
  const open = found.filter(({ closedOn }) => !closedOn);
  const closed = found.filter(({ closedOn }) => closedOn);
  return (
    <div class="book stack-wide">
      <h1 tabIndex={-1}>{WORDS.title}</h1>
      {alive.length > 0 && (
        <label class="field">
          <span>{WORDS.search}</span>
          <input
            type="search"
            value={query}
            placeholder={WORDS.searchHint}
            autocomplete="off"
            onInput={(event) => setQuery(event.currentTarget.value)}
          />
        </label>
      )}
      {cases.value && alive.length === 0 && <p>{WORDS.none}</p>}
      {cases.value && alive.length === 0 && <DemoWayIn />}
      <div role="status">
        {query !== '' && found.length === 0 && alive.length > 0 && <p>{WORDS.noneFound(query)}</p>}
      </div>
      <Entries title={WORDS.open} found={open} />
      <Entries title={WORDS.closed} found={closed} />
      <p>
        <a class="link-line" href={hashOf({ place: 'book', page: 'taught' })}>
          {WORDS.taught}
        </a>
      </p>
      <Deleted all={all} />
    </div>
  );
}

function Entries({ title, found }: { readonly title: string; readonly found: readonly CaseRecord[] }) {
  if (found.length === 0) return null;
  return (
    <section>
      <h2 class="list-title">{title}</h2>
      <ul class="entries">
        {found.map((kept) => (
          <CaseEntry key={kept.id} kept={kept} />
        ))}
      </ul>
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
