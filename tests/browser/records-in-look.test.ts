import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { growingHalf } from '../../src/app/demo/growing-half.ts';
import { dayOf } from '../../src/app/words/dates.ts';
import { seasonOf } from '../../src/season/season-of.ts';
import { SETTINGS, type SettingId } from '../../src/signs/settings.ts';
import { accessibilityFaults, appOnPhone, DESK, PHONE, snap, watch } from './browser.ts';

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) });
const keep = (page: Page) => button(page, 'Keep it').click();

/** Everything a look asks of a bed and of what went on it. */
const OF_THE_BED: readonly SettingId[] = [
  'place',
  'soil-kind',
  'soil-ph',
  'bed-disturbed',
  'compost-kinds',
  'compost-state',
  'compost-celsius',
  'compost-age',
  'compost-ammonia',
  'hay-source',
  'wood-in-root-zone',
  'wood-on-surface',
  'weeks-since-mixed-in',
];

async function addBed(page: Page, name: string): Promise<void> {
  await page.getByLabel('Name of a bed or pot').fill(name);
  await button(page, 'Add').click();
  await page.locator('.bed-name', { hasText: name }).waitFor();
}

/** A bed with wood chips dug in in spring, kale planted out on it, and another bed. */
async function fillGround(page: Page, url: string): Promise<void> {
  await page.goto(`${url}#/ground`);
  await addBed(page, 'Long bed');
  await addBed(page, 'Short bed');
  await page.goto(`${url}#/ground/batches`);
  await page.getByLabel('What do you call it?').fill('Chipped branches');
  await button(page, 'Add').click();
  await page.getByRole('link', { name: 'Chipped branches' }).click();
  await button(page, 'Change the details').click();
  await page.getByLabel('What is it?').selectOption('Wood chips');
  await keep(page);
  await button(page, 'Put it on beds').click();
  await page.getByLabel('Long bed').check();
  await page.getByLabel('Day', { exact: true }).fill('2025-04-12');
  await page.getByLabel('How deep, cm').fill('4');
  await page.getByLabel('Mixed in or on top?').selectOption('Mixed in');
  await keep(page);
  await button(page, /^Change: Long bed, .*4 cm/).waitFor();
  // The form had today filled in as the day it came.
  await page.getByText(/^By what is kept it came on/).waitFor();
  await button(page, 'Change the details').click();
  await page.getByLabel('Came on').fill('2025-04-10');
  await keep(page);
  await expect.poll(() => page.getByText(/^By what is kept it came on/).count()).toBe(0);
  await page.goto(`${url}#/ground`);
  await page.getByRole('link', { name: /^Long bed/ }).click();
  await button(page, 'Change the bed').click();
  await page.getByLabel('Where is it?').selectOption('Open ground');
  await page.getByLabel('Soil', { exact: true }).selectOption('Loam');
  await page.getByLabel('Is the soil acid or chalky?').selectOption('About neutral');
  await keep(page);
  await button(page, 'Sown or planted').click();
  await page.getByLabel('Crop', { exact: true }).selectOption('Kale');
  await page.getByLabel('Variety').fill('a blue curly one');
  await page.getByLabel('Planted out on').fill('2025-05-05');
  await page.getByLabel('Hardened off first?').selectOption('Yes');
  await keep(page);
  await button(page, 'Change: Kale, a blue curly one').waitFor();
}

const weighed = (page: Page) => page.locator('.result[aria-busy="false"] .weighing .cause').first();
const leading = async (page: Page): Promise<string> => {
  await weighed(page).waitFor();
  return page.locator('.weighing .cause .cause-name').first().innerText();
};
const LOCKED = 'Nitrogen locked up';
const records = (page: Page) => page.locator('.from-records');

