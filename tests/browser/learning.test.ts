import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import {
  accessibilityFaults,
  appOnPhone,
  chooseCrop,
  DESK,
  PHONE,
  sayItIsSmall,
  snap,
  watch,
} from './browser.ts';

let folder = '';
let leaf = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-learning-'));
  leaf = join(folder, 'leaf.jpg');
  writeFileSync(leaf, await writeJpeg(drawLeaf({ holes: { count: 3 } }).pixels));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const heading = (page: Page) => page.getByRole('heading', { level: 1 });

const toPlace = (page: Page, place: string) =>
  page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place, exact: true }).click();

/** A fresh look at a kale that is small for its age. */
async function lookAtKale(page: Page): Promise<void> {
  await toPlace(page, 'Walk');
  await page.getByRole('link', { name: 'A plant looks wrong' }).click();
  await chooseCrop(page, 'Kale');
  await sayItIsSmall(page);
}

async function keepIt(page: Page, bed: string, plant: string, note = ''): Promise<void> {
  await page.getByLabel('Bed', { exact: true }).fill(bed);
  await page.getByLabel('Plant', { exact: true }).fill(plant);
  await page.getByLabel('Note').fill(note);
  await page.getByRole('button', { name: 'Keep it as a case' }).click();
  await expect.poll(() => heading(page).innerText()).toBe(plant);
}

async function settleAsClubroot(page: Page, plant: string): Promise<void> {
  await page.getByRole('link', { name: 'How did it end?' }).click();
  await expect.poll(() => heading(page).innerText()).toBe('How did it end?');
  await page.getByLabel('Something else').selectOption({ label: 'clubroot' });
  await page.getByLabel('Clubroot', { exact: true }).check();
  await page.getByLabel('I saw it myself').check();
  await page.getByRole('button', { name: 'Settle the case' }).click();
  await expect.poll(() => heading(page).innerText()).toBe(plant);
}

/** Plants of a thousand, in general and here, as the page says them. */
async function ratesOf(page: Page, cause: string): Promise<number[]> {
  const cells = page.getByRole('row', { name: new RegExp(`^${cause}`) }).getByRole('cell');
  // "20 (8 to 34)": the rate stands before its span.
  return (await cells.allInnerTexts()).map(Number.parseFloat);
}

