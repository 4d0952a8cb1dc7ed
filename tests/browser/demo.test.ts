import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../src/causes/cautions.ts';
import {
  accessibilityFaults,
  appOnPhone,
  chooseCrop,
  DESK,
  PHONE,
  sayItIsSmall,
  snap,
  watch,
} from './browser.ts';

const STRIP = 'Invented garden — nothing here is yours';

/** Everything that lies in the databases of this page, as text; pictures by their size. */
const everythingStored = (page: Page): Promise<Record<string, string>> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const found: Record<string, string> = {};
    for (const { name } of await indexedDB.databases()) {
      const database = await asked(indexedDB.open(name!));
      for (const store of database.objectStoreNames) {
        const objects = database.transaction(store).objectStore(store);
        const [keys, values] = await Promise.all([asked(objects.getAllKeys()), asked(objects.getAll())]);
        keys.forEach((key, place) => {
          const value: unknown = values[place];
          found[`${name}/${store}/${key}`] =
            value instanceof Blob ? `${value.size} bytes` : JSON.stringify(value);
        });
      }
      database.close();
    }
    return found;
  });

const toPlace = (page: Page, place: string) =>
  page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place, exact: true }).click();

/** A case of the grower's own. */
async function keepOwnCase(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'A plant looks wrong' }).click();
  await chooseCrop(page, 'Kale');
  await sayItIsSmall(page);
  await page.getByLabel('Bed', { exact: true }).fill('My bed');
  await page.getByLabel('Plant', { exact: true }).fill('My own kale');
  await page.getByRole('button', { name: 'Keep it as a case' }).click();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe('My own kale');
}

describe.each([
  ['phone', PHONE, 4731],
  ['desk', DESK, 4732],
] as const)('the invented garden, at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);

  it('can be stopped while it loads: no worker goes on, nothing of it is left, and the own garden is as it was', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.getByRole('link', { name: 'Help and settings' }).click();
    const load = page.getByRole('button', { name: 'Load the invented garden' });
    const stop = page.getByRole('button', { name: 'Stop loading' });
    const demoWorkers = () => page.workers().filter((worker) => worker.url().includes('demo-worker'));
    const before = await everythingStored(page);
    for (const way of ['button', 'other page'] as const) {
      await load.click();
      await page.getByText(/^Plant \d+ of \d+ weighed…$/).waitFor({ timeout: 120_000 });
      expect(demoWorkers().length).toBeGreaterThan(0);
      if (way === 'button') {
        await snap(page, `demo-loading-${name}`);
        await stop.click();
        await page.getByText(/^Stopped\. Nothing of it is kept/).waitFor();
        expect(await stop.count()).toBe(0);
        expect(await load.evaluate((one) => one === document.activeElement)).toBe(true);
      } else await toPlace(page, 'Ground');
      await expect.poll(() => demoWorkers().length).toBe(0);
      await expect
        .poll(() =>
          page.evaluate(async () => ({
            databases: (await indexedDB.databases()).filter((one) => one.name?.includes('demo')),
            mark: localStorage.getItem('bedside-demo'),
          })),
        )
        .toEqual({ databases: [], mark: null });
      expect(await everythingStored(page)).toEqual(before);
    }
    expect(await page.getByText(STRIP).count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  }, 300_000);

  it('loads with one tap, is marked everywhere, and is gone without trace', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.getByRole('button', { name: 'Load the invented garden' }).waitFor();
    await snap(page, `demo-way-in-${name}`);
    await keepOwnCase(page);
    const before = await everythingStored(page);
    expect(Object.keys(before).length).toBeGreaterThan(2);

    await page.getByRole('link', { name: 'Help and settings' }).click();
    await page.getByRole('button', { name: 'Load the invented garden' }).click();
    await page.getByText(STRIP).waitFor({ timeout: 300_000 });
    await page.getByText('Third kale from the path').first().waitFor();
    await snap(page, `demo-walk-${name}`);
    // The test pots of one load are due, and lead to where they are scored.
    await page.getByRole('link', { name: /Look at the test pots of Horse manure/ }).waitFor();
    // Looked at in full: while the page is scrolled the strip lies over its head, and the tabs over what is half in sight.
    await page.setViewportSize({ width: size.width, height: 2400 });
    await page.evaluate(() => scrollTo(0, 0));
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.setViewportSize(size);
    for (const place of ['Look', 'Ground', 'Book']) {
      await toPlace(page, place);
      expect(await page.getByText(STRIP).isVisible()).toBe(true);
    }
    expect(await page.getByText('My own kale').count()).toBe(0);
    await page.getByText('Tomato by the tunnel door').first().click();
    await expect
      .poll(() => page.getByRole('heading', { level: 1 }).innerText())
      .toBe('Tomato by the tunnel door');
    await expect.poll(() => page.locator('.look-line img').count()).toBe(2);
    await snap(page, `demo-case-${name}`);
    const mind = page.getByRole('region', { name: 'Mind' });
    // Where a case looks like weedkiller, what went on its bed can be tested.
    await toPlace(page, 'Book');
    await page.getByText('Beans, middle of the row').first().click();
    // What to mind stands there with what to check: not to eat from them, not to compost them, to follow local rules.
    for (const caution of ['residue', 'do-not-compost', 'local-rules'] as const)
      await mind.getByText(CAUTIONS[caution]).waitFor();
    await page.getByRole('link', { name: 'Sow a pot test of Horse manure from the stable' }).click();
    await expect
      .poll(() => page.getByRole('heading', { level: 1 }).innerText())
      .toBe('Plan a pot test of Horse manure from the stable');
    // What is to be done stands on the case itself, as the newest look said it.
    await toPlace(page, 'Book');
    await page.getByText('Sweetcorn, front row').first().click();
    await page.getByText(/^Act now: /).waitFor();
    await mind.getByText(CAUTIONS.feeds).waitFor();
    expect(await page.getByText(STRIP).isVisible()).toBe(true);
    await page.getByRole('link', { name: 'Help and settings' }).click();
    await page.getByLabel('Read a backup file').setInputFiles({
      name: 'bedside-garden.zip',
      mimeType: 'application/zip',
      buffer: Buffer.from('never opened'),
    });
    await expect
      .poll(() => page.getByRole('alert').allInnerTexts())
      .toContainEqual(
        expect.stringContaining('Tap “Leave it” at the top, then read the file in your own garden.'),
      );
    // It lies where it is in season, and says so: the place of one's own garden cannot be changed from in here.
    const zone = page.getByRole('group', { name: 'Your garden lies' });
    await page.getByText(/^The invented garden lies (north|south) of the equator\.$/).waitFor();
    expect(await zone.count()).toBe(0);
    const during = await everythingStored(page);
    expect(during).toMatchObject(before);
    expect(Object.keys(during).length).toBeGreaterThan(Object.keys(before).length + 100);

    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByText('My own kale').first().waitFor();
    expect(await page.getByText(STRIP).count()).toBe(0);
    await expect.poll(() => everythingStored(page)).toEqual(before);
    await page.getByRole('link', { name: 'Help and settings' }).click();
    await zone.waitFor();
    const left = await page.evaluate(async () => ({
      databases: (await indexedDB.databases()).filter(({ name }) => name?.includes('demo')),
      mark: localStorage.getItem('bedside-demo'),
    }));
    expect(left).toEqual({ databases: [], mark: null });
    expect(complaints).toEqual([]);
  }, 420_000);
});
