import { readdirSync, readFileSync } from 'node:fs';
import type { ServerResponse } from 'node:http';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { NETWORK_BYTES, NETWORK_SHA256 } from '../../src/classifier/network-file.ts';
import type { SeenByNetwork } from '../../src/garden/seen-by-network.ts';
import { accessibilityFaults, newPhone, PHONE, ROOT, type Served, snap, snapBoth, watch } from './browser.ts';
import {
  findSpottedLeaf,
  goToSettings,
  type KnownLeaf,
  lookAtLeaf,
  networkSwitch,
  stateOf,
  switchOn,
} from './network-steps.ts';
import { serveBuild } from './serve-build.ts';

const IS_PART = /\/assets\/(network-worker-.*\.js|tfjs-.*\.wasm|signs-.*\.onnx)$/;
const IS_MODEL = /\/assets\/signs-.*\.onnx$/;
let leaf: KnownLeaf;
beforeAll(async () => {
  leaf = await findSpottedLeaf();
});

/** A server of one test, also where that fails half-way. */
let served: Served | undefined;
const serve = async (...how: Parameters<typeof serveBuild>): Promise<Served> => {
  served = await serveBuild(...how);
  return served;
};
afterEach(() => served?.stop());

const cachesOf = (page: Page): Promise<string[]> => page.evaluate(() => caches.keys());

/** What the network saw of the photos of all records of a kind. */
const seenIn = (page: Page, kind: 'draft' | 'look'): Promise<SeenByNetwork[]> =>
  page.evaluate(async (wanted) => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await asked(indexedDB.open('bedside-records'));
    const all = await asked(database.transaction('records').objectStore('records').getAll());
    database.close();
    return all
      .filter((record) => record.kind === wanted)
      .flatMap((record) => (record.body ?? record).photos)
      .flatMap(({ network }) => network ?? []);
  }, kind);

