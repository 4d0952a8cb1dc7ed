import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { accessibilityFaults, newPhone, PHONE, type Served, serveApp, snap, watch } from './browser.ts';

let folder = '';
let leaf = '';
let app: Served;
const phone = newPhone();

beforeAll(async () => {
  app = await serveApp(4721);
  folder = mkdtempSync(join(tmpdir(), 'bedside-overlay-'));
  leaf = join(folder, 'leaf.jpg');
  const drawn = drawLeaf({
    width: 1600,
    height: 1200,
    yellow: { where: 'tip' },
    spots: { count: 5 },
    holes: { count: 3 },
    bites: { count: 2 },
    label: true,
  });
  writeFileSync(leaf, await writeJpeg(drawn.pixels));
});
afterAll(async () => {
  await app.stop();
  await phone.throwAway();
  rmSync(folder, { recursive: true, force: true });
});

const layer = (page: Page, name: string) => page.locator('.layer', { hasText: name });
const surface = (page: Page) => page.locator('.tap-surface');

/** A look with the drawn leaf read. */
async function showLeaf() {
  const { context, page } = await phone.open(PHONE);
  const { complaints } = watch(context);
  await page.goto(`${app.url}#/look/new`);
  await page.getByLabel('Choose photos').setInputFiles([leaf]);
  await page.getByRole('button', { name: 'Old leaf low on the plant', exact: true }).click();
  // On a phone the list is folded; its numbers stand in the measures.
  await page.getByText('All that is drawn').click();
  await layer(page, 'Pale to yellow').waitFor();
  return { context, page, complaints };
}

/** How many points of the drawing over the photo are painted at all, and how strong the strongest is. */
const painted = (page: Page): Promise<{ points: number; strong: number }> =>
  page.evaluate(async () => {
    // The drawing follows with the next frame.
    await new Promise((settle) => requestAnimationFrame(() => requestAnimationFrame(settle)));
    const canvas = document.querySelector<HTMLCanvasElement>('.specimen-over canvas')!;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let points = 0;
    let strong = 0;
    for (let i = 3; i < data.length; i += 4) {
      if (data[i]! > 0) points++;
      if (data[i]! > 150) strong++;
    }
    return { points, strong };
  });

