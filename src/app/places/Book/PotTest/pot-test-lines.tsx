import './pot-test.css';
import type { BatchRecord, PotTestRecord } from '../../../../garden/ground-records.ts';
import { hashOf } from '../../../state/route.ts';
import { sayState, POT_WORDS as WORDS } from '../../../words/pot-test.ts';

interface PotTestLinesProps {
  readonly tests: readonly PotTestRecord[];
  readonly batches: readonly BatchRecord[];
  readonly today: string;
}

/** Pot tests as lines that lead to their pages: the load, how it stands, what was sown. */
export function PotTestLines({ tests, batches, today }: PotTestLinesProps) {
  return (
    <ul>
      {tests.map((test) => (
        <li key={test.id}>
          <a class="pot-line" href={hashOf({ place: 'book', pots: 'test', pot: test.id })}>
            <span class="pot-line-name">
              {WORDS.of(batches.find(({ id }) => id === test.batchId)?.name ?? '')}
            </span>
            <span>{sayState(test, today)}</span>
            <span class="small soft">
              {[WORDS.questions[test.question], WORDS.test.sown(test)].join(' ')}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}
