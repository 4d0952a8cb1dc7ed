import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appOnPhone, chooseCrop, PHONE, snap } from './browser.ts';
import { SMALL } from './screen-faults.ts';

const field = (page: Page) => page.getByLabel('Day of this look');

/** The words that stand over the field: how far they reach beside the field, and how far the icon of the browser's own lies from them. */
const roomForWords = (page: Page) =>
  page.locator('.look-date .day-field').evaluate((element) => {
    const { width } = element.getBoundingClientRect();
    const { font } = getComputedStyle(element, '::after');
    const brush = document.createElement('canvas').getContext('2d')!;
    brush.font = font;
    return width - brush.measureText(element.getAttribute('data-says')!).width;
  });

describe('what is typed in', () => {
  const { phone, app } = appOnPhone(4891);

  it('a day that cannot be is refused with a sentence, and the day before it stays', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.clock.setFixedTime('2026-05-20T12:00:00');
    await page.goto(`${app.url}#/look/new`);
    await chooseCrop(page, 'Kale');
    await page.getByRole('button', { name: 'Another day' }).click();
    for (const size of [PHONE, SMALL]) {
      await page.setViewportSize(size);
      // The browser's icon takes 20 px and a gap at the end of the field.
      expect(await roomForWords(page)).toBeGreaterThan(28);
      expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
    }
    await field(page).fill('2026-05-18');
    await page.getByText('Monday 18 May, as you set it.').waitFor();
    for (const [day, says] of [
      ['2031-01-01', 'Wednesday 1 January 2031 is still to come. Choose today or a day before it.'],
      ['1900-01-01', 'Monday 1 January 1900 is too long ago.'],
    ] as const) {
      await field(page).fill(day);
      await page.getByRole('alert').filter({ hasText: says }).waitFor();
      await field(page).blur();
      expect(await field(page).inputValue(), day).toBe('2026-05-18');
      expect(await page.getByText('Monday 18 May, as you set it.').count(), day).toBe(1);
      await snap(page, `typed-in-${day}`);
    }
    // Typed digit by digit the year passes through years that cannot be.
    await field(page).focus();
    // The same in either order of day and month: the field follows the browser's own language.
    await page.keyboard.type('05052026');
    await page.getByText('Tuesday 5 May, as you set it.').waitFor();
    await expect.poll(() => page.locator('.day-fault').count()).toBe(0);
    await context.close();
  });

  it('a number that cannot be is answered with the numbers that can', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look/new`);
    await chooseCrop(page, 'Kale');
    await page.getByRole('radio', { name: 'All questions' }).check();
    await page.locator('summary', { hasText: 'Where and how it grows' }).click();
    const exact = page.getByLabel(/^Or exactly, in weeks/).first();
    await exact.fill('3');
    await exact.blur();
    await exact.fill('9999');
    await exact.blur();
    await page.getByText(/^9999 cannot be\. Type a number from \d+ to \d+/).waitFor();
    await expect.poll(() => exact.inputValue()).toBe('3');
    await exact.fill('4');
    await exact.blur();
    await expect.poll(() => page.getByText(/^9999 cannot be/).count()).toBe(0);
    expect(await exact.inputValue()).toBe('4');

    // Asked one at a time, the button says why it does nothing.
    await page.goto(`${app.url}#/walk`);
    await page.getByRole('link', { name: 'A plant looks wrong' }).click();
    await chooseCrop(page, 'Kale');
    await page.getByRole('button', { name: 'Small for its age', exact: true }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    await page.locator('.verdict-headline').waitFor();
    for (let asked = 0; asked < 12 && (await page.locator('.number-answer').count()) === 0; asked++) {
      const before = await page.locator('.question-asks').innerText();
      const wood = page.locator('.answer', { hasText: /wood|straw/i }).first();
      if ((await wood.count()) > 0) {
        await wood.click();
        if ((await page.getByRole('button', { name: 'Done' }).count()) > 0)
          await page.getByRole('button', { name: 'Done' }).click();
      } else
        await page
          .locator('.question .answer', { hasText: /^(Yes|Can’t say|Not now)$/ })
          .first()
          .click();
      await expect.poll(() => page.locator('.question-asks').innerText()).not.toBe(before);
    }
    await page.locator('.number-answer input').fill('9999');
    await page.getByRole('button', { name: 'Set', exact: true }).click();
    await page.getByText(/^9999 cannot be\. Type a number from/).waitFor();
    expect(await page.locator('.number-answer input').inputValue()).toBe('9999');
    await snap(page, 'typed-in-number');
    await context.close();
  });
});