describe('what is drawn over a photo', () => {
  it('is listed in words with its number, switched by layer, and picked from either side', async () => {
    const { context, page, complaints } = await showLeaf();
    for (const [name, pattern] of [
      ['Outline of the leaf', 'one line'],
      ['Pale to yellow', 'dots'],
      ['Brown, black or straw-dead', 'crossed lines'],
      ['Holes', 'dashed ring'],
      ['Missing from the edge', 'slanting strokes'],
    ] as const) {
      const line = await layer(page, name).first().innerText();
      expect(line, name).toContain(pattern);
      expect(line, name).toMatch(/\d.*give or take \d/s);
      expect(await layer(page, name).first().locator('svg').count(), name).toBe(1);
    }
    // The tip of this leaf points right.
    expect(await layer(page, 'Pale to yellow').innerText()).toContain('mostly on the right');

    // By keyboard: a layer goes and comes back.
    const all = await painted(page);
    expect(all.points).toBeGreaterThan(500);
    const yellow = page.getByLabel('Show: Pale to yellow');
    await yellow.focus();
    await page.keyboard.press('Space');
    expect(await yellow.isChecked()).toBe(false);
    await expect.poll(async () => (await painted(page)).points).toBeLessThan(0.7 * all.points);
    await page.keyboard.press('Space');
    await expect.poll(async () => (await painted(page)).points).toBe(all.points);

    // A line of the list points its layer out; the others go pale.
    await layer(page, 'Holes').first().getByRole('button').click();
    await expect.poll(async () => (await painted(page)).strong).toBeLessThan(0.5 * all.strong);
    // So does the measure, which is picked together with its layer.
    const count = page.locator('.measure-name', { hasText: 'Holes' }).first();
    expect(await count.getAttribute('aria-pressed')).toBe('true');
    await count.click();
    expect(await layer(page, 'Holes').first().getByRole('button').getAttribute('aria-pressed')).toBe('false');
    await page.getByRole('button', { name: 'Dead spots', exact: true }).click();
    expect(await layer(page, 'Brown, black').first().getByRole('button').getAttribute('aria-pressed')).toBe(
      'true',
    );
    // And so does a tap on the photo, which names what is there.
    await page.getByLabel('Ask', { exact: true }).check();
    const box = (await surface(page).boundingBox())!;
    await surface(page).click({ position: { x: 0.78 * box.width, y: 0.51 * box.height } });
    await expect.poll(() => page.getByText('Here: pale to yellow.').count()).toBe(1);
    expect(await layer(page, 'Pale to yellow').getByRole('button').getAttribute('aria-pressed')).toBe('true');

    for (const theme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: theme });
      await snap(page, `overlay-${theme}`);
      expect(await accessibilityFaults(page), theme).toEqual([]);
    }
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('takes every kind of tap by keyboard, and gives the last one back', async () => {
    const { context, page } = await showLeaf();
    const marks = page.locator('.tap-mark');
    const cross = page.locator('.tap-cross');
    const press = async (...keys: string[]) => {
      for (const key of keys) await page.keyboard.press(key);
    };
    const leftOf = (): Promise<number> =>
      cross.evaluate((element) => Number.parseFloat((element as HTMLElement).style.left));

    // Reached with the keyboard the cross shows; large and small steps; Escape leaves to the kinds of tap.
    await page.getByLabel('Which leaf').check();
    await page.keyboard.press('Shift+Tab');
    while (!(await surface(page).evaluate((element) => element === document.activeElement)))
      await page.keyboard.press('Shift+Tab');
    await expect.poll(() => cross.count()).toBe(1);
    expect(await leftOf()).toBeCloseTo(50);
    await press('ArrowRight');
    expect(await leftOf()).toBeCloseTo(52);
    await press('Shift+ArrowLeft');
    expect(await leftOf()).toBeCloseTo(42);
    await expect.poll(() => page.getByText(/green, nothing marked, 42 of 100 from the left/).count()).toBe(1);
    await press('Enter');
    await expect.poll(() => page.locator('.tap-mark.leaf').count()).toBe(1);
    await press('Escape');
    await expect.poll(() => cross.count()).toBe(0);
    expect(await page.getByLabel('Add', { exact: true }).evaluate((e) => e === document.activeElement)).toBe(
      true,
    );

    // The kinds by arrow keys, each placed with Enter.
    await press('ArrowRight');
    await surface(page).focus();
    await press('Shift+ArrowUp', 'Shift+ArrowUp', 'Shift+ArrowUp', 'Shift+ArrowUp', 'Enter');
    await expect.poll(() => page.locator('.tap-mark.remove').count()).toBe(1);
    await press('Escape', 'ArrowRight');
    await surface(page).focus();
    await press('Shift+ArrowLeft', 'Shift+ArrowLeft', 'Shift+ArrowLeft', 'Shift+ArrowLeft');
    await press('Shift+ArrowUp', 'Shift+ArrowUp', 'Shift+ArrowUp', 'Shift+ArrowUp', 'Enter');
    await expect.poll(() => page.locator('.tap-mark.white').count()).toBe(1);
    // Three readings may stand in line.
    const setByTap = page.getByText('Colours are set by the white you tapped.');
    await expect.poll(() => setByTap.count(), { timeout: 90_000 }).toBe(1);

    // One after the other back, by key and by button; taking all back can be taken back too.
    await press('Control+z');
    await expect.poll(() => page.locator('.tap-mark.white').count()).toBe(0);
    expect(await marks.count()).toBe(2);
    await page.getByRole('button', { name: 'Take back the last tap' }).click();
    await expect.poll(() => marks.count()).toBe(1);
    await page.getByRole('button', { name: 'Take back all taps' }).click();
    await expect.poll(() => marks.count()).toBe(0);
    await page.getByRole('button', { name: 'Take back the last tap' }).click();
    await expect.poll(() => marks.count()).toBe(1);
    await context.close();
  });

  it('is enlarged by keys, buttons and two fingers, and one finger still scrolls the page', async () => {
    const { context, page } = await showLeaf();
    const zoom = (): Promise<number> =>
      page
        .locator('.specimen-stage')
        .evaluate((element) =>
          Number(/scale\(([\d.]+)\)/.exec((element as HTMLElement).style.transform)?.[1]),
        );
    await surface(page).focus();
    await page.keyboard.press('+');
    expect(await zoom()).toBeCloseTo(1.6);
    await page.keyboard.press('-');
    expect(await zoom()).toBe(1);
    await page.getByRole('button', { name: 'Larger', exact: true }).click();
    await page.getByRole('button', { name: 'Larger', exact: true }).click();
    expect(await zoom()).toBeCloseTo(2.56);
    // A tap on the enlarged photo still hits the spot that is seen: the middle stays the middle.
    await page.getByLabel('Which leaf').check();
    await surface(page).click();
    await expect.poll(() => page.locator('.tap-mark.leaf').count()).toBe(1);
    const mark = (await page.locator('.tap-mark.leaf').boundingBox())!;
    const frame = (await surface(page).boundingBox())!;
    expect(Math.abs(mark.x + mark.width / 2 - frame.x - frame.width / 2)).toBeLessThan(2);
    await page.getByRole('button', { name: 'Whole photo' }).click();
    expect(await zoom()).toBe(1);

    const touch = await context.newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: [number, number][]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y]) => ({ x, y })) });
    await page.evaluate(() => document.querySelector('.specimen')?.scrollIntoView({ block: 'center' }));
    const middle = async (): Promise<[number, number]> => {
      const { x, y, width, height } = (await surface(page).boundingBox())!;
      return [x + width / 2, y + height / 2];
    };
    const [x, y] = await middle();
    await send('touchStart', [x - 20, y], [x + 20, y]);
    for (const apart of [30, 45, 60]) await send('touchMove', [x - apart, y], [x + apart, y]);
    await send('touchEnd');
    await expect.poll(zoom).toBeGreaterThan(2);
    expect(await page.locator('.tap-mark').count()).toBe(1);
    await page.getByRole('button', { name: 'Whole photo' }).click();

    const before = await page.evaluate(() => scrollY);
    const [fx, fy] = await middle();
    await send('touchStart', [fx, fy]);
    for (let moved = 10; moved <= 120; moved += 10) await send('touchMove', [fx, fy - moved]);
    await send('touchEnd');
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(before + 40);
    await context.close();
  });
});