describe('the network of signs', () => {
  /** What is sent of the model is held back until it is let go. */
  let letGo: (() => void) | undefined;
  const holdModel = (body: Buffer, response: ServerResponse): 'answered' => {
    response.writeHead(200, { 'content-type': 'application/octet-stream', 'content-length': body.length });
    response.write(body.subarray(0, 400_000));
    letGo = () => response.end(body.subarray(400_000));
    return 'answered';
  };
  const phone = newPhone();
  afterAll(() => phone.throwAway());

  it('is fetched when it is wanted, looks at photos, works offline, and is taken off the device again', async () => {
    let holds = true;
    const app = await serve(4801, (path, body, response) => {
      return holds && IS_MODEL.test(path) ? holdModel(body, response) : body;
    });
    const { context, page } = await phone.open(PHONE);
    const { requests, complaints } = watch(context);
    await page.goto(app.url);
    await page.getByText('works without signal now').waitFor();
    await goToSettings(page, app.url);

    // Nothing of it came unasked; what it weighs is said before.
    expect(requests.filter((url) => IS_PART.test(url))).toEqual([]);
    expect(await cachesOf(page)).not.toContain('network-of-signs');
    expect(await networkSwitch(page).isChecked()).toBe(false);
    const parts = readdirSync(join(ROOT, 'dist/assets')).filter((name) => IS_PART.test(`/assets/${name}`));
    expect(parts.length).toBe(3);
    const bytes = parts.reduce((sum, name) => sum + readFileSync(join(ROOT, 'dist/assets', name)).length, 0);
    expect(bytes).toBeGreaterThan(NETWORK_BYTES);
    await expect.poll(() => stateOf(page).innerText()).toContain(`${(bytes / 1e6).toFixed(1)} MB`);
    await page.getByText('It reports:').waitFor();
    await page.locator('section[aria-labelledby="network"]').scrollIntoViewIfNeeded();
    await snapBoth(page, 'network-off-phone');

    // Progress while it comes.
    await networkSwitch(page).check();
    const progress = page.getByRole('progressbar', { name: 'Fetching the network' });
    await expect.poll(() => progress.getAttribute('value').then(Number)).toBeGreaterThan(400_000);
    expect(Number(await progress.getAttribute('value'))).toBeLessThan(bytes);
    await snapBoth(page, 'network-fetching-phone');
    holds = false;
    letGo?.();
    await expect.poll(() => stateOf(page).innerText()).toContain('On this device');
    await snapBoth(page, 'network-on-phone');

    // A photo of a look is looked at, and what was seen is weighed, shown and kept.
    await lookAtLeaf(page, app.url, leaf.jpeg, 'leaf');
    await page.getByRole('heading', { name: 'What the network reports' }).waitFor();
    const [drafted] = await seenIn(page, 'draft');
    expect(drafted!.network).toBe(NETWORK_SHA256.slice(0, 16));
    expect(drafted!.features.length).toBe(leaf.answer.features.length);
    expect(drafted!.logits.length).toBe(leaf.answer.logits.length);
    expect(drafted!.reports).toContainEqual(leaf.report);
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, 'network-look-phone');
    await page.getByLabel('Bed', { exact: true }).fill('Long bed');
    await page.getByLabel('Plant', { exact: true }).fill('Kale with a voice');
    await page.getByRole('button', { name: 'Keep it as a case' }).click();
    await page.getByRole('heading', { level: 1, name: 'Kale with a voice' }).waitFor();
    expect(await seenIn(page, 'look')).toEqual([drafted]);

    // Without a signal, opened anew: the network looks as before.
    await context.setOffline(true);
    await page.goto('about:blank');
    await page.goto(app.url);
    await page.getByText('works without signal now').waitFor();
    await goToSettings(page, app.url);
    await expect.poll(() => stateOf(page).innerText()).toContain('On this device');
    await lookAtLeaf(page, app.url, leaf.jpeg, 'leaf offline');
    await page.getByRole('heading', { name: 'What the network reports' }).waitFor();
    expect((await seenIn(page, 'draft')).at(-1)).toEqual(drafted);

    // What the grower sees otherwise is set aside for both voices.
    const voice = page.locator('section[aria-labelledby="network-title"]');
    const spots = voice.getByRole('listitem').filter({ hasText: /spots/ });
    await spots.getByRole('button', { name: 'I see it otherwise' }).click();
    await expect.poll(() => spots.count()).toBe(0);

    // Switched off it is gone, and later photos are read without it; kept looks keep its word.
    await context.setOffline(false);
    await goToSettings(page, app.url);
    await networkSwitch(page).uncheck();
    await expect.poll(() => cachesOf(page)).not.toContain('network-of-signs');
    await page.goto('about:blank');
    await lookAtLeaf(page, app.url, leaf.jpeg, 'leaf without');
    expect(await page.getByRole('heading', { name: 'What the network reports' }).count()).toBe(0);
    expect(await cachesOf(page)).not.toContain('network-of-signs');
    await page.goto(`${app.url}#/book`);
    await page.getByRole('link', { name: /Kale with a voice/ }).click();
    await page.locator('a.look-line').first().click();
    await page
      .getByText(/^The network sees/)
      .first()
      .waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe('a model file that is broken', () => {
  const phone = newPhone();
  afterAll(() => phone.throwAway());

  it.each([
    ['missing', () => 'none' as const, /file is not where Bedside was fetched from/],
    ['cut off', (body: Buffer) => body.subarray(0, body.length - 1000), /was cut off or changed/],
    ['altered', alterByte, /was cut off or changed/],
  ] as const)('%s: said once, all else works, and it can be tried again', async (_, breakModel, says) => {
    let isBroken = true;
    const app = await serve(4802, (path, body) =>
      isBroken && IS_MODEL.test(path) ? breakModel(body) : body,
    );
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await goToSettings(page, app.url);
    await networkSwitch(page).check();
    await expect.poll(() => stateOf(page).innerText()).toMatch(says);
    // Nothing broken stays.
    expect(await cachesOf(page)).not.toContain('network-of-signs');
    expect(await accessibilityFaults(page)).toEqual([]);
    await lookAtLeaf(page, app.url, leaf.jpeg, 'leaf');
    // Neither there nor after a start is it said again, and nothing is fetched again by itself.
    expect(await page.getByText(says).count()).toBe(0);
    await page.goto('about:blank');
    await page.goto(app.url);
    await page.locator('.way-in').first().waitFor();
    expect(await page.getByText(says).count()).toBe(0);
    await goToSettings(page, app.url);
    await expect.poll(() => stateOf(page).innerText()).toMatch(says);
    isBroken = false;
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect.poll(() => stateOf(page).innerText()).toContain('On this device');
    await networkSwitch(page).uncheck();
    await expect.poll(() => cachesOf(page)).not.toContain('network-of-signs');
    // A 404 is told to the console by the browser itself.
    expect(complaints.filter((said) => !said.includes('404'))).toEqual([]);
    await context.close();
  });

  it('goes bad on the device: said once at the first photo, not at the second', async () => {
    const app = await serve(4803);
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.getByText('works without signal now').waitFor();
    await switchOn(page, app.url);
    await page.evaluate(async () => {
      const cache = await caches.open('network-of-signs');
      const request = (await cache.keys()).find(({ url }) => url.endsWith('.onnx'))!;
      const bytes = new Uint8Array(await (await cache.match(request))!.arrayBuffer());
      bytes[bytes.length >> 1]! ^= 1;
      await cache.put(request, new Response(bytes));
    });
    await page.goto('about:blank');
    await lookAtLeaf(page, app.url, leaf.jpeg, 'first');
    const bar = page.locator('.bar', { hasText: /was cut off or changed/ });
    await bar.waitFor();
    await snap(page, 'network-broken-phone');
    await bar.getByRole('button', { name: 'Close' }).click();
    await lookAtLeaf(page, app.url, leaf.jpeg, 'second');
    expect(await bar.count()).toBe(0);
    expect(await seenIn(page, 'draft')).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

function alterByte(body: Buffer): Buffer {
  const altered = Buffer.from(body);
  altered[altered.length >> 1]! ^= 1;
  return altered;
}

describe('the worker that the app ships', () => {
  it('says of a leaf what the network says in Node, to the digits that are kept', async () => {
    const app = await serve(4804);
    const phone = newPhone();
    const { context, page } = await phone.open(PHONE);
    await page.goto(app.url);
    const script = readdirSync(join(ROOT, 'dist/assets')).find((name) => /^network-worker-/.test(name));
    const { side, rgb, mask } = leaf.crop;
    const reply = await page.evaluate(
      async ({ path, crop }) => {
        const worker = new Worker(path, { type: 'module' });
        const request = {
          kind: 'look',
          role: 'old',
          crop: { side: crop.side, rgb: Uint8Array.from(crop.rgb), mask: Uint8Array.from(crop.mask) },
        };
        return new Promise<{ number: number; reply: { ok: boolean; seen: SeenByNetwork } }>((resolve) => {
          worker.onmessage = ({ data }) => resolve(data);
          worker.postMessage({ number: 1, request });
        });
      },
      { path: `/assets/${script}`, crop: { side, rgb: [...rgb], mask: [...mask] } },
    );
    expect(reply.reply.ok).toBe(true);
    const { seen } = reply.reply;
    const near = (said: readonly number[], known: readonly number[]): void => {
      expect(said.length).toBe(known.length);
      const largest = Math.max(1, ...known.map(Math.abs));
      // Half a unit of the fourth digit, and 1e-4 between the two.
      for (const [k, value] of said.entries())
        expect(Math.abs(value - known[k]!)).toBeLessThan(6e-4 * Math.abs(known[k]!) + 1e-4 * largest);
    };
    near(seen.logits, leaf.answer.logits);
    near(seen.features, leaf.answer.features);
    near([seen.strangeness], [leaf.answer.strangeness]);
    await context.close();
    await phone.throwAway();
  });
});
