import { describe, expect, it } from 'vitest';
import { SHELL_WORDS } from '../../src/app/words/shell.ts';
import { appOnPhone, chooseCrop, PHONE, sayItIsSmall } from './browser.ts';

/* The last letters are still being stored when the look is kept. */
describe('keeping a look while it is still being stored', () => {
  const { phone, app } = appOnPhone(4882);

  it('keeps what was typed last, and leaves no second copy of the look behind', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.goto(`${app.url}#/look/new`);
    await chooseCrop(page, 'Kale');
    await sayItIsSmall(page);
    await page.getByLabel('Bed', { exact: true }).fill('Long bed');
    await page.getByLabel('Plant', { exact: true }).fill('Third kale');
    await page.getByText('Weighing again').waitFor({ state: 'detached' });
    // In one go, quicker than any store.
    await page.getByLabel('Note').evaluate((field: HTMLTextAreaElement) => {
      for (const letter of 'Pale since Sunday') {
        field.value += letter;
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
      }
      const buttons = [...document.querySelectorAll('button')];
      buttons.find(({ textContent }) => textContent === 'Keep it as a case')!.click();
    });
    await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe('Third kale');
    await page.waitForTimeout(500);
    expect(await page.getByText(SHELL_WORDS.keptApart).count()).toBe(0);
    const drafts = await page.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('bedside-records');
        request.onsuccess = () => resolve(request.result);
      });
      const keys = await new Promise<IDBValidKey[]>((resolve) => {
        const request = database.transaction('records').objectStore('records').getAllKeys();
        request.onsuccess = () => resolve(request.result);
      });
      database.close();
      return keys.filter((key) => String(key).startsWith('draft:'));
    });
    expect(drafts).toEqual([]);
    await page.locator('.look-line').click();
    await page.getByText('Pale since Sunday').waitFor();
    await context.close();
  });
});
