import type { CaseRecord } from '../../../garden/records.ts';
import { batchesUnder, isSuspected } from '../../../garden/trace-batches.ts';
import { garden } from '../../state/garden.ts';
import { hashOf } from '../../state/route.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';
import { BATCH_WORDS } from '../../words/ground-batches.ts';
import './ground-place.css';

/** What went on the bed of a case, each a step from its page; nothing where nothing is on record. */
export function UnderCase({ kept }: { readonly kept: CaseRecord }) {
  const { bedId, plantingId } = kept;
  if (!garden.value || (!bedId && !plantingId)) return null;
  const under = batchesUnder(garden.value, {
    ...(plantingId ? { plantingId } : {}),
    ...(bedId ? { bedId } : {}),
  });
  if (under.length === 0) return null;
  return (
    <section class="stack-close">
      <h2>{BATCH_WORDS.under}</h2>
      <ul>
        {under.map(({ batch }) => (
          <li class="ground-line" key={batch.id}>
            <a class="link-line" href={hashOf({ place: 'ground', page: 'batches', batch: batch.id })}>
              {batch.name}
            </a>
            {isSuspected(batch) && <span class="flagged">{WORDS.suspected}</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}
