import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { preview } from 'vite';
import { ensureBuild, ensureChromium, ROOT } from '../setup/ensure-ready.mjs';
import type { PhotoCost } from './read-in-node.ts';

const RUNS = 5;
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
  ensureBuild();
  const worker = readdirSync(join(ROOT, 'dist/assets')).find((name) => /^photo-worker.*\.js$/.test(name));
  if (worker === undefined) throw new Error('bench: the build has no photo worker');
  const server = await preview({
    configFile: join(ROOT, 'vite.config.ts'),
    logLevel: 'silent',
    preview: { port: PORT, host: '127.0.0.1' },
  });
  const browser = await chromium.launch({
    executablePath: ensureChromium(),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  });
  try {
    const page = await browser.newPage();
    await page.goto(server.resolvedUrls!.local[0]!);
    const photo = Buffer.from(bytes).toString('base64');
    await page.evaluate(`(${SET_UP})(${JSON.stringify({ photo, worker: `/assets/${worker}` })})`);
    await page.waitForTimeout(500);
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
    await browser.close();
    await server.close();
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

const middle = (values: number[]): number => values.sort((p, q) => p - q)[values.length >> 1]!;

async function rendererIds(browser: Browser): Promise<number[]> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  return processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
}

/** Lets the peak count from now on (Linux). */
function forgetPeak(id: number): void {
  writeFileSync(`/proc/${id}/clear_refs`, '5');
}

function heldMb(id: number, which: 'VmRSS' | 'VmHWM'): number {
  const line = new RegExp(`${which}:\\s+(\\d+) kB`).exec(readFileSync(`/proc/${id}/status`, 'utf8'));
  return Number(line?.[1]) / 1024;
}
