import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { ensureChromium, ROOT } from '../setup/ensure-ready.mjs';

/** What one runtime made of one input: logits, features, strangeness; and the times of further runs, ms. */
export interface RuntimeRun {
  readonly outputs: readonly (readonly number[])[];
  readonly ms: readonly number[];
}
/** The app's runtime beside the other one. */
export interface BothRuns {
  readonly app: RuntimeRun;
  readonly other: RuntimeRun;
}

const BUNDLE = join(ROOT, '.cache/both-runtimes');
const MODULES = join(ROOT, 'node_modules');

/**
 * Runs the network of signs in a worker of Chromium on tfjs and on onnxruntime-web, one thread each.
 * @param inputs what `cropToInput` gives, each
 * @param runs how often each is timed, beside a first run
 * @throws where either runtime fails
 */
export async function runBothRuntimes(
  port: number,
  inputs: readonly Float32Array[],
  runs: number,
): Promise<readonly BothRuns[]> {
  await bundleWorker();
  const files: Readonly<Record<string, () => Uint8Array | string>> = {
    '/': () => '<!doctype html><title>both runtimes</title>',
    '/worker.js': () => readFileSync(join(BUNDLE, 'worker.js')),
    '/model': () => readFileSync(join(ROOT, 'models/signs.onnx')),
    '/tfjs.wasm': () =>
      readFileSync(join(MODULES, '@tensorflow/tfjs-backend-wasm/dist/tfjs-backend-wasm-simd.wasm')),
    '/ort.wasm': () => readFileSync(join(MODULES, 'onnxruntime-web/dist/ort-wasm-simd-threaded.wasm')),
  };
  const server = createServer(({ url = '/' }, response) => {
    const path = new URL(url, 'http://localhost').pathname;
    const input = /^\/input-(\d+)$/.exec(path)?.[1];
    const body = input === undefined ? files[path]?.() : new Uint8Array(inputs[Number(input)]!.buffer);
    response.writeHead(body === undefined ? 404 : 200, { 'content-type': typeOf(path) });
    response.end(body);
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const browser = await chromium.launch({
    executablePath: ensureChromium(),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  });
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${port}/`);
    const told = await page.evaluate<(BothRuns | { readonly failed: string })[]>(
      `(${COLLECT})('/worker.js?inputs=${inputs.length}&runs=${runs}', ${inputs.length})`,
    );
    return told.map((one) => {
      if ('failed' in one) throw new Error(one.failed);
      return one;
    });
  } finally {
    await browser.close();
    await new Promise((resolve) => server.close(resolve));
  }
}

const typeOf = (path: string): string =>
  path === '/' ? 'text/html' : path.endsWith('.js') ? 'text/javascript' : 'application/octet-stream';

/** What the worker posts, until all is said or one thing failed. Text: this side knows no DOM. */
const COLLECT = `(script, count) => new Promise((done) => {
  const told = [];
  const take = (one) => { told.push(one); if (told.length === count || one.failed) done(told); };
  const worker = new Worker(script, { type: 'module' });
  worker.onmessage = ({ data }) => take(data);
  worker.onerror = ({ message }) => take({ failed: message || 'the worker did not start' });
})`;

async function bundleWorker(): Promise<void> {
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'error',
    publicDir: false,
    build: {
      outDir: BUNDLE,
      emptyOutDir: true,
      target: 'es2022',
      rollupOptions: {
        input: join(ROOT, 'src/command/bench/both-runtimes-worker.ts'),
        output: { entryFileNames: 'worker.js', codeSplitting: false },
      },
    },
  });
}
