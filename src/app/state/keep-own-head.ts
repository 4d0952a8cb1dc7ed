/** Keeps what the network learnt of this garden, and forgets it. Loaded on use. */
import type { OwnHeadRecord } from '../../garden/own-head-record.ts';
import { RECORDS_SCHEMA } from '../../garden/records.ts';
import { OWN_HEAD_ID } from '../../garden/whole-own-head.ts';
import { nowStamp, store, tryStore } from './kept.ts';
import { refreshOwnHead } from './own-head.ts';
import { offerUndo } from './undo-bar.ts';

/** Keeps what was learnt in place of what was there, a forgotten or damaged one too. True when it was stored. */
export async function keepOwnHead(
  learnt: Omit<OwnHeadRecord, 'kind' | 'id' | 'schema' | 'changedAt'>,
): Promise<boolean> {
  const saved = await tryStore(async () => {
    const [before] = await store.listRecords('own-head');
    return store.saveRecords<OwnHeadRecord>([
      {
        ...learnt,
        kind: 'own-head',
        id: OWN_HEAD_ID,
        schema: RECORDS_SCHEMA,
        changedAt: nowStamp(),
        ...(before?.revision === undefined ? {} : { revision: before.revision }),
      },
    ]);
  });
  await refreshOwnHead();
  return saved !== undefined;
}

async function mark(change: (found: OwnHeadRecord) => OwnHeadRecord): Promise<void> {
  await tryStore(() =>
    store.changeRecord('own-head', OWN_HEAD_ID, (found) => ({ ...change(found), changedAt: nowStamp() })),
  );
  await refreshOwnHead();
}

/** Forgets what was learnt; the bar offers it back. */
export async function forgetOwnHead(says: string): Promise<void> {
  await mark((found) => ({ ...found, deletedAt: nowStamp() }));
  offerUndo({ says, undo: () => mark(({ deletedAt: _deletedAt, ...found }) => found) });
}
