import type { Garden } from './gather-garden.ts';
import type { BatchRecord } from './ground-records.ts';
import { judgeBatch } from './judge-batch.ts';
import { airOf } from './list-today.ts';
import { sownIn } from './settle-pot-test.ts';
import { isSuspected } from './trace-batches.ts';

/** How a batch stands on a day: whether it is aside, and in what state it was last, by its heat and by what was sown in it. */
export const heapNow = (garden: Garden, batch: BatchRecord, date: string) => ({
  suspected: isSuspected(batch),
  ...judgeBatch(batch, date, airOf(garden.weather), undefined, sownIn(garden, batch.id, date)),
});
