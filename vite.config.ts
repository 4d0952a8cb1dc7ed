import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import preact from '@preact/preset-vite';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { readLicences } from './src/app/licences/at-build/read-licences.ts';
import { ensureDemoPhotos } from './src/command/setup/ensure-ready.mjs';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The photos of the invented garden with what was read off them: measured by this very code, when it has changed. */
const demoPhotos = (): Plugin => ({
  name: 'demo-photos',
  resolveId: (id) => (id === 'virtual:demo-photos' ? `\0${id}` : undefined),
  load: (id) =>
    id === '\0virtual:demo-photos' ? `export default ${readFileSync(ensureDemoPhotos(), 'utf8')}` : undefined,
});

/** The libraries that travel with the app, with their licences, for the help page. */
const licences = (): Plugin => ({
  name: 'licences',
  resolveId: (id) => (id === 'virtual:licences' ? `\0${id}` : undefined),
  load: (id) =>
    id === '\0virtual:licences' ? `export default ${JSON.stringify(readLicences(here('.')))}` : undefined,
});

/** The network of signs: fetched, kept and taken away by the app alone (`state/kept-network.ts`), so no part of what is stored at the first visit. */
const NETWORK_PARTS = [/^network-worker-.*\.js$/, /^tfjs-backend-wasm-simd-.*\.wasm$/, /^signs-.*\.onnx$/];

/** In the service worker, where the answer below runs. */
declare const caches: {
  match(url: string, options: { readonly cacheName: string }): Promise<Response | undefined>;
};

/** Lists its parts with their sizes, so that these can be said before anything is fetched. */
const networkParts = (): Plugin => ({
  name: 'network-parts',
  apply: 'build',
  writeBundle: ({ dir }) => {
    const names = readdirSync(`${dir}/assets`);
    const parts = NETWORK_PARTS.map((pattern) => {
      const [name, ...more] = names.filter((one) => pattern.test(one));
      if (name === undefined || more.length > 0) throw new Error(`not one file of the build is ${pattern}`);
      return { path: `/assets/${name}`, bytes: statSync(`${dir}/assets/${name}`).size };
    });
    writeFileSync(`${dir}/network-parts.json`, JSON.stringify(parts));
  },
});

export default defineConfig({
  root: here('src/app'),
  publicDir: here('src/app/public'),
  cacheDir: here('.cache/vite'),
  // Absolute base: a relative one breaks deep links once the network is off.
  base: '/',
  worker: { format: 'es', plugins: () => [demoPhotos()] },
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    target: 'es2022',
    // Inlined assets would need data: sources in the content security policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // What the first screen needs is one file: each more costs a slow phone another answer of the service worker.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  plugins: [
    preact(),
    licences(),
    networkParts(),
    VitePWA({
      // The app writes its own manifest and registers the worker itself: an injected script would be inline.
      manifest: false,
      injectRegister: false,
      filename: 'service-worker.js',
      registerType: 'prompt',
      workbox: {
        // Everything is stored at the first visit, so a part opened for the first time offline is there too.
        globPatterns: ['**/*.{html,js,css,svg,png,webmanifest,json}'],
        maximumFileSizeToCacheInBytes: 16 * 1024 * 1024,
        // Photos that other apps hand over arrive here, with no server to take them.
        importScripts: ['receive-photos.js'],
        globIgnores: ['receive-photos.js', 'assets/network-worker-*.js'],
        // What the app laid into the network's cache is served from there; nothing is laid in here.
        runtimeCaching: [
          {
            urlPattern: /\/assets\/(network-worker-[^/]*\.js|tfjs-[^/]*\.wasm|signs-[^/]*\.onnx)$/,
            handler: async ({ request }) =>
              (await caches.match(request.url, { cacheName: 'network-of-signs' })) ?? fetch(request),
          },
        ],
        navigateFallback: '/index.html',
        cleanupOutdatedCaches: true,
        clientsClaim: true,
        inlineWorkboxRuntime: true,
      },
    }),
  ],
});
