import type { Page } from 'playwright-core';
import { newBed } from '../../garden/name-beds.ts';
import type { GardenRecord } from '../../garden/records.ts';
import { BEDS, CASES, makeLooks, makeManyCases } from './make-many-cases.ts';
import type { BenchRow } from './median-ms.ts';
import {
  type BuiltApp,
  forgetPeak,
  heldMb,
  middle,
  NOTE_WHEN_THERE,
  openBuiltApp,
  rendererIds,
  usedCpuMs,
  WAIT_UNTIL_THERE,
} from './open-built-app.ts';

/** A port of its own, so that it disturbs no other server of the app. */
const PORT = 4791;
const VISITS = 9;
/** Letters come this fast, ms. */
const PACE = 60;
const BATCH = 1000;
/** Typed letter by letter; each letter is one search. */
const TYPED = 'kale gate aphids';

export interface BookBench {
  readonly rows: readonly BenchRow[];
  /** In words: what the page holds of such a garden. */
  readonly memory: string;
}

/**
 * The book of many years in the built app: Chromium, its own IndexedDB with 5,000 cases, 10,000 looks, and 20,000 photos with
 * their small copies. The photos are tiny, since none of them may be held anyway; what is timed reads those it shows.
 */
export async function benchBook(): Promise<BookBench> {
  const app = await openBuiltApp(PORT);
  try {
    const empty = await openBook(app, 'p');
    const emptyHeld = await held(app, empty.page);
    await seed(empty.page);
    await empty.page.close();
    const colds: number[] = [];
    for (let run = 0; run < 5; run++) {
      const opened = await openBook(app, '.entry');
      colds.push(opened.ms);
      await opened.page.close();
    }
    const hasty = await openBook(app, '.entry');
    const [atOnce = 0] = await hasty.page.evaluate<number[]>(`(${TYPE})('k')`);
    await hasty.page.close();
    const { page } = await openBook(app, '.entry');
    const fullHeld = await held(app, page);
    const opens: number[] = [];
    const before = await cpuOf(app);
    for (let visit = 0; visit < VISITS; visit++) opens.push(await page.evaluate(OPEN_FROM_WALK));
    const visited = await cpuOf(app);
    const cpuOpen = cpuBetween(before, visited);
    const strokes = await page.evaluate<number[]>(`(${TYPE})(${JSON.stringify(TYPED)})`);
    const cpuTyped = cpuBetween(visited, await cpuOf(app));
    const [first = 0, ...later] = strokes;
    for (const id of await rendererIds(app.browser)) forgetPeak(id);
    for (let visit = 0; visit < VISITS; visit++) {
      await page.evaluate(OPEN_FROM_WALK);
      await page.evaluate(`(${TYPE})(${JSON.stringify(TYPED)})`);
    }
    const usedHeld = await held(app, page);
    const mb = (bytes: number): string => bytes.toFixed(1);
    return {
      rows: [
        {
          name: 'book in Chromium: page loaded until its cases stand',
          ms: middle(colds),
          note: `${CASES} cases, ${4 * CASES} photos stored`,
        },
        {
          name: 'book in Chromium: opening the list of cases',
          ms: middle(opens),
          note: `slowest of ${VISITS}: ${Math.max(...opens).toFixed(0)} ms; ${(cpuOpen / VISITS).toFixed(0)} ms of processor; to stay under 300 ms`,
        },
        {
          name: 'book in Chromium: search, first letter',
          ms: first,
          note: `the list has stood for seconds; typed the moment it stands: ${atOnce.toFixed(0)} ms, since the words are still being gathered`,
        },
        {
          name: 'book in Chromium: search, each letter after it',
          ms: middle(later),
          note: `slowest of ${later.length}: ${Math.max(...later).toFixed(0)} ms; ${(cpuTyped / strokes.length).toFixed(0)} ms of processor; to stay under 50 ms`,
        },
      ],
      memory:
        `scripts hold ${mb(fullHeld.heapMb - emptyHeld.heapMb)} MB more than with an empty garden, and ` +
        `${mb(usedHeld.heapMb - fullHeld.heapMb)} MB more after ${VISITS} visits and ${VISITS * TYPED.length} searches; ` +
        `the page’s process ${mb(fullHeld.pageMb - emptyHeld.pageMb)} and ${mb(usedHeld.pageMb - fullHeld.pageMb)} MB, ` +
        `at most ${mb(usedHeld.peakMb - fullHeld.pageMb)} on the way`,
    };
  } finally {
    await app.close();
  }
}

