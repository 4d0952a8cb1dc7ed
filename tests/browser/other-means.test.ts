import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Color from 'colorjs.io';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { appOnPhone, chooseCrop, DESK, lookAtOldLeaf, PHONE, sayItIsSmall } from './browser.ts';
import { listScreens, loadInventedGarden, openScreen } from './invented-screens.ts';
import { SMALL } from './screen-faults.ts';

const { phone, app } = appOnPhone(4824);
let folder = '';
let leaf = '';
let screens: [name: string, hash: string][] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-means-'));
  leaf = join(folder, 'leaf.jpg');
  const drawn = drawLeaf({
    width: 1200,
    height: 900,
    yellow: { where: 'between-veins' },
    holes: { count: 2 },
  });
  writeFileSync(leaf, await writeJpeg(drawn.pixels));
  const { page, context } = await phone.open(PHONE);
  await loadInventedGarden(page, app.url);
  screens = await listScreens(page, app.url);
  // Some hold a curve of their heat, some do not.
  await openScreen(page, app.url, '#/ground/batches');
  const heaps = page.locator('main a[href^="#/ground/batches/"]');
  await heaps.first().waitFor();
  for (const [at, heap] of (await heaps.all()).entries())
    screens.push([`batch ${at + 1}`, (await heap.getAttribute('href'))!]);
  await context.close();
}, 600_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A look with a photo that was read, one answer, a verdict. */
async function beginLook(page: Page): Promise<void> {
  await openScreen(page, app.url, '#/look/new');
  await lookAtOldLeaf(page, 'Tomato', leaf);
}

/** Goes to every screen, and to a look in progress. */
async function atEvery(page: Page, see: (name: string) => Promise<void>): Promise<void> {
  for (const [name, hash] of screens) {
    await openScreen(page, app.url, hash);
    // What is folded away is looked at too.
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    await see(name);
  }
  await beginLook(page);
  await see('look');
}

/** The parts of Chromium's accessibility tree that are read here (Chrome DevTools Protocol, Accessibility.AXNode). */
interface AxNode {
  readonly ignored: boolean;
  readonly role?: { readonly value: string };
  readonly name?: { readonly value: string };
  readonly backendDOMNodeId?: number;
}

/** What a screen reader would meet without being told what it is. */
const NEEDS_NAME = new Set(
  'image img SvgRoot Canvas Video button link textbox searchbox checkbox radio combobox slider spinbutton toolbar dialog alertdialog application Date'.split(
    ' ',
  ),
);

/** Drawings that are hidden from a screen reader, and where the same stands in words. */
const SAID_BESIDE: readonly [drawing: string, around: string, words: RegExp][] = [
  ['svg.gardens', '.cause', /in 10|in 100|in 1,000|ten|none/i],
  ['svg.beam-fulcrum', '.cause', /reasons/i],
  ['svg.mark', 'a, button, .specimen', /./],
  ['svg.leaf-light', '.leaf-pair', /./],
  ['svg.layer-swatch', 'button, li', /\w{3}/],
  [
    '.drawn svg',
    'button, label, li, dt, .question-text, .check-sign, .list-row, summary, .term-note, figure, td, tr, section',
    /\w{3}/,
  ],
  ['.specimen-over canvas', '.specimen', /./],
];

