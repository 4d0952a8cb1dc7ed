import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../setup/ensure-ready.mjs';
import { forgetPeak, heldMb, middle, openBuiltApp, rendererIds } from './open-built-app.ts';
import type { PhotoCost } from './read-in-node.ts';

const RUNS = 5;
const PRACTICE_MS = 4_000;
/** A port of its own, so that it disturbs no other server of the app. */
const PORT = 4790;

/** What a page reports of one photo: clock times of each run. */
interface PageTimes {
  readonly decode: number[];
  readonly whole: number[];
}

/**
 * Reads a photo by the built app's own photo worker, in a browser opened for it alone. Decoding alone is timed in the same
 * page in turn with it: the bitmap, drawn and read back at full size. Memory is that of the page's process, its worker included.
 */
export async function readInBrowser(bytes: Uint8Array): Promise<PhotoCost> {
  const app = await openBuiltApp(PORT);
  const { browser } = app;
  const worker = readdirSync(join(ROOT, 'dist/assets')).find((name) => /^photo-worker.*\.js$/.test(name));
  if (worker === undefined) throw new Error('bench: the build has no photo worker');
  try {
    const page = await browser.newPage();
    await page.goto(app.url);
    const photo = Buffer.from(bytes).toString('base64');
    await page.evaluate(`(${SET_UP})(${JSON.stringify({ photo, worker: `/assets/${worker}` })})`);
    // As in the app, where it is opened while the person still frames the photo: it has read drawn leaves by then.
    await page.waitForTimeout(PRACTICE_MS);
    const processes = await rendererIds(browser);
    for (const id of processes) forgetPeak(id);
    const idle = processes.map((id) => heldMb(id, 'VmRSS'));
    const first = await page.evaluate<number>('window.bench.read("first")');
    const over = processes.map((id, k) => heldMb(id, 'VmHWM') - idle[k]!);
    const decode = await page.evaluate<number>('window.bench.decode()');
    const times = await page.evaluate<PageTimes>(`window.bench.times(${RUNS})`);
    const decodeMs = middle(times.decode);
    return {
      decodeMs,
      restMs: middle(times.whole) - decodeMs,
      firstRestMs: first - decode,
      overIdleMb: over.length > 0 ? Math.max(...over) : undefined,
    };
  } finally {
    await app.close();
  }
}

/** Runs in the page, so it is text: this side knows no DOM. */
const SET_UP = `async ({ photo, worker }) => {
  const file = new Blob([Uint8Array.from(atob(photo), (c) => c.charCodeAt(0))], { type: 'image/jpeg' });
  const helper = new Worker(worker, { type: 'module' });
  let number = 0;
  const bench = {
    async decode() {
      const start = performance.now();
      const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const context = canvas.getContext('2d', { willReadFrequently: true, colorSpace: 'srgb' });
      context.drawImage(bitmap, 0, 0);
      context.getImageData(0, 0, bitmap.width, bitmap.height);
      bitmap.close();
      return performance.now() - start;
    },
    read(photoId) {
      const start = performance.now();
      return new Promise((done, failed) => {
        helper.onmessage = ({ data }) => {
          if (data.reply.ok) done(performance.now() - start);
          else failed(new Error('photo worker: ' + data.reply.code));
        };
        const request = { kind: 'read-photo', photoId, picture: file, role: 'old', taps: {}, wantThumbnail: false };
        helper.postMessage({ number: ++number, request });
      });
    },
    async times(runs) {
      const decode = [];
      const whole = [];
      for (let run = 0; run < runs; run++) {
        decode.push(await bench.decode());
        whole.push(await bench.read('run ' + run));
      }
      return { decode, whole };
    },
  };
  window.bench = bench;
}`;
