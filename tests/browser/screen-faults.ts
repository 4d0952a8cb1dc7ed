import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** The narrowest screen that is looked at, and a tablet upright. */
export const SMALL = { width: 360, height: 740 } as const;
export const TABLET = { width: 820, height: 1180 } as const;
/** Least side of something to touch, px (WCAG 2.2, 2.5.5). */
const TOUCH_PX = 44;

/** Waits until a page has its heading and reads nothing more, and until its height has come to rest. */
export async function settled(page: Page): Promise<void> {
  await page.locator('h1:not(:text-is("…"))').first().waitFor();
  await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
  let before = -1;
  await expect
    .poll(
      async () => {
        const height = await page.evaluate(() => document.documentElement.scrollHeight);
        const isStill = height === before;
        before = height;
        return isStill;
      },
      { interval: 250 },
    )
    .toBe(true);
}

/** What can be touched and is too small for a thumb; words within a sentence are let pass (WCAG 2.2, 2.5.5, "inline"). */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate((least) => {
    const found: string[] = [];
    const selector = 'a[href], button, select, input, textarea, summary, label:has(input)';
    for (const element of document.querySelectorAll<HTMLElement>(selector)) {
      if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
      // A block on a beam is as long as its weight; all that it says stands in "All reasons in words" (WCAG 2.2, 2.5.5, "equivalent").
      if (element.closest('.unseen') || element.matches('.term, .block, .unseen')) continue;
      // What lies in a label is touched through it.
      const label = element.matches('input') ? element.closest('label') : null;
      if (label && label !== element) continue;
      const isInline =
        getComputedStyle(element).display === 'inline' && element.closest('p, li, dd, span') !== null;
      if (isInline) continue;
      const { width, height } = element.getBoundingClientRect();
      if (width === 0 || height === 0) continue;
      if (Math.min(width, height) < least - 0.5)
        found.push(
          `${element.tagName.toLowerCase()}.${element.className}: ${(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40)} ${Math.round(width)}×${Math.round(height)}`,
        );
    }
    return found;
  }, TOUCH_PX);

/** Text that the line around the page's heading touches when that has the focus, as it has on every page that is opened. */
export const underFocusLine = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const heading = document.querySelector<HTMLElement>('main h1')!;
    heading.focus();
    const { outlineStyle, outlineWidth, outlineOffset } = getComputedStyle(heading);
    if (outlineStyle === 'none') return ['no line around the heading'];
    const reach = Number.parseFloat(outlineWidth) + Number.parseFloat(outlineOffset);
    const box = heading.getBoundingClientRect();
    const texts = document.createTreeWalker(document.querySelector('main')!, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
      const { parentElement } = text;
      if (heading.contains(text) || !text.nodeValue?.trim()) continue;
      if (parentElement?.closest('.unseen') || !parentElement?.checkVisibility()) continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      const touches = [...range.getClientRects()].some(
        ({ left, right, top, bottom }) =>
          left < box.right + reach &&
          right > box.left - reach &&
          top < box.bottom + reach &&
          bottom > box.top - reach,
      );
      if (touches) found.push(text.nodeValue.trim().slice(0, 40));
    }
    return found;
  });

/** Least room between two links of a list, px: less, and a thumb on one lies on the other. */
const APART_PX = 8;

/** Links of a list one below the other that run together. */
export const runTogether = (page: Page, links: string): Promise<string[]> =>
  page.evaluate(
    ([selector, apart]) => {
      const all = [...document.querySelectorAll<HTMLElement>(selector)];
      return all.slice(1).flatMap((link, at) => {
        const gap = link.getBoundingClientRect().top - all[at]!.getBoundingClientRect().bottom;
        return gap < apart ? [`${link.textContent?.slice(0, 40)}: ${gap.toFixed(1)} px`] : [];
      });
    },
    [links, APART_PX] as const,
  );

/** Tables that must be moved sideways to be read. */
export const movedSideways = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.wide-table')].flatMap(({ scrollWidth, clientWidth }) =>
      scrollWidth > clientWidth + 1 ? [`${scrollWidth} px of table in ${clientWidth}`] : [],
    ),
  );

export const isTooWide = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth + 1);
