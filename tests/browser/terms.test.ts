import { expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import {
  accessibilityFaults,
  appOnPhone,
  chooseCrop,
  lookAtOldLeaf,
  PHONE,
  sayItIsSmall,
  snap,
  watch,
} from './browser.ts';

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
  // What it is comes first, and each part is one press away.
  expect(await page.locator('main h2').first().innerText()).toBe('What this is');
  await page
    .getByRole('navigation', { name: 'On this page' })
    .getByRole('button', { name: 'Words of the trade' })
    .click();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.textContent))
    .toBe('Words of the trade');
  expect((await page.getByRole('heading', { name: 'Words of the trade' }).boundingBox())!.y).toBeLessThan(
    200,
  );
  await page.getByText('Nitrogen locked up', { exact: true }).click();
  await page.getByText(/Whatever rots wood or straw needs nitrogen/).waitFor();
  await page.keyboard.press('Escape');
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

it('explains the terms in what the camera reports, on the buttons of a question, and in the Book', async () => {
  const drawn = drawLeaf({ width: 1200, height: 900, yellow: { where: 'between-veins' } });
  const leaf = await writeJpeg(drawn.pixels);
  const { context, page } = await phone.open(PHONE);
  const { complaints } = watch(context);
  const note = page.locator('.term-note');
  const explains = async (within: string): Promise<void> => {
    const term = page.locator(`${within} .term`).first();
    await term.click();
    await expect.poll(() => note.locator('p').innerText(), { message: within }).toMatch(/[.]$/);
    await note.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => note.count()).toBe(0);
  };
  await page.goto(`${app.url}#/look/new`);
  await lookAtOldLeaf(page, 'Tomato', leaf);
  await explains('.camera-report');
  await page.locator('.segment', { hasText: 'All questions' }).click();
  await page.locator('.all-questions summary', { hasText: 'Creatures' }).click();
  await explains('.all-questions legend');
  await snap(page, 'terms-all-questions');
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByLabel('Bed', { exact: true }).fill('Long bed');
  await page.getByRole('button', { name: 'Keep it as a case' }).click();
  await expect.poll(() => page.evaluate(() => location.hash)).toMatch(/^#\/book\/./);
  await page.goto(`${app.url}#/book`);
  await explains('.term-line');
  await page.locator('.entries a').first().click();
  await explains('.term-line');
  await page.getByRole('link', { name: 'How did it end?' }).click();
  await explains('.term-line');
  expect(await accessibilityFaults(page)).toEqual([]);
  await snap(page, 'terms-ended');
  expect(complaints).toEqual([]);
  await context.close();
});
