import './book-place.css';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { route } from '../../state/route.ts';
import { BOOK_WORDS as WORDS } from '../../words/book.ts';

/* A kept look shows its photos large: it comes with the part that draws over them. */
const LookPage = onUse(
  () => import('./look-page.tsx').then((part) => part.LookPage),
  <h1 tabIndex={-1}>…</h1>,
);

const CaseList = onUse(
  () => import('./case-list.tsx').then((part) => part.CaseList),
  <h1 tabIndex={-1}>{WORDS.title}</h1>,
);
const CasePage = onUse(
  () => import('./case-page.tsx').then((part) => part.CasePage),
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
  if (at.page === 'recurring') {
    const { cause, bed, year } = at;
    return <RecurringPage key={`${cause} ${bed} ${year}`} cause={cause} bed={bed} year={year} />;
  }
  if (at.pots) {
    const { pots: page, pot, on } = at;
    return <PotTestPlace key={`${page} ${pot} ${on}`} page={page} pot={pot} on={on} />;
  }
  if (at.page === 'taught') return <TaughtPage />;
  if (at.caseId && at.page === 'ended') return <OutcomePage key={at.caseId} caseId={at.caseId} />;
  if (at.caseId && at.look) return <LookPage key={at.look} caseId={at.caseId} lookId={at.look} />;
  if (at.caseId) return <CasePage key={at.caseId} caseId={at.caseId} />;
  return <CaseList />;
}
