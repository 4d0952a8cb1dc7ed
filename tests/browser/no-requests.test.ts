import { afterAll, beforeAll, expect, it } from 'vitest';
import { SHELL_WORDS } from '../../src/app/words/shell.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { lookAtOldLeaf, newPhone, PHONE, type Served, watch } from './browser.ts';
import { listScreens, loadInventedGarden, openScreen } from './invented-screens.ts';
import { serveBuild } from './serve-build.ts';

/** The browser asks for the service worker, and for the script that is a part of it, to see whether they have changed. */
const UPDATE_CHECK = ['/receive-photos.js', '/service-worker.js'];

const phone = newPhone();
let served: Served;
/** What reached the server, in order. */
const asked: string[] = [];
beforeAll(async () => {
  served = await serveBuild(4873, undefined, { onRequest: (address) => void asked.push(address) });
});
afterAll(async () => {
  await phone.throwAway();
  await served.stop();
});

it('once installed, every screen and a look with a photo ask for nothing but whether there is a newer version', {
  timeout: 600_000,
}, async () => {
  const { context, page } = await phone.open(PHONE);
  const { requests } = watch(context);
  await page.goto(served.url);
  await page.getByText(SHELL_WORDS.worksOffline).waitFor();
  expect(asked).toContain('/');
  expect(asked.length).toBeGreaterThan(100);
  asked.length = 0;

  await loadInventedGarden(page, served.url);
  const screens = await listScreens(page, served.url);
  expect(screens.length).toBeGreaterThan(25);
  for (const [, hash] of screens) {
    // Loaded anew each time, so that nothing comes from what the screen before had in hand.
    await page.goto('about:blank');
    await openScreen(page, served.url, hash);
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
  }
  await page.goto('about:blank');
  await openScreen(page, served.url, '#/look/new');
  const drawn = drawLeaf({ width: 1200, height: 900, yellow: { where: 'between-veins' } });
  await lookAtOldLeaf(page, 'Tomato', await writeJpeg(drawn.pixels));

  // The check is made, now at the latest.
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())?.update();
  });
  expect(asked).toContain('/service-worker.js');
  expect([...new Set(asked)].filter((address) => !UPDATE_CHECK.includes(address))).toEqual([]);
  const foreign = requests.filter((url) => !url.startsWith(served.url) && !/^(blob|data|about):/.test(url));
  expect(foreign).toEqual([]);
  await context.close();
});
