import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { DEMO_WORDS } from '../../src/app/words/demo.ts';
import { FROM_RECORDS_WORDS } from '../../src/app/words/from-records.ts';
import { GROUND_WORDS } from '../../src/app/words/ground.ts';
import { LOOK_WORDS } from '../../src/app/words/look.ts';
import { PHOTO_WORKER_WORDS } from '../../src/app/words/photo-troubles.ts';
import { SHELL_WORDS } from '../../src/app/words/shell.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import {
  accessibilityFaults,
  chooseCrop,
  newPhone,
  PHONE,
  type Phone,
  ROOT,
  type Served,
  sayItIsSmall,
  snap,
} from './browser.ts';
import { makeSecondBuild } from './second-build.ts';
import { serveBuild } from './serve-build.ts';

const PORT = 4871;

let second = '';
beforeAll(() => {
  second = mkdtempSync(join(tmpdir(), 'bedside-second-'));
  makeSecondBuild(second);
});
afterAll(() => rmSync(second, { recursive: true, force: true }));

const buildOf = (page: Page): Promise<string> =>
  page.evaluate(() => document.documentElement.dataset.build ?? 'first');

describe('two builds in two tabs', () => {
  let phone: Phone;
  let served: Served;
  let context: BrowserContext;
  /** Stays open on the first build. */
  let old: Page;
  const at = { folder: join(ROOT, 'dist') };
  beforeEach(async () => {
    at.folder = join(ROOT, 'dist');
    served = await serveBuild(PORT, undefined, { folder: () => at.folder });
    phone = newPhone();
    ({ context, page: old } = await phone.open(PHONE));
    await old.goto(served.url);
    await old.getByText(SHELL_WORDS.worksOffline).waitFor();
  });
  afterEach(async () => {
    await phone.throwAway();
    await served.stop();
  });

  /** The second build comes, and another tab changes to it. That tab. */
  async function changeElsewhere(): Promise<Page> {
    const other = await context.newPage();
    await other.goto(served.url);
    at.folder = second;
    await other.evaluate(async () => {
      await (await navigator.serviceWorker.getRegistration())?.update();
    });
    await other.getByRole('button', { name: SHELL_WORDS.useUpdate }).click();
    await expect.poll(() => buildOf(other).catch(() => '')).toBe('second');
    await old.getByText(SHELL_WORDS.updateWaits).waitFor();
    expect(await buildOf(old)).toBe('first');
    return other;
  }

  it('a screen that the old tab never opened: the page is loaded anew by itself, and both tabs keep what they had', async () => {
    await old.goto(`${served.url}#/look/new`);
    await chooseCrop(old, 'Kale');
    await sayItIsSmall(old);
    await old.getByLabel('Note').fill('by the gate');
    const look = old.url();
    const other = await changeElsewhere();
    await old.getByLabel('Note').fill('by the gate, in the old tab');
    // In the new tab another look is begun meanwhile.
    await other.goto(`${served.url}#/look/new`);
    await chooseCrop(other, 'Leek');
    await other.getByLabel('Note').fill('in the new tab');

    await old.getByRole('link', { name: 'Help and settings' }).click();
    await expect.poll(() => buildOf(old).catch(() => '')).toBe('second');
    await old.getByRole('heading', { name: 'What this is' }).waitFor();
    expect(await old.getByText(SHELL_WORDS.partMissing).count()).toBe(0);
    expect(await old.getByText(SHELL_WORDS.updateWaits).count()).toBe(0);
    for (const hash of ['#/ground/weather', '#/book/taught']) {
      await old.goto(served.url + hash);
      await old.locator('h1:not(:text-is("…"))').first().waitFor();
      expect(await old.getByRole('alert').filter({ hasText: /\w/ }).count(), hash).toBe(0);
    }
    await old.goto(look);
    await expect.poll(() => old.getByLabel('Note').inputValue()).toBe('by the gate, in the old tab');
    await old.locator('.verdict-headline').waitFor();
    expect(await other.getByLabel('Note').inputValue()).toBe('in the new tab');
    await other.reload();
    await expect.poll(() => other.getByLabel('Note').inputValue()).toBe('in the new tab');
  });

  it('what is typed in a form of the old tab is not lost to “Change to it”', async () => {
    await old.goto(`${served.url}#/ground`);
    const field = old.getByLabel(GROUND_WORDS.addBed);
    await field.fill('Long bed by the shed');
    await changeElsewhere();
    const change = old.getByRole('button', { name: SHELL_WORDS.useUpdate });
    await change.click();
    await old.getByText(SHELL_WORDS.updateHeld).waitFor();
    expect(await field.inputValue()).toBe('Long bed by the shed');
    expect(await buildOf(old)).toBe('first');
    expect(await accessibilityFaults(old)).toEqual([]);
    await snap(old, 'two-builds-held-phone');
    await old.getByRole('button', { name: GROUND_WORDS.add, exact: true }).click();
    await old.getByRole('link', { name: /Long bed by the shed/ }).waitFor();
    await change.click();
    await expect.poll(() => buildOf(old).catch(() => '')).toBe('second');
    await old.getByRole('link', { name: /Long bed by the shed/ }).waitFor();
  });

  it('a part missing beside something typed is told, with the way out; so is a photo that cannot be read any more', async () => {
    await old.goto(`${served.url}#/look/new`);
    await chooseCrop(old, 'Kale');
    await sayItIsSmall(old);
    await old.getByLabel('Note').fill('half a row');
    await changeElsewhere();
    const leaf = await writeJpeg(drawLeaf({ width: 800, height: 600, length: 0.8, seed: 9 }).pixels);
    await old
      .getByLabel('Choose photos')
      .setInputFiles([{ name: 'leaf.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(leaf) }]);
    await old.getByText(SHELL_WORDS.restarted.older).waitFor();
    const gone = old.getByRole('alert').filter({ hasText: SHELL_WORDS.partOlder });
    await gone.first().waitFor();
    await snap(old, 'two-builds-gone-phone');
    expect(await old.getByLabel('Note').inputValue()).toBe('half a row');
    expect(await buildOf(old)).toBe('first');
    await gone.first().getByRole('button', { name: SHELL_WORDS.useUpdate }).click();
    await expect.poll(() => buildOf(old).catch(() => '')).toBe('second');
    await expect.poll(() => old.getByLabel('Note').inputValue()).toBe('half a row');
    // The photo is there, and is read when it is asked for once more.
    await old.getByText(PHOTO_WORKER_WORDS['worker-crashed']).waitFor();
    await old.getByRole('button', { name: LOOK_WORDS.readAgain }).click();
    await expect.poll(() => old.locator('.measures').count()).toBeGreaterThan(0);
  });

  it('records that cannot be read any more, and a garden that cannot be made, are told; nothing is concluded in silence', async () => {
    await old.goto(`${served.url}#/ground`);
    await old.getByLabel(GROUND_WORDS.addBed).fill('Long bed');
    await old.getByRole('button', { name: GROUND_WORDS.add, exact: true }).click();
    await old.getByRole('link', { name: /Long bed/ }).waitFor();
    await old.goto(`${served.url}#/look/new`);
    await chooseCrop(old, 'Kale');
    await old.getByText(FROM_RECORDS_WORDS.ask).waitFor();
    const help = await context.newPage();
    await help.goto(`${served.url}#/help`);
    const load = help.getByRole('button', { name: DEMO_WORDS.enter });
    await load.waitFor();
    await changeElsewhere();

    await old.getByText(FROM_RECORDS_WORDS.ask).click();
    await old.getByRole('button', { name: /^Long bed/ }).click();
    await old.getByText(SHELL_WORDS.restarted.older).waitFor();
    await old.getByRole('button', { name: SHELL_WORDS.useUpdate }).first().click();
    await expect.poll(() => buildOf(old).catch(() => '')).toBe('second');
    await old.getByText(FROM_RECORDS_WORDS.inBed('Long bed')).waitFor();
    expect(await old.locator('.bars .bar').count()).toBe(0);

    await load.click();
    await help.getByText(SHELL_WORDS.restarted.older).waitFor();
    await help.getByRole('button', { name: SHELL_WORDS.useUpdate }).click();
    await expect.poll(() => buildOf(help).catch(() => '')).toBe('second');
  });
});
