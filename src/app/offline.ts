import { signal } from '@preact/signals';

/** `ready`: every part is stored, the app works without a signal. `update`: a newer version waits to be used. */
export const offline = signal<'unknown' | 'ready' | 'update' | 'none'>('unknown');

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
  navigator.serviceWorker
    .register('/service-worker.js')
    .then((registration) => {
      watch(registration);
      return navigator.serviceWorker.ready;
    })
    .then(() => {
      if (offline.value === 'unknown') offline.value = 'ready';
    })
    .catch(() => {
      // Refused (private window, no secure address): the app works as long as the page is open.
      offline.value = 'none';
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

/** Changes to the newer version; the page is loaded again once it has taken over. */
export function takeUpdate(): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting?.postMessage({ type: 'SKIP_WAITING' });
}
