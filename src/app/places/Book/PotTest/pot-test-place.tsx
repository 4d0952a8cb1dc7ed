import './pot-test.css';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { garden } from '../../../state/garden.ts';
import type { PotPage } from '../../../state/route.ts';
import { POT_WORDS as WORDS } from '../../../words/pot-test.ts';
import { CardPage } from './card-page.tsx';
import { ListPage } from './list-page.tsx';
import { PlanPage } from './plan-page.tsx';
import { ScorePage } from './score-page.tsx';
import { TestPage } from './test-page.tsx';

interface PotTestPlaceProps {
  readonly page: PotPage;
  /** Id of the test; of the plan that of the batch. */
  readonly pot?: string | undefined;
  readonly on?: string | undefined;
}

const TITLES: Readonly<Record<PotPage, string>> = {
  list: WORDS.title,
  plan: WORDS.plan.title,
  test: '…',
  card: WORDS.card.title,
  look: WORDS.look.title,
};

/** Pot tests of loads and heaps: planning, sowing card, scoring, and what they tell. */
export function PotTestPlace({ page, pot, on }: PotTestPlaceProps) {
  const all = garden.value;
  if (!all) return <h1 tabIndex={-1}>{TITLES[page]}</h1>;
  if (page === 'list') return <ListPage all={all} />;
  if (page === 'plan') return <PlanPage all={all} batchId={pot} />;
  const test = all.potTests.find(({ id }) => id === pot);
  if (!test)
    return (
      <div class="pots stack">
        <BackLink to={{ place: 'book', pots: 'list' }} says={WORDS.toList} />
        <h1 tabIndex={-1}>{WORDS.notFound}</h1>
      </div>
    );
  const batch = all.batches.find(({ id }) => id === test.batchId);
  if (page === 'card') return <CardPage test={test} batch={batch} />;
  if (page === 'look') return <ScorePage all={all} test={test} batch={batch} on={on} />;
  return <TestPage all={all} test={test} batch={batch} />;
}