describe.each([
  ['phone', PHONE, 4791],
  ['desk', DESK, 4792],
] as const)('the garden’s records in a look, at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);

  it('answer for the grower, say from where, and can be overruled and restored', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await fillGround(page, app.url);

    await page.goto(`${app.url}#/look/new`);
    await button(page, 'Another day').click();
    await page.getByLabel('Day of this look').fill('2025-06-10');
    await button(page, 'Pale or yellow').click();
    await button(page, 'Done').click();
    await button(page, 'All over, the oldest most').click();
    await expect.poll(() => leading(page)).not.toBe(LOCKED);

    // One tap on the line, one on the planting.
    await records(page).locator('summary').click();
    await snap(page, `records-1-beds-${name}`);
    expect(await accessibilityFaults(page)).toEqual([]);
    await button(page, 'Kale, a blue curly one, in Long bed').click();
    await expect.poll(() => leading(page)).toBe(LOCKED);
    expect(await page.locator('.crop-name').innerText()).toBe('Kale');
    expect(await page.getByLabel('Variety, if you know it').inputValue()).toBe('a blue curly one');
    expect(await page.getByLabel('Bed', { exact: true }).inputValue()).toBe('Long bed');
    expect(await records(page).locator('summary').innerText()).toMatch(/Long bed.*\d+ answers/s);

    // Not a word about the bed, however long one goes on.
    const about = OF_THE_BED.map((id) => SETTINGS[id].asks);
    const asked: string[] = [];
    for (let i = 0; i < 12; i++) {
      const ask = await page.locator('.question-text').innerText();
      asked.push(ask);
      await page
        .locator('.question')
        .getByRole('button', { name: /^(Can’t say|Not now)$/ })
        .click();
      await expect.poll(() => page.locator('.question-text').innerText()).not.toBe(ask);
    }
    expect(new Set(asked).size).toBe(12);
    expect(asked.filter((ask) => about.some((one) => ask.includes(one)))).toEqual([]);
    expect(await leading(page)).toBe(LOCKED);

    // What the records say, and from where; overruled, the ranking turns away and asks; restored, it turns back.
    await records(page).locator('summary').click();
    const wood = records(page).locator('.recorded-line', { hasText: 'mixed into the rooting depth: yes' });
    const source = records(page)
      .locator('.recorded-group', { hasText: 'mixed into the rooting depth: yes' })
      .locator('h3');
    expect(await source.innerText()).toMatch(
      /Chipped branches, 4 cm mixed in, on Long bed, Saturday 12 April/,
    );
    await snap(page, `records-2-said-${name}`);
    expect(await accessibilityFaults(page)).toEqual([]);
    await wood.getByRole('button', { name: /^Not so/ }).click();
    await expect.poll(() => leading(page)).not.toBe(LOCKED);
    await expect
      .poll(() => page.locator('.question-asks').innerText())
      .toBe(SETTINGS['wood-in-root-zone'].asks);
    await snap(page, `records-3-overruled-${name}`);
    await wood.getByRole('button', { name: /^Let the record stand/ }).click();
    await expect.poll(() => leading(page)).toBe(LOCKED);

    // Kept: which answers came from records stays known; the next look knows the place.
    await button(page, 'Keep it as a case').click();
    await page
      .getByRole('link', { name: /Tuesday 10 June 2025/ })
      .first()
      .click();
    const said = page.locator('dl.said div', { hasText: SETTINGS['wood-in-root-zone'].asks });
    expect(await said.locator('dd').innerText()).toBe('yes, from your records');
    await page.goBack();
    await button(page, 'Look again now').click();
    await expect.poll(() => records(page).locator('summary').innerText()).toMatch(/In Long bed/);
    expect(complaints).toEqual([]);
  });
});

describe('the place of a new look', () => {
  const { phone, app } = appOnPhone(4793);
  const seasonsSaid = async (page: Page): Promise<ReadonlySet<string>> => {
    await page.goto(`${app.url}#/look/new`);
    await button(page, 'Pale or yellow').click();
    await button(page, 'Done').click();
    await button(page, 'All over, all alike').click();
    await page.locator('.result[aria-busy="false"] .weighing .cause').first().waitFor();
    for (const fold of await page
      .locator('.weighing .cause summary', { hasText: 'All reasons in words' })
      .all())
      await fold.click();
    const reasons = await page.locator('.weighing .reason > span:first-child').allTextContents();
    return new Set(reasons.flatMap((says) => /^It is (\w+)/.exec(says)?.[1] ?? []));
  };

  /** Loads the page at the Walk, so that no look of before is on its way. */
  const startAnew = async (page: Page): Promise<void> => {
    await page.goto(`${app.url}#/walk`);
    await page.reload();
    await page.getByRole('link', { name: 'A plant looks wrong' }).waitFor();
  };

  it('is the one that is set, and in the invented garden that garden’s own', async () => {
    const { page } = await phone.open(PHONE);
    const today = dayOf(new Date());
    await page.goto(app.url);
    for (const zone of ['north', 'south'] as const) {
      await page.evaluate(
        (preferences) => localStorage.setItem('bedside-preferences', preferences),
        JSON.stringify({ zone }),
      );
      await startAnew(page);
      expect([...(await seasonsSaid(page))]).toEqual([seasonOf(today, zone)]);
    }
    const own = growingHalf(today);
    await page.evaluate(
      ([preferences]) => {
        localStorage.setItem('bedside-preferences', preferences!);
        localStorage.setItem('bedside-demo', 'in');
      },
      [JSON.stringify({ zone: own === 'north' ? 'south' : 'north' })],
    );
    await startAnew(page);
    expect([...(await seasonsSaid(page))]).toEqual([seasonOf(today, own)]);
  });
});
