import { describe, expect, it } from 'vitest';
import { accessibilityFaults, appOnPhone, DESK, PHONE, snap, watch } from './browser.ts';
import { listScreens, loadInventedGarden } from './invented-screens.ts';
import { pinned, setTwice } from './large-text.ts';
import { isTooWide, SMALL, settled, smallTargets } from './screen-faults.ts';

describe('every screen of a garden in use', () => {
  const { phone, app } = appOnPhone(4740);

  it('keeps to WCAG 2.2 AA and to contrast of 7:1 in both themes, is wide enough for a thumb, and holds text of twice the size', {
    timeout: 900_000,
  }, async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await loadInventedGarden(page, app.url);
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
      await setTwice(page);
      if (await isTooWide(page)) note('text of twice the size', ['wider than the screen']);
      for (const { what, height } of await pinned(page))
        if (height > PHONE.height / 3) note('text of twice the size', [`${what} keeps ${height} px`]);
      await setTwice(page, false);
    }
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
