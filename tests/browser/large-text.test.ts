import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VIEWFINDER_WORDS } from '../../src/app/words/viewfinder.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { lookAtOldLeaf, newPhone, PHONE, type Served, serveApp, snap } from './browser.ts';
import { cutWords, outOfSight, pinned, setTwice } from './large-text.ts';
import { isTooWide, SMALL, settled } from './screen-faults.ts';

const ON_ITS_SIDE = { width: 844, height: 390 } as const;

let folder = '';
let leaf = '';
let app: Served;
beforeAll(async () => {
  app = await serveApp(4864);
  folder = mkdtempSync(join(tmpdir(), 'bedside-large-'));
  leaf = join(folder, 'leaf.jpg');
  const drawn = drawLeaf({
    width: 1200,
    height: 900,
    length: 0.8,
    yellow: { where: 'between-veins' },
    holes: { count: 2 },
  });
  writeFileSync(leaf, await writeJpeg(drawn.pixels));
});
afterAll(async () => {
  await app.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** Scrolls down the page by half a screen at a time and notes what hides more than it may. */
async function leftInSight(page: Page): Promise<string[]> {
  const faults = new Set<string>();
  const { height, most } = await page.evaluate(() => ({
    height: innerHeight,
    most: document.documentElement.scrollHeight,
  }));
  for (let from = 0; from < most; from += height / 2) {
    await page.evaluate((top) => scrollTo(0, top), from);
    const all = await pinned(page);
    for (const { what, height: its } of all)
      if (its > height / 3) faults.add(`${what} is ${its} of ${height} px high`);
    const sum = all.reduce((total, one) => total + one.height, 0);
    if (sum > height / 2) faults.add(`${all.map(({ what }) => what).join(', ')}: ${sum} of ${height} px`);
  }
  await page.evaluate(() => scrollTo(0, 0));
  return [...faults];
}

describe('text of twice the size', () => {
  it('a look with a photo: most of the screen is left to it, and no word is cut or broken', {
    timeout: 120_000,
  }, async () => {
    const phone = newPhone();
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look/new`);
    await lookAtOldLeaf(page, 'Tomato', leaf);
    await settled(page);
    for (const twice of [false, true]) {
      await setTwice(page, twice);
      for (const size of [PHONE, SMALL]) {
        const at = `${size.width} px, ${twice ? 'twice' : 'once'}`;
        await page.setViewportSize(size);
        expect.soft(await leftInSight(page), at).toEqual([]);
        expect.soft(await cutWords(page, 'main'), at).toEqual([]);
        expect.soft(await isTooWide(page), at).toBe(false);
        await snap(page, `large-look-${size.width}-${twice}`);
      }
    }
    await context.close();
    await phone.throwAway();
  });

  it('the viewfinder: the hint is whole, the shutter, help and the way out are in sight', {
    timeout: 120_000,
  }, async () => {
    const film = join(folder, 'bare.mjpeg');
    writeFileSync(film, await writeJpeg(drawLeaf({ length: 0.8 }).pixels));
    const phone = newPhone([
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-video-capture=${film}`,
    ]);
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look/new`);
    await page.getByRole('button', { name: 'Take a photo' }).click();
    await expect
      .poll(() => page.locator('.viewfinder-hint').innerText())
      .toBe(VIEWFINDER_WORDS.hints['lay-label']);
    for (const twice of [false, true]) {
      await setTwice(page, twice);
      for (const size of [PHONE, SMALL, ...(twice ? [] : [ON_ITS_SIDE])]) {
        await page.setViewportSize(size);
        const at = `${size.width} px, ${twice ? 'twice' : 'once'}`;
        await snap(page, `large-viewfinder-${size.width}-${twice}`);
        expect.soft(await cutWords(page, '.viewfinder'), at).toEqual([]);
        const film = (await page.locator('.viewfinder video').boundingBox())!;
        expect.soft(film.height, at).toBeGreaterThanOrEqual(120);
        expect.soft(await outOfSight(page, '.viewfinder-hint, .viewfinder-first > *'), at).toEqual([]);
        // The other ways to a photo may have to be moved up.
        for (const way of await page.locator('.viewfinder-ways > *').all()) {
          await way.scrollIntoViewIfNeeded();
          expect.soft((await way.boundingBox())!.y, at).toBeLessThan(size.height - 44);
        }
      }
    }
    await context.close();
    await phone.throwAway();
  });
});
