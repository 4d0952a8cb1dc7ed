import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FileChooser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { GROUND_WORDS } from '../../src/app/words/ground.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { appOnPhone, chooseCrop, DESK, PHONE, sayItIsSmall, snap, watch } from './browser.ts';
import { faultsOf, goThrough, isBackwards, keyboardAt, stopAt } from './keyboard.ts';

const VERDICT = /^(Leave it|Look again|Check first|Act now)/;

let folder = '';
let leaf = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-keys-'));
  leaf = join(folder, 'old-leaf.jpg');
  const drawn = drawLeaf({
    width: 1200,
    height: 900,
    yellow: { where: 'between-veins' },
    holes: { count: 2 },
  });
  writeFileSync(leaf, await writeJpeg(drawn.pixels, { takenAt: '2025-06-14T18:05:00' }));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Keyboard = ReturnType<typeof keyboardAt>;

/** Answers the question that has the focus by its first answer; the focus then stands on the next one. */
async function answerByKeyboard(page: Page, { press, note }: Keyboard): Promise<void> {
  const asks = page.locator('.question-asks');
  const before = await asks.innerText();
  await expect.poll(async () => (await stopAt(page)).says).toBe(before);
  const first = async (selector: string): Promise<void> => {
    for (let step = 0; step < 30; step++) {
      await press('Tab');
      if (await page.evaluate((one) => document.activeElement?.matches(one) ?? false, selector)) return;
    }
    throw new Error(`no ${selector} after “${before}”`);
  };
  if ((await page.locator('.question .check-sign').count()) > 0) {
    await first('.check-sign input');
    await press('Space');
    await first('.answer.done');
    await press('Enter');
  } else if ((await page.locator('.question .answer.choosable').count()) > 0) {
    await first('.choosable input');
    await press('Space');
    await first('.answer.done');
    await press('Enter');
  } else {
    await first('.question button.answer');
    await press('Enter');
  }
  await expect
    .poll(() => page.locator('.question-asks, .question-wait').first().innerText())
    .not.toBe(before);
  await expect.poll(() => page.getByText('Weighing your answer').count()).toBe(0);
  await expect
    .poll(async () => (await stopAt(page)).says)
    .toBe(await page.locator('.question-asks, .question-wait').first().innerText());
  note('after an answer', faultsOf(await stopAt(page)));
}

/** The form of the bed that is open, and what grows there: filled in and kept; what opened each form has the focus again. */
async function fillInBed(page: Page, { tabTo, standsOn, press }: Keyboard): Promise<void> {
  const type = (text: string): Promise<void> => page.keyboard.type(text);
  const opened = async (button: RegExp, title: RegExp): Promise<void> => {
    expect((await tabTo(button)).tag).toBe('BUTTON');
    await press('Enter');
    await expect.poll(() => standsOn(title, 'a form opened').then(({ tag }) => tag)).toBe('H2');
  };
  const isBackOn = async (button: RegExp, where: string): Promise<void> => {
    await expect.poll(() => page.locator('.ground-form').count()).toBe(0);
    expect((await standsOn(button, where)).tag).toBe('BUTTON');
  };
  const keep = async (): Promise<void> => {
    await tabTo(/^Keep it$/);
    await press('Enter');
  };

  await opened(/^Change the bed$/, /^Change the bed$/);
  await tabTo(/^Name$/);
  await press('Control+a');
  await press('Delete');
  await keep();
  // What is missing is said, and the way to it is as it was.
  await expect
    .poll(() => page.locator('.ground-form [role="alert"]').innerText())
    .toBe(GROUND_WORDS.nameFirst);
  await standsOn(/^Keep it$/, 'kept without a name');
  await tabTo(/^Name$/, { back: true });
  await type('Bed under the pear');
  await tabTo(/^Where is it\?$/);
  await type('Open');
  await tabTo(/^Soil$/);
  await type('Loam');
  await keep();
  await isBackOn(/^Change the bed$/, 'the bed kept');
  expect(await page.locator('h1').innerText()).toBe('Bed under the pear');
  await page.getByText(/^Open ground · loam$/i).waitFor();

  // The first button of the row lies before the last.
  await tabTo(/^Sown or planted$/, { back: true });
  await press('Shift+Tab');
  await opened(/^Sown or planted$/, /^What was sown or planted\?$/);
  await tabTo(/^Crop$/);
  await type('Kale');
  await tabTo(/^Variety$/);
  await type('a blue curly one');
  await tabTo(/^Planted out on$/);
  await type('05052025');
  await keep();
  await isBackOn(/^Sown or planted$/, 'the planting kept');
  const growing = page.locator('.ground-line', { hasText: 'Kale, a blue curly one' });
  await growing.getByText(/planted out on .*5 May 2025/).waitFor();

  // A form that is left without keeping leads back as well.
  await opened(/^Change: Kale, a blue curly one$/, /^What was sown or planted\?$/);
  await tabTo(/^Close without keeping$/);
  await press('Enter');
  await isBackOn(/^Change: Kale, a blue curly one$/, 'left without keeping');
  expect(await growing.count()).toBe(1);
}

