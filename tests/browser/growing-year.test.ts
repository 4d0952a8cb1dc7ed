import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { GardenRecord } from '../../src/garden/records.ts';
import { record } from '../garden/small-garden.ts';
import { appOnPhone, PHONE, snapBoth, watch } from './browser.ts';
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

async function live(page: Page, url: string, zone: string): Promise<void> {
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
