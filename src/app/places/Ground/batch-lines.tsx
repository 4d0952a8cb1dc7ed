import type { BatchRecord } from '../../../garden/ground-records.ts';
import { isSuspected } from '../../../garden/trace-batches.ts';
import { hashOf } from '../../state/route.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';

interface BatchLinesProps {
  readonly batches: readonly BatchRecord[];
  /** Leads to a pot test of each, too: something grows as if weedkiller were in it. */
  readonly toTest?: boolean;
}

/** Loads and heaps as lines that lead to their pages; those under suspicion say so. */
export function BatchLines({ batches, toTest = false }: BatchLinesProps) {
  return (
    <ul>
      {batches.map((batch) => (
        <li class="ground-line" key={batch.id}>
          <a class="link-line" href={hashOf({ place: 'ground', page: 'batches', batch: batch.id })}>
            {batch.name}
          </a>
          {isSuspected(batch) && <span class="flagged">{WORDS.suspected}</span>}
          {toTest && (
            <a
              class="link-line small"
              aria-label={WORDS.sowPotsOf(batch.name)}
              href={hashOf({ place: 'book', pots: 'plan', pot: batch.id })}
            >
              {WORDS.sowPots}
            </a>
          )}
        </li>
      ))}
    </ul>
  );
}
