import type { PotTestResult } from '../../../../compare/pot-test/read-pot-test.ts';
import type { Garden } from '../../../../garden/gather-garden.ts';
import type { BatchRecord, PotTestRecord } from '../../../../garden/ground-records.ts';
import { isSuspected, whoReceived } from '../../../../garden/trace-batches.ts';
import { WithTerms } from '../../../parts/Terms/with-terms.tsx';
import { hashOf } from '../../../state/route.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { READING_WORDS } from '../../../words/pot-test-reading.ts';

const WORDS = READING_WORDS.aside;

interface WhatFollowsProps {
  readonly all: Garden;
  readonly test: PotTestRecord;
  readonly batch: BatchRecord | undefined;
  readonly result: PotTestResult;
}

/** How the load stands now that the test has spoken, the beds that got it, and what later looks make of it. */
export function WhatFollows({ all, test, batch, result }: WhatFollowsProps) {
  const { verdict } = result;
  if (!batch || verdict === 'go-on' || verdict === 'invalid') return null;
  const toBatch = (
    <p>
      <a class="link-line" href={hashOf({ place: 'ground', page: 'batches', batch: batch.id })}>
        {WORDS.toBatch}
      </a>
    </p>
  );
  if (test.question === 'ripeness')
    return (
      <section class="stack-close">
        <h2>{READING_WORDS.follows}</h2>
        <p>{verdict === 'do-not-spread' ? WORDS.ripening(batch.name) : WORDS.sowable(batch.name)}</p>
        {toBatch}
      </section>
    );
  const { beds } = whoReceived(all, batch.id);
  return (
    <section class={verdict === 'do-not-spread' ? 'suspected stack-close' : 'stack-close'}>
      <h2>{READING_WORDS.follows}</h2>
      <p>
        <WithTerms>{sayBatch(batch, verdict === 'do-not-spread')}</WithTerms>
      </p>
      {beds.length === 0 && <p>{WORDS.wentNowhere}</p>}
      {beds.length > 0 && (
        <>
          <p>{WORDS.wentOn}</p>
          <ul class="pot-beds">
            {beds.map(({ id, name }) => (
              <li key={id}>
                <a class="link-line" href={hashOf({ place: 'ground', bed: id })}>
                  {name}
                </a>
              </li>
            ))}
          </ul>
          <p>
            {result.because[0] === undefined || result.because.includes('injury')
              ? WORDS.ranking
              : WORDS.rankingNone}
          </p>
        </>
      )}
      {toBatch}
    </section>
  );
}

function sayBatch(batch: BatchRecord, isBad: boolean): string {
  const aside = isSuspected(batch);
  if (!isBad) return aside ? WORDS.stillAside(batch.name) : WORDS.freed(batch.name);
  return aside
    ? WORDS.put(batch.name, describeDayAndYear(batch.suspicion?.on ?? ''))
    : WORDS.notPut(batch.name);
}
