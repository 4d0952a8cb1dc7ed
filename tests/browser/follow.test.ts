import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SEEN_BEFORE_WORDS } from '../../src/app/words/seen-before.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { accessibilityFaults, appOnPhone, DESK, newPhone, PHONE, snap, watch } from './browser.ts';

let folder = '';
let yellowed = '';
let greener = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-follow-'));
  yellowed = join(folder, 'then.jpg');
  greener = join(folder, 'now.jpg');
  writeFileSync(
    yellowed,
    await writeJpeg(drawLeaf({ background: 'paper', yellow: { where: 'all' }, angleDegrees: 20 }).pixels),
  );
  writeFileSync(
    greener,
    await writeJpeg(drawLeaf({ background: 'paper', seed: 2, angleDegrees: -70, length: 0.6 }).pixels),
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const heading = (page: Page) => page.getByRole('heading', { level: 1 });

async function photograph(page: Page, file: string): Promise<void> {
  await page.getByLabel('Choose photos').setInputFiles([file]);
  await page.getByRole('button', { name: 'Young leaf from the growing tip', exact: true }).click();
  await expect.poll(() => page.locator('.measures').count()).toBeGreaterThan(0);
  // It is read once more in the role that was said.
  await expect.poll(() => page.locator('.specimen[aria-busy="true"]').count()).toBe(0);
}

describe.each([
  ['phone', PHONE, 4733],
  ['desk', DESK, 4734],
] as const)('following a plant, at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);
  const elsewhere = newPhone();
  afterAll(() => elsewhere.throwAway());

  it('holds two looks against each other, and carries them to another browser', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.getByRole('link', { name: 'A plant looks wrong' }).click();
    await photograph(page, yellowed);
    await page.getByLabel('Bed', { exact: true }).fill('Long bed');
    await page.getByLabel('Plant', { exact: true }).fill('Third kale');
    await page.getByRole('button', { name: 'Keep it as a case' }).click();
    await expect.poll(() => heading(page).innerText()).toBe('Third kale');
    expect(await page.getByRole('heading', { name: 'Then and now' }).count()).toBe(0);

    await page.getByRole('button', { name: 'Look again now' }).click();
    // What was made of it last time, and what that promised.
    const before = page.getByRole('region', { name: 'Last time' });
    await before.getByText(SEEN_BEFORE_WORDS.byNow).waitFor();
    expect(await before.innerText()).toMatch(/(Leave it|Look again|Check first|Act now)\. Likeliest: /);
    expect(await before.getByRole('listitem').count()).toBeGreaterThan(0);
    await expect
      .poll(() => page.getByText('The look before this one counts in the weighing').count())
      .toBe(1);
    // What the last photo showed counts, and is not said of a photo that nobody took yet.
    const reported = page.getByRole('region', { name: 'What the camera reports' });
    await reported.getByText('No photo in this look yet.').waitFor();
    expect(await reported.getByText('No sign stands out').count()).toBe(0);
    await photograph(page, greener);
    await page.getByRole('button', { name: 'Add it to the case' }).click();
    await expect.poll(() => page.getByText('Taken together, the leaf is better.').count()).toBe(1);
    expect(await page.locator('.changes').first().innerText()).toMatch(
      /Pale to yellow: better\s+down by \d+ of 100, give or take \d+/,
    );

    // Both leaves stand upright in the same square, with the light taken out.
    await expect.poll(() => page.locator('.leaf-upright img').count()).toBe(2);
    const drawn = await page
      .locator('.leaf-upright img')
      .evaluateAll((all) => all.map((one) => (one as HTMLElement).style.transform));
    expect(new Set(drawn).size).toBe(2);
    const slider = page.getByRole('slider', { name: 'Slide between then and now' });
    await slider.focus();
    await page.keyboard.press('End');
    expect(await slider.getAttribute('aria-valuetext')).toBe('100 of 100 then, 0 of 100 now');
    await page.keyboard.press('ArrowLeft');
    expect(await slider.getAttribute('aria-valuetext')).toBe('99 of 100 then, 1 of 100 now');
    await page.keyboard.press('Home');
    expect(await page.locator('.leaf-pair-over').evaluate((over) => getComputedStyle(over).clipPath)).toMatch(
      /^inset\(0px/,
    );
    await slider.fill('50');
    expect(await page.getByRole('img', { name: /over 2 looks/ }).count()).toBe(1);
    await page.emulateMedia({ colorScheme: 'light' });
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, `follow-${name}-then-and-now`);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
    expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);

    // The walk names the day of the next look, and gives it to a calendar.
    await page.goto(`${app.url}#/walk`);
    const calendar = page.waitForEvent('download');
    await page.getByRole('button', { name: 'The next two weeks as a calendar file' }).click();
    await (await calendar).saveAs(join(folder, 'walk.ics'));
    expect(readFileSync(join(folder, 'walk.ics'), 'utf8')).toContain('SUMMARY:Look at Third kale again');
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, `follow-${name}-walk`);

    // Written to a file, read in another browser: the garden is there, photos and comparison too.
    await page.getByRole('link', { name: 'Help and settings' }).click();
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Write a backup file' }).click();
    const backup = join(folder, `garden-${name}.zip`);
    await (await downloading).saveAs(backup);
    await expect.poll(() => page.getByText(/^Written: \d+ records and \d+ pictures/).count()).toBe(1);
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, `follow-${name}-backup`);
    expect(complaints).toEqual([]);

    const other = await elsewhere.open(size);
    const heard = watch(other.context);
    await other.page.goto(`${app.url}#/help`);
    const broken = join(folder, 'broken.zip');
    writeFileSync(broken, readFileSync(backup).subarray(0, 5000));
    await other.page.getByLabel('Read a backup file').setInputFiles([broken]);
    await expect
      .poll(() => other.page.getByRole('alert').allInnerTexts())
      .toContainEqual(expect.stringMatching(/Nothing here has changed\.$/));
    await other.page.getByLabel('Read a backup file').setInputFiles([backup]);
    await expect.poll(() => other.page.getByText(/^Read: \d+ new, 0 changed/).count()).toBe(1);
    await other.page.goto(`${app.url}#/book`);
    await other.page.getByRole('link', { name: /Third kale/ }).click();
    await expect.poll(() => other.page.getByText('Taken together, the leaf is better.').count()).toBe(1);
    await expect.poll(() => other.page.locator('.leaf-upright img').count()).toBe(2);
    expect(heard.complaints).toEqual([]);
    await other.context.close();
  });
});
