/**
 * Fetches the network of signs when it is switched on, keeps it in a cache of its own from which the service worker serves it
 * (`vite.config.ts`), asks it, and takes it off the device again. Loaded on use.
 */
import type { LeafCrop } from '../../classifier/cut-crop.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { PhotoRole } from '../../photo/types.ts';
import { type Channel, createBridge } from '../workers/bridge.ts';
import { openWorker } from '../workers/open-worker.ts';
import type { NetworkReply, NetworkRequest } from '../workers/protocol.ts';
import { network, networkNews } from './network.ts';
import { type NetworkFault, prefer } from './preferences.ts';
import { isOlder } from './reopen.ts';
import { sayIfOlder } from './workers.ts';

/** Also named in `vite.config.ts`, for the service worker. */
const CACHE = 'network-of-signs';
/** Listed by the build (`vite.config.ts`): script, WebAssembly and model with their sizes. */
const LIST = '/network-parts.json';
/** A leaf takes a tenth of a second on a desk; a slow phone may need thirty times that, and opens it before. */
const LIMIT_MS = 20_000;

interface Part {
  readonly path: string;
  readonly bytes: number;
}

class Fault extends Error {
  constructor(readonly fault: NetworkFault) {
    super(fault);
  }
}

/** A worker that can open the network, and learn. One stays for looks; whoever learns opens another and closes it. */
export const openNetworkWorker = (): Channel<NetworkRequest, NetworkReply> =>
  openWorker(() => new Worker(new URL('../workers/network-worker.ts', import.meta.url), { type: 'module' }));

const bridge = createBridge<NetworkRequest, NetworkReply>({
  open: openNetworkWorker,
  limitMs: LIMIT_MS,
});

/** A module of one function that makes a vector of sixteen bytes: valid only where those are known (WebAssembly SIMD). */
const VECTORS = Uint8Array.of(
  ...[0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0],
  ...[10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98, 11],
);

const canRun = (): boolean => typeof WebAssembly === 'object' && WebAssembly.validate(VECTORS);

async function listParts(): Promise<readonly Part[]> {
  const response = await fetch(LIST).catch(() => undefined);
  if (!response) throw new Fault('network-unreachable');
  if (!response.ok || isPage(response)) throw new Fault('network-missing');
  return response.json();
}

/** Some servers answer with the app's page where a file is missing. */
const isPage = (response: Response): boolean =>
  response.headers.get('content-type')?.startsWith('text/html') ?? false;

const sumOf = (parts: readonly Part[]): number => parts.reduce((sum, { bytes }) => sum + bytes, 0);

/** What is to be fetched in all, bytes; nothing where the list cannot be read. */
export const bytesOfNetwork = (): Promise<number | undefined> => listParts().then(sumOf, () => undefined);

/** Stops what is being fetched. */
let stop: AbortController | undefined;

/** At the start of the app: is it here? Where a newer version of the app brought another network, that is fetched in its place. */
export const lookUpNetwork = (): Promise<void> => bring('tell');

export async function switchNetworkOn(): Promise<void> {
  prefer({ network: 'on' });
  networkNews.value = undefined;
  await bring('keep-quiet');
}

export async function switchNetworkOff(): Promise<void> {
  prefer({ network: 'off' });
  networkNews.value = undefined;
  stop?.abort();
  bridge.close();
  network.value = { at: 'off' };
  await forget();
}

async function forget(): Promise<void> {
  if ('caches' in globalThis) await caches.delete(CACHE);
}

