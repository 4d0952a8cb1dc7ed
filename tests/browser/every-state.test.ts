import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { accessibilityFaultsInBothThemes, appOnPhone, DESK, PHONE, snap, watch } from './browser.ts';
import {
  isTooWide,
  movedSideways,
  runTogether,
  SMALL,
  settled,
  smallTargets,
  TABLET,
  underFocusLine,
} from './screen-faults.ts';
import { overfullGarden, plantGarden, SEEN_AT } from './seed-garden.ts';

/** Screens that a garden without a record has. */
const EMPTY: readonly (readonly [name: string, hash: string])[] = [
  ['walk', '#/walk'],
  ['look', '#/look/new'],
  ['beds', '#/ground'],
  ['no-such-bed', '#/ground/none'],
  ['batches', '#/ground/batches'],
  ['no-such-batch', '#/ground/batches/none'],
  ['weather', '#/ground/weather'],
  ['normal-leaves', '#/ground/normal-leaves'],
  ['book', '#/book'],
  ['no-such-case', '#/book/none'],
  ['recurring', '#/book/recurring'],
  ['taught', '#/book/taught'],
  ['pot-tests', '#/book/pots/list'],
  ['pot-plan', '#/book/pots/plan'],
  ['trial-plan', '#/book/trials/fresh/plan'],
  ['trial-lay-out', '#/book/trials/fresh/lay-out'],
  ['no-such-sheet', '#/book/sheet/case/none'],
  ['help', '#/help'],
];

const BEAN = 'demo-case-bean';
const TRIAL = 'demo-trial-leaf-mould';
const OVERFULL: readonly (readonly [name: string, hash: string])[] = [
  ['walk', '#/walk'],
  ['look', '#/look/new'],
  ['beds', '#/ground'],
  ['bed', '#/ground/demo-long'],
  ['batches', '#/ground/batches'],
  ['batch', '#/ground/batches/demo-batch-manure'],
  ['weather', '#/ground/weather'],
  ['normal-leaves', '#/ground/normal-leaves'],
  ['book', '#/book'],
  ['case', `#/book/${BEAN}`],
  ['closed-case', '#/book/demo-case-rocket'],
  ['kept-look', `#/book/${BEAN}/demo-look-bean-2`],
  ['ended', `#/book/${BEAN}/ended`],
  ['recurring', '#/book/recurring'],
  ['taught', '#/book/taught'],
  ['pot-tests', '#/book/pots/list'],
  ['pot-plan', '#/book/pots/plan'],
  ['pot-test', '#/book/pots/test/demo-pots-running'],
  ['pot-test-ended', '#/book/pots/test/demo-pots-stopped'],
  ['pot-card', '#/book/pots/card/demo-pots-running'],
  ['pot-look', '#/book/pots/look/demo-pots-running'],
  ['trial', `#/book/trials/${TRIAL}`],
  ['trial-plan', `#/book/trials/${TRIAL}/plan`],
  ['trial-lay-out', `#/book/trials/${TRIAL}/lay-out`],
  ['trial-measure', `#/book/trials/${TRIAL}/measure`],
  ['sheet-case', `#/book/sheet/case/${BEAN}`],
  ['sheet-bed', '#/book/sheet/bed/demo-long'],
  ['sheet-trial', `#/book/sheet/trial/${TRIAL}`],
  ['sheet-pots', '#/book/sheet/pots/demo-pots-stopped'],
];

/** Opens each screen by itself, as from a bookmark, at four sizes; says what is wrong with it. */
async function faultsOf(
  page: Page,
  url: string,
  screens: readonly (readonly [name: string, hash: string])[],
  state: string,
): Promise<string[]> {
  const faults: string[] = [];
  for (const [name, hash] of screens) {
    const note = (what: string, found: readonly string[]): void =>
      void faults.push(...found.map((fault) => `${name}, ${what}: ${fault}`));
    await page.setViewportSize(PHONE);
    // A page of its own each time: what another screen has fetched must not help this one.
    await page.goto('about:blank');
    await page.goto(url + hash);
    await settled(page);
    note('touch', await smallTargets(page));
    note('links', await runTogether(page, '.normal-list a'));
    for (const [size, colorScheme] of [
      [SMALL, 'light'],
      [PHONE, 'dark'],
      [TABLET, 'light'],
      [DESK, 'dark'],
    ] as const) {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      if (await isTooWide(page)) note(`${size.width} px`, ['wider than the screen']);
      // The weather's days are a wide table by nature.
      if (name === 'taught') note(`${size.width} px`, await movedSideways(page));
      note(`${size.width} px, focus line`, await underFocusLine(page));
      await snap(page, `${state}-${name}-${size.width}`);
    }
    // Seen whole, as in the test of every screen.
    await page.setViewportSize({ width: PHONE.width, height: 6000 });
    note('accessible', await accessibilityFaultsInBothThemes(page));
  }
  return faults;
}

describe.each([
  ['empty', EMPTY, 4831],
  ['overfull', OVERFULL, 4832],
] as const)('every screen of a garden that is %s', (state, screens, port) => {
  const { phone, app } = appOnPhone(port);

  it('fits four sizes of screen, is wide enough for a thumb, and accessible', {
    timeout: 900_000,
  }, async () => {
    const { context, page } = await phone.open(PHONE);
    await context.clock.setFixedTime(SEEN_AT);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.locator('h1').first().waitFor();
    if (state === 'overfull') await plantGarden(page, overfullGarden());
    expect(await faultsOf(page, app.url, screens, state)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
