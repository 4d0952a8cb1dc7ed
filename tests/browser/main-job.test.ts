import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import type { Pixels } from '../../src/photo/types.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import {
  accessibilityFaults,
  accessibilityFaultsInBothThemes,
  answerFirst,
  chooseCrop,
  DESK,
  newPhone,
  PHONE,
  ROOT,
  type Served,
  serveApp,
  snap,
  watch,
} from './browser.ts';
import { isTooWide, smallTargets } from './screen-faults.ts';

const VERDICT = /^(Leave it|Look again|Check first|Act now)/;
const REAL = join(ROOT, '../shared/photos/chilli-india/nutritional');

let folder = '';
let drawn = '';
let whiteLabel = '';
/** A real photo where the optional folder is there, else one that the project draws. */
let leafPhoto = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-photos-'));
  drawn = join(folder, 'old-leaf.jpg');
  whiteLabel = join(folder, 'with-label.jpg');
  const yellow = drawLeaf({
    width: 1600,
    height: 1200,
    yellow: { where: 'between-veins' },
    holes: { count: 2 },
  });
  writeFileSync(drawn, await writeJpeg(yellow.pixels, { takenAt: '2025-06-14T18:05:00' }));
  const labelled = drawLeaf({ width: 1600, height: 1200, label: true, light: [1.25, 1, 0.7], seed: 4 });
  const beside = drawLeaf({ width: 1600, height: 1200, light: [1.25, 1, 0.7], seed: 5 });
  writeFileSync(
    whiteLabel,
    await writeJpeg(sideBySide(labelled.pixels, beside.pixels), { takenAt: '2025-06-14T18:06:00' }),
  );
  leafPhoto = existsSync(REAL) ? join(REAL, readdirSync(REAL).sort()[0]!) : drawn;
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const verdictOf = (page: Page) => page.locator('#verdict');

async function startLook(page: Page, url: string, crop: string): Promise<void> {
  await page.goto(url);
  await page.getByRole('link', { name: 'A plant looks wrong' }).click();
  await chooseCrop(page, crop);
}

