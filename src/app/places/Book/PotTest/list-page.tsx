import type { Garden } from '../../../../garden/gather-garden.ts';
import type { PotTestRecord } from '../../../../garden/ground-records.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { hashOf } from '../../../state/route.ts';
import { dayOf } from '../../../words/dates.ts';
import { POT_WORDS as WORDS } from '../../../words/pot-test.ts';
import { PotTestLines } from './pot-test-lines.tsx';

/** All pot tests of the garden: those that run, and those that ended. */
export function ListPage({ all }: { readonly all: Garden }) {
  const today = dayOf(new Date());
  const running = all.potTests.filter(({ endedOn }) => !endedOn);
  const ended = all.potTests.filter(({ endedOn }) => endedOn).reverse();
  const part = (title: string, tests: readonly PotTestRecord[]) =>
    tests.length > 0 && (
      <section>
        <h2 class="list-title">{title}</h2>
        <PotTestLines tests={tests} batches={all.batches} today={today} />
      </section>
    );
  return (
    <div class="pots stack-wide">
      <div class="stack-close">
        <BackLink to={{ place: 'book' }} says={WORDS.toBook} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
        <p>{WORDS.lead}</p>
      </div>
      {all.potTests.length === 0 && <p>{WORDS.none}</p>}
      {part(WORDS.running, running)}
      {part(WORDS.ended, ended)}
      <p>
        <a class="button" href={hashOf({ place: 'book', pots: 'plan' })}>
          {WORDS.sow}
        </a>
      </p>
    </div>
  );
}