describe('without seeing the screen', () => {
  it('every drawing that tells something has a name or stands beside the same in words; nothing to press is nameless', {
    timeout: 600_000,
  }, async () => {
    const { page, context } = await phone.open(PHONE);
    const session = await context.newCDPSession(page);
    const faults: string[] = [];
    const named = new Set<string>();
    await atEvery(page, async (name) => {
      const { nodes } = (await session.send('Accessibility.getFullAXTree')) as unknown as { nodes: AxNode[] };
      for (const { ignored, role, name: says } of nodes) {
        if (ignored || !role || !NEEDS_NAME.has(role.value)) continue;
        if ((says?.value ?? '').trim() === '') faults.push(`${name}: a ${role.value} without a name`);
        else if (/^(image|img)$/.test(role.value)) named.add(says!.value);
      }
      const hidden = await page.evaluate(
        (beside) => {
          const found: string[] = [];
          for (const one of document.querySelectorAll<HTMLElement>('svg, canvas')) {
            if (one.parentElement?.closest('svg') || !one.checkVisibility()) continue;
            if (one.closest('[role="img"]') || !one.closest('[aria-hidden="true"]')) continue;
            const known = beside.filter(([drawing]) => one.matches(drawing));
            const words = known.some(([, around, says]) => {
              const part = one.closest(around);
              const labels = [part, ...(part?.querySelectorAll('[aria-label]') ?? [])];
              const said = `${labels.map((one) => one?.getAttribute('aria-label') ?? '').join(' ')} ${part?.textContent ?? ''}`;
              return new RegExp(says, 'i').test(said);
            });
            if (!words)
              found.push(`${one.tagName} “${one.getAttribute('class')}” in ${one.parentElement?.className}`);
          }
          return found;
        },
        SAID_BESIDE.map(([drawing, around, says]) => [drawing, around, says.source] as const),
      );
      faults.push(...hidden.map((one) => `${name}: ${one} is hidden and said nowhere`));
    });
    expect([...new Set(faults)]).toEqual([]);
    // One of each kind of plot was met by name.
    for (const kind of [
      /Drawn over the photo/,
      /^Temperatures/,
      /\d+ readings|heat/i,
      /Every one as a dot/,
      /look/i,
    ])
      expect(
        [...named].some((says) => kind.test(says)),
        `${kind} among ${[...named].join(' | ')}`,
      ).toBe(true);
    await context.close();
  });

  it('what an answer moves is announced once, politely, the verdict with it', async () => {
    const { page, context } = await phone.open(PHONE);
    await openScreen(page, app.url, '#/look/new');
    await chooseCrop(page, 'Tomato');
    await page.locator('.weighing .cause').first().waitFor();
    await page.getByText('Knowing the crop moved').waitFor();
    await page.evaluate(() => {
      const heard: string[] = [];
      Object.assign(window, { heard });
      const live = (node: Node | null): Element | null | undefined =>
        (node instanceof Element ? node : node?.parentElement)?.closest(
          '[role="status"], [role="alert"], [aria-live="polite"], [aria-live="assertive"]',
        );
      new MutationObserver((changes) => {
        const regions = new Set<Element>();
        for (const { target, addedNodes } of changes) {
          const region = live(target);
          // What goes away is not read out.
          if (region && (addedNodes.length > 0 || target.nodeType === Node.TEXT_NODE)) regions.add(region);
          for (const added of addedNodes)
            if (added instanceof Element && live(added)) regions.add(live(added)!);
        }
        for (const region of regions) {
          const says = region.textContent?.replace(/\s+/g, ' ').trim();
          if (says) heard.push(`${region.getAttribute('role')}: ${says}`);
        }
      }).observe(document.body, { subtree: true, childList: true, characterData: true });
    });
    const heard = (): Promise<string[]> =>
      page.evaluate(() => (window as unknown as { heard: string[] }).heard.splice(0));
    await sayItIsSmall(page);
    await page.getByText('Your answer moved').waitFor();
    const first = await heard();
    expect(first, first.join('\n')).toHaveLength(1);
    expect(first[0]).toMatch(/^status: Your answer moved.*The verdict so far: /);
    for (let asked = 0; asked < 3; asked++) {
      const before = await page.locator('.question-asks').innerText();
      await page
        .locator('.question .answer', { hasText: /Can.t say|Not now/ })
        .first()
        .click();
      await expect.poll(() => page.locator('.question-asks').innerText()).not.toBe(before);
      await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
      const said = await heard();
      expect(said.length, said.join('\n')).toBeLessThanOrEqual(1);
      expect(said.join()).not.toMatch(/^alert/);
    }
    await context.close();
  });

  it('help is one press away on every screen, also without a network', { timeout: 300_000 }, async () => {
    const { page, context } = await phone.open(PHONE);
    await openScreen(page, app.url, '#/walk');
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    const faults: string[] = [];
    await atEvery(page, async (name) => {
      for (const size of [PHONE, SMALL, DESK]) {
        await page.setViewportSize(size);
        for (const end of ['start', 'end'] as const) {
          await page.evaluate((at) => scrollTo(0, at === 'end' ? document.body.scrollHeight : 0), end);
          const fault = await helpAsSeen(page);
          if (fault) faults.push(`${name}, ${size.width} px, ${end}: ${fault}`);
        }
      }
      await page.setViewportSize(PHONE);
      await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
      const { x, y } = await middleOf(page, '.help-mark');
      await page.mouse.click(x, y);
      await page.getByRole('heading', { name: 'Help and settings', level: 1 }).waitFor();
      await expect.poll(() => page.locator('main h2').count(), { message: name }).toBeGreaterThan(5);
    });
    expect(faults).toEqual([]);
    await context.close();
  });
});

