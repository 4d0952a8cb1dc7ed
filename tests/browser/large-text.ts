import type { Page } from 'playwright-core';

/** Text of twice the size (WCAG 2.2, 1.4.4), as a reader's own style would set it. */
export async function setTwice(page: Page, on = true): Promise<void> {
  await page.evaluate((twice) => {
    if (!twice) {
      document.adoptedStyleSheets = [];
      return;
    }
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('html { font-size: 200%; }');
    document.adoptedStyleSheets = [sheet];
  }, on);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** What stays in place while the page is scrolled, where it does so at this moment: its name and height, px. */
export const pinned = (page: Page): Promise<{ what: string; height: number }[]> =>
  page.evaluate(() => {
    const found: { what: string; height: number }[] = [];
    for (const element of document.querySelectorAll<HTMLElement>('body *')) {
      const { position, top } = getComputedStyle(element);
      if (position !== 'fixed' && position !== 'sticky') continue;
      const box = element.getBoundingClientRect();
      const [from, to] = [Math.max(0, box.top), Math.min(innerHeight, box.bottom)];
      if (to - from < 1 || box.width < 2 || !element.checkVisibility()) continue;
      if (position === 'sticky' && Math.abs(box.top - Number.parseFloat(top)) > 1) continue;
      found.push({
        what: `${element.tagName.toLowerCase()}.${element.className}`,
        height: Math.round(to - from),
      });
    }
    return found;
  });

/** Words that are cut off, or broken although they would fit on a line of their own. */
export const cutWords = (page: Page, within: string): Promise<string[]> =>
  page.evaluate((selector) => {
    const found: string[] = [];
    const root = document.querySelector(selector)!;
    const style = getComputedStyle(root);
    const line =
      root.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight);
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement!;
      if (!parent.checkVisibility() || parent.closest('.unseen, [class*="crop-find-label"], select, svg'))
        continue;
      for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[^\s–—/-]+/g)) {
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const lines = [...range.getClientRects()].filter(({ width }) => width > 0.5);
        const tops = new Set(lines.map(({ top }) => Math.round(top)));
        const width = lines.reduce((sum, one) => sum + one.width, 0);
        if (tops.size > 1 && width <= line) found.push(`broken: ${word} in “${parent.textContent}”`);
        for (let box: Element | null = parent; box && box !== root; box = box.parentElement) {
          // What can be scrolled to is not cut.
          if (!/hidden|clip/.test(getComputedStyle(box).overflow)) continue;
          const edge = box.getBoundingClientRect();
          if (
            lines.some(
              ({ top, bottom, left, right }) =>
                bottom > edge.bottom + 2 ||
                top < edge.top - 2 ||
                right > edge.right + 2 ||
                left < edge.left - 2,
            )
          ) {
            found.push(`cut: ${word} in “${parent.textContent}”`);
            break;
          }
        }
      }
    }
    return found;
  }, within);

/** Which of these reach beyond the screen's edges, or lie under something else. */
export const outOfSight = (page: Page, selector: string): Promise<string[]> =>
  page.evaluate((what) => {
    const isThere = (element: Element): boolean => {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      if (left < 0 || top < 0 || right > innerWidth || bottom > innerHeight) return false;
      const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      return hit !== null && element.contains(hit);
    };
    return [...document.querySelectorAll(what)]
      .filter((element) => !isThere(element))
      .map((element) => `${element.className}: ${element.textContent}`);
  }, selector);
