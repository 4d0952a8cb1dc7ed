import type { Page } from 'playwright-core';

/** What every page says while the invented garden is on show. */
export const STRIP = 'Invented garden — nothing here is yours';

/** From any page of a garden without cases. */
export async function loadInventedGarden(page: Page, url: string): Promise<void> {
  await page.goto(`${url}#/help`);
  await page.getByRole('button', { name: 'Load the invented garden' }).click();
  await page.getByText(STRIP).waitFor({ timeout: 300_000 });
}

/** Opens a screen by its address and waits until all of it stands. */
export async function openScreen(page: Page, url: string, hash: string): Promise<void> {
  await page.goto(url + hash);
  await page.locator('h1:not(:text-is("…"))').first().waitFor();
  await page.waitForFunction(() => !document.querySelector('[aria-busy="true"]'));
}

const firstLink = async (page: Page, start: string): Promise<string> => {
  const link = page.locator(`main a[href^="${start}"]`).first();
  await link.waitFor();
  return (await link.getAttribute('href'))!;
};

/** Every kind of screen with the invented garden's content in it, by name and address. */
export async function listScreens(page: Page, url: string): Promise<[name: string, hash: string][]> {
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
