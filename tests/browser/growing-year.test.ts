import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { RECURRING_WORDS } from '../../src/app/words/recurring.ts';
import type { Zone } from '../../src/days/growing-year.ts';
import type { GardenRecord } from '../../src/garden/records.ts';
import { record } from '../garden/small-garden.ts';
import { appOnPhone, chooseCrop, PHONE, snapBoth, watch } from './browser.ts';
import { settled as atRest } from './screen-faults.ts';
import { plantGarden } from './seed-garden.ts';

const NEW_YEAR = new Date('2026-01-10T09:00:00Z');

const settled = (id: string, openedOn: string) =>
  record('case', id, {
    bed: 'Long bed',
    bedId: 'long',
    plant: id,
    crop: 'kale',
    openedOn,
    closedOn: openedOn,
    outcome: { settledOn: openedOn, causes: ['aphids'], sureness: 'seen', lost: '', done: '' },
  });
const SUMMER: readonly GardenRecord[] = [
  record('bed', 'long', { name: 'Long bed' }),
  record('planting', 'kale', { crop: 'kale', bedId: 'long', plantedOn: '2025-10-05' }),
  record('event', 'limed', { bedId: 'long', what: 'limed', date: '2025-05-20' }),
  settled('First kale', '2025-12-20'),
  settled('Second kale', '2026-01-05'),
];

async function live(page: Page, url: string, zone: Zone): Promise<void> {
  await page.clock.setFixedTime(NEW_YEAR);
  await page.goto(url);
  await page.evaluate(
    (preferences) => localStorage.setItem('bedside-preferences', preferences),
    JSON.stringify({ zone }),
  );
  await page.reload();
}

describe('January in another place than the north', () => {
  const { phone, app } = appOnPhone(4861);

  it('one summer of the south is one year of its bed, and no return', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await live(page, app.url, 'south');
    await plantGarden(page, { records: SUMMER, photos: [] });

    await page.goto(`${app.url}#/ground/long`);
    await page.getByRole('heading', { name: '2025–26, newest first' }).waitFor();
    const happened = page.locator('.happenings li');
    expect(await happened.count()).toBe(3);
    expect(await page.getByRole('combobox', { name: 'Year' }).locator('option').allInnerTexts()).toEqual([
      '2025–26',
      '2024–25',
    ]);
    await snapBoth(page, 'growing-year-bed');

    await page.getByRole('link', { name: 'A sheet to print or hand on' }).click();
    await page.getByRole('heading', { name: 'Long bed, 2025–26' }).waitFor();
    expect(await page.locator('.sheet-facts dt').count()).toBe(3);
    await page.reload();
    await page.getByRole('heading', { name: 'Long bed, 2025–26' }).waitFor();

    await page.goto(`${app.url}#/book/recurring`);
    await page.getByText('2 cases settled, 1 cause, in 2025–26.').waitFor();
    await page.getByText('No cause has come back to a bed where it was in another year.').waitFor();
    await page.getByRole('link', { name: '2 cases, Long bed, 2025–26' }).click();
    await page.getByRole('heading', { level: 1, name: 'Aphids: Long bed, 2025–26' }).waitFor();
    expect((await page.locator('.entries .entry-plant').allTextContents()).sort()).toEqual([
      'First kale',
      'Second kale',
    ]);
    await snapBoth(page, 'growing-year-cases');
    expect(complaints).toEqual([]);
  });
});

/** What a page says of a season of the year, folded parts, names and labels included. */
async function seasonsSaid(page: Page): Promise<string[]> {
  for (let shut = 1; shut > 0; ) {
    shut = await page.evaluate(() => {
      const folds = [...document.querySelectorAll<HTMLDetailsElement>('main details:not([open])')];
      for (const fold of folds) fold.open = true;
      return folds.length;
    });
    await atRest(page);
  }
  const said = await page.evaluate(() => {
    const main = document.querySelector('main')!;
    const texts = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    const all: string[] = [];
    while (texts.nextNode()) all.push(texts.currentNode.textContent ?? '');
    for (const element of main.querySelectorAll('*'))
      for (const name of ['aria-label', 'title', 'alt', 'placeholder'])
        all.push(element.getAttribute(name) ?? '');
    return all;
  });
  expect(said.length).toBeGreaterThan(20);
  return said.filter((text) =>
    /\b(spring|summer|autumn|winter)s?\b/i.test(text.replace(/no winter comes here/i, '')),
  );
}

describe('January where no winter comes', () => {
  const { phone, app } = appOnPhone(4886);

  it.each(['tropics', 'north'] as const)(
    'a look, its ranking and reasons and its case speak of no season there, as they do in the north: %s',
    { timeout: 120_000 },
    async (zone) => {
      const { context, page } = await phone.open(PHONE);
      const { complaints } = watch(context);
      await live(page, app.url, zone);
      await page.goto(`${app.url}#/look/new`);
      await chooseCrop(page, 'Kale');
      const said: Record<string, readonly string[]> = { 'as it opens': await seasonsSaid(page) };
      const press = (name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
      await press('Pale or yellow');
      await press('Small for its age');
      await press('Done');
      await press('All over, all alike');
      await page.locator('.verdict-headline').waitFor();
      await page.locator('.segment', { hasText: 'All questions' }).click();
      said.look = await seasonsSaid(page);
      const reasons = page.locator('.weighing .reason');
      expect(await reasons.count()).toBeGreaterThan(10);
      await snapBoth(page, `no-season-look-${zone}`);

      await page.getByLabel('Bed', { exact: true }).fill('Long bed');
      await page.getByLabel('Plant', { exact: true }).fill('First kale');
      await press('Keep it as a case');
      await page.getByRole('heading', { level: 1, name: 'First kale' }).waitFor();
      await page.locator('.look-line').first().waitFor();
      said.case = await seasonsSaid(page);
      await page.locator('.look-line').first().click();
      await page.getByText('The weighing as it stood on that day').waitFor();
      said.kept = await seasonsSaid(page);
      expect(await reasons.count()).toBeGreaterThan(10);
      if (zone === 'tropics') {
        expect(said).toEqual({ 'as it opens': [], look: [], case: [], kept: [] });
      } else {
        // The same walk elsewhere: what is looked for can be found.
        for (const where of ['look', 'kept']) expect(said[where]!.join(), where).toMatch(/it is winter/i);
      }
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  it('what was met twice within weeks has not come back because New Year lay between', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await live(page, app.url, 'tropics');
    await plantGarden(page, { records: SUMMER, photos: [] });
    await page.goto(`${app.url}#/book/recurring`);
    await page.getByText(RECURRING_WORDS.noReturnsWithoutWinter).waitFor();
    // The years themselves are called as the calendar calls them, and all of them can be leafed to.
    await page.getByText('2 cases settled, 1 cause, 2025 to 2026.').waitFor();
    await snapBoth(page, 'no-winter-recurring');
    await page.goto(`${app.url}#/ground/long`);
    await page.getByRole('heading', { name: '2026, newest first' }).waitFor();
    const years = page.getByRole('combobox', { name: 'Year' });
    expect(await years.locator('option').allInnerTexts()).toEqual(['2026', '2025']);
    await years.selectOption('2025');
    await page.getByRole('heading', { name: '2025, newest first' }).waitFor();
    expect(await page.locator('.happenings li').count()).toBe(3);

    // The same two cases in the north, where a winter lies between them.
    await live(page, app.url, 'north');
    await page.goto(`${app.url}#/book/recurring`);
    await page.getByRole('link', { name: 'Aphids in Long bed: 2025 and 2026' }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
