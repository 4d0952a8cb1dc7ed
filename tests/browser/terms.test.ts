import { expect, it } from 'vitest';
import { accessibilityFaults, appOnPhone, chooseCrop, PHONE, sayItIsSmall, snap, watch } from './browser.ts';

const { phone, app } = appOnPhone(4736);

it('a term of the trade explains itself with a drawing, and the help page lists them all', async () => {
  const { context, page } = await phone.open(PHONE);
  const { complaints } = watch(context);
  await page.goto(`${app.url}#/look/new`);
  await chooseCrop(page, 'Kale');
  await sayItIsSmall(page);
  const term = page.locator('.cause-name .term').first();
  const word = await term.innerText();
  await term.click();
  const note = page.getByRole('dialog');
  await note.getByRole('heading').waitFor();
  await expect.poll(() => note.locator('svg path').count()).toBeGreaterThan(3);
  expect(await accessibilityFaults(page)).toEqual([]);
  await snap(page, 'term-phone');
  await page.keyboard.press('Escape');
  await expect.poll(() => note.count()).toBe(0);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(word);
  // By keyboard alone, and from one term to the next.
  await page.keyboard.press('Enter');
  await note.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => note.count()).toBe(0);
  await page.goto(`${app.url}#/help`);
  await page.getByText('Nitrogen locked up', { exact: true }).click();
  await page.getByText(/Whatever rots wood or straw needs nitrogen/).waitFor();
  await page.getByText(/^preact \d+\.\d+\.\d+, MIT/).click();
  await page
    .locator('.licence-text', { hasText: 'Permission is hereby granted' })
    .filter({ visible: true })
    .waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  await snap(page, 'term-help-phone');
  expect(complaints).toEqual([]);
  await context.close();
});
