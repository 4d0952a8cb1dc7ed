import type { CaseRecord } from '../../../garden/records.ts';
import { batchesUnder } from '../../../garden/trace-batches.ts';
import { garden } from '../../state/garden.ts';
import { BATCH_WORDS } from '../../words/ground-batches.ts';
import { BatchLines } from './batch-lines.tsx';
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
      <BatchLines
        batches={under.map(({ batch }) => batch)}
        toTest={kept.looks.at(-1)?.leading.includes('residue-in-compost') ?? false}
      />
    </section>
  );
}
