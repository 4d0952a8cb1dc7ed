import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { ARTEFACTS, appOnPhone, chooseCrop, DESK, PHONE, ROOT, sayItIsSmall } from './browser.ts';
import { beyond, comparePictures, TOLERATED, TOLERATED_OTHER_FACES } from './compare-pictures.ts';
import { SMALL, settled, TABLET } from './screen-faults.ts';
import { plantGarden, SEEN_AT, usualGarden } from './seed-garden.ts';

/** `npm run references` makes them anew; `ONLY="walk-desk book"` those whose names begin so. */
const WRITES = process.env.REFERENCES === 'write';
const ONLY = process.env.ONLY?.split(' ') ?? [''];
const FOLDER = join(ROOT, 'tests/browser/references');

const SIZES = { small: SMALL, phone: PHONE, tablet: TABLET, desk: DESK } as const;
const THEMES = { light: 'light', dusk: 'dark' } as const;
const EVERY_SIZE = ['small', 'phone', 'tablet', 'desk'] as const;
const USUAL_SIZES = ['phone', 'desk'] as const;
type Size = keyof typeof SIZES;
type Screen = readonly [name: string, hash: string, sizes?: readonly Size[], more?: More];
interface More {
  /** What is done there before it is looked at. */
  readonly doing?: (page: Page) => Promise<void>;
  /** What is scrolled to. */
  readonly at?: string;
}

/** A look in progress: the crop and one sign are said, and a question stands open. */
const lookInProgress = async (page: Page): Promise<void> => {
  await chooseCrop(page, 'Kale');
  await sayItIsSmall(page);
  await page.locator('.result[aria-busy="false"] .weighing .cause').first().waitFor();
};

/** Before anything is kept. */
const EMPTY: readonly Screen[] = [
  ['empty-walk', '#/walk'],
  ['empty-book', '#/book'],
];
const SCREENS: readonly Screen[] = [
  ['walk', '#/walk', EVERY_SIZE],
  ['look', '#/look/new'],
  ['asked', '#/look/new', EVERY_SIZE, { doing: lookInProgress, at: '#question' }],
  ['weighed', '#/look/new', USUAL_SIZES, { doing: lookInProgress, at: '#weighing' }],
  ['beds', '#/ground'],
  ['bed', '#/ground/demo-long'],
  ['batch', '#/ground/batches/demo-batch-manure'],
  ['weather', '#/ground/weather'],
  ['book', '#/book'],
  ['case', '#/book/demo-case-bean'],
  ['kept-look', '#/book/demo-case-tomato/demo-look-tomato-2', EVERY_SIZE],
  ['pot-test', '#/book/pots/test/demo-pots-stopped'],
  ['pot-look', '#/book/pots/look/demo-pots-running'],
  ['trial', '#/book/trials/demo-trial-leaf-mould'],
  ['taught', '#/book/taught'],
  ['sheet', '#/book/sheet/case/demo-case-tomato'],
  ['help', '#/help'],
];

/** The faces that the page's two stacks came to on this machine, by Chromium itself. */
async function facesOn(page: Page): Promise<string> {
  const session = await page.context().newCDPSession(page);
  await session.send('DOM.enable');
  await session.send('CSS.enable');
  const { root } = await session.send('DOM.getDocument');
  const faces: string[] = [];
  for (const selector of ['h1', '.button']) {
    const { nodeId } = await session.send('DOM.querySelector', { nodeId: root.nodeId, selector });
    const { fonts } = await session.send('CSS.getPlatformFontsForNode', { nodeId });
    faces.push(fonts[0]?.familyName ?? 'none');
  }
  await session.detach();
  return faces.join(', ');
}

/** Pictures in sight that are not drawn yet; one further down may never be fetched. */
const picturesToCome = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      [...document.images].filter((image) => {
        const { top, bottom } = image.getBoundingClientRect();
        return top < innerHeight && bottom > 0 && !image.complete;
      }).length,
  );

/** Takes the pictures anew, or says which screens do not look as they did. */
async function compareScreens(
  page: Page,
  url: string,
  screens: readonly Screen[],
  hasFaces: boolean,
): Promise<string[]> {
  const faults: string[] = [];
  for (const [name, hash, sizes = USUAL_SIZES, { doing, at } = {}] of screens) {
    await page.goto('about:blank');
    await page.goto(url + hash);
    await doing?.(page);
    for (const size of sizes) {
      const viewport = SIZES[size];
      await page.setViewportSize(viewport);
      await settled(page);
      if (at) await page.locator(at).evaluate((part) => part.scrollIntoView());
      await expect.poll(() => picturesToCome(page)).toBe(0);
      for (const [theme, colorScheme] of Object.entries(THEMES)) {
        await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
        await page.evaluate(
          () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
        );
        const seen = await page.screenshot({ animations: 'disabled', caret: 'hide' });
        const file = `${name}-${size}-${theme}`;
        const reference = join(FOLDER, `${file}.webp`);
        if (WRITES) {
          if (!ONLY.some((start) => file.startsWith(start))) continue;
          const half = Math.round(viewport.width / 2);
          await sharp(seen).resize({ width: half }).webp({ quality: 60, effort: 6 }).toFile(reference);
          continue;
        }
        if (!existsSync(reference)) {
          faults.push(`${name}, ${size}, ${theme}: no reference; run npm run references and look at it`);
          continue;
        }
        const apart = await comparePictures(seen, readFileSync(reference));
        const found = beyond(apart, hasFaces ? TOLERATED : TOLERATED_OTHER_FACES);
        if (found.length === 0) continue;
        faults.push(`${name}, ${size}, ${theme}: ${found.join('; ')}`);
        mkdirSync(ARTEFACTS, { recursive: true });
        writeFileSync(join(ARTEFACTS, `reference-${file}.png`), seen);
      }
    }
  }
  return faults;
}

describe('chosen screens', () => {
  const { phone, app } = appOnPhone(4833);

  it('look as they did, in both themes, on a phone and on a desk, three of them on a small phone and a tablet too', {
    timeout: 600_000,
  }, async () => {
    const { context, page } = await phone.open(PHONE);
    await context.clock.setFixedTime(SEEN_AT);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.goto(app.url);
    await page.locator('.button').first().waitFor();
    const faces = await facesOn(page);
    const facesFile = join(FOLDER, 'faces.txt');
    mkdirSync(FOLDER, { recursive: true });
    if (WRITES) writeFileSync(facesFile, `${faces}\n`);
    const hasFaces = readFileSync(facesFile, 'utf8').trim() === faces;
    if (!hasFaces) console.log(`Other faces here (${faces}): only colours and columns are compared.`);
    // Said in the head once every file is stored, and on every page from then on.
    await page.getByText('works without signal now').waitFor();
    const faults = await compareScreens(page, app.url, EMPTY, hasFaces);
    await plantGarden(page, usualGarden());
    faults.push(...(await compareScreens(page, app.url, SCREENS, hasFaces)));
    expect(faults).toEqual([]);
    await context.close();
  });
});