const middleOf = (page: Page, selector: string): Promise<{ x: number; y: number }> =>
  page.evaluate((what) => {
    const { x, y, width, height } = document.querySelector(what)!.getBoundingClientRect();
    return { x: x + width / 2, y: y + height / 2 };
  }, selector);

/** What is wrong with the mark of help where the page stands: out of sight, under something, too small, or over one of the tabs. */
const helpAsSeen = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => {
    const mark = document.querySelector('.help-mark')!;
    const box = mark.getBoundingClientRect();
    if (Math.min(box.width, box.height) < 44) return `${box.width}×${box.height} px`;
    for (const [across, down] of [
      [0.5, 0.5],
      [0.1, 0.1],
      [0.9, 0.9],
    ] as const) {
      const hit = document.elementFromPoint(box.x + across * box.width, box.y + down * box.height);
      if (!hit || !mark.contains(hit)) return `under ${hit?.tagName}.${hit?.className}`;
    }
    const covers = [...document.querySelectorAll('.tab')].find((tab) => {
      const its = tab.getBoundingClientRect();
      return (
        its.right > box.left + 1 &&
        its.left < box.right - 1 &&
        its.bottom > box.top + 1 &&
        its.top < box.bottom - 1
      );
    });
    return covers ? `over ${covers.textContent}` : undefined;
  });

/** Whatever moves on the page as it stands by its styles: `what: property seconds`. */
const movers = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const seconds = (times: string): number =>
      Math.max(
        ...times.split(',').map((time) => Number.parseFloat(time) * (/ms\s*$/.test(time) ? 0.001 : 1)),
      );
    for (const element of document.querySelectorAll('*'))
      for (const part of [undefined, '::before', '::after']) {
        const look = getComputedStyle(element, part);
        const turning = look.animationName === 'none' ? 0 : seconds(look.animationDuration);
        const passing = seconds(look.transitionDuration);
        const what = `${element.tagName.toLowerCase()}.${element.className}${part ?? ''}`;
        if (turning > 0) found.push(`${what}: ${look.animationName} ${turning}`);
        if (passing > 0) found.push(`${what}: ${look.transitionProperty} ${passing}`);
      }
    return found;
  });

/** Notes every movement that the page begins from now on. */
async function noteMovements(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const moved: string[] = [];
    Object.assign(window, { moved });
    for (const kind of ['transitionrun', 'animationstart'] as const)
      addEventListener(
        kind,
        ({ target }) => {
          const element = target as Element;
          const times = element.getAnimations().map((one) => one.effect?.getTiming().duration);
          moved.push(`${element.getAttribute('class')} ${times.join()}`);
        },
        true,
      );
  });
  return () => page.evaluate(() => (window as unknown as { moved: string[] }).moved);
}

describe('movement', () => {
  it('there is none at all where it is not wanted', { timeout: 600_000 }, async () => {
    const { page, context } = await phone.open(PHONE);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    const faults: string[] = [];
    await atEvery(page, async (name) => {
      faults.push(...(await movers(page)).map((what) => `${name}: ${what}`));
    });
    const movements = await noteMovements(page);
    await page.getByRole('button', { name: 'Take back the last answer' }).click();
    await expect.poll(() => page.locator('.moved').count()).toBe(0);
    await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
    expect(await movements()).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('otherwise only the beams settle, in a fifth of a second', { timeout: 600_000 }, async () => {
    const { page, context } = await phone.open(PHONE);
    const all: string[] = [];
    await atEvery(page, async () => void all.push(...(await movers(page))));
    expect([...new Set(all)]).toEqual(['div.beam-arm: transform 0.2']);
    const movements = await noteMovements(page);
    await page.getByRole('button', { name: 'Take back the last answer' }).click();
    await expect.poll(movements).not.toEqual([]);
    expect([...new Set(await movements())]).toEqual(['beam-arm 200']);
    await expect.poll(() => page.evaluate(() => document.getAnimations().length)).toBe(0);
    await context.close();
  });
});

/** A colour beside the one behind it, as the browser computed them. */
interface Beside {
  readonly what: string;
  readonly colours: readonly string[];
  readonly ground: string;
}

/** Edges of what can be pressed or filled in, and the words drawn in plots, with what lies behind each. */
const edgesAndWords = (page: Page): Promise<{ edges: Beside[]; words: Beside[] }> =>
  page.evaluate(() => {
    const groundOf = (from: Element | null): string => {
      for (let part = from; part; part = part.parentElement) {
        const { backgroundColor } = getComputedStyle(part);
        if (!/, 0\)$|transparent/.test(backgroundColor)) return backgroundColor;
      }
      return 'rgb(255, 255, 255)';
    };
    const isShown = (one: Element): boolean =>
      one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !one.closest('.unseen');
    const edges: Beside[] = [];
    const controls =
      'button, select, textarea, input:not([type="radio"], [type="checkbox"], [type="range"], [type="file"]), label.button, label.slot, a.button, a.tab, .segment > span, .injury-step, .tick';
    for (const one of document.querySelectorAll<HTMLElement>(controls)) {
      if (!isShown(one) || one.matches(':disabled')) continue;
      const look = getComputedStyle(one);
      const colours = (['Top', 'Right', 'Bottom', 'Left'] as const).flatMap((side) => {
        const isDrawn =
          Number.parseFloat(look[`border${side}Width`]) > 0 &&
          !['none', 'hidden'].includes(look[`border${side}Style`]) &&
          !/, 0\)$/.test(look[`border${side}Color`]);
        return isDrawn ? [look[`border${side}Color`]] : [];
      });
      const isField = one.matches('input, select, textarea');
      // Plain words that can be pressed have no edge; their own contrast is held elsewhere.
      if (colours.length === 0 && !isField) continue;
      const what = `${one.tagName.toLowerCase()}.${one.className} “${(one.textContent ?? '').trim().slice(0, 30)}”`;
      edges.push({ what, colours, ground: groundOf(one.parentElement) });
    }
    const words = [...document.querySelectorAll('svg text')].filter(isShown).map((one) => ({
      what: `${one.closest('svg')?.getAttribute('class')} “${one.textContent}”`,
      colours: [getComputedStyle(one).fill],
      ground: groundOf(one.closest('svg')),
    }));
    return { edges, words };
  });