describe.each([
  ['phone', PHONE, 4821],
  ['desk', DESK, 4822],
] as const)('by keyboard alone at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);

  it('goes from opening the app to a case that is followed; nothing leaves the device', {
    timeout: 400_000,
  }, async () => {
    const { context, page } = await phone.open(size);
    const { requests, complaints } = watch(context);
    const faults: string[] = [];
    const keys = keyboardAt(page, faults);
    const { tabTo, standsOn, press } = keys;
    const picker: FileChooser[] = [];
    page.on('filechooser', (opened) => picker.push(opened));
    await page.goto(app.url);
    await page.getByRole('link', { name: 'A plant looks wrong' }).waitFor();

    // The first stop leads past the head.
    await press('Tab');
    await standsOn(/^Skip to the page$/, 'at the start');
    await press('Enter');
    expect((await standsOn(/\w/, 'after the skip')).tag).toBe('H1');

    await tabTo(/^A plant looks wrong$/);
    await press('Enter');
    // The way in bears the same words as the page it leads to.
    await expect
      .poll(() => standsOn(/^A plant looks wrong$/, 'a look opened').then(({ tag }) => tag))
      .toBe('H1');

    await tabTo(/^Find a crop$/);
    await page.keyboard.type('tomat');
    await tabTo(/^Tomato$/);
    await press('Enter');
    await standsOn(/^Tomato\. Change the crop$/, 'the crop chosen');

    // A photo, from the picker.
    await tabTo(/^Choose photos$/);
    await press('Enter');
    await expect.poll(() => picker.length).toBe(1);
    await picker[0]!.setFiles([leaf]);
    await standsOn(/^What does this photo show\?$/, 'a photo given');
    await expect.poll(() => page.locator('.specimen .outline').count()).toBeGreaterThan(0);
    await tabTo(/^Old leaf low on the plant/);
    await press('Space');
    await expect.poll(() => page.getByText('What does this photo show?').count()).toBe(0);
    await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
    await standsOn(/\w/, 'said what it shows');
    await snap(page, `keys-${name}-1-photo`);

    // Which leaf is meant: the cross goes by arrows, Enter taps, Escape leads on.
    await tabTo(/^Ask$/, { back: true });
    for (let step = 0; step < 5 && !/Which leaf/.test((await stopAt(page)).says); step++)
      await press('ArrowRight');
    await standsOn(/Which leaf/, 'what a tap does');
    await tabTo(/^The photo/, { back: true });
    for (const key of ['ArrowRight', 'Shift+ArrowLeft', 'ArrowDown', 'ArrowUp']) await press(key);
    await press('Enter');
    await expect.poll(() => page.locator('.tap-mark.leaf').count()).toBe(1);
    await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
    await press('Escape');
    await standsOn(/\w/, 'past the photo');
    expect(await page.evaluate(() => document.activeElement?.closest('.tap-modes') !== null)).toBe(true);

    // Questions.
    await tabTo(/^Pale or yellow$/);
    await press('Space');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-pressed'))).toBe('true');
    await tabTo(/^Done$/);
    await press('Enter');
    await standsOn(/^On which leaves\?$/, 'the marks said');
    await press('Tab');
    await press('Enter');
    await expect.poll(() => page.locator('.weighing .cause').count()).toBeGreaterThan(1);
    await expect.poll(() => page.getByText('On which leaves?').count()).toBe(0);
    for (let asked = 0; asked < 3; asked++) await answerByKeyboard(page, keys);
    await tabTo(/^Take back the last answer$/);
    await press('Enter');
    await expect.poll(() => page.getByText('Weighing your answer').count()).toBe(0);
    await expect.poll(async () => (await stopAt(page)).tag).not.toBe('BODY');

    // Read the verdict.
    const headline = page.locator('.verdict-headline');
    await headline.waitFor();
    expect(await headline.innerText()).toMatch(VERDICT);
    if (size === PHONE) {
      await tabTo(/^The verdict so far/, { most: 200 });
      await press('Enter');
      await standsOn(VERDICT, 'to the verdict');
    }

    // Beams: one stop each, along the blocks by arrows.
    const along = await page.locator('.beam').first().locator('button').count();
    if (along > 1) {
      await page.locator('.beam button[tabindex="0"]').first().focus();
      const block = (await stopAt(page)).says;
      await press('ArrowRight');
      expect((await stopAt(page)).says).not.toBe(block);
    }

    // Kept without a name it says what is missing, and stands there; then it becomes a case.
    await tabTo(/^Keep it as a case$/, { most: 200 });
    await press('Enter');
    await standsOn(/^Bed$/, 'what is missing');
    await page.keyboard.type('Bed by the wall');
    await tabTo(/^Plant$/);
    await page.keyboard.type('Tomato at the end');
    await press('Enter');
    expect((await standsOn(/^Tomato at the end$/, 'kept as a case')).tag).toBe('H1');

    // Asked before it is deleted; no is Escape, and leads back.
    await tabTo(/^Delete the case$/);
    await press('Enter');
    await expect.poll(async () => (await stopAt(page)).role).toBe('alertdialog');
    await press('Escape');
    await standsOn(/^Delete the case$/, 'not deleted');

    // Found in the book, and followed.
    await tabTo(/^Book$/);
    await press('Enter');
    expect((await standsOn(/^The book$/, 'the book opened')).tag).toBe('H1');
    await tabTo(/^Find a case$/);
    await page.keyboard.type('wall');
    await tabTo(/Tomato at the end/);
    await press('Enter');
    expect((await standsOn(/^Tomato at the end$/, 'the case opened')).tag).toBe('H1');
    await tabTo(/^Look again now$/);
    await press('Enter');
    expect((await standsOn(/^Another look at Tomato at the end$/, 'a later look')).tag).toBe('H1');
    await tabTo(/^Add it to the case$/, { most: 250 });
    await press('Enter');
    expect((await standsOn(/^Tomato at the end$/, 'the case followed')).tag).toBe('H1');
    await expect.poll(() => page.locator('.look-line').count()).toBe(2);

    // A bed made and opened.
    await tabTo(/^Ground$/);
    await press('Enter');
    expect((await standsOn(/^The ground$/, 'the ground opened')).tag).toBe('H1');
    await tabTo(/^Name of a bed or pot$/);
    await page.keyboard.type('Long bed');
    await press('Enter');
    await page.getByRole('link', { name: /^Long bed/ }).waitFor();
    await standsOn(/^Name of a bed or pot$/, 'a bed made');
    await page.getByRole('link', { name: /^Long bed/ }).focus();
    await press('Enter');
    expect((await standsOn(/^Long bed$/, 'the bed opened')).tag).toBe('H1');
    await fillInBed(page, keys);
    await snap(page, `keys-${name}-2-bed`);

    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    expect(requests.filter((url) => !url.startsWith(app.url) && !/^(blob|data):/.test(url))).toEqual([]);
    await context.close();
  });
});

