import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PHOTO_TROUBLE_WORDS } from '../../src/app/words/photo-troubles.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import type { PhotoTrouble } from '../../src/photo/types.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { newPhone, PHONE, type Served, serveApp } from './browser.ts';

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

describe('bad photos in the browser', () => {
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
      await page.locator('summary', { hasText: /^This photo/ }).click();
      await page.getByRole('button', { name: 'Take this photo out' }).click();
    }
    await context.close();
  });
});