describe.each([
  ['phone', PHONE, 4714],
  ['desk', DESK, 4715],
] as const)('what a garden teaches, at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);

  it('begins when a case is settled, shows what it learnt, and can be forgotten', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await toPlace(page, 'Book');
    await page.getByRole('link', { name: 'What this garden has taught' }).click();
    await expect.poll(() => page.getByText(/^Nothing yet\./).count()).toBe(1);
    expect(await accessibilityFaults(page)).toEqual([]);

    // A case with its note and its photo on its page.
    await lookAtKale(page);
    expect(await page.getByText('Met in this garden').count()).toBe(0);
    await page.getByLabel('Choose photos').setInputFiles([leaf]);
    await page.getByRole('button', { name: 'Young leaf from the growing tip', exact: true }).click();
    await expect.poll(() => page.locator('.measures').count()).toBeGreaterThan(0);
    await keepIt(page, 'Long bed', 'First kale', 'Limp at noon, fine in the morning.');
    await expect.poll(() => page.getByText('Limp at noon, fine in the morning.').count()).toBe(1);
    await expect.poll(() => page.locator('.look-line img').count()).toBe(1);

    // Settling it: what is missing is asked for, then it is on the case's page.
    await page.getByRole('link', { name: 'How did it end?' }).click();
    await page.getByRole('button', { name: 'Settle the case' }).click();
    await expect.poll(() => page.getByText('Say what it was').count()).toBe(1);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.getByLabel('Something else').selectOption({ label: 'clubroot' });
    await page.getByLabel('I saw it myself').check();
    await page.getByLabel('up to half').check();
    await page.getByLabel('What was done').fill('Pulled it up, swollen roots and all.');
    await snap(page, `${name}-8-ended`);
    await page.getByRole('button', { name: 'Settle the case' }).click();
    await expect.poll(() => heading(page).innerText()).toBe('First kale');
    await expect
      .poll(() => page.locator('.case-end').innerText())
      .toMatch(/Clubroot.*up to half.*Pulled it up/s);
    expect(await accessibilityFaults(page)).toEqual([]);

    // Said too fast: taken back, and said again.
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => page.locator('.case-end').count()).toBe(0);
    await settleAsClubroot(page, 'First kale');

    // A second one, put right from a guess afterwards.
    await lookAtKale(page);
    await keepIt(page, 'Short bed', 'Second kale');
    await page.getByRole('link', { name: 'How did it end?' }).click();
    await page.getByLabel('Something else').selectOption({ label: 'clubroot' });
    await page.getByLabel('A guess').check();
    await page.getByRole('button', { name: 'Settle the case' }).click();
    await expect.poll(() => page.locator('.case-end').innerText()).toMatch(/A guess/);

    await toPlace(page, 'Book');
    await page.getByRole('link', { name: 'What this garden has taught' }).click();
    await expect.poll(() => page.getByText(/^1 settled case counts/).count()).toBe(1);
    const [general, afterOne] = await ratesOf(page, 'Clubroot');
    expect(afterOne).toBeGreaterThan(general!);
    await expect.poll(() => page.getByText(/Too few cases to say: 1 of at least 5/).count()).toBe(1);

    await toPlace(page, 'Book');
    await page.getByRole('link', { name: /Second kale/ }).click();
    await page.getByRole('link', { name: 'Correct it' }).click();
    await page.getByLabel('Somebody who can tell').check();
    await page.getByRole('button', { name: 'Settle the case' }).click();
    await expect.poll(() => page.locator('.case-end').innerText()).toMatch(/Somebody who can tell/);
    await toPlace(page, 'Book');
    await page.getByRole('link', { name: 'What this garden has taught' }).click();
    await expect.poll(() => page.getByText(/^2 settled cases count/).count()).toBe(1);
    const [, afterTwo] = await ratesOf(page, 'Clubroot');
    expect(afterTwo).toBeGreaterThan(afterOne!);
    await snap(page, `${name}-9-taught`);
    expect(await accessibilityFaults(page)).toEqual([]);

    // It is a reason in the next look.
    await lookAtKale(page);
    await page.locator('.cause', { hasText: 'Clubroot' }).getByText('All reasons in words').click();
    await expect
      .poll(() => page.locator('.cause', { hasText: 'Clubroot' }).locator('.reasons').innerText())
      .toMatch(/Met in this garden more often than usual/);

    // Forgotten, and brought back.
    await toPlace(page, 'Book');
    await page.getByRole('link', { name: 'What this garden has taught' }).click();
    await page.getByRole('button', { name: 'Forget what was taught' }).click();
    await expect.poll(() => page.getByText(/^Nothing yet\./).count()).toBe(1);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => page.getByText(/^2 settled cases count/).count()).toBe(1);
    await page.getByRole('button', { name: 'Forget what was taught' }).click();
    // The page says so only once it is stored.
    await expect.poll(() => page.getByText(/^Nothing yet\./).count()).toBe(1);
    await page.reload();
    await expect.poll(() => page.getByText(/2 settled cases from before the last reset/).count()).toBe(1);
    await page.getByRole('button', { name: 'Let them count again' }).click();
    await expect.poll(() => page.getByText(/^2 settled cases count/).count()).toBe(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('asks before deleting where it can be seen, and lets a look that was begun be thrown away', async () => {
    const { context, page } = await phone.open(size);
    await page.goto(app.url);
    await toPlace(page, 'Book');
    await page.getByRole('link', { name: /First kale/ }).click();
    await page.getByRole('button', { name: 'Delete the case' }).click();
    const yes = page.getByRole('button', { name: 'Yes, delete it' });
    await yes.waitFor();
    // Nothing lies over it: what is hit at its middle is the button itself.
    expect(
      await yes.evaluate((button) => {
        const { x, y, width, height } = button.getBoundingClientRect();
        return document.elementFromPoint(x + width / 2, y + height / 2) === button;
      }),
    ).toBe(true);
    await page.getByRole('button', { name: 'Keep it', exact: true }).click();

    // The look of the first test is still on the Walk, because it was not kept.
    await toPlace(page, 'Walk');
    const begun = page.locator('.begun');
    await expect.poll(() => begun.count()).toBe(1);
    await page.getByRole('button', { name: /^Throw away: Kale/ }).click();
    await expect.poll(() => begun.count()).toBe(0);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => begun.count()).toBe(1);
    expect(await accessibilityFaults(page)).toEqual([]);
    await context.close();
  });
});
