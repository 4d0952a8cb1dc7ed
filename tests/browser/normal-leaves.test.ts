import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { appOnPhone, DESK, PHONE, snapBoth, watch } from './browser.ts';

let folder = '';
const file = (name: string): string => join(folder, `${name}.jpg`);
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-normal-'));
  const golden = { background: 'paper', yellow: { where: 'all' } } as const;
  // Two leaves of one golden variety.
  writeFileSync(file('healthy'), await writeJpeg(drawLeaf({ ...golden, angleDegrees: 20 }).pixels));
  writeFileSync(file('asked'), await writeJpeg(drawLeaf({ ...golden, seed: 7, length: 0.6 }).pixels));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) });
const settled = (page: Page) =>
  expect.poll(() => page.locator('.specimen[aria-busy="true"]').count()).toBe(0);

/** Looks at the golden leaf as an old leaf of a tomato of a variety, and gives what the camera then reports. */
async function look(page: Page, url: string, variety: string): Promise<string> {
  await page.goto(`${url}#/look/new`);
  await page.getByLabel('Find a crop').fill('Tomato');
  await button(page, 'Tomato').click();
  await page.getByLabel('Variety, if you know it').fill(variety);
  await page.getByLabel('Choose photos').setInputFiles([file('asked')]);
  await button(page, /^Old leaf/).click();
  await expect.poll(() => page.locator('.camera-report').count()).toBe(1);
  await settled(page);
  await expect.poll(() => page.locator('.weighing [aria-busy="true"]').count()).toBe(0);
  return page.locator('.camera-report').innerText();
}

async function keep(page: Page, plant: string): Promise<void> {
  await page.getByLabel('Bed', { exact: true }).fill('Long bed');
  await page.getByLabel('Plant', { exact: true }).fill(plant);
  await button(page, 'Keep it as a case').click();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe(plant);
}

/** How much likelier even yellowing was thought with what the camera saw, in each look that is kept, by plant. */
const yellowRatios = (page: Page): Promise<Record<string, number>> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await asked(indexedDB.open('bedside-records'));
    const all = (await asked(database.transaction('records').objectStore('records').getAll())) as {
      kind: string;
      id: string;
      caseId: string;
      plant: string;
      ranking?: { findings: { sign: string; from: string; ifPresent: number; ifAbsent: number }[] };
    }[];
    database.close();
    const ratios: Record<string, number> = {};
    for (const { ranking, caseId } of all.filter(({ kind }) => kind === 'look')) {
      const plant = all.find(({ kind, id }) => kind === 'case' && id === caseId)!.plant;
      const told = ranking!.findings.find(
        ({ sign, from }) => sign === 'yellow-even@old' && from === 'camera',
      );
      ratios[plant] = told ? told.ifPresent / told.ifAbsent : 1;
    }
    return ratios;
  });

describe.each([
  ['phone', PHONE, 4762],
  ['desk', DESK, 4763],
] as const)('healthy leaves of a variety, at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);

  it('are measured and kept from a planting, and turn what the camera says of that variety', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(`${app.url}#/ground`);
    await page.getByLabel('Name of a bed or pot').fill('Long bed');
    await button(page, 'Add').click();
    await page.getByRole('link', { name: /^Long bed/ }).click();
    await button(page, 'Sown or planted').click();
    await page.getByLabel('Crop', { exact: true }).selectOption('Tomato');
    await page.getByLabel('Variety').fill('Golden trial');
    await button(page, 'Keep it').click();

    await page.getByRole('link', { name: 'Healthy leaves of Tomato, Golden trial' }).click();
    await page.getByLabel('Choose photos').setInputFiles([file('healthy')]);
    await page.getByRole('heading', { name: 'Its colour' }).waitFor();
    await settled(page);
    expect(await page.locator('.specimen .outline polygon').count()).toBeGreaterThan(0);
    expect(await page.locator('.normal-leaf .measures').innerText()).toMatch(/\d+ degrees, give or take \d/);
    await page.getByLabel('How far on was the plant?').selectOption('Growing on');
    await snapBoth(page, `normal-leaf-${name}`);

    // A tap beside the leaf takes it for another one; taking the tap back brings the leaf again.
    const outline = () => page.locator('.specimen .outline-dark').getAttribute('points');
    const before = await outline();
    await page.getByText('Is the outline not on the leaf you mean?').click();
    await page.locator('.tap-surface').click({ position: { x: 12, y: 12 } });
    await expect.poll(() => page.locator('.tap-mark').count()).toBe(1);
    await settled(page);
    await expect
      .poll(
        async () =>
          (await page.locator('.specimen .outline-dark').count()) === 0 || (await outline()) !== before,
      )
      .toBe(true);
    await button(page, 'Take back the last tap').click();
    await expect.poll(outline).toBe(before);
    await settled(page);

    // The same photo, once as a variety that nothing is known of, once as the golden one.
    const unknown = await look(page, app.url, 'Some other');
    expect(unknown).toMatch(/sees .*yellow/i);
    expect(await page.getByText('Beside a healthy leaf').count()).toBe(0);
    await keep(page, 'Other tomato');
    const known = await look(page, app.url, 'golden trial');
    await page
      .getByText(
        /No clear difference in colour from a healthy leaf of this variety: \d+ points, give or take \d+/,
      )
      .waitFor();
    await expect.poll(() => page.locator('.camera-report').innerText()).not.toBe(unknown);
    expect(known).not.toMatch(/clearly sees/i);
    await snapBoth(page, `normal-look-${name}`);
    await keep(page, 'Golden tomato');
    const ratios = await yellowRatios(page);
    expect(ratios['Other tomato']).toBeGreaterThan(3);
    expect(ratios['Golden tomato']).toBeLessThan(1 / 3);

    // Still there after a reload, with its day and stage; deleted and brought back.
    await page.goto(`${app.url}#/ground/normal-leaves`);
    await page.reload();
    await page.getByText('1 healthy leaf', { exact: true }).waitFor();
    await snapBoth(page, `normal-varieties-${name}`);
    await page.getByRole('link', { name: 'Tomato, Golden trial' }).click();
    expect(await page.getByLabel('How far on was the plant?').inputValue()).toBe('growing');
    await expect.poll(outline).toBe(before);
    await button(page, /^Delete the healthy leaf of/).click();
    await expect.poll(() => page.locator('.normal-leaf').count()).toBe(0);
    await button(page, 'Undo').click();
    await page.locator('.normal-leaf').waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('a case that came to nothing', () => {
  const { phone, app } = appOnPhone(4766);

  it('offers its leaf as a healthy one of the variety, and leads to it once it is kept', async () => {
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await button(page, 'Load the invented garden').click();
    await page.getByText('Invented garden — nothing here is yours').waitFor();
    await page.goto(`${app.url}#/book`);
    await page.getByRole('link', { name: /^Chard/ }).click();
    await button(page, 'Keep it as a healthy leaf').click();
    await page.getByRole('link', { name: 'It is kept as a healthy leaf of its variety.' }).click();
    await page.getByRole('heading', { name: /^Healthy leaf: Chard/ }).waitFor();
    await page.getByRole('heading', { name: 'Its colour' }).waitFor();
    expect(await page.locator('.normal-leaf').count()).toBe(1);
    await expect.poll(() => page.locator('.specimen img').count()).toBe(1);
    expect(complaints).toEqual([]);
  });
});
