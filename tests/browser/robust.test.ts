import type { BrowserContext, Page, Worker } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { SHELL_WORDS } from '../../src/app/words/shell.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import {
  accessibilityFaults,
  answerFirst,
  appOnPhone,
  chooseCrop,
  newPhone,
  PHONE,
  sayItIsSmall,
  snap,
  watch,
} from './browser.ts';
import { smallTargets } from './screen-faults.ts';
import { serveBuild } from './serve-build.ts';

/** A look at a kale with one answer given; its address. */
async function beginLook(page: Page, url: string): Promise<string> {
  await page.goto(`${url}#/look/new`);
  await chooseCrop(page, 'Kale');
  await sayItIsSmall(page);
  await page.getByLabel('Note').fill('by the gate');
  return page.url();
}

/** All that was said is weighed, and the next question stands. */
async function isWeighed(page: Page): Promise<void> {
  await page.locator('.question-asks').waitFor();
  await expect.poll(() => page.getByText('Weighing your answer').count()).toBe(0);
}

async function keepLook(page: Page, plant: string): Promise<void> {
  await page.getByLabel('Bed', { exact: true }).fill('Long bed');
  await page.getByLabel('Plant', { exact: true }).fill(plant);
  await page.getByRole('button', { name: 'Keep it as a case' }).click();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe(plant);
}

const clearStore = async (context: BrowserContext, page: Page): Promise<void> => {
  const devtools = await context.newCDPSession(page);
  const { origin } = new URL(page.url());
  await devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await devtools.detach();
};

/** An error that nothing in the worker catches, as when it runs out of memory. */
const dieNow = (worker: Worker): Promise<void> =>
  worker.evaluate(() => {
    setTimeout(() => {
      throw new Error('made to die');
    });
  });

/** Notes what the bars say from now on, however short it stands there. */
async function listenToBars(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const said = new Set<string>();
    Object.assign(globalThis, { said });
    const bars = document.querySelector('.bars')!;
    new MutationObserver(() => {
      for (const { textContent } of bars.querySelectorAll('.bar p')) said.add(textContent ?? '');
    }).observe(bars, { childList: true, subtree: true, characterData: true });
  });
  return () => page.evaluate(() => [...(globalThis as unknown as { said: Set<string> }).said]);
}

