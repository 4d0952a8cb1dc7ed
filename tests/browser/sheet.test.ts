import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'exifr/dist/mini.esm.mjs';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { SHEET_WORDS } from '../../src/app/words/sheet.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import {
  accessibilityFaults,
  appOnPhone,
  chooseCrop,
  DESK,
  PHONE,
  sayItIsSmall,
  snap,
  watch,
} from './browser.ts';

const { phone, app } = appOnPhone(4737);

it('a case goes on a page or two of paper, and on as a file that tells no place and runs nothing', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'bedside-sheet-'));
  const file = join(folder, 'leaf.jpg');
  const { pixels } = drawLeaf({ width: 800, height: 600, length: 0.8, yellow: { where: 'between-veins' } });
  const picture = sharp(Buffer.from(pixels.data.buffer), { raw: { width: 800, height: 600, channels: 4 } });
  writeFileSync(
    file,
    await picture
      .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSLongitude: '7/1 15/1 0/1' } })
      .jpeg()
      .toBuffer(),
  );
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

  const pages: Record<string, number> = {};
  for (const format of ['A4', 'Letter'] as const) {
    const path = join('test-artefacts', `sheet-case-${format}.pdf`);
    const pdf = await page.pdf({
      format,
      path,
      margin: { top: '12mm', bottom: '12mm', left: '14mm', right: '14mm' },
    });
    pages[format] = [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b/g)].length;
  }
  expect(Math.max(...Object.values(pages))).toBeLessThanOrEqual(2);

  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: SHEET_WORDS.share }).click();
  const download = await saved;
  expect(download.suggestedFilename()).toBe('kale-img-srcx-onerroralert1.html');
  const path = join(folder, 'sheet.html');
  await download.saveAs(path);
  const html = readFileSync(path, 'utf8');
  const photos = [...html.matchAll(/src="data:image\/jpeg;base64,([^"]+)"/g)].map((found) => found[1]!);
  expect(photos).toHaveLength(1);
  const bytes = Buffer.from(photos[0]!, 'base64');
  expect(bytes.includes('Exif')).toBe(false);
  expect(
    await parse(bytes, { exif: [0x9003], reviveValues: false, translateKeys: false }).catch(() => undefined),
  ).toBeUndefined();
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
  // Tools of the machine that look at pages, where they are there: a picture of the paper for whoever looks at the artefacts.
  for (const format of ['A4', 'Letter']) {
    try {
      execFileSync('pdftoppm', [
        '-r',
        '60',
        '-png',
        `test-artefacts/sheet-case-${format}.pdf`,
        `test-artefacts/sheet-case-${format}`,
      ]);
    } catch {
      // Not installed: the PDF itself is there.
    }
  }
});
