import type { Garden } from '../../../../garden/gather-garden.ts';
import type { BatchRecord } from '../../../../garden/ground-records.ts';
import { ripens } from '../../../../garden/judge-batch.ts';
import { awaitsPots, isSuspected } from '../../../../garden/trace-batches.ts';
import { hashOf } from '../../../state/route.ts';
import { dayOf } from '../../../words/dates.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';
import { PotTestLines } from './pot-test-lines.tsx';
import { RipenessTests } from './ripeness-tests.tsx';

const WORDS = POT_WORDS.batch;

/** On the page of a load: its pot tests, and the way to a new one. */
export function BatchTests({ all, batch }: { readonly all: Garden; readonly batch: BatchRecord }) {
  const tests = all.potTests.filter(({ batchId }) => batchId === batch.id).reverse();
  const told = tests.some(
    ({ question, endedOn, said }) =>
      question === 'residue' &&
      endedOn &&
      (said?.verdict === 'do-not-spread' || said?.verdict === 'safe-enough'),
  );
  const title = isSuspected(batch) ? WORDS.titleUnder : WORDS.title;
  return (
    <>
      <section class="stack-close rule-above">
        <h2>{told ? WORDS.titleTold : title}</h2>
        {!told && <p>{WORDS.lead}</p>}
        {awaitsPots(all, batch.id) && <p>{POT_WORDS.keepAside}</p>}
        {tests.length > 0 && <PotTestLines tests={tests} batches={all.batches} today={dayOf(new Date())} />}
        <p>
          <a class="button" href={hashOf({ place: 'book', pots: 'plan', pot: batch.id })}>
            {told ? POT_WORDS.test.sowAgain : WORDS.sow}
          </a>
        </p>
      </section>
      {ripens(batch) && <RipenessTests batch={batch} />}
    </>
  );
}
