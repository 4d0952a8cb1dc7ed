import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from './browser.ts';

/** How often the browser is killed: `KILLS=200` for a run on demand. */
const KILLS = Number(process.env.KILLS ?? 20);
const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
const PAGE = '<!doctype html><title>store</title>';

let server: ViteDevServer;
let address: string;
const profile = mkdtempSync(join(tmpdir(), 'bedside-kill-'));

beforeAll(async () => {
  server = await createServer({
    configFile: false,
    root: ROOT,
    cacheDir: join(ROOT, '.cache/vite-store'),
    logLevel: 'silent',
    server: { port: 4391, host: '127.0.0.1', hmr: false },
    plugins: [
      {
        name: 'empty-page',
        configureServer: ({ middlewares }) => {
          middlewares.use('/empty', (_request, response) => {
            response.setHeader('content-type', 'text/html');
            response.end(PAGE);
          });
        },
      },
    ],
  });
  await server.listen();
  address = server.resolvedUrls!.local[0]!;
});
afterAll(async () => {
  await server.close();
  rmSync(profile, { recursive: true, force: true });
});

/** A browser that runs by itself, so that it can be killed as a phone kills it. */
async function startBrowser(): Promise<{ process: ChildProcess; port: string }> {
  const started = spawn(
    CHROMIUM,
    [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
    ],
    { stdio: ['ignore', 'ignore', 'pipe'], detached: true },
  );
  const port = await new Promise<string>((resolve, reject) => {
    let said = '';
    started.stderr!.on('data', (chunk) => {
      said += chunk;
      const found = /ws:\/\/127\.0\.0\.1:(\d+)\//.exec(said);
      if (found) resolve(found[1]!);
    });
    started.on('exit', () => reject(new Error(`no browser: ${said}`)));
  });
  return { process: started, port };
}

/** Now and then a browser that was killed does not come up the next time; what was kept has no part in that. */
async function openBrowser(tries = 3): Promise<{ browser: ChildProcess; connected: Browser }> {
  const { process: browser, port } = await startBrowser();
  try {
    return {
      browser,
      connected: await chromium.connectOverCDP(`http://127.0.0.1:${port}`, { timeout: 20_000 }),
    };
  } catch (cause) {
    await kill(browser);
    if (tries === 1) throw cause;
    return openBrowser(tries - 1);
  }
}

/**
 * Ends the browser's processes, all at once and without warning, and waits until the last is gone: one that still holds the profile
 * would keep the next browser from what is stored.
 */
async function kill(browser: ChildProcess): Promise<void> {
  const gone = new Promise((resolve) => {
    browser.on('exit', resolve);
  });
  process.kill(-browser.pid!, 'SIGKILL');
  await gone;
  const isAnyLeft = (): boolean => {
    try {
      return process.kill(-browser.pid!, 0);
    } catch {
      return false;
    }
  };
  await expect.poll(isAnyLeft, { interval: 20 }).toBe(false);
}

/** In the page: what is stored, told as whole cases, and saves without end from a number on, each told once it is done. */
const LOOK_AROUND = `(async () => {
  const hasWitness = await new Promise((resolve, reject) => {
    const opening = indexedDB.open('witness');
    let isNew = false;
    opening.onupgradeneeded = () => { isNew = true; };
    opening.onsuccess = () => { opening.result.close(); resolve(!isNew); };
    opening.onerror = () => reject(opening.error);
  });
  const { openGardenStore } = await import('/src/garden/store/garden-store.ts');
  const store = openGardenStore();
  const cases = await store.listCases();
  const looks = await store.listRecords('look');
  const byId = new Set(looks.map((look) => look.id));
  return {
    cases: cases.map(({ id }) => id),
    half: cases.filter(({ looks: named }) => named.length !== 1 || !byId.has(named[0].id)).length,
    stray: looks.length - cases.length,
    hasWitness,
  };
})()`;
const saveFrom = (first: number): string => `(async () => {
  const { openGardenStore } = await import('/src/garden/store/garden-store.ts');
  const store = openGardenStore();
  for (let at = ${first}; ; at++) {
    const stamp = { schema: 4, changedAt: new Date().toISOString() };
    const date = '2026-06-01';
    await store.saveLook(
      { ...stamp, kind: 'case', id: 'case-' + at, bed: 'Bed ' + (at % 7), plant: 'plant', openedOn: date, looks: [] },
      { ...stamp, kind: 'look', id: 'look-' + at, caseId: 'case-' + at, date, photos: [], answers: {}, cannotSay: [], note: 'x'.repeat(20000) },
      { id: 'look-' + at, date, verdict: 'watch', leading: [], photos: [] },
    );
    window.told(at);
  }
})()`;

interface Found {
  readonly cases: string[];
  readonly half: number;
  readonly stray: number;
  /** Whether an empty database that the store knows nothing of outlived the kill. */
  readonly hasWitness: boolean;
}

/**
 * Now and then a Chromium that is killed soon after its start throws away all that a site had stored, the witness too: 3 times in 80 kills here.
 * Nothing can be told of the store then, and the count begins anew; the app says by itself that it was cleared (`wasCleared`).
 */
const MOST_THROWN_AWAY = KILLS / 2;

describe('a browser that is killed while cases are being kept', () => {
  it(`loses nothing that was told to be kept, and keeps nothing by halves, ${KILLS} times over`, async () => {
    let told = -1;
    let keptInAll = 0;
    let thrownAway = 0;
    for (let round = 0; round <= KILLS; round++) {
      const { browser, connected } = await openBrowser();
      const page = connected.contexts()[0]!.pages()[0] ?? (await connected.contexts()[0]!.newPage());
      await page.exposeFunction('told', (at: number) => {
        told = Math.max(told, at);
      });
      await page.goto(`${address}empty`);
      const found = (await page.evaluate(LOOK_AROUND)) as Found;
      if (round > 0 && !found.hasWitness) {
        thrownAway += 1;
        told = -1;
      }
      const there = new Set(found.cases);
      expect(found).toMatchObject({ half: 0, stray: 0 });
      const lost = Array.from({ length: told + 1 }, (_, at) => `case-${at}`).filter((id) => !there.has(id));
      expect(lost).toEqual([]);
      if (round < KILLS) {
        const before = told;
        page.evaluate(saveFrom(found.cases.length)).catch(() => {});
        await expect.poll(() => told, { interval: 5 }).toBeGreaterThan(before + (round % 5));
        keptInAll += told - before;
      }
      await kill(browser);
    }
    expect(thrownAway).toBeLessThanOrEqual(MOST_THROWN_AWAY);
    expect(keptInAll).toBeGreaterThan(KILLS);
  }, 600_000);
});
