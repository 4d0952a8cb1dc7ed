import { signal } from '@preact/signals';
import { isOlder, isTypedIn, reopen } from './state/reopen.ts';
import { route } from './state/route.ts';

/**
 * `fetching`: at the first visit, until every part is stored. `broken-off`: the signal went before that. `ready`: every part is
 * stored, the app works without a signal. `update`: a newer version waits to be used. `held`: it was
 * asked for, and waits until what is typed on the page is stored or given up.
 */
export const offline = signal<'unknown' | 'fetching' | 'broken-off' | 'ready' | 'update' | 'held' | 'none'>(
  'unknown',
);

/** Chromium's offer to install; other browsers have it in their menu. */
interface InstallPrompt extends Event {
  prompt(): Promise<unknown>;
}
export const install = signal<InstallPrompt | undefined>(undefined);

/** Keeps the browser's offer for the help page instead of letting it cover the page. */
export function followInstall(): void {
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    install.value = event as InstallPrompt;
  });
  addEventListener('appinstalled', () => {
    install.value = undefined;
  });
}

let waiting: ServiceWorker | undefined;

/** Registers the service worker that keeps the app on this device. An update is offered, never forced. */
export function registerOffline(): void {
  if (!('serviceWorker' in navigator)) {
    offline.value = 'none';
    return;
  }
  followTakingOver();
  register();
  addEventListener('online', () => {
    if (offline.value === 'broken-off') register();
  });
}

const IS_BEFORE = ['unknown', 'fetching', 'broken-off'];

function register(): void {
  navigator.serviceWorker
    .register('/service-worker.js')
    .then((registration) => {
      // A page that was loaded past the worker has none that controls it, but there is one.
      hasOlder ||= registration.active !== null;
      if (!registration.active && registration.installing) followFirst(registration.installing);
      watch(registration);
      return navigator.serviceWorker.ready;
    })
    .then(() => {
      if (IS_BEFORE.includes(offline.value)) offline.value = 'ready';
    })
    .catch(() => {
      // Without a signal there was nothing to fetch; else refused (private window, no secure address): the app works while it is open.
      offline.value = navigator.onLine ? 'none' : 'broken-off';
    });
}

/** The first one stores every part, which takes a while on a weak signal: whoever walks off before that has only half of them. */
function followFirst(worker: ServiceWorker): void {
  offline.value = 'fetching';
  worker.addEventListener('statechange', () => {
    if (worker.state === 'redundant' && offline.value === 'fetching') offline.value = 'broken-off';
  });
}

function watch(registration: ServiceWorkerRegistration): void {
  const offer = (worker: ServiceWorker | null): void => {
    // Without a controller this is the first visit, and there is no older version to replace.
    if (!worker || !navigator.serviceWorker.controller) return;
    waiting = worker;
    offline.value = 'update';
  };
  offer(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing;
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'installed') offer(registration.waiting);
    });
  });
}

let isAsked = false;
/** The first service worker ever takes over pages that are as new as it is; any later one is newer than the page. */
let hasOlder = false;

/** A newer version takes over in all tabs at once: where it was asked for the page is loaded anew, elsewhere that is offered. */
function followTakingOver(): void {
  hasOlder = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (isAsked) void reopen();
    else if (hasOlder) {
      isOlder.value = true;
      offline.value = 'update';
    }
    hasOlder = true;
  });
}

/**
 * Changes to the newer version; the page is loaded again once it has taken over. What is typed on a page that does not store
 * it letter by letter holds that up once. A look stores all that is typed.
 */
export function takeUpdate(): void {
  if (offline.value !== 'held' && route.value.place !== 'look' && isTypedIn()) {
    offline.value = 'held';
    return;
  }
  isAsked = true;
  if (isOlder.value) void reopen();
  else waiting?.postMessage({ type: 'SKIP_WAITING' });
}