describe('what can go wrong around the app', () => {
  const { phone, app } = appOnPhone(4738);

  it('the browser clears the store: the look on the desk is stored again, and the loss is said with what helps', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.getByText('works without signal now').waitFor();
    const address = await beginLook(page, app.url);
    await clearStore(context, page);
    await page.getByLabel('Note').fill('by the gate, second row');
    // Stored again with all that was said; the store knows nothing of the old one, so it is a look of its own.
    await expect.poll(() => page.url()).not.toBe(address);
    const again = page.url();
    await page.waitForTimeout(500);
    await page.goto('about:blank');
    await page.goto(again);
    await expect.poll(() => page.getByLabel('Note').inputValue()).toBe('by the gate, second row');
    await page.locator('.verdict-headline').waitFor();
    await page.getByText(/The browser has cleared what was kept here/).waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'robust-cleared-phone');
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await keepLook(page, 'Kale by the gate');
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Kale by the gate' }).waitFor();
    expect(await page.getByText(/The browser has cleared/).count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('the clock is set back a year and on again: nothing is lost, and days are said as they are', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.clock.setFixedTime(new Date('2026-06-18T09:00:00Z'));
    await beginLook(page, app.url);
    await keepLook(page, 'Kale in the clock');
    const address = page.url();
    await page.clock.setFixedTime(new Date('2025-06-18T09:00:00Z'));
    await page.goto('about:blank');
    await page.goto(address);
    await page.getByText(/Look again on .* 2026, in 12 months/).waitFor();
    await page.getByRole('button', { name: 'Close it without saying' }).click();
    await page.getByRole('button', { name: 'Open it again' }).waitFor();
    await page.clock.setFixedTime(new Date('2026-06-20T09:00:00Z'));
    await page.goto('about:blank');
    await page.goto(address);
    // What was done under the wrong clock stands, and can be undone under the right one.
    await page.getByRole('button', { name: 'Open it again' }).click();
    await page.getByRole('button', { name: 'Close it without saying' }).waitFor();
    await page.getByRole('link', { name: /Thursday 18 June 2026/ }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('the part that reads photos dies in the middle: that is said, it is started again, and the photo is read', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await beginLook(page, app.url);
    const said = await listenToBars(page);
    const leaf = await writeJpeg(drawLeaf({ width: 2400, height: 1800, length: 0.8, seed: 9 }).pixels);
    const begun = page.waitForEvent('worker', (worker) => worker.url().includes('photo-worker'));
    await page
      .getByLabel('Choose photos')
      .setInputFiles([{ name: 'leaf.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(leaf) }]);
    await dieNow(await begun);
    await expect.poll(() => page.locator('.layer').count()).toBeGreaterThan(0);
    expect(await said()).toEqual([SHELL_WORDS.restarted.photo]);
    // It works again, so nothing is said any more.
    await expect.poll(() => page.locator('.bars .bar').count()).toBe(0);
    await expect.poll(() => page.getByLabel('Note').inputValue()).toBe('by the gate');
    expect(complaints.filter((text) => !text.includes('made to die'))).toEqual([]);
    await context.close();
  });

  it('the part that reads photos dies with nothing to read: the notice stays until it is closed, by keyboard too', async () => {
    const { context, page } = await phone.open(PHONE);
    await beginLook(page, app.url);
    const begun = page.waitForEvent('worker', (worker) => worker.url().includes('photo-worker'));
    const leaf = await writeJpeg(drawLeaf({ width: 600, height: 450, length: 0.8, seed: 9 }).pixels);
    await page
      .getByLabel('Choose photos')
      .setInputFiles([{ name: 'leaf.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(leaf) }]);
    const worker = await begun;
    await expect.poll(() => page.locator('.layer').count()).toBeGreaterThan(0);
    const note = page.getByLabel('Note');
    await note.focus();
    await dieNow(worker);
    await page.getByText(/The part that reads photos stopped and was started again/).waitFor();
    expect(await smallTargets(page)).toEqual([]);
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'robust-restarted-phone');
    const close = page.getByRole('button', { name: 'Close', exact: true });
    for (
      let stops = 0;
      stops < 60 && !(await close.evaluate((one) => one === document.activeElement));
      stops++
    )
      await page.keyboard.press('Tab');
    const left = await page.evaluate(() => document.querySelector('main :focus') === null);
    expect(left).toBe(true);
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByText(/was started again/).count()).toBe(0);
    // Back on the page, where the reader was before.
    await expect.poll(() => page.evaluate(() => document.querySelector('main :focus') !== null)).toBe(true);
    await context.close();
  });

  it('the part that weighs dies with an answer in hand: that is said, it is started again, and the answer is weighed', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    const address = await beginLook(page, app.url);
    const said = await listenToBars(page);
    await isWeighed(page);
    const before = await page.locator('.weighing').innerText();
    const [weighs] = page.workers().filter((worker) => worker.url().includes('ranking-worker'));
    // It weighs the next answer, and dies before it can tell what came out.
    await weighs!.evaluate(() => {
      globalThis.postMessage = () => {
        setTimeout(() => {
          throw new Error('made to die');
        });
      };
    });
    await answerFirst(page);
    await expect.poll(() => page.locator('.weighing').innerText()).not.toBe(before);
    await expect.poll(() => page.getByText('Weighing your answer').count()).toBe(0);
    expect(await said()).toEqual([SHELL_WORDS.restarted.ranking]);
    await expect.poll(() => page.locator('.bars .bar').count()).toBe(0);
    // The same as if nothing had happened: the look is weighed alike when it is opened anew.
    const weighed = await page.locator('.weighing').innerText();
    await page.reload();
    await page.locator('.verdict-headline').waitFor();
    expect(page.url()).toBe(address);
    await expect.poll(() => page.locator('.weighing').innerText()).toBe(weighed);
    expect(await page.getByLabel('Note').inputValue()).toBe('by the gate');
    expect(complaints.filter((text) => !text.includes('made to die'))).toEqual([]);
    await context.close();
  });

  it('the part that weighs dies while nothing is asked of it: the next answer is weighed all the same', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await beginLook(page, app.url);
    const said = await listenToBars(page);
    await isWeighed(page);
    const before = await page.locator('.weighing').innerText();
    const [weighs] = page.workers().filter((worker) => worker.url().includes('ranking-worker'));
    await dieNow(weighs!);
    await page.getByText(SHELL_WORDS.restarted.ranking).waitFor();
    // What was weighed before stays in sight.
    expect(await page.locator('.weighing').innerText()).toBe(before);
    await answerFirst(page);
    await expect.poll(() => page.locator('.weighing').innerText()).not.toBe(before);
    await expect.poll(() => page.locator('.bars .bar').count()).toBe(0);
    expect(await said()).toEqual([SHELL_WORDS.restarted.ranking]);
    expect(await page.getByLabel('Note').inputValue()).toBe('by the gate');
    expect(complaints.filter((text) => !text.includes('made to die'))).toEqual([]);
    await context.close();
  });

  it('a newer version of the tool has written the case in another tab: this one says so and writes nothing over it', async () => {
    const { context, page } = await phone.open(PHONE);
    await beginLook(page, app.url);
    await keepLook(page, 'Kale of two versions');
    await page.evaluate(async () => {
      const asked = <T>(request: IDBRequest<T>): Promise<T> =>
        new Promise((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
      const database = await asked(indexedDB.open('bedside-records'));
      const store = database.transaction('records', 'readwrite').objectStore('records');
      const id = location.hash.split('/')[2];
      const kept = await asked(store.get(`case:${id}`));
      await asked(
        store.put(
          { ...kept, schema: 999, plant: 'of the newer version', field: 'unknown here' },
          `case:${id}`,
        ),
      );
      database.close();
    });
    await page.getByRole('button', { name: 'Close it without saying' }).click();
    await page.getByText(/a newer version of Bedside wrote this case/).waitFor();
    const stored = await page.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('bedside-records');
        request.onsuccess = () => resolve(request.result);
      });
      const id = location.hash.split('/')[2];
      return new Promise((resolve) => {
        const request = database.transaction('records').objectStore('records').get(`case:${id}`);
        request.onsuccess = () => resolve(request.result);
      });
    });
    expect(stored).toMatchObject({ schema: 999, plant: 'of the newer version', field: 'unknown here' });
    expect(stored).not.toHaveProperty('closedOn');
    await context.close();
  });
});

describe('a newer version of the app', () => {
  it('waits while a look is open, and is changed to without losing a word of it', async () => {
    // The same build twice: a line more in its service worker makes the second one newer.
    const state = { newer: false };
    const { url, stop } = await serveBuild(4739, (path, body) =>
      path === '/service-worker.js' && state.newer
        ? Buffer.concat([body, Buffer.from('\n// newer\n')])
        : body,
    );
    const phone = newPhone();
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(url);
    await page.getByText('works without signal now').waitFor();
    const address = await beginLook(page, url);
    state.newer = true;
    await page.evaluate(async () => {
      await (await navigator.serviceWorker.getRegistration())?.update();
    });
    await page.getByText('A newer version is here.').waitFor();
    // Nothing changes under the grower's hands.
    await page.getByLabel('Note').fill('by the gate, after the update came');
    await snap(page, 'robust-update-phone');
    await page.getByRole('button', { name: 'Change to it' }).click();
    await page.waitForEvent('load');
    await expect.poll(() => page.getByLabel('Note').inputValue()).toBe('by the gate, after the update came');
    expect(page.url()).toBe(address);
    await page.locator('.verdict-headline').waitFor();
    await expect.poll(() => page.getByText('A newer version is here.').count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
    await phone.throwAway();
    await stop();
  });
});
