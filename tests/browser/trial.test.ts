import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { ARTEFACTS, appOnPhone, DESK, newPhone, PHONE, snap, snapBoth, watch } from './browser.ts';

let folder = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-trial-'));
  const { pixels } = drawLeaf({ background: 'paper', yellow: { where: 'between-veins' } });
  writeFileSync(join(folder, 'yellow.jpg'), await writeJpeg(pixels));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) });
const title = (page: Page) => page.getByRole('heading', { level: 1 }).innerText();

/** Which way stands at each place, as the plan shows it. */
const planOf = (page: Page): Promise<string[]> =>
  page.locator('section:not(.plan-sheet) > .stack-close > .planned-bed .way-mark').allInnerTexts();

/** Puts a number in every line that has none yet: yellow leaves with way A, hardly any with way B. */
async function measure(page: Page, ways: readonly string[], lines: readonly number[]): Promise<void> {
  for (const line of lines) {
    const value = (ways[line] === 'A' ? 40 : 12) + line;
    await page.getByLabel(`Plant ${line + 1}, Long bed`, { exact: true }).fill(String(value));
  }
  await page.locator('h1').click();
}

async function pagesOf(page: Page, format: 'A4' | 'Letter'): Promise<void> {
  mkdirSync(ARTEFACTS, { recursive: true });
  await page.pdf({
    path: join(ARTEFACTS, `trial-plan-${format}.pdf`),
    format,
    margin: { top: '15mm', bottom: '15mm', left: '15mm', right: '15mm' },
  });
}

describe('a trial side by side, at phone size', () => {
  const { phone, app } = appOnPhone(4881);
  const elsewhere = newPhone();
  afterAll(() => elsewhere.throwAway());

  it('is planned, laid out, measured through a reload, read, ended, found again and carried to another device', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(`${app.url}#/ground`);
    await page.getByLabel('Name of a bed or pot').fill('Long bed');
    await button(page, 'Add').click();
    await page.getByRole('link', { name: /^Long bed/ }).click();
    await page.getByRole('link', { name: 'Try two ways side by side' }).click();

    await page.getByLabel('What do you want to find out?').fill('Does mulch keep the chard green?');
    await page.getByLabel('Way A').fill('bare soil');
    await page.getByLabel('Way B').fill('mulched');
    await page.getByLabel('What do you measure?').selectOption('Pale to yellow');
    await page.getByLabel('What does one usually come to, of 100?').fill('40');
    await page.getByLabel('What difference would matter to you, of 100?').fill('20');
    await page.getByRole('radio', { name: 'uneven', exact: true }).check();
    const answer = page.locator('.trial-answer');
    await expect.poll(() => answer.innerText()).toMatch(/^It takes about 6 plants of each way, 12 in all/);
    // The answer follows what is changed.
    await page.getByLabel('What difference would matter to you, of 100?').fill('10');
    await expect.poll(() => answer.innerText()).toMatch(/^It takes about 1\d plants of each way/);
    await page.getByLabel('How many plants of each way will you have?').fill('6');
    await expect.poll(() => answer.innerText()).toMatch(/With 6 of each it would show in about \d in 10/);
    await snapBoth(page, 'trial-plan-phone');

    // Killed half-way, everything is there.
    await page.reload();
    await expect.poll(() => page.getByLabel('Way B').inputValue()).toBe('mulched');
    await expect.poll(() => answer.innerText()).toMatch(/With 6 of each/);

    await page.getByRole('link', { name: 'Lay it out' }).click();
    expect(await page.getByLabel(/^Long bed/).inputValue()).toBe('12');
    await snapBoth(page, 'trial-lay-out-phone');
    await button(page, 'Draw the lots').click();
    await page.getByRole('heading', { name: 'The plan of the beds' }).waitFor();
    const ways = await planOf(page);
    expect(ways).toHaveLength(12);
    // In sets of two neighbours, each with both ways.
    for (let set = 0; set < 12; set += 2) expect([ways[set], ways[set + 1]].sort()).toEqual(['A', 'B']);
    await snapBoth(page, 'trial-laid-out-phone');
    for (const format of ['A4', 'Letter'] as const) await pagesOf(page, format);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.plan-sheet').isVisible()).toBe(true);
    expect(await page.locator('.tabs').isVisible()).toBe(false);
    expect(await page.locator('.plan-sheet tbody tr').count()).toBe(12);
    await page.emulateMedia({ media: 'screen' });

    await page.getByRole('link', { name: 'Measure now' }).click();
    expect(await page.locator('.unit-line .way-mark').count()).toBe(0);
    await measure(page, ways, [0, 1, 2, 3, 4]);
    await expect.poll(() => page.locator('.trial-progress').innerText()).toBe('5 of 12 measured');
    await page.reload();
    await expect.poll(() => page.locator('.trial-progress').innerText()).toBe('5 of 12 measured');
    expect(await page.getByLabel('Plant 1, Long bed', { exact: true }).inputValue()).toBe(
      String(ways[0] === 'A' ? 40 : 12),
    );
    // One by the camera, one that slugs took.
    const [photographed, lost] = [ways.indexOf('A', 5), ways.indexOf('B', 5)];
    await page
      .getByLabel(`Take a photo: Plant ${photographed + 1}, Long bed`)
      .setInputFiles([join(folder, 'yellow.jpg')]);
    await page
      .locator('.unit-photo')
      .getByText(/\d+ % of the leaf, give or take \d+/)
      .waitFor();
    // The outline that was measured can be looked at.
    await button(page, 'See and correct the outline').click();
    await expect.poll(() => page.locator('.unit-specimen .outline polygon').count()).toBeGreaterThan(0);
    await snap(page, 'trial-outline-phone');
    await button(page, 'See and correct the outline').click();
    await button(page, `Lost: Plant ${lost + 1}, Long bed`).click();
    await button(page, 'slugs or snails').click();
    await page.getByText(/^Lost: slugs or snails/).waitFor();
    await measure(
      page,
      ways,
      [5, 6, 7, 8, 9, 10, 11].filter((one) => one !== photographed && one !== lost),
    );
    await page.getByText('All are measured for this day.').waitFor();
    await button(page, 'in a week').click();
    await snapBoth(page, 'trial-measure-phone');

    await page.getByRole('link', { name: 'See what came out' }).click();
    await page.getByText(/^Pale to yellow: less with “mulched”$/).waitFor();
    const result = page.locator('.trial-finding');
    expect(await result.innerText()).toMatch(
      /about \d+(\.\d+)? of 100 less than with “bare soil”.* of 100 less\..*holds the truth in at least 9 of 10/s,
    );
    expect(await page.locator('.trial-plot circle').count()).toBe(11 + 1);
    expect(await page.getByText('Some values were read by the camera and some by eye.').count()).toBe(1);
    await page.getByText('The same in words').click();
    expect(await page.locator('.trial-plot li').count()).toBe(2);
    await snapBoth(page, 'trial-result-phone');
    await page.setViewportSize(DESK);
    await page.emulateMedia({ colorScheme: 'light' });
    await snap(page, 'trial-result-desk');
    await page.setViewportSize(PHONE);

    // On today's path once the day has come.
    await page.getByLabel('Day of the next measuring').fill('2026-01-05');
    await page.goto(`${app.url}#/walk`);
    await page.getByText('Measure the trial “Does mulch keep the chard green?”').click();
    await expect.poll(() => page.locator('.unit-line').count()).toBe(12);
    await page.getByRole('link', { name: 'Back to the trial' }).click();

    await page.locator('summary').getByText('End the trial').click();
    await page.getByLabel('What I take from it').fill('Mulch every chard.');
    await button(page, 'End it: it is read').click();
    await page.getByText(/^Ended on/).waitFor();
    await page.getByText('Mulch every chard.').waitFor();

    await page.goto(`${app.url}#/book`);
    await page.getByRole('heading', { name: 'Trials that have ended' }).waitFor();
    await snapBoth(page, 'trial-book-phone');
    await page.getByRole('link', { name: /^Does mulch keep the chard green/ }).click();
    expect(await title(page)).toBe('Does mulch keep the chard green?');
    await page.goto(`${app.url}#/ground`);
    await page.getByRole('link', { name: /^Long bed/ }).click();
    for (const what of ['Trial laid out', 'Trial measured', 'Trial ended'])
      await page.getByText(`${what}: Does mulch keep the chard green?`).waitFor();
    await page.goto(`${app.url}#/walk`);
    await page.getByText('Nothing is due today.').waitFor();

    // Another device reads the backup, photo included.
    await page.getByRole('link', { name: 'Help and settings' }).click();
    const downloading = page.waitForEvent('download');
    await button(page, 'Write a backup file').click();
    const file = join(folder, 'garden.zip');
    await (await downloading).saveAs(file);
    expect(complaints).toEqual([]);
    const other = await elsewhere.open(PHONE);
    const heard = watch(other.context);
    await other.page.goto(`${app.url}#/help`);
    await other.page.getByLabel('Read a backup file').setInputFiles([file]);
    await other.page.getByText(/^Read: \d+ new/).waitFor();
    await other.page.goto(`${app.url}#/book`);
    await other.page.getByRole('link', { name: /^Does mulch keep the chard green/ }).click();
    await other.page.getByText(/^Pale to yellow: less with “mulched”$/).waitFor();
    expect(heard.complaints).toEqual([]);
    await other.context.close();
  });
});

