import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { accessibilityFaults, appOnPhone, DESK, PHONE, snap, watch } from './browser.ts';
import { isTooWide, SMALL, settled, smallTargets } from './screen-faults.ts';

const STRIP = 'Invented garden — nothing here is yours';

const firstLink = async (page: Page, start: string): Promise<string> => {
  const link = page.locator(`main a[href^="${start}"]`).first();
  await link.waitFor();
  return (await link.getAttribute('href'))!;
};

/** Every kind of screen with the invented garden's content in it, by name and address. */
async function listScreens(page: Page, url: string): Promise<[name: string, hash: string][]> {
  const open = async (hash: string): Promise<void> => {
    await page.goto(url + hash);
    await page.locator('h1').waitFor();
  };
  await open('#/ground');
  const bed = await firstLink(page, '#/ground/demo');
  await open('#/ground/batches');
  const batch = await firstLink(page, '#/ground/batches/');
  await open('#/book');
  const kept = await firstLink(page, '#/book/demo-case');
  const trial = await firstLink(page, '#/book/trials/demo');
  await open(kept);
  const look = (await page
    .locator(`main a[href^="${kept}/"]`)
    .evaluateAll((links) =>
      links.map((link) => link.getAttribute('href')).find((href) => !href?.endsWith('/ended')),
    ))!;
  await open('#/book/pots/list');
  const pots = await firstLink(page, '#/book/pots/test/');
  const testId = pots.split('/').at(-1)!;
  const trialId = trial.split('/').at(-1)!;
  return [
    ['walk', '#/walk'],
    ['look-empty', '#/look/new'],
    ['beds', '#/ground'],
    ['bed', bed],
    ['batches', '#/ground/batches'],
    ['batch', batch],
    ['weather', '#/ground/weather'],
    ['normal-leaves', '#/ground/normal-leaves'],
    ['book', '#/book'],
    ['case', kept],
    ['kept-look', look],
    ['ended', `${kept}/ended`],
    ['recurring', '#/book/recurring'],
    ['taught', '#/book/taught'],
    ['leaves', '#/book/leaves'],
    ['pot-tests', '#/book/pots/list'],
    ['pot-plan', `#/book/pots/plan/${batch.split('/').at(-1)!}`],
    ['pot-test', pots],
    ['pot-card', `#/book/pots/card/${testId}`],
    ['pot-look', `#/book/pots/look/${testId}`],
    ['trial', trial],
    ['trial-plan', `${trial}/plan`],
    ['trial-lay-out', `${trial}/lay-out`],
    ['trial-measure', `${trial}/measure`],
    ['sheet-case', `#/book/sheet/case/${kept.split('/').at(-1)!}`],
    ['sheet-bed', `#/book/sheet/bed/${bed.split('/').at(-1)!}`],
    ['sheet-trial', `#/book/sheet/trial/${trialId}`],
    ['sheet-pots', `#/book/sheet/pots/${testId}`],
    ['help', '#/help'],
  ];
}

describe('every screen of a garden in use', () => {
  const { phone, app } = appOnPhone(4740);

  it('keeps to WCAG 2.2 AA in both themes, is wide enough for a thumb, and holds text of twice the size', {
    timeout: 900_000,
  }, async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(`${app.url}#/help`);
    await page.getByRole('button', { name: 'Load the invented garden' }).click();
    await page.getByText(STRIP).waitFor({ timeout: 300_000 });
    const faults: string[] = [];
    for (const [name, hash] of await listScreens(page, app.url)) {
      const note = (what: string, found: readonly string[]): void =>
        void faults.push(...found.map((fault) => `${name}, ${what}: ${fault}`));
      await page.setViewportSize(PHONE);
      await page.goto(app.url + hash);
      await settled(page);
      note('touch', await smallTargets(page));
      // Seen whole: a page that scrolls under the tabs hides half a button from the checker.
      await page.setViewportSize({ width: PHONE.width, height: 6000 });
      await page.evaluate(() => scrollTo(0, 0));
      for (const theme of ['light', 'dusk'] as const) {
        await page.evaluate((one) => {
          document.documentElement.dataset.theme = one;
        }, theme);
        note(theme, await accessibilityFaults(page));
      }
      await page.evaluate(() => {
        delete document.documentElement.dataset.theme;
      });
      for (const size of [SMALL, DESK]) {
        await page.setViewportSize(size);
        if (await isTooWide(page)) note(`${size.width} px`, ['wider than the screen']);
        if (size === DESK) await snap(page, `screen-${name}-desk`);
      }
      await page.setViewportSize(PHONE);
      await snap(page, `screen-${name}-phone`);
      // Text of twice the size (WCAG 2.2, 1.4.4).
      await page.evaluate(() => {
        document.documentElement.classList.add('twice');
        const sheet = new CSSStyleSheet();
        sheet.replaceSync('html.twice { font-size: 200%; }');
        document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
      });
      if (await isTooWide(page)) note('text of twice the size', ['wider than the screen']);
      await page.evaluate(() => {
        document.documentElement.classList.remove('twice');
        document.adoptedStyleSheets = [];
      });
    }
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