/** Fetches what is missing and opens the network, once, to see that it runs. */
async function bring(news: 'tell' | 'keep-quiet'): Promise<void> {
  stop?.abort();
  stop = new AbortController();
  const { signal } = stop;
  network.value = { at: 'opening' };
  try {
    if (!canRun()) throw new Fault('network-cannot-run');
    if (!('caches' in globalThis)) throw new Fault('network-not-kept');
    const parts = await listParts();
    const cache = await caches.open(CACHE).catch(() => {
      throw new Fault('network-not-kept');
    });
    await dropOthers(cache, parts);
    const isNew = await fetchMissing(cache, parts, signal);
    // What was opened before is opened again with the first photo, so that a start costs nothing.
    if (isNew) await tryOut();
    if (!signal.aborted) network.value = { at: 'kept' };
  } catch (cause) {
    if (!signal.aborted) await fail(cause instanceof Fault ? cause.fault : 'network-unreachable', news);
  }
}

/** Parts of an older version of the app. */
async function dropOthers(cache: Cache, parts: readonly Part[]): Promise<void> {
  for (const request of await cache.keys())
    if (!parts.some(({ path }) => path === new URL(request.url).pathname)) await cache.delete(request);
}

async function fetchMissing(cache: Cache, parts: readonly Part[], signal: AbortSignal): Promise<boolean> {
  const missing: Part[] = [];
  for (const part of parts) if (!(await cache.match(part.path))) missing.push(part);
  const total = sumOf(missing);
  let done = 0;
  for (const part of missing) {
    const response = await fetchPart(part, signal, (bytes) => {
      done += bytes;
      if (!signal.aborted) network.value = { at: 'fetching', done, total };
    });
    await cache.put(part.path, response).catch(() => {
      throw new Fault('network-not-kept');
    });
  }
  return missing.length > 0;
}

/** One file, read as it comes; refused where it is shorter or longer than the build made it. */
async function fetchPart(
  { path, bytes }: Part,
  signal: AbortSignal,
  onBytes: (bytes: number) => void,
): Promise<Response> {
  onBytes(0);
  // Past the browser's own cache: what came broken before must not come again from there.
  const response = await fetch(path, { cache: 'reload', signal });
  if (!response.ok || isPage(response)) throw new Fault('network-missing');
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  let come = 0;
  for await (const chunk of readAll(response)) {
    come += chunk.byteLength;
    if (come > bytes) throw new Fault('network-altered');
    chunks.push(chunk);
    onBytes(chunk.byteLength);
  }
  if (come !== bytes) throw new Fault('network-altered');
  const type = response.headers.get('content-type') ?? 'application/octet-stream';
  return new Response(new Blob(chunks), {
    headers: { 'content-type': type, 'content-length': String(bytes) },
  });
}

async function* readAll(response: Response): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const reader = response.body!.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    yield value;
  }
}

async function tryOut(): Promise<void> {
  network.value = { at: 'opening' };
  const outcome = await bridge.ask({ kind: 'open' }, 'open');
  if (outcome.state === 'failed') throw new Fault('network-cannot-run');
  if (outcome.state === 'done' && !outcome.reply.ok) throw new Fault(outcome.reply.code);
}

/** It is not asked again by itself, but for a signal that may come back; what is broken is not kept. */
async function fail(fault: NetworkFault, news: 'tell' | 'keep-quiet'): Promise<void> {
  bridge.close();
  network.value = { at: 'fault', fault };
  sayIfOlder();
  // Another tab's newer version keeps a network of its own, which this one must not take away.
  if (fault === 'network-unreachable' || isOlder.value) return;
  prefer({ network: fault });
  if (news === 'tell') networkNews.value = fault;
  await forget();
}

/** What the network makes of one leaf; nothing where it fails, which is then told once. */
export async function lookAtLeaf(
  photoId: string,
  crop: LeafCrop,
  role: PhotoRole,
): Promise<SeenByNetwork | undefined> {
  const outcome = await bridge.ask({ kind: 'look', crop, role }, photoId);
  if (outcome.state === 'superseded' || network.value.at !== 'kept') return undefined;
  if (outcome.state === 'done' && outcome.reply.ok)
    return outcome.reply.kind === 'look' ? outcome.reply.seen : undefined;
  await fail(
    outcome.state === 'done' && !outcome.reply.ok ? outcome.reply.code : 'network-cannot-run',
    'tell',
  );
  return undefined;
}
