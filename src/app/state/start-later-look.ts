import type { CaseRecord } from '../../garden/records.ts';
import { type KeptLook, store, tryRead } from './kept.ts';
import { laterLook } from './later-look.ts';
import { startLook } from './look-session.ts';
import { goTo } from './route.ts';

/** Begins another look at the plant of a case and goes there. */
export async function startLaterLook(kept: CaseRecord, today: string): Promise<void> {
  const looks = (await tryRead(() => store.listLooks(kept.id))) as KeptLook[] | undefined;
  const next = laterLook(crypto.randomUUID(), today, kept, looks?.at(-1)?.answers);
  await startLook(next);
  goTo({ place: 'look', draft: next.id });
}