describe.each([
  ['phone', PHONE, 4711],
  ['desk', DESK, 4712],
] as const)('the main job at %s size', (name, size, port) => {
  const phone = newPhone();
  let app: Served;
  let stopped = false;

  beforeAll(async () => {
    app = await serveApp(port);
  });
  afterAll(async () => {
    if (!stopped) await app?.stop();
    await phone.throwAway();
  });

  it('goes from a photo to a reasoned answer that is kept', async () => {
    const { context, page } = await phone.open(size);
    const { requests, complaints } = watch(context);
    await page.goto(app.url);
    await expect.poll(() => page.getByText('works without signal now').count(), { timeout: 60_000 }).toBe(1);
    await snap(page, `${name}-1-walk`);
    const afterLoading = requests.length;

    await startLook(page, app.url, 'Tomato');
    const reloaded = requests.length;
    // Before anything is seen the screen says what the ranking is; the crop is no answer to a question.
    await expect.poll(() => page.getByText(/ranking is only how often each thing happens/).count()).toBe(1);
    expect(await page.getByText('Your answer moved').count()).toBe(0);
    await page.getByLabel('Choose photos').setInputFiles([leafPhoto, whiteLabel]);
    await expect.poll(() => page.locator('.measures').count()).toBeGreaterThan(0);
    // What a photo shows is asked, never guessed; after the first the second is asked about.
    await page.getByRole('button', { name: 'Old leaf low on the plant', exact: true }).click();
    await page.getByRole('button', { name: 'Young leaf from the growing tip', exact: true }).click();
    await expect.poll(() => page.getByText('What does this photo show?').count()).toBe(0);
    await page.getByRole('button', { name: /^Show the photo: Old leaf/ }).click();
    await expect.poll(() => page.locator('.specimen .outline').count()).toBeGreaterThan(0);
    expect(await page.locator('.measures').first().innerText()).toMatch(/give or take/);
    await snap(page, `${name}-2-photo`);

    // The second photo has a date of its own and something white in it.
    await page.getByRole('button', { name: /^Show the photo: Young leaf/ }).click();
    await expect.poll(() => page.locator('.specimen figcaption').innerText()).toMatch(/14 June 2025/);
    const outline = page.locator('.specimen .outline polygon').first();
    await expect.poll(() => outline.count()).toBe(1);
    const photo = page.locator('.tap-surface');
    await page.getByLabel('Set the white').check();
    await photo.click({ position: await at(photo, 0.04, 0.1) });
    await expect.poll(() => page.getByText('Colours are set by the white you tapped.').count()).toBe(1);
    // Two leaves in the picture: a tap moves the outline to the one that is meant.
    for (const x of [0.75, 0.25]) {
      await page.getByLabel('Which leaf').check();
      await photo.click({ position: await at(photo, x, 0.47) });
      await expect.poll(() => middleOf(outline).then((middle) => Math.abs(middle - x))).toBeLessThan(0.1);
    }
    await page.getByRole('button', { name: 'Take back all taps' }).click();
    await expect.poll(() => page.locator('.tap-mark').count()).toBe(0);

    // First what strikes the eye, then one question at a time; each answer changes the weighing at once.
    await page.getByRole('button', { name: 'Pale or yellow', exact: true }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    await expect.poll(() => page.getByText('What strikes you?').count()).toBe(0);
    // A mark that means one thing on old leaves and another on young ones: on which, before anything else.
    expect(await page.locator('.question-asks').innerText()).toBe('On which leaves?');
    await page.locator('.question-asks').waitFor();
    const lines = page.locator('.weighing .cause');
    for (let i = 0; i < 3; i++) await answerFirst(page);
    const moved = await page.locator('.weighing').innerText();
    // A check is put off rather than not known.
    await page
      .locator('.question .answer', { hasText: /Can.t say|Not now/ })
      .first()
      .click();
    await expect.poll(() => page.getByText('Weighing your answer').count()).toBe(0);
    await answerFirst(page);
    expect(await page.locator('.weighing').innerText()).not.toBe(moved);
    await page.getByRole('button', { name: 'Take back the last answer' }).click();
    await expect.poll(() => page.locator('.weighing').innerText()).toBe(moved);
    expect(await lines.count()).toBeGreaterThan(1);
    const weighing = await page.locator('.weighing').innerText();
    expect(weighing).toMatch(/in 10/);
    expect(weighing).not.toMatch(/\d ?%/);
    await expect.poll(() => verdictOf(page).getByRole('heading').first().innerText()).toMatch(VERDICT);
    expect(await page.locator('body').innerText()).not.toMatch(/\bcertain\b/i);
    await snap(page, `${name}-3-weighing`);
    expect(await accessibilityFaultsInBothThemes(page)).toEqual([]);
    if (name === 'phone') {
      // With everything unfolded, all questions too.
      await page.getByLabel('All questions').check();
      await page.locator('.all-questions').waitFor();
      // How many were answered stays on one line beside its heading.
      const counts = page.locator('.all-questions > details > summary > span:last-child', {
        hasText: 'said',
      });
      expect(await counts.allInnerTexts()).toContain('2 said');
      const lines = await counts.evaluateAll((all) =>
        all.map((one) => one.clientHeight / Number.parseFloat(getComputedStyle(one).fontSize)),
      );
      for (const line of lines) expect(line).toBeLessThan(2);
      for (let shut = 1; shut > 0; ) {
        shut = await page.evaluate(() => {
          const folds = [...document.querySelectorAll('details:not([open])')];
          for (const fold of folds) fold.setAttribute('open', '');
          return folds.length;
        });
        await page.waitForTimeout(300);
      }
      expect(await page.locator('.mark-row .segments-set').count()).toBeGreaterThan(50);
      expect(await accessibilityFaultsInBothThemes(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      expect(await isTooWide(page)).toBe(false);
    }

    // A look in progress survives a reload.
    await page.reload();
    await expect.poll(() => page.locator('.weighing .cause').count()).toBeGreaterThan(1);

    // Kept as a case.
    await page.getByLabel('Bed', { exact: true }).fill('Long bed by the shed');
    await page.getByLabel('Plant', { exact: true }).fill('Third tomato from the path');
    await page.getByRole('button', { name: 'Keep it as a case' }).click();
    await expect
      .poll(() => page.getByRole('heading', { level: 1 }).innerText())
      .toBe('Third tomato from the path');
    await snap(page, `${name}-4-case`);
    expect(await accessibilityFaults(page)).toEqual([]);

    const elsewhere = requests.filter((url) => !url.startsWith(app.url) && !/^(blob|data):/.test(url));
    expect(elsewhere).toEqual([]);
    expect(reloaded).toBeGreaterThanOrEqual(afterLoading);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('is all there with the browser closed, the server stopped and no network', async () => {
    await app.stop();
    stopped = true;
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await context.setOffline(true);
    await page.goto(app.url);
    await page.getByRole('link', { name: 'Book', exact: true }).click();
    await page.getByLabel('Find a case').fill('tomato shed');
    await page.getByRole('link', { name: /Third tomato from the path/ }).click();
    await expect.poll(() => page.locator('.look-line').count()).toBe(1);

    // The look as it stood, photos included.
    await page.locator('.look-line').first().click();
    await expect.poll(() => page.getByText('The weighing as it stood on that day').count()).toBe(1);
    await expect.poll(() => page.locator('.specimen img').count()).toBeGreaterThan(0);
    expect(await page.locator('.weighing .cause').count()).toBeGreaterThan(1);
    await snap(page, `${name}-5-look-kept`);
    await page.getByRole('link', { name: 'Back to the case' }).click();

    // A later look with a photo: the photo worker and the ranking worker run without a network.
    await page.getByRole('button', { name: 'Look again now' }).click();
    await page.getByLabel('Choose photos').setInputFiles([drawn]);
    await expect.poll(() => page.locator('.measures').count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Old leaf low on the plant', exact: true }).click();
    await expect.poll(() => verdictOf(page).getByRole('heading').first().innerText()).toMatch(VERDICT);
    await page.getByRole('button', { name: 'Add it to the case' }).click();
    await expect.poll(() => page.locator('.look-line').count()).toBe(2);

    // Every other part, opened for the first time offline.
    for (const place of ['Walk', 'Ground', 'Book', 'Look']) {
      await page
        .getByRole('navigation', { name: 'Places' })
        .getByRole('link', { name: place, exact: true })
        .click();
      await expect.poll(() => page.getByRole('heading', { level: 1 }).count()).toBe(1);
      await snap(page, `${name}-6-${place.toLowerCase()}`);
      expect(await accessibilityFaults(page), place).toEqual([]);
    }
    await page.getByRole('link', { name: 'Help and settings' }).click();
    await expect.poll(() => page.getByRole('heading', { level: 1 }).count()).toBe(1);
    await snap(page, `${name}-7-help`);
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(complaints.filter((text) => !/ERR_INTERNET_DISCONNECTED|service.?worker/i.test(text))).toEqual([]);

    // Deleted after being asked, and brought back.
    await page
      .getByRole('navigation', { name: 'Places' })
      .getByRole('link', { name: 'Book', exact: true })
      .click();
    await page.getByRole('link', { name: /Third tomato from the path/ }).click();
    await page.getByRole('button', { name: 'Delete the case' }).click();
    await page.getByRole('button', { name: 'Yes, delete it' }).click();
    await expect.poll(() => page.getByRole('link', { name: /Third tomato from the path/ }).count()).toBe(0);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByRole('link', { name: /Third tomato from the path/ }).click();
    await expect.poll(() => page.locator('.look-line').count()).toBe(2);
    await context.close();
  });
});

/** A position inside an element as fractions of its box. */
async function at(element: ReturnType<Page['locator']>, x: number, y: number) {
  const box = (await element.boundingBox())!;
  return { x: box.width * x, y: box.height * y };
}

/** Middle of an outline from left to right, as a fraction of the photo. */
async function middleOf(outline: ReturnType<Page['locator']>): Promise<number> {
  const points = (await outline.getAttribute('points')) ?? '';
  const xs = points.split(' ').map((point) => Number(point.split(',')[0]) / 1000);
  return (Math.min(...xs) + Math.max(...xs)) / 2;
}

/** Two pictures of one size as one, the second to the right of the first. */
function sideBySide(left: Pixels, right: Pixels): Pixels {
  const { width, height } = left;
  const data = new Uint8ClampedArray(width * 2 * height * 4);
  for (let y = 0; y < height; y++) {
    const row = y * width * 4;
    data.set(left.data.subarray(row, row + width * 4), row * 2);
    data.set(right.data.subarray(row, row + width * 4), row * 2 + width * 4);
  }
  return { width: width * 2, height, data };
}