describe('the keyboard', () => {
  const { phone, app } = appOnPhone(4823);

  it('is caught nowhere but in a dialog, and meets everything in the order of reading, both ways', async () => {
    const { context, page } = await phone.open(PHONE);
    const faults: string[] = [];
    for (const hash of ['#/walk', '#/look/new', '#/ground', '#/ground/weather', '#/book', '#/help']) {
      await page.goto(app.url + hash);
      await page.locator('h1:not(:text-is("…"))').first().waitFor();
      await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
      await page.waitForLoadState('networkidle');
      const there = await goThrough(page, 'Tab');
      const back = (await goThrough(page, 'Shift+Tab')).reverse();
      expect(there.length, hash).toBeGreaterThan(6);
      expect(
        back.map(({ says }) => says),
        hash,
      ).toEqual(there.map(({ says }) => says));
      there.slice(1).forEach((stop, at) => {
        if (isBackwards(there[at]!, stop)) faults.push(`${hash}: “${stop.says}” after “${there[at]!.says}”`);
      });
    }
    expect(faults).toEqual([]);

    // A modal dialog holds the focus until it is closed, and gives it back.
    await page.goto(`${app.url}#/look/new`);
    const open = page.getByRole('button', { name: 'Take a photo' });
    await open.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    const { tabTo, standsOn } = keyboardAt(page, faults);
    for (let step = 0; step < 12; step++) {
      await page.keyboard.press('Tab');
      expect(
        await page.evaluate(() => {
          const { activeElement } = document;
          return activeElement === document.body || activeElement?.closest('dialog') !== null;
        }),
      ).toBe(true);
    }
    await tabTo(/^Close$/);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    await expect.poll(async () => (await stopAt(page)).says).toBe('Take a photo');

    // A term explains itself; Escape gives the focus back, and so does its button.
    await chooseCrop(page, 'Kale');
    await sayItIsSmall(page);
    const term = page.locator('.cause-name .term').first();
    await term.waitFor();
    const word = await term.innerText();
    for (const closing of ['Escape', 'Enter']) {
      await term.focus();
      await page.keyboard.press('Enter');
      await standsOn(/^Close$/, 'a term opened');
      await page.keyboard.press(closing);
      await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
      await standsOn(new RegExp(`^${word}$`), 'a term closed');
    }
    expect(faults).toEqual([]);
    await context.close();
  });
});
