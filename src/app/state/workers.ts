import { signal } from '@preact/signals';
import { createBridge } from '../workers/bridge.ts';
import { openWorker } from '../workers/open-worker.ts';
import type { PhotoReply, PhotoRequest, RankingReply, RankingRequest } from '../workers/protocol.ts';
import { isOlder } from './reopen.ts';

/** Which part was started again after it stopped; said until it works again. `older`: it cannot be, a newer version took its place. */
export const restarted = signal<'photo' | 'ranking' | 'older' | undefined>(undefined);

/** A part could not be fetched: said where that is because a newer version took its place. */
export function sayIfOlder(): void {
  if (isOlder.value) restarted.value = 'older';
}

const sayRestarted = (part: 'photo' | 'ranking'): void => {
  restarted.value = isOlder.value ? 'older' : part;
};

/** A 12-megapixel photo takes about 3 s on two cores; a slow phone may need ten times that. */
const PHOTO_LIMIT_MS = 60_000;
const RANKING_LIMIT_MS = 20_000;

export const photoBridge = createBridge<PhotoRequest, PhotoReply>({
  open: () =>
    openWorker(() => new Worker(new URL('../workers/photo-worker.ts', import.meta.url), { type: 'module' })),
  limitMs: PHOTO_LIMIT_MS,
  onRestart: () => sayRestarted('photo'),
});

export const rankingBridge = createBridge<RankingRequest, RankingReply>({
  open: () =>
    openWorker(
      () => new Worker(new URL('../workers/ranking-worker.ts', import.meta.url), { type: 'module' }),
    ),
  limitMs: RANKING_LIMIT_MS,
  onRestart: () => sayRestarted('ranking'),
});
