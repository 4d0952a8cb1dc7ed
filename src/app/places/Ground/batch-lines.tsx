import type { BatchRecord } from '../../../garden/ground-records.ts';
import { isSuspected } from '../../../garden/trace-batches.ts';
import { hashOf } from '../../state/route.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';

/** Loads and heaps as lines that lead to their pages; those under suspicion say so. */
export function BatchLines({ batches }: { readonly batches: readonly BatchRecord[] }) {
  return (
    <ul>
      {batches.map((batch) => (
        <li class="ground-line" key={batch.id}>
          <a class="link-line" href={hashOf({ place: 'ground', page: 'batches', batch: batch.id })}>
            {batch.name}
          </a>
          {isSuspected(batch) && <span class="flagged">{WORDS.suspected}</span>}
        </li>
      ))}
    </ul>
  );
}
