import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appOnPhone, DESK, PHONE } from './browser.ts';
import { stopAt } from './keyboard.ts';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Three more bars beside the one that offers to undo: as when the store was cleared, a photo kept apart and a worker started again. */
const pileUp = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const bar = document.querySelector('.bars .bar')!;
    for (let more = 0; more < 3; more++) bar.after(bar.cloneNode(true));
  });

describe.each([
  ['phone', PHONE, 4841],
  ['desk', DESK, 4842],
] as const)('bars above the tabs, at %s size', (_, size, port) => {
  const { phone, app } = appOnPhone(port);

  it('cover nothing that the page cannot be scrolled free of, however many they are', async () => {
    const { context, page } = await phone.open(size);
    await page.goto(`${app.url}#/ground`);
    await page.getByLabel('Name of a bed or pot').fill('Long bed');
    await button(page, 'Add').click();
    await page.getByRole('link', { name: /^Long bed/ }).click();
    await button(page, 'Change the bed').click();
    await pileUp(page);

    // A keyboard that comes to a button sees all of it.
    await button(page, 'Keep it').focus();
    await page.keyboard.press('Tab');
    expect((await stopAt(page)).says).toBe('Close without keeping');
    await expect.poll(async () => (await stopAt(page)).open).toBe(1);

    // A thumb that scrolls to the end sees the last line of the page.
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    const gap = () =>
      page.evaluate(() => {
        const last = [...document.querySelectorAll('main p')].at(-1)!;
        const bars = document.querySelector('.bars')!;
        return bars.getBoundingClientRect().top - last.getBoundingClientRect().bottom;
      });
    await expect.poll(gap).toBeGreaterThan(0);

    await button(page, 'Close without keeping').click();
    await expect.poll(() => button(page, 'Close without keeping').count()).toBe(0);
    await context.close();
  });
});