/** Opens the book in a page of its own in the one profile; ms from its first byte to the paint in which `there` stands. */
async function openBook({ browser, url }: BuiltApp, there: string): Promise<{ page: Page; ms: number }> {
  const context = browser.contexts()[0] ?? (await browser.newContext());
  const page = await context.newPage();
  await page.addInitScript(`(${NOTE_WHEN_THERE})(${JSON.stringify(`.book ${there}`)})`);
  await page.goto(`${url}#/book`);
  // The page's own security policy forbids what would wait for a function.
  const ms = await page.evaluate<number>(WAIT_UNTIL_THERE);
  return { page, ms };
}

/** Processor time by page process. */
async function cpuOf({ browser }: BuiltApp): Promise<ReadonlyMap<number, number>> {
  return new Map((await rendererIds(browser)).map((id) => [id, usedCpuMs(id)]));
}

/** What the pages used between two counts, ms; reading and drawing pictures included. */
const cpuBetween = (before: ReadonlyMap<number, number>, after: ReadonlyMap<number, number>): number =>
  [...after].reduce((sum, [id, ms]) => sum + ms - (before.get(id) ?? 0), 0);

async function held({ browser }: BuiltApp, page: Page) {
  await page.waitForTimeout(1500);
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  const ids = await rendererIds(browser);
  const largest = (which: 'VmRSS' | 'VmHWM'): number => Math.max(...ids.map((id) => heldMb(id, which)));
  return { heapMb: usedSize / 2 ** 20, pageMb: largest('VmRSS'), peakMb: largest('VmHWM') };
}

/** Where the store looks for a record (`garden/store/record-keys.ts`, which this side cannot read for its DOM types). */
const keyOf = (record: GardenRecord): string =>
  record.kind === 'look' ? `look:${record.caseId}:${record.id}` : `${record.kind}:${record.id}`;

/** Fills the databases that the app has made, as years of use would have. */
async function seed(page: Page): Promise<void> {
  const cases = makeManyCases();
  const looks = makeLooks();
  const beds = Array.from({ length: BEDS }, (_, at) => ({
    ...newBed(`Bed ${at}`, '2016-03-01T08:00:00.000Z'),
    id: `bed-${at}`,
  }));
  const records: readonly GardenRecord[] = [...beds, ...cases, ...looks];
  for (let from = 0; from < records.length; from += BATCH) {
    const batch = records.slice(from, from + BATCH).map((record) => [keyOf(record), record]);
    await page.evaluate(`(${PUT_RECORDS})(${JSON.stringify(batch)})`);
  }
  const photos = looks.flatMap(({ photos: named }) => named.flatMap(({ id }) => [id, `${id}:small`]));
  for (let from = 0; from < photos.length; from += BATCH)
    await page.evaluate(`(${PUT_PHOTOS})(${JSON.stringify(photos.slice(from, from + BATCH))})`);
}

/* What runs in the page is text: this side knows no DOM. */

const PUT = `(name, store, put) => new Promise((done, failed) => {
  const opening = indexedDB.open(name);
  // The app makes a database when it first needs it, with one store, as here.
  opening.onupgradeneeded = () => opening.result.createObjectStore(store);
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const database = opening.result;
    const writing = database.transaction(store, 'readwrite');
    put(writing.objectStore(store));
    writing.oncomplete = () => { database.close(); done(); };
    writing.onerror = writing.onabort = () => failed(writing.error);
  };
})`;

const PUT_RECORDS = `(records) => (${PUT})('bedside-records', 'records', (store) => {
  for (const [key, record] of records) store.put(record, key);
})`;

const PUT_PHOTOS = `async (ids) => {
  const canvas = new OffscreenCanvas(16, 16);
  canvas.getContext('2d').fillRect(2, 2, 8, 8);
  const bytes = await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer();
  await (${PUT})('bedside-pictures', 'pictures', (store) => {
    for (const id of ids) store.put(new Blob([bytes], { type: 'image/jpeg' }), id);
  });
}`;

/** From the Walk to the frame after the one in which the list is drawn. */
const OPEN_FROM_WALK = `(async () => {
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const rest = (ms) => new Promise((done) => setTimeout(done, ms));
  document.querySelector('.tabs a[href="#/walk"]').click();
  while (!document.querySelector('.walk')) await frame();
  await rest(300);
  const start = performance.now();
  document.querySelector('.tabs a[href="#/book"]').click();
  while (!document.querySelector('.book .entry')) await frame();
  await frame();
  return performance.now() - start;
})()`;

/** Types letter by letter: each from its event until the list is laid out anew. Leaves the field empty. */
const TYPE = `async (typed) => {
  const field = document.querySelector('.book input[type=search]');
  const type = async (words) => {
    const start = performance.now();
    field.value = words;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    await new Promise((done) => setTimeout(done));
    document.body.offsetHeight;
    const ms = performance.now() - start;
    await new Promise((done) => setTimeout(done, ${PACE}));
    return ms;
  };
  const times = [];
  for (let letters = 1; letters <= typed.length; letters++) times.push(await type(typed.slice(0, letters)));
  await type('');
  return times;
}`;
