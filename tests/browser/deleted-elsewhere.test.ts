import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { accessibilityFaults, appOnPhone, PHONE, snap, watch } from './browser.ts';

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) });

describe('a record deleted in another tab while its form is open here', () => {
  const { phone, app } = appOnPhone(4794);

  it('leaves what was typed where it is, says so, and can be kept anew', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    const other = await context.newPage();
    const deleteBed = async (): Promise<void> => {
      await other.goto(`${app.url}#/ground`);
      await other.getByRole('link', { name: /^Long bed/ }).click();
      await button(other, 'Change the bed').click();
      await button(other, 'Delete').click();
      await other.getByText('Long bed deleted.').waitFor();
    };
    await page.goto(`${app.url}#/ground`);
    await page.getByLabel('Name of a bed or pot').fill('Long bed');
    await button(page, 'Add').click();
    await page.getByRole('link', { name: /^Long bed/ }).click();

    // The bed itself.
    await button(page, 'Change the bed').click();
    await page.getByLabel('Note').fill('Wet at the lower end.');
    await deleteBed();
    await page.getByText(/^Deleted in another tab meanwhile: Long bed\./).waitFor();
    expect(await page.getByLabel('Note').inputValue()).toBe('Wet at the lower end.');
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'deleted-elsewhere-phone');
    await button(page, 'Keep it anew').click();
    await page.locator('.kept-note', { hasText: 'Wet at the lower end.' }).waitFor();

    // Something sown in it, not stored yet.
    await button(page, 'Sown or planted').click();
    await page.getByLabel('Crop', { exact: true }).selectOption('Kale');
    await page.getByLabel('Variety').fill('a blue one');
    await deleteBed();
    await page.getByText(/^Deleted in another tab meanwhile: Long bed\./).waitFor();
    expect(await page.getByLabel('Variety').inputValue()).toBe('a blue one');
    await button(page, 'Keep it anew').click();
    await button(page, 'Change: Kale, a blue one').first().waitFor();

    // The planting, while it is changed.
    await button(page, 'Change: Kale, a blue one').first().click();
    await page.getByLabel('Note').fill('Stunted from the start.');
    await other.goto(`${app.url}#/ground`);
    await other.getByRole('link', { name: /^Long bed/ }).click();
    await button(other, 'Change: Kale, a blue one').first().click();
    await button(other, 'Delete').click();
    await other.getByText('Deleted.').waitFor();
    await page.getByText(/^Deleted in another tab meanwhile: Kale, a blue one\./).waitFor();
    await button(page, 'Keep it anew').click();
    await button(page, 'Change: Kale, a blue one').first().click();
    expect(await page.getByLabel('Note').inputValue()).toBe('Stunted from the start.');

    // Without a form the page says it, and offers it back.
    await button(page, 'Close without keeping').click();
    await deleteBed();
    await page.getByText('Long bed was deleted.').waitFor();
    await button(page, 'Bring it back').click();
    await expect.poll(() => page.getByText('Long bed was deleted.').count()).toBe(0);

    // A heap, with a reading half typed.
    await page.goto(`${app.url}#/ground/batches`);
    await page.getByLabel('What do you call it?').fill('Old heap');
    await button(page, 'Add').click();
    await page.getByRole('link', { name: 'Old heap' }).click();
    await button(page, 'Add a reading').click();
    await button(page, /exact/i).click();
    await page.getByLabel('In the middle, °C').fill('41');
    await other.goto(`${app.url}#/ground/batches`);
    await other.getByRole('link', { name: 'Old heap' }).click();
    await button(other, 'Change the details').click();
    await button(other, 'Delete').click();
    await other
      .getByText(/Old heap/)
      .first()
      .waitFor();
    await page.getByText(/^Deleted in another tab meanwhile: Old heap\./).waitFor();
    await button(page, 'Keep it anew').click();
    await page.getByText('The readings in words').click();
    await page.getByText(/41 °C/).first().waitFor();
    expect(complaints).toEqual([]);
  });
});