const contrast = (one: string, other: string): number => new Color(one).contrast(new Color(other), 'WCAG21');

describe('outdoors', () => {
  it('what can be pressed has an edge of 3:1 or more, words in plots 7:1, in both themes', {
    timeout: 600_000,
  }, async () => {
    const { page, context } = await phone.open(PHONE);
    const faults = new Set<string>();
    let measured = 0;
    await atEvery(page, async (name) => {
      for (const theme of ['light', 'dusk']) {
        await page.evaluate((one) => {
          document.documentElement.dataset.theme = one;
        }, theme);
        const { edges, words } = await edgesAndWords(page);
        measured += edges.length + words.length;
        // One side that is strong enough tells where a control is: a field is ruled below.
        for (const { what, colours, ground } of edges)
          if (!colours.some((colour) => contrast(colour, ground) >= 3))
            faults.add(`${name}, ${theme}: ${what} ${colours.join()} on ${ground}`);
        for (const { what, colours, ground } of words)
          if (contrast(colours[0]!, ground) < 7)
            faults.add(`${name}, ${theme}: ${what} ${colours[0]} on ${ground}`);
      }
      await page.evaluate(() => {
        delete document.documentElement.dataset.theme;
      });
    });
    expect([...faults]).toEqual([]);
    expect(measured).toBeGreaterThan(500);
    await context.close();
  });

  it('what differs by colour differs in grey too', { timeout: 300_000 }, async () => {
    const { page, context } = await phone.open(DESK);
    const session = await context.newCDPSession(page);
    await beginLook(page);
    for (const theme of ['light', 'dusk']) {
      await page.evaluate((one) => {
        document.documentElement.dataset.theme = one;
      }, theme);
      await session.send('Emulation.setEmulatedVisionDeficiency', { type: 'achromatopsia' });
      for (const [set, least] of [
        ['.weighing-key .swatch', 3],
        // Of the key alone: what was measured has the same ones again.
        ['.layer svg.layer-swatch', 3],
        ['.tap-modes .segment:nth-of-type(-n+2) > span', 2],
      ] as const) {
        const pictures: Buffer[] = [];
        for (const one of await page.locator(set).filter({ visible: true }).all()) {
          const shot = await one.screenshot();
          pictures.push(await sharp(shot).resize(24, 24, { fit: 'fill' }).greyscale().raw().toBuffer());
        }
        expect(pictures.length, set).toBeGreaterThanOrEqual(least);
        pictures.forEach((one, at) => {
          for (const other of pictures.slice(0, at)) {
            const apart = one.reduce((sum, value, i) => sum + Math.abs(value - other[i]!), 0) / one.length;
            // Of 255; two pictures of the same thing differ by nothing.
            expect(apart, `${theme}: two of ${set}`).toBeGreaterThan(4);
          }
        });
      }
    }
    await context.close();
  });
});
