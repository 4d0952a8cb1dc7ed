import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appOnPhone, PHONE } from './browser.ts';

const VERDICT = /^(Leave it|Look again|Check first|Act now)/;

/** Counts what a hand does on the page, whoever does it: presses, and letters typed. */
const countByHand = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const hand = { presses: 0, letters: 0 };
    Object.assign(globalThis, { hand });
    addEventListener('pointerdown', () => hand.presses++, { capture: true });
    addEventListener('keydown', () => hand.letters++, { capture: true });
  });

const doneByHand = (page: Page): Promise<{ presses: number; letters: number }> =>
  page.evaluate(() => ({
    ...(globalThis as unknown as { hand: { presses: number; letters: number } }).hand,
  }));

/* An answer in two minutes at the bed: what can be held without a clock is how much there is to read and to press. */
describe('from the first opening to a reasoned verdict', () => {
  const { phone, app } = appOnPhone(4874);

  it('takes five presses, no letter, and three questions', async () => {
    const { context, page } = await phone.open(PHONE);
    await countByHand(page);
    await page.goto(app.url);
    const press = (name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();
    /** What is asked at the moment; the questions are all that must be read. */
    const asks = page.locator('.ask-plant, .question-asks');
    const read: string[] = [];
    const readQuestion = async (): Promise<void> => {
      const [first] = await asks.allInnerTexts();
      read.push(first ?? 'nothing asked');
    };

    await page.getByRole('link', { name: 'A plant looks wrong' }).click();
    await asks.first().waitFor();
    await readQuestion();
    await press('Tomato');
    await readQuestion();
    await press('Pale or yellow');
    await press('Done');
    await page.getByText('On which leaves?').waitFor();
    await readQuestion();
    await page.locator('.question .answer').first().click();

    await expect.poll(() => page.getByText('On which leaves?').count()).toBe(0);
    await expect.poll(() => page.locator('.verdict-headline').innerText()).toMatch(VERDICT);
    // Reasoned: what was said stands as blocks on the beams, and the verdict says why.
    await expect.poll(() => page.locator('.weighing .block').count()).toBeGreaterThan(0);
    expect(await page.locator('.weighing .cause').count()).toBeGreaterThan(1);
    expect(await doneByHand(page)).toEqual({ presses: 5, letters: 0 });
    expect(read).toEqual(['Which plant?', 'What strikes you?', 'On which leaves?']);
    await context.close();
  });

  it('goes on where it was when the page is loaded anew in the middle of the first questions', async () => {
    const { context, page } = await phone.open(PHONE);
    const press = (name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();
    await page.goto(`${app.url}#/look/new`);
    await press('Kale');
    await press('Purple or reddish');
    await press('Small for its age');
    await page.getByText('What you saw is weighed once').waitFor();
    await press('Done');
    await page.getByText('On which leaves?').waitFor();
    await page.reload();
    await page.getByText('On which leaves?').waitFor();
    await press('All over, all alike');
    await expect.poll(() => page.locator('.verdict-headline').innerText()).toMatch(VERDICT);
    expect(await page.locator('.weighing').innerText()).toMatch(/purple/i);
    await context.close();
  });
});
