import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { preview } from 'vite';
import { ensureBuild, ensureChromium, ROOT } from '../setup/ensure-ready.mjs';

/** The built app behind a server, and a browser opened for it alone. */
export interface BuiltApp {
  readonly browser: Browser;
  readonly url: string;
  close(): Promise<void>;
}

/** @param port a port of its own, so that it disturbs no other server of the app */
export async function openBuiltApp(port: number): Promise<BuiltApp> {
  ensureBuild();
  const server = await preview({
    configFile: join(ROOT, 'vite.config.ts'),
    logLevel: 'silent',
    preview: { port, host: '127.0.0.1' },
  });
  const browser = await chromium.launch({
    executablePath: ensureChromium(),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  });
  return {
    browser,
    url: server.resolvedUrls!.local[0]!,
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** Process ids of the browser's pages. */
export async function rendererIds(browser: Browser): Promise<number[]> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  return processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
}

/** Lets the peak count from now on (Linux). */
export function forgetPeak(id: number): void {
  writeFileSync(`/proc/${id}/clear_refs`, '5');
}

/** What a process holds now (`VmRSS`) or held at most (`VmHWM`), MB (Linux). */
export function heldMb(id: number, which: 'VmRSS' | 'VmHWM'): number {
  const line = new RegExp(`${which}:\\s+(\\d+) kB`).exec(readFileSync(`/proc/${id}/status`, 'utf8'));
  return Number(line?.[1]) / 1024;
}

/** Clock ticks in which Linux counts a process's time (`getconf CLK_TCK`, from memory). */
const TICK_MS = 10;

/** Processor time that a process has used so far, all its threads, ms (Linux, proc(5): fields 14 and 15). */
export function usedCpuMs(id: number): number {
  const fields = readFileSync(`/proc/${id}/stat`, 'utf8').split(') ')[1]!.split(' ');
  return (Number(fields[11]) + Number(fields[12])) * TICK_MS;
}

export const middle = (values: readonly number[]): number =>
  [...values].sort((p, q) => p - q)[values.length >> 1]!;

/* What runs in a page is text: this side knows no DOM. */

/** Notes when the first element of a kind is painted, ms from the page's first byte; to be run before the page's own scripts. */
export const NOTE_WHEN_THERE = `(wanted) => {
  const look = () => {
    if (!document.querySelector(wanted)) return requestAnimationFrame(look);
    requestAnimationFrame(() => { window.thereAt = performance.now(); });
  };
  requestAnimationFrame(look);
}`;

/** Gives that time once it is known. */
export const WAIT_UNTIL_THERE = `new Promise((done) => {
  const look = () => (window.thereAt ? done(window.thereAt) : setTimeout(look, 50));
  look();
})`;
