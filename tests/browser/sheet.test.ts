import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { SHEET_WORDS } from '../../src/app/words/sheet.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { placeIn, tellsNothing, withPlace } from '../pictures/place-in-photo.ts';
import {
  ARTEFACTS,
  accessibilityFaults,
  appOnPhone,
  chooseCrop,
  DESK,
  PHONE,
  sayItIsSmall,
  snap,
  watch,
} from './browser.ts';
import { pagesOfPdf } from './read-pdf.ts';

const { phone, app } = appOnPhone(4867);

it('a case goes on a page or two of paper, and on as a file that tells no place and runs nothing', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'bedside-sheet-'));
  const file = join(folder, 'leaf.jpg');
  const { pixels } = drawLeaf({ width: 800, height: 600, length: 0.8, yellow: { where: 'between-veins' } });
  const picture = sharp(Buffer.from(pixels.data.buffer), { raw: { width: 800, height: 600, channels: 4 } });
  const taken = await withPlace(picture);
  expect(await placeIn(taken)).toEqual({ latitude: 51.5, longitude: 7.25 });
  writeFileSync(file, taken);
  const { context, page } = await phone.open(PHONE);
  const { complaints } = watch(context);
  await page.goto(`${app.url}#/look/new`);
  await chooseCrop(page, 'Kale');
  await page.getByLabel('Choose photos').setInputFiles([file]);
  await expect.poll(() => page.locator('.layer').count()).toBeGreaterThan(0);
  await sayItIsSmall(page);
  await page.getByLabel('Bed', { exact: true }).fill('Long bed');
  await page.getByLabel('Plant', { exact: true }).fill('Kale <img src=x onerror=alert(1)>');
  await page.getByLabel('Note').fill('</article><script>alert(1)</script> by the path');
  await page.getByRole('button', { name: 'Keep it as a case' }).click();
  await page.getByRole('link', { name: SHEET_WORDS.make }).click();
  const sheet = page.locator('.sheet');
  await sheet.getByRole('heading', { level: 1 }).waitFor();
  await expect.poll(() => sheet.locator('img').count()).toBe(1);
  await snap(page, 'sheet-case-phone');
  expect(await accessibilityFaults(page)).toEqual([]);

  for (const format of ['A4', 'Letter'] as const) {
    const path = join(ARTEFACTS, `sheet-case-fresh-${format}.pdf`);
    expect(pagesOfPdf(await page.pdf({ format, path }))).toHaveLength(1);
  }

  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: SHEET_WORDS.share }).click();
  const download = await saved;
  expect(download.suggestedFilename()).toBe('kale-img-srcx-onerroralert1.html');
  const path = join(folder, 'sheet.html');
  await download.saveAs(path);
  const html = readFileSync(path, 'utf8');
  const photos = [...html.matchAll(/src="data:image\/jpeg;base64,([^"]+)"/g)].map((found) => found[1]!);
  expect(photos).toHaveLength(1);
  await tellsNothing(Buffer.from(photos[0]!, 'base64'));
  expect(html).not.toMatch(/<script|<img src="?x|https?:\/\/(?!www\.w3\.org)|blob:|GPS/);

  // Opened by itself, with nothing beside it: the words are the words, and nothing runs.
  const other = await context.newPage();
  let asked = 0;
  other.on('dialog', () => asked++);
  await other.setViewportSize(DESK);
  await other.goto(`file://${path}`);
  await other.getByText('</article><script>alert(1)</script> by the path').waitFor();
  expect(await other.locator('img').evaluate((img) => (img as HTMLImageElement).naturalWidth)).toBe(800);
  await snap(other, 'sheet-file-desk');
  expect(asked).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});
