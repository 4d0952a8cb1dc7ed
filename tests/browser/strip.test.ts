import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appOnPhone, chooseCrop, PHONE } from './browser.ts';
import { SMALL, settled } from './screen-faults.ts';

/** The strip: what it says, on how many lines, and whether it offers the way to the question. */
const stripOf = (page: Page) =>
  page.evaluate(() => {
    const verdict = document.querySelector('.strip-verdict span')!;
    const lineHeight = Number.parseFloat(getComputedStyle(verdict).lineHeight);
    return {
      says: verdict.textContent ?? '',
      lines: Math.round(verdict.getBoundingClientRect().height / lineHeight),
      offersQuestion: document.querySelector('.strip-question') !== null,
    };
  });

/** What a thumb hits in the middle of a button, once the page is scrolled to its end. */
async function hitAtEnd(page: Page, name: string): Promise<string> {
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
  return page.getByRole('button', { name, exact: true }).evaluate((button) => {
    const { left, right, top, bottom } = button.getBoundingClientRect();
    const hit = document.elementFromPoint((left + right) / 2, bottom - 2);
    return top >= 0 && hit === button ? 'the button' : (hit?.className ?? 'nothing');
  });
}

const toQuestion = (page: Page): Promise<void> =>
  page.locator('.question-asks').evaluate((element) => element.scrollIntoView({ block: 'center' }));

describe('the verdict above the tabs', () => {
  const { phone, app } = appOnPhone(4891);

  it('is two lines at most, covers nothing for good, and offers the question only where that is out of view', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look/new`);
    await chooseCrop(page, 'Kale');
    await page.getByRole('button', { name: 'Holes or bites', exact: true }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    await page.locator('.verdict-headline').waitFor();
    // On to a verdict that says more than when to look again.
    await expect.poll(() => page.locator('.question-asks').innerText()).toBe('How far on is the plant?');
    await page.locator('.question .answer').first().click();
    await expect.poll(async () => (await stripOf(page)).says).toMatch(/^Act now: /);
    for (const size of [PHONE, SMALL]) {
      await page.setViewportSize(size);
      await settled(page);
      const at = `${size.width} px`;
      await expect.poll(() => hitAtEnd(page, 'Throw this look away'), { message: at }).toBe('the button');
      await expect.poll(async () => (await stripOf(page)).offersQuestion, { message: at }).toBe(true);
      expect((await stripOf(page)).lines, at).toBeLessThanOrEqual(2);
      await toQuestion(page);
      await expect.poll(async () => (await stripOf(page)).offersQuestion, { message: at }).toBe(false);
      // The longest it can say, beside the way to the question.
      await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
      await expect.poll(async () => (await stripOf(page)).offersQuestion, { message: at }).toBe(true);
      await page.locator('.strip-verdict span').evaluate((element) => {
        element.textContent = 'Leave it. Look again on Wednesday 23 September.';
      });
      expect((await stripOf(page)).lines, at).toBeLessThanOrEqual(2);
    }
    await context.close();
  });

  it('stands above a bar that offers to undo, and both can be scrolled free of', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look/new`);
    await chooseCrop(page, 'Kale');
    await page
      .getByLabel('Choose photos')
      .setInputFiles([
        { name: 'note.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture at all') },
      ]);
    await page.getByRole('button', { name: 'Small for its age', exact: true }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    await page.locator('.strip-verdict').waitFor();
    await page.getByRole('button', { name: 'Take “note.jpg” out' }).click();
    await page.getByRole('button', { name: 'Undo', exact: true }).waitFor();
    await expect.poll(() => hitAtEnd(page, 'Throw this look away')).toBe('the button');
    const gap = await page.evaluate(() => {
      const of = (what: string) => document.querySelector(what)!.getBoundingClientRect();
      return of('.bars').top - of('.verdict-strip').bottom;
    });
    expect(Math.abs(gap)).toBeLessThan(1);
    await context.close();
  });
});
