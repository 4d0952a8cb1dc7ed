import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { accessibilityFaults, appOnPhone, PHONE, snap, watch } from './browser.ts';

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) });
const keep = (page: Page) => button(page, 'Keep it').click();

async function addBed(page: Page, name: string): Promise<void> {
  await page.getByLabel('Name of a bed or pot').fill(name);
  await button(page, 'Add').click();
  await page.locator('.bed-name', { hasText: name }).waitFor();
}

describe('every field of what is on record', () => {
  const { phone, app } = appOnPhone(4761);

  it('can be changed afterwards', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(`${app.url}#/ground`);
    await addBed(page, 'Long bed');
    await addBed(page, 'Short bed');

    // A load: its share of wood, a reading, and where it went.
    await page.goto(`${app.url}#/ground/batches`);
    await page.getByLabel('What do you call it?').fill('Chipped heap');
    await button(page, 'Add').click();
    await page.getByRole('link', { name: 'Chipped heap' }).click();
    await button(page, 'Change the details').click();
    const wood = page.getByLabel(/^How much of it is wood/);
    await wood.fill('400');
    await keep(page);
    await page.getByText(/write a number from 0 to 100/).waitFor();
    await wood.fill('30');
    await keep(page);
    await page.getByText('30 of 100 wood').waitFor();
    await button(page, 'Change the details').click();
    expect(await wood.inputValue()).toBe('30');
    await wood.fill('12,5');
    await snap(page, 'change-batch-phone');
    await keep(page);
    await page.getByText('12.5 of 100 wood').waitFor();

    await button(page, 'Add a reading').click();
    await button(page, '55 °C').click();
    await page.getByText('The readings in words').click();
    await button(page, /^Change: .*55 °C/).click();
    await page.getByLabel('In the middle, °C').fill('540');
    await keep(page);
    await page.getByText(/In the middle, °C: write a number from −30 to 95/).waitFor();
    await page.getByLabel('In the middle, °C').fill('54,5');
    await page.getByLabel('Turned that day?').selectOption('Yes');
    await keep(page);
    await page.getByText(/54\.5 °C.*, turned/).waitFor();

    // Shown and typed in other units; what is kept stays as it was.
    const batch = page.url();
    await page.goto(`${app.url}#/help`);
    await page.getByRole('radio', { name: '°F' }).check();
    await page.getByRole('radio', { name: 'inches' }).check();
    await page.getByRole('radio', { name: 'June 18' }).check();
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'change-units-phone');
    await page.goto(batch);
    await page.getByText('The readings in words').click();
    await button(page, /^Change: \w+, \w+ \d+, \d{4}: 130\.1 °F/).click();
    await page.getByLabel('In the middle, °F').fill('131');
    await keep(page);
    await page.getByText(/: 131 °F.*, turned/).waitFor();
    await page.goto(`${app.url}#/help`);
    await page.getByRole('radio', { name: '°C' }).check();
    await page.getByRole('radio', { name: 'cm and mm' }).check();
    await page.getByRole('radio', { name: '18 June' }).check();
    await page.goto(batch);
    await page.getByText('The readings in words').click();
    await page.getByText(/: 55 °C.*, turned/).waitFor();

    // One barrow goes on two beds at a time; what went where can be put right afterwards, one by one.
    await button(page, 'Put it on beds').click();
    await page.getByRole('group', { name: 'On which beds?' }).getByLabel('Long bed').check();
    await page.getByRole('group', { name: 'On which beds?' }).getByLabel('Short bed').check();
    await page.getByLabel('How deep, cm').fill('3');
    await snap(page, 'change-several-phone');
    await keep(page);
    await button(page, /^Change: Short bed, .*3 cm/).waitFor();
    await button(page, /^Change: Long bed, .*3 cm/).click();
    await page.getByLabel('On which bed?').selectOption('Short bed');
    await keep(page);
    await expect.poll(() => button(page, /^Change: Short bed, .*3 cm/).count()).toBe(2);
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'change-went-phone');

    await button(page, 'Put it under suspicion').click();
    await page.getByLabel('Since when?').fill('2026-02-03');
    await page.getByRole('heading', { name: 'Under suspicion since Tuesday 3 February 2026' }).waitFor();

    // What was done and what was sown go to the other bed.
    await page.goto(`${app.url}#/ground`);
    await page.getByRole('link', { name: /^Long bed/ }).click();
    await button(page, 'Something was done').click();
    expect(await page.getByLabel('On which bed?').count()).toBe(0);
    await page.getByLabel('What was it?').selectOption('Fed');
    await keep(page);
    await button(page, 'Change: Fed').click();
    await page.getByLabel('How much?').selectOption('A lot');
    await page.getByLabel('On which bed?').selectOption('Short bed');
    await keep(page);
    await expect.poll(() => page.locator('.happening').count()).toBe(0);
    await button(page, 'Sown or planted').click();
    await page.getByLabel('Crop', { exact: true }).selectOption('Kale');
    await page.getByLabel('Sown on').fill('2026-03-01');
    await keep(page);
    await button(page, 'Change: Kale').click();
    await page.getByLabel('On which bed?').selectOption('Short bed');
    await keep(page);
    await expect.poll(() => page.locator('.happening').count()).toBe(0);
    await page.goto(`${app.url}#/ground`);
    await page.getByRole('link', { name: /^Short bed/ }).click();
    await page.locator('.happening', { hasText: 'Fed, a lot' }).waitFor();
    await page.locator('.happening', { hasText: 'Kale sown' }).waitFor();
    expect(complaints).toEqual([]);
  });
});
