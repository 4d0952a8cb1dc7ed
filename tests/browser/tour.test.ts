import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { seePhoto } from '../../src/app/demo/at-build/see-photos.ts';
import { appOnPhone, PHONE, ROOT, watch } from './browser.ts';
import { settled } from './screen-faults.ts';
import { plantGarden, SEEN_AT, usualGarden } from './seed-garden.ts';

/** `npm run tour` takes the pictures of the README anew; otherwise the way is only walked. */
const WRITES = process.env.TOUR === 'write';
const PLANT = 'Tomato by the tunnel door';

/** What stands on the screen, as a small picture, with the wanted part at its top. */
async function take(page: Page, name: string, part?: string): Promise<void> {
  await settled(page);
  await page.evaluate((selector) => {
    document.documentElement.style.scrollPaddingBlockStart = '0.75rem';
    if (selector) document.querySelector(selector)?.scrollIntoView({ block: 'start' });
    else scrollTo(0, 0);
  }, part);
  await page.waitForTimeout(300);
  const seen = await page.screenshot({ animations: 'disabled', caret: 'hide' });
  if (!WRITES) return;
  const folder = join(ROOT, 'docs/pictures');
  mkdirSync(folder, { recursive: true });
  await sharp(seen)
    .webp({ quality: 82, effort: 6 })
    .toFile(join(folder, `${name}.webp`));
}

describe('one case', () => {
  const { phone, app } = appOnPhone(4834);

  it('goes from the bed to its end, and teaches the garden', { timeout: 300_000 }, async () => {
    const { context, page } = await phone.open(PHONE);
    await context.clock.setFixedTime(SEEN_AT);
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.locator('h1').first().waitFor();
    await plantGarden(page, usualGarden());

    await page.goto(`${app.url}#/walk`);
    await page.getByRole('link', { name: PLANT }).waitFor();
    await take(page, '1-walk');

    await page.getByRole('button', { name: `Look again now: ${PLANT}` }).click();
    const { jpeg } = await seePhoto({
      id: 'tour',
      role: 'old',
      picture: {
        width: 640,
        height: 480,
        seed: 33,
        plant: 232,
        leaf: 'tomato',
        leaflet: true,
        marks: ['yellow-between-veins'],
        ground: 'paper',
        turnDegrees: 12,
      },
    });
    await page.getByLabel('Choose photos').setInputFiles({
      name: 'old-leaf.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from(jpeg, 'base64'),
    });
    await page.locator('.layer').first().waitFor({ state: 'attached', timeout: 90_000 });
    await page.getByRole('button', { name: /^Old leaf low on/ }).click();
    await expect.poll(() => page.locator('.measures').count()).toBeGreaterThan(0);
    await take(page, '2-photo', '.photo-sheet');

    await page.getByRole('button', { name: 'Pale or yellow', exact: true }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    await page.locator('.drawn-answers').first().waitFor();
    await take(page, '3-question', '#question');
    await page.getByRole('button', { name: /^Only the oldest/ }).click();

    await page.locator('.verdict-headline').waitFor();
    await expect.poll(() => page.locator('.result[aria-busy="true"]').count()).toBe(0);
    await take(page, '4-weighing', '.weighing-grid');
    await take(page, '5-verdict', '#verdict');

    await page.getByRole('button', { name: 'Add it to the case' }).click();
    await page.locator('.leaf-pair').waitFor();
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(PLANT);
    await take(page, '6-then-and-now', '.leaf-pair');

    await page.getByRole('link', { name: 'How did it end?' }).click();
    await page.getByText('Short of magnesium', { exact: true }).click();
    await page.getByText('Fairly sure').click();
    await page.getByRole('radio', { name: 'nothing', exact: true }).check();
    await page.getByRole('button', { name: 'Settle the case' }).click();
    await page.locator('.case-end').waitFor();
    await page.goto(`${app.url}#/book/taught`);
    await page.getByText(PLANT).first().waitFor();
    await take(page, '7-taught');
    expect(complaints).toEqual([]);
    await context.close();
  });
});
