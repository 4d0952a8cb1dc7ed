/** What the network of signs has learnt of this garden, as it is kept. Fetched once the app has started. */
import { signal } from '@preact/signals';
import { reportsWithOwnHead } from '../../classifier/own-head/reports-with-own-head.ts';
import type { OwnHeadRecord } from '../../garden/own-head-record.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import { isWholeOwnHead } from '../../garden/whole-own-head.ts';
import { store, tryRead } from './kept.ts';
import { ownReports } from './own-reports.ts';

/** What was learnt and not forgotten; `undefined` too until the store has been read. */
export const ownHead = signal<OwnHeadRecord | undefined>(undefined);
/** What is stored is damaged, so nothing of it is used. */
export const isOwnHeadDamaged = signal(false);

/** Does a report of this sign come from what was learnt here? */
export function isLearntHere({ network }: SeenByNetwork, sign: string): boolean {
  const own = ownHead.value;
  const [mark] = sign.split('@');
  return own?.network === network && own.marks.some((one) => one.mark === mark && one.head !== undefined);
}

/** Reads it again; whoever has stored another calls this. */
export async function refreshOwnHead(): Promise<void> {
  const found = await tryRead(() => store.listRecords('own-head'));
  if (!found) return;
  const [stored] = found.filter(({ deletedAt }) => !deletedAt);
  const own = stored && isWholeOwnHead(stored) ? stored : undefined;
  isOwnHeadDamaged.value = stored !== own;
  ownHead.value = own;
  ownReports.value = own && ((seen, role) => reportsWithOwnHead(seen, role, own));
}

/** Reads it, and again whenever another tab or a backup has written it. Called once. */
export function followOwnHead(): void {
  store.watch((keys) => {
    if (keys.some((key) => key.startsWith('own-head:'))) void refreshOwnHead();
  });
  void refreshOwnHead();
}
