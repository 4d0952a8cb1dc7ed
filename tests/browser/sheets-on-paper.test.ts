import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { SHEET_WORDS } from '../../src/app/words/sheet.ts';
import { SHEET_PARTS, TRIAL_CAUTIONS } from '../../src/app/words/sheet-parts.ts';
import { CAUTIONS } from '../../src/causes/cautions.ts';
import type { TrialRecord } from '../../src/garden/trial-record.ts';
import { placeIn, tellsNothing, withPlace } from '../pictures/place-in-photo.ts';
import { ARTEFACTS, accessibilityFaults, appOnPhone, DESK, PHONE, snap, watch } from './browser.ts';
import { pagesOfPdf } from './read-pdf.ts';
import { isTooWide, settled } from './screen-faults.ts';
import { plantGarden, SEEN_AT, type SeedGarden, usualGarden } from './seed-garden.ts';

const TRIAL = 'demo-trial-leaf-mould';
/** Address of each sheet, its pages on A4 and on Letter, its photos. */
const SHEETS = [
  ['case', 'case/demo-case-tomato', { A4: 2, Letter: 2 }, 1],
  ['case-kale', 'case/demo-case-kale', { A4: 2, Letter: 2 }, 2],
  ['bed', 'bed/demo-long', { A4: 1, Letter: 1 }, 3],
  ['bed-stone', 'bed/demo-stone', { A4: 1, Letter: 1 }, 2],
  ['trial', `trial/${TRIAL}`, { A4: 2, Letter: 2 }, 6],
  ['pots', 'pots/demo-pots-stopped', { A4: 2, Letter: 2 }, 0],
] as const;
/** A page that holds the foot alone shows fewer pieces of text than this. */
const MORE_THAN_THE_FOOT = 12;

/** The invented garden with a place written into every photo, and a trial that is measured by them. */
async function gardenWithPlaces(): Promise<SeedGarden> {
  const { records, photos } = usualGarden();
  const told = await Promise.all(
    photos.map(async (photo) => {
      const jpeg = await withPlace(Buffer.from(photo.jpeg, 'base64'));
      expect(await placeIn(jpeg)).toEqual({ latitude: 51.5, longitude: 7.25 });
      return { ...photo, jpeg: jpeg.toString('base64') };
    }),
  );
  const ids = photos.map(({ id }) => id);
  return {
    photos: told,
    records: records.map((record) =>
      record.kind === 'trial' && record.id === TRIAL ? measuredByPhoto(record, ids) : record,
    ),
  };
}

const measuredByPhoto = (trial: TrialRecord, ids: readonly string[]): TrialRecord => ({
  ...trial,
  measure: { by: 'photo', measure: 'chlorotic-fraction' },
  matters: 0.05,
  readings: trial.readings.map((one, at) => ({
    ...one,
    value: (one.value ?? 0) / 100,
    se: 0.02,
    photoId: ids[at % ids.length]!,
  })),
});

