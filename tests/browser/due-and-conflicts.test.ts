import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { GardenStore } from '../../src/garden/store/garden-store.ts';
import { record, weather } from '../garden/small-garden.ts';
import { accessibilityFaults, appOnPhone, snap, watch } from './browser.ts';
import { makeBackup } from './make-backup.ts';

const TODAY = '2026-05-10';
const SMALL = { width: 360, height: 740 } as const;

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const stops = (page: Page) => page.locator('.path .stop');
const toWalk = (page: Page) =>
  page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Walk' }).click();

/** Opens the page on a day of ours; clocks go on, only what day and hour they show is settled. */
async function openOn(page: Page, address: string): Promise<void> {
  await page.clock.setFixedTime(new Date(`${TODAY}T09:00:00Z`));
  await page.goto(address);
}

async function readBackup(page: Page, file: Buffer): Promise<void> {
  await page.getByRole('link', { name: 'Help and settings' }).click();
  await page
    .getByLabel('Read a backup file')
    .setInputFiles({ name: 'garden.zip', mimeType: 'application/zip', buffer: file });
  await page.getByText(/^Read: \d+ new/).waitFor();
}

const look = record('look', 'l1', {
  caseId: 'kale',
  date: '2026-05-02',
  answers: {
    crop: 'kale',
    date: '2026-05-02',
    setting: {},
    signs: { 'yellow-even@new': 'seen', 'puckered@new': 'seen', stunted: 'seen', 'holes@old': 'absent' },
  },
});
const kale = record('case', 'kale', {
  bed: 'Long bed',
  plant: 'Third kale',
  crop: 'kale',
  openedOn: '2026-05-02',
});
const summary = {
  id: 'l1',
  date: '2026-05-02',
  verdict: 'watch',
  leading: ['cold-check'],
  photos: [],
  lookAgain: '2026-05-09',
};

/** A look that is overdue, a hot heap that was read five days ago, and a night of −3 °C over tomatoes in the open. */
async function fillWithDueThings(store: GardenStore): Promise<void> {
  await store.saveRecords([
    record('bed', 'long', { name: 'Long bed', order: 1 }),
    record('bed', 'wall', { name: 'Wall bed', order: 2, place: 'open-ground' }),
    record('planting', 'tomato', { crop: 'tomato', bedId: 'wall', plantedOn: '2026-05-01' }),
    record('batch', 'heap', {
      name: 'Heap by the shed',
      what: 'own-compost',
      startedOn: '2026-04-20',
      readings: [{ id: 'r', date: '2026-05-05', celsius: 60 }],
    }),
    ...weather('2026-05-12', [[-3, 9]], { forecast: true }),
  ]);
  await store.saveLook(kale, look, summary);
}

describe('what is due today, on a small phone', () => {
  const { phone, app } = appOnPhone(4751);

  it('leads with a tap to where it is done, and is off the path once it is', async () => {
    const file = await makeBackup(`${TODAY}T07:00:00.000Z`, fillWithDueThings);
    const { context, page } = await phone.open(SMALL);
    const { complaints } = watch(context);
    await openOn(page, app.url);
    await readBackup(page, file);
    await toWalk(page);
    await expect.poll(() => stops(page).count()).toBe(4);
    const says = (await stops(page).allInnerTexts()).map((text) => text.replace(/\s+/g, ' '));
    // In the order of the beds; frost before the cold day that comes with it; the heap belongs to no bed.
    expect(says[0]).toMatch(/was due Saturday 9 May.*Third kale.*Long bed/);
    expect(says[1]).toMatch(/Tuesday 12 May.*Cover the tomato.*Wall bed · −3 °C forecast; it comes to harm/);
    expect(says[2]).toMatch(/Cold for the tomato/);
    expect(says[3]).toMatch(/Take the temperature of Heap by the shed/);
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'today-due');

    // The heap: two taps and a number.
    await stops(page).nth(3).getByRole('link').click();
    await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe('Heap by the shed');
    await button(page, 'Add a reading').click();
    await button(page, '55 °C').click();
    await page.getByRole('img', { name: /^2 readings/ }).waitFor();
    await toWalk(page);
    await expect.poll(() => stops(page).count()).toBe(3);
    expect((await stops(page).allInnerTexts()).join()).not.toContain('Heap by the shed');

    // The frost: the bed gets a roof.
    await stops(page).nth(1).getByRole('link').click();
    await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe('Wall bed');
    await button(page, 'Change the bed').click();
    await page.getByLabel('Where is it?').selectOption('under-cover');
    await button(page, 'Keep it').click();
    await toWalk(page);
    await expect.poll(() => stops(page).count()).toBe(1);
    expect(complaints).toEqual([]);

    // The look: what the young leaves showed is asked again, and nothing else of last time.
    await button(page, 'Look again now: Third kale').click();
    const before = page.getByRole('region', { name: 'Last time' });
    await expect.poll(() => before.getByRole('group').count()).toBe(2);
    const yellow = before.getByRole('group', { name: /yellow/i });
    const puckered = before.getByRole('group', { name: /crinkled or blistered/ });
    expect(await before.getByRole('radio', { checked: true }).count()).toBe(0);
    await yellow.getByRole('radio', { name: 'Gone' }).check();
    await puckered.getByRole('radio', { name: 'Still there' }).check();
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'today-last-time');
    await page.locator('.verdict-headline').waitFor();
    await button(page, 'Add it to the case').click();
    await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe('Third kale');
    await expect.poll(() => page.locator('.look-line').count()).toBe(2);
    expect(await signsOfLook(page, TODAY)).toEqual({ 'yellow-even@new': 'absent', 'puckered@new': 'seen' });
    await toWalk(page);
    await page.getByText(/^Nothing is due today/).waitFor();
    expect(complaints).toEqual([]);
  });
});

