import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LOOK_WORDS } from '../../src/app/words/look.ts';
import { PHOTO_TROUBLE_WORDS } from '../../src/app/words/photo-troubles.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import type { PhotoTrouble } from '../../src/photo/types.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { chooseCrop, newPhone, PHONE, type Served, sayItIsSmall, serveApp, snap } from './browser.ts';

let folder = '';
let app: Served;
const phone = newPhone();
const at = (name: string): string => join(folder, name);

beforeAll(async () => {
  app = await serveApp(4713);
  folder = mkdtempSync(join(tmpdir(), 'bedside-bad-'));
  const leaf = await writeJpeg(drawLeaf().pixels);
  const flat = (width: number, height: number, rgb: { r: number; g: number; b: number }) =>
    sharp({ create: { width, height, channels: 3, background: rgb } });
  writeFileSync(at('empty.jpg'), '');
  writeFileSync(at('words.jpg'), 'no picture at all');
  writeFileSync(at('cut.jpg'), leaf.subarray(0, Math.floor(leaf.length / 2)));
  await flat(1, 1, { r: 0, g: 0, b: 0 }).png().toFile(at('dot.png'));
  await flat(10_000, 10_000, { r: 90, g: 140, b: 60 }).png().toFile(at('huge.png'));
  await flat(800, 600, { r: 0, g: 0, b: 0 }).jpeg().toFile(at('black.jpg'));
  await flat(800, 600, { r: 120, g: 110, b: 100 }).jpeg().toFile(at('wall.jpg'));
  const whole = sharp(Buffer.from(leaf));
  await whole.clone().toColourspace('cmyk').jpeg().toFile(at('cmyk.jpg'));
  await whole.clone().toColourspace('rgb16').png().toFile(at('sixteen.png'));
  await whole.clone().ensureAlpha(0.5).png().toFile(at('see-through.png'));
  await whole.clone().blur(30).jpeg().toFile(at('blurred.jpg'));
});
afterAll(async () => {
  await app.stop();
  phone.throwAway();
  rmSync(folder, { recursive: true, force: true });
});

/** Files that nothing can be read from. */
const UNUSABLE = ['empty.jpg', 'words.jpg', 'cut.jpg', 'dot.png', 'huge.png'];

describe('bad photos in the browser', () => {
  it('one that is no picture takes no photo’s place, and is not kept with the case', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look/new`);
    await chooseCrop(page, 'Kale');
    await page.getByLabel('Choose photos').setInputFiles([at('words.jpg')]);
    const sentence = page.getByText(PHOTO_TROUBLE_WORDS['not-a-picture'], { exact: true });
    await sentence.waitFor();
    await snap(page, 'bad-photo');
    await page.getByLabel('Add a photo: Old leaf').setInputFiles([at('wall.jpg')]);
    await page.getByText(PHOTO_TROUBLE_WORDS['no-leaf'], { exact: true }).waitFor();
    // Told still, also when the look is opened again.
    await page.reload();
    await sentence.waitFor();
    await expect.poll(() => page.locator('.slot.filled').count()).toBe(1);
    await sayItIsSmall(page);
    await page.getByLabel('Bed', { exact: true }).fill('Long bed');
    await page.getByRole('button', { name: 'Keep it as a case' }).click();
    await expect.poll(() => page.locator('.look-line').count()).toBe(1);
    // It comes from the store, a moment after the line.
    await expect.poll(() => page.locator('.look-line img').count()).toBe(1);
    await context.close();
  });

  it('each get a sentence that says what to do, and what was entered stays', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look`);
    await page.getByLabel('Find a crop').fill('kale');
    await page.getByRole('button', { name: 'Kale', exact: true }).click();
    const expected: [string, PhotoTrouble | undefined][] = [
      ['empty.jpg', 'empty-file'],
      ['words.jpg', 'not-a-picture'],
      ['cut.jpg', 'broken-picture'],
      ['dot.png', 'too-small'],
      ['huge.png', 'too-large'],
      ['black.jpg', 'too-dark'],
      ['wall.jpg', 'no-leaf'],
      ['blurred.jpg', 'too-blurred'],
      ['cmyk.jpg', undefined],
      ['sixteen.png', undefined],
      ['see-through.png', undefined],
    ];
    for (const [file, trouble] of expected) {
      await page.getByLabel('Choose photos').setInputFiles([at(file)]);
      if (trouble) {
        const sentence = page.getByText(PHOTO_TROUBLE_WORDS[trouble], { exact: true });
        await expect.poll(() => sentence.count(), { message: file }).toBeGreaterThan(0);
      } else {
        await expect.poll(() => page.locator('.measures').count(), { message: file }).toBeGreaterThan(0);
      }
      // The crop stays, and the weighing goes on without the photo.
      expect(await page.getByRole('button', { name: /^Kale/ }).count()).toBe(1);
      await expect.poll(() => page.locator('.weighing .cause').count(), { message: file }).toBeGreaterThan(1);
      const isUsable = (await page.locator('.specimen').count()) > 0;
      expect(isUsable, file).toBe(!UNUSABLE.includes(file));
      if (isUsable) {
        await page.locator('summary', { hasText: /^This photo/ }).click();
        await page.getByRole('button', { name: 'Take this photo out' }).click();
        continue;
      }
      // Nothing to tap and no role to say, all four places free, and one way to take it off in sight.
      expect(await page.getByText(file, { exact: true }).count(), file).toBe(1);
      expect(
        await page.locator('.tap-modes, .role-question, .slot.filled, .photo-desk img').count(),
        file,
      ).toBe(0);
      expect(await page.locator('.photo-desk').innerText(), file).not.toContain(LOOK_WORDS.nothingMeasured);
      await page.getByRole('button', { name: `Take “${file}” out`, exact: true }).click();
      await expect.poll(() => page.getByText(file, { exact: true }).count(), { message: file }).toBe(0);
    }
    await context.close();
  });
});