describe('sheets of a garden in use', () => {
  const { phone, app } = appOnPhone(4868);

  const open = async (page: Page, of: string): Promise<void> => {
    await page.goto('about:blank');
    await page.goto(`${app.url}#/book/sheet/${of}`);
    await settled(page);
    await page.locator('.sheet-foot').waitFor();
  };

  it('fill the pages of paper that they say, and go on as files without place, script or address', {
    timeout: 300_000,
  }, async () => {
    const { context, page } = await phone.open(PHONE);
    await context.clock.setFixedTime(SEEN_AT);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.locator('h1').first().waitFor();
    await plantGarden(page, await gardenWithPlaces());
    for (const [name, of, pages, photos] of SHEETS) {
      await open(page, of);
      await expect.poll(() => page.locator('.sheet img').count(), { message: name }).toBe(photos);
      expect(await accessibilityFaults(page), name).toEqual([]);
      expect(await isTooWide(page), name).toBe(false);
      await onPaper(page, name, pages, photos);
      await handedOn(context, page, name, photos);
    }

    await open(page, 'case/demo-case-kale');
    await page.setViewportSize(DESK);
    const [leaf, others] = await page
      .locator('.sheet img')
      .evaluateAll((all) => all.map((img) => img.clientWidth * img.clientHeight));
    expect(leaf).toBeGreaterThan(4 * others!);
    await snap(page, 'sheet-case-desk');
    await page.setViewportSize(PHONE);

    await open(page, 'bed/demo-long');
    const bed = await page.locator('.sheet').innerText();
    // Photos with what was measured, the likeliest cause with a reason, what to mind.
    expect(bed).toMatch(/% of the whole leaf, give or take/);
    expect(bed).toMatch(/(about \d+|more than 99) in 10+ gardens.*\. For it: /);
    expect(bed).toContain(SHEET_PARTS.cautions);
    expect(bed).toContain(CAUTIONS['local-rules']);
    expect(await page.locator('.sheet-actions').innerText()).toContain(SHEET_PARTS.bed.long);

    await open(page, `trial/${TRIAL}`);
    const trial = await page.locator('.sheet').innerText();
    expect(trial).toMatch(/% of the leaf, give or take/);
    for (const caution of TRIAL_CAUTIONS) expect(trial).toContain(caution);
    // The shade of the band is white on paper; its edge is not.
    await page.emulateMedia({ media: 'print' });
    const edge = await page.locator('.plot-ahead').evaluate((band) => getComputedStyle(band).stroke);
    expect(edge).toMatch(/^rgb\(/);
    expect(edge).not.toBe('rgb(255, 255, 255)');
    await page.emulateMedia({ media: 'screen' });

    // Nothing laid out yet: the page prints as it is, and not as an empty plan.
    await page.goto(`${app.url}#/book/trials/fresh/lay-out`);
    await settled(page);
    expect(pagesOfPdf(await page.pdf({ format: 'A4' }))[0]!.texts).toBeGreaterThan(3);
    expect(complaints).toEqual([]);
    await context.close();
  });

  async function onPaper(
    page: Page,
    name: string,
    pages: Record<'A4' | 'Letter', number>,
    photos: number,
  ): Promise<void> {
    for (const format of ['A4', 'Letter'] as const) {
      const printed = pagesOfPdf(
        await page.pdf({ format, path: join(ARTEFACTS, `sheet-${name}-${format}.pdf`) }),
      );
      expect.soft(printed.length, `${name}, ${format}`).toBe(pages[format]);
      const pictures = printed.reduce((sum, one) => sum + one.pictures, 0);
      expect.soft(pictures, `${name}, ${format}`).toBe(photos);
      for (const { texts } of printed)
        expect.soft(texts, `${name}, ${format}`).toBeGreaterThan(MORE_THAN_THE_FOOT);
    }
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('summary:visible').count(), name).toBe(0);
    await page.emulateMedia({ media: null });
  }

  async function handedOn(context: BrowserContext, page: Page, name: string, photos: number): Promise<void> {
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: SHEET_WORDS.share }).click();
    const path = join(ARTEFACTS, `sheet-file-${name}.html`);
    await (await saved).saveAs(path);
    const html = readFileSync(path, 'utf8');
    expect(html, name).toContain("default-src 'none'");
    expect(html, name).not.toMatch(
      /<script|<link|<button|\son\w+=|\shref=|https?:\/\/(?!www\.w3\.org)|blob:|GPS/,
    );
    const pictures = [...html.matchAll(/src="data:image\/jpeg;base64,([^"]+)"/g)].map(([, data]) => data!);
    expect(pictures, name).toHaveLength(photos);
    for (const data of pictures) await tellsNothing(Buffer.from(data, 'base64'));

    const other = await context.newPage();
    const asked: string[] = [];
    other.on('request', (request) => asked.push(request.url().slice(0, 5)));
    await other.setViewportSize(DESK);
    await other.goto(`file://${path}`);
    await other.locator('.sheet-foot').waitFor();
    expect(asked, name).toEqual(['file:']);
    // In the middle of a wide screen.
    const { x, width } = (await other.locator('.sheet').boundingBox())!;
    const beyond = (await other.evaluate(() => document.documentElement.clientWidth)) - x - width;
    expect(x, name).toBeGreaterThan(100);
    expect(Math.abs(x - beyond), name).toBeLessThan(2);
    await snap(other, `sheet-file-${name}-desk`);
    await other.close();
  }
});