describe('one bed a side', () => {
  const { phone, app } = appOnPhone(4882);

  it('is called an indication and no proof before and after', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(`${app.url}#/ground`);
    for (const bed of ['Wall bed', 'Gate bed']) {
      await page.getByLabel('Name of a bed or pot').fill(bed);
      await button(page, 'Add').click();
      await page.getByRole('link', { name: new RegExp(`^${bed}`) }).waitFor();
    }
    await page.goto(`${app.url}#/book`);
    await page.getByRole('link', { name: 'Try two ways side by side' }).click();
    await page.getByLabel('Way A').fill('dug');
    await page.getByLabel('Way B').fill('not dug');
    await page.getByRole('radio', { name: 'Whole beds', exact: true }).check();
    await page.getByRole('link', { name: 'Lay it out' }).click();
    for (const bed of ['Wall bed', 'Gate bed']) await page.getByLabel(bed).check();
    await page.getByText(/^One bed a side is an indication, not a proof/).waitFor();
    await snapBoth(page, 'trial-whole-beds-phone');
    await button(page, 'Draw the lots').click();
    await page.getByText(/^One bed a side is an indication, not a proof/).waitFor();
    await page.getByRole('link', { name: 'Measure now' }).click();
    const fields = page.locator('.unit-line .day-number');
    await expect.poll(() => fields.count()).toBe(10);
    for (let line = 0; line < 10; line += 1)
      await fields.nth(line).fill(String((line < 5 ? 20 : 31) + (line % 5)));
    await page.locator('h1').click();
    await page.getByText('All are measured for this day.').waitFor();
    await page.getByRole('link', { name: 'See what came out' }).click();
    await page.getByText(/^An indication, no proof: (taller|shorter) with “not dug”$/).waitFor();
    await snapBoth(page, 'trial-indication-phone');
    expect(complaints).toEqual([]);
  });
});