/** What a kept look of a day has as signs, from the page's own store. */
const signsOfLook = (page: Page, date: string): Promise<unknown> =>
  page.evaluate(async (day) => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await asked(indexedDB.open('bedside-records'));
    const all = await asked<{ kind?: string; date?: string; answers?: { signs: unknown } }[]>(
      database.transaction('records').objectStore('records').getAll(),
    );
    database.close();
    return all.find(({ kind, date: on }) => kind === 'look' && on === day)?.answers?.signs;
  }, date);

describe('two devices that said different things', () => {
  const { phone, app } = appOnPhone(4752);
  const at = (hour: number): string => `2026-05-09T1${hour}:00:00.000Z`;

  it('are shown side by side after a backup is read, and what is chosen holds from then on', async () => {
    const base = await makeBackup(at(0), (store) =>
      store.saveRecords([
        record('bed', 'long', { name: 'Long bed', order: 1 }),
        record('batch', 'heap', { name: 'Heap', what: 'own-compost', note: 'as it was' }),
      ]),
    );
    const one = await makeBackup(
      at(1),
      async (store) => {
        await store.changeRecord('bed', 'long', (bed) => ({ ...bed, name: 'Long one', soil: 'clay' }));
        await store.changeRecord('batch', 'heap', (batch) => ({ ...batch, note: 'turned on Friday' }));
      },
      base,
    );
    const other = await makeBackup(
      at(2),
      async (store) => {
        await store.changeRecord('bed', 'long', (bed) => ({ ...bed, name: 'By the wall', note: 'stony' }));
        await store.changeRecord('batch', 'heap', (batch) => ({ ...batch, note: 'turned on Sunday' }));
      },
      base,
    );
    const { context, page } = await phone.open(SMALL);
    const { complaints } = watch(context);
    await openOn(page, app.url);
    await readBackup(page, one);
    expect(await page.getByRole('heading', { name: 'Said differently on two devices' }).count()).toBe(0);
    await readBackup(page, other);
    await page.getByRole('heading', { name: 'Said differently on two devices' }).waitFor();
    // What only one of them touched (soil, note of the bed) is no conflict.
    const conflicts = page.locator('.conflict');
    await expect.poll(() => conflicts.count()).toBe(2);
    const bed = conflicts.filter({ hasText: 'Bed “By the wall”, name' });
    expect((await bed.innerText()).replace(/\s+/g, ' ')).toMatch(
      /Now here: By the wall.*Said on Saturday 9 May 2026: Long one/,
    );
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
    await snap(page, 'backup-conflicts');

    // One is settled against what shows, the other for it; each is gone at once.
    await page.getByRole('button', { name: 'This holds: Bed “By the wall”, name, Long one' }).click();
    await expect.poll(() => conflicts.count()).toBe(1);
    await page
      .getByRole('button', { name: 'This holds: Heap or load “Heap”, note, turned on Sunday' })
      .click();
    await expect
      .poll(() => page.getByRole('heading', { name: 'Said differently on two devices' }).count())
      .toBe(0);

    // It holds after a fresh start, and against both files read once more.
    await page.reload();
    for (const again of [one, other]) {
      await readBackup(page, again);
      expect(await conflicts.count()).toBe(0);
    }
    await page.goto(`${app.url}#/ground`);
    await expect.poll(() => page.locator('.bed-name').allInnerTexts()).toEqual(['Long one']);
    await page.getByRole('link', { name: /^Long one/ }).click();
    await page.getByText('stony').waitFor();
    expect(complaints).toEqual([]);
  });
});
