import { signal } from '@preact/signals';
import { inDemo, leaveDemo } from './demo.ts';

/** The cache in which the service worker lays what other apps hand over (`public/receive-photos.js`). */
const SHARED = 'shared-photos';

/** How many of them nobody has stored yet. */
export const waitingPhotos = signal(0);

/** Counts them; called when the app starts and when some were stored. */
export async function countWaiting(): Promise<void> {
  waitingPhotos.value = (await requestsIn(SHARED).catch(() => [])).length;
}

async function requestsIn(name: string): Promise<readonly Request[]> {
  if (typeof caches === 'undefined' || !(await caches.has(name))) return [];
  return (await caches.open(name)).keys();
}

export interface SharedPhoto {
  readonly file: File;
  /** Forgets it; called once it is stored. */
  readonly taken: () => Promise<void>;
}

/** Photos that another app handed over and nobody has stored yet, oldest first. */
export async function sharedPhotos(): Promise<SharedPhoto[]> {
  const requests = [...(await requestsIn(SHARED))].sort((a, b) => (a.url < b.url ? -1 : 1));
  if (requests.length === 0) return [];
  const cache = await caches.open(SHARED);
  const photos: SharedPhoto[] = [];
  for (const request of requests) {
    const response = await cache.match(request);
    if (!response) continue;
    const type = response.headers.get('content-type') ?? '';
    const name = decodeURIComponent(response.headers.get('x-name') ?? '');
    const lastModified = Number(response.headers.get('x-modified')) || Date.now();
    photos.push({
      file: new File([await response.blob()], name, { type, lastModified }),
      taken: async () => void (await cache.delete(request)),
    });
  }
  return photos;
}

/** In the invented garden they would go with it when it is left: the page goes home first, and `true` says so. */
export function takesThemHome(): boolean {
  if (!inDemo) return false;
  leaveDemo('#/look/shared');
  return true;
}
