import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What has the focus, as a person sees and hears it. */
export interface Stop {
  /** `BODY` where nothing has it. */
  readonly tag: string;
  readonly role: string;
  readonly says: string;
  /** Is there a line around it, or around the label that stands for it? */
  readonly ringed: boolean;
  /** Share of it that nothing covers, 0 to 1. */
  readonly open: number;
  /** Box on the page, px; `fixed` where it does not scroll with it. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly fixed: boolean;
  /** Class of the column that it lies in. */
  readonly column: string;
}

export const stopAt = (page: Page): Promise<Stop> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLElement;
    const label = element.closest('label');
    const inside = element.matches('input.unseen, .segment input') && label ? label : element;
    // A field that is opened up by its label has its line there; a segment's lies on the words beside the field.
    const holders = [element, label, element.nextElementSibling].filter((one) => one !== null);
    const ringed = holders.some((one) => {
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(one);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && !/, 0\)$/.test(outlineColor);
    });
    const { left, right, top, bottom } = inside.getBoundingClientRect();
    let seen = 0;
    let asked = 0;
    const STEPS = 6;
    for (let row = 0; row < STEPS; row++)
      for (let column = 0; column < STEPS; column++) {
        const x = left + ((column + 0.5) / STEPS) * (right - left);
        const y = top + ((row + 0.5) / STEPS) * (bottom - top);
        asked++;
        const at = document.elementFromPoint(x, y);
        if (at && (inside.contains(at) || at.contains(inside))) seen++;
      }
    let fixed = false;
    for (let part: Element | null = element; part; part = part.parentElement)
      if (['fixed', 'sticky'].includes(getComputedStyle(part).position)) fixed = true;
    const named = (element.getAttribute('aria-labelledby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id)?.textContent ?? '')
      .join(' ');
    const labels = (element as HTMLInputElement).labels;
    const says =
      element.getAttribute('aria-label') ||
      named.trim() ||
      (labels?.length ? [...labels].map((one) => one.textContent).join(' ') : element.textContent) ||
      '';
    return {
      tag: element.tagName,
      role: element.getAttribute('role') ?? '',
      says: says.replace(/\s+/g, ' ').trim(),
      ringed,
      open: seen / asked,
      left,
      right,
      top: top + scrollY,
      bottom: bottom + scrollY,
      fixed,
      column: element.closest('.look-side, .look-keep, .page-left, .page-right')?.className ?? '',
    };
  });

/** A narrower one is a block on a beam, as wide as its weight; the line around it shows where it is. */
const NARROW_PX = 8;
/** Tall ones need not be seen whole (WCAG 2.2, 2.4.11 asks that no focus is wholly hidden; ours that half of what is small shows). */
const TALL_PX = 240;

/** What is wrong with a stop, for one who sees and goes by keyboard. */
export function faultsOf(stop: Stop): string[] {
  const name = `${stop.tag} “${stop.says.slice(0, 60)}”`;
  if (stop.tag === 'BODY') return ['nothing has the focus'];
  const isNarrow = stop.right - stop.left < NARROW_PX;
  const least = isNarrow ? 0 : stop.bottom - stop.top > TALL_PX ? 0.1 : 0.5;
  return [
    ...(stop.ringed ? [] : [`${name}: no line around it`]),
    ...(stop.open >= least ? [] : [`${name}: ${Math.round(stop.open * 100)} % of it to be seen`]),
    ...(stop.says === '' && stop.tag !== 'HTML' ? [`${name}: without a name`] : []),
  ];
}

/** Waits until no more parts come in: the page has been as long for half a second. */
async function comeToRest(page: Page): Promise<void> {
  let before = -1;
  for (let look = 0; look < 20; look++) {
    const now = await page.evaluate(() => document.body.scrollHeight);
    if (now === before) return;
    before = now;
    await page.waitForTimeout(500);
  }
}

/** The stop once nothing is wrong with it: while a page is still coming in, it may be pushed aside for a moment. */
async function restingStop(page: Page): Promise<Stop> {
  let stop = await stopAt(page);
  for (let look = 0; look < 40 && faultsOf(stop).length > 0; look++) {
    await page.waitForTimeout(100);
    stop = await stopAt(page);
  }
  return stop;
}

/** Does the second stop lie wholly before the first, as the page is read? Columns are read one after the other. */
export function isBackwards(before: Stop, after: Stop): boolean {
  if (before.fixed || after.fixed || before.column !== after.column) return false;
  if (after.bottom <= before.top + 1) return true;
  const oneLine = after.top < before.bottom - 1 && after.bottom > before.top + 1;
  const wraps = after.bottom > before.bottom + 1;
  return oneLine && !wraps && after.right <= before.left + 1;
}

/** A keyboard at a page: what it meets is held to the rules at every stop. */
export function keyboardAt(page: Page, faults: string[]) {
  const note = (where: string, found: readonly string[]): void =>
    void faults.push(...found.map((fault) => `${where}: ${fault}`));

  /** Presses Tab until a stop says what is wanted. */
  const tabTo = async (wanted: RegExp, { back = false, most = 90 } = {}): Promise<Stop> => {
    const met: string[] = [];
    let before: Stop | undefined;
    for (let step = 0; step < most; step++) {
      await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
      const stop = await restingStop(page);
      met.push(stop.says);
      note(`to ${wanted.source}`, faultsOf(stop));
      if (before && (back ? isBackwards(stop, before) : isBackwards(before, stop)))
        note(`to ${wanted.source}`, [`“${stop.says.slice(0, 40)}” after “${before.says.slice(0, 40)}”`]);
      if (wanted.test(stop.says)) return stop;
      before = stop;
    }
    throw new Error(`no stop says ${wanted}; met: ${met.join(' | ')}`);
  };

  /** Waits until the focus stands on what says so, and looks at it. */
  const standsOn = async (wanted: RegExp, where: string): Promise<Stop> => {
    let stop = await stopAt(page);
    const says = async (): Promise<string> => {
      stop = await stopAt(page);
      // What is nowhere says nothing.
      return stop.tag === 'BODY' ? '' : stop.says;
    };
    await expect.poll(says, { message: where }).toMatch(wanted);
    await comeToRest(page);
    note(where, faultsOf(await restingStop(page)));
    return stop;
  };

  const press = (key: string): Promise<void> => page.keyboard.press(key);
  return { tabTo, standsOn, press, note };
}

/** Every stop from one end of the page to the other; throws where the focus is caught. */
export async function goThrough(page: Page, key: 'Tab' | 'Shift+Tab', most = 400): Promise<Stop[]> {
  // Out of the page first, wherever the focus stood: from there it comes in at the end.
  await leaveBy(page, key, most);
  return leaveBy(page, key, most);
}

/** The stops on the way out of the page. */
async function leaveBy(page: Page, key: string, most: number): Promise<Stop[]> {
  const stops: Stop[] = [];
  while (stops.length < most) {
    await page.keyboard.press(key);
    const stop = await stopAt(page);
    if (stop.tag === 'BODY') return stops;
    stops.push(stop);
  }
  const last = stops.slice(-4).map(({ says }) => says);
  throw new Error(`the keyboard does not get out of the page; it meets ${last.join(', ')}`);
}
