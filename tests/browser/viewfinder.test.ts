import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VIEWFINDER_WORDS as WORDS } from '../../src/app/words/viewfinder.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { accessibilityFaults, newPhone, PHONE, type Served, serveApp, snap, watch } from './browser.ts';

let folder = '';
let app: Served;
beforeAll(async () => {
  app = await serveApp(4723);
  folder = mkdtempSync(join(tmpdir(), 'bedside-camera-'));
});
afterAll(async () => {
  await app.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** A film of one picture, for Chromium's false camera. */
function film(name: string, jpeg: Uint8Array): string {
  const path = join(folder, `${name}.mjpeg`);
  writeFileSync(path, jpeg);
  return path;
}

/** A phone whose camera sees this film. */
const phoneSeeing = (path: string) =>
  newPhone([
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-video-capture=${path}`,
  ]);

async function lookThrough(phone: ReturnType<typeof newPhone>) {
  const { context, page } = await phone.open(PHONE);
  const { complaints } = watch(context);
  await page.goto(`${app.url}#/look/new`);
  await page.getByRole('button', { name: 'Take a photo' }).click();
  const hint = page.locator('.viewfinder-hint');
  await hint.waitFor();
  return { context, page, hint, complaints };
}

describe('the viewfinder', () => {
  it('says that all is well, takes the photo, and the leaf in it is measured', async () => {
    const drawn = drawLeaf({
      width: 1280,
      height: 960,
      length: 0.8,
      yellow: { where: 'tip' },
      background: 'paper',
    });
    const phone = phoneSeeing(film('leaf', await writeJpeg(drawn.pixels)));
    const { context, page, hint, complaints } = await lookThrough(phone);
    await expect.poll(() => hint.innerText()).toBe(WORDS.hints.ready);
    expect(await hint.getAttribute('role')).toBe('status');
    for (const theme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: theme });
      await snap(page, `viewfinder-${theme}`);
      expect(await accessibilityFaults(page), theme).toEqual([]);
    }
    for (const control of await page.locator('.viewfinder :is(.button, .viewfinder-mark):visible').all()) {
      const box = (await control.boundingBox())!;
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    }
    // Help lies over the film, without a network too, and gives the film back.
    await context.setOffline(true);
    const mark = (await page.locator('.viewfinder-mark').boundingBox())!;
    const middle = [mark.x + mark.width / 2, mark.y + mark.height / 2] as const;
    const isHit = await page.evaluate(
      ([x, y]) => document.elementFromPoint(x, y)?.closest('.viewfinder-mark') !== null,
      middle,
    );
    expect(isHit).toBe(true);
    await page.mouse.click(...middle);
    const help = page.getByRole('dialog', { name: WORDS.help.title });
    for (const line of [...WORDS.help.lines, ...WORDS.help.hints.map(({ means }) => means)])
      await help.getByText(line).waitFor();
    // It opens at its head.
    expect((await help.getByRole('heading', { name: WORDS.help.title }).boundingBox())!.y).toBeGreaterThan(0);
    await snap(page, 'viewfinder-help');
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => help.count()).toBe(0);
    expect(await page.locator('.viewfinder').count()).toBe(1);
    await context.setOffline(false);
    await page.getByRole('button', { name: WORDS.take }).click();
    await expect.poll(() => page.locator('.viewfinder').count()).toBe(0);
    await expect.poll(() => page.locator('.layer', { hasText: 'Pale to yellow' }).count()).toBe(1);
    const size = await page
      .locator('.specimen-stage img')
      .evaluate((img) => [(img as HTMLImageElement).naturalWidth, (img as HTMLImageElement).naturalHeight]);
    // The camera's full size, not that of the screen.
    expect(size).toEqual([1280, 960]);
    expect(complaints).toEqual([]);
    await context.close();
    await phone.throwAway();
  });

  it.each([
    ['too-dark', async () => sharp(Buffer.from(await writeJpeg(drawLeaf().pixels))).linear(0.08, 0)],
    ['hold-still', async () => sharp(Buffer.from(await writeJpeg(drawLeaf({ length: 0.8 }).pixels))).blur(8)],
    ['come-closer', async () => sharp(Buffer.from(await writeJpeg(drawLeaf({ length: 0.3 }).pixels)))],
    [
      'no-leaf',
      async () => sharp({ create: { width: 640, height: 480, channels: 3, background: '#7a6a5c' } }),
    ],
  ] as const)('says what to do: %s', async (code, picture) => {
    const phone = phoneSeeing(film(code, await (await picture()).jpeg().toBuffer()));
    const { context, page, hint } = await lookThrough(phone);
    await expect.poll(() => hint.innerText()).toBe(WORDS.hints[code]);
    // Closing it gives the focus back and stops the camera.
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.viewfinder').count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Take a photo');
    await context.close();
    await phone.throwAway();
  });

  it('asks for a label beside the leaf, and turns on the light where the camera has one', async () => {
    const phone = phoneSeeing(film('bare', await writeJpeg(drawLeaf({ length: 0.8 }).pixels)));
    const { context, page } = await phone.open(PHONE);
    const { complaints } = watch(context);
    // Chromium's false camera has no light: what a camera with one answers is put in its place.
    await page.addInitScript(() => {
      const asked: unknown[] = [];
      Object.assign(globalThis, { askedOfCamera: asked });
      const { getCapabilities } = MediaStreamTrack.prototype;
      MediaStreamTrack.prototype.getCapabilities = function capabilities() {
        return { ...getCapabilities.call(this), torch: true } as MediaTrackCapabilities;
      };
      MediaStreamTrack.prototype.applyConstraints = async (constraints) => {
        asked.push(constraints?.advanced?.[0]);
      };
    });
    await page.goto(`${app.url}#/look/new`);
    await page.getByRole('button', { name: 'Take a photo' }).click();
    await expect.poll(() => page.locator('.viewfinder-hint').innerText()).toBe(WORDS.hints['lay-label']);
    await page.getByRole('button', { name: WORDS.torchOn }).click();
    await page.getByRole('button', { name: WORDS.torchOff, pressed: true }).click();
    await page.getByRole('button', { name: WORDS.torchOn, pressed: false }).waitFor();
    const asked = await page.evaluate(() => (globalThis as { askedOfCamera?: unknown[] }).askedOfCamera);
    expect(asked).toEqual([{ torch: true }, { torch: false }]);
    await snap(page, 'viewfinder-torch');
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
    await phone.throwAway();
  });

  it('says so when the camera is not allowed or not there, and a picture can be chosen', async () => {
    const leaf = join(folder, 'leaf.jpg');
    writeFileSync(leaf, await writeJpeg(drawLeaf().pixels));
    for (const [flags, trouble] of [
      [['--use-fake-device-for-media-stream', '--deny-permission-prompts'], 'refused'],
      [['--use-fake-ui-for-media-stream'], 'none'],
    ] as const) {
      const phone = newPhone(flags);
      const { context, page, hint } = await lookThrough(phone);
      await expect.poll(() => hint.innerText()).toBe(WORDS.trouble[trouble]);
      expect(await page.getByRole('button', { name: WORDS.take }).count()).toBe(0);
      expect(await accessibilityFaults(page)).toEqual([]);
      await page.getByLabel(WORDS.choose).setInputFiles([leaf]);
      await expect.poll(() => page.locator('.layer').count()).toBeGreaterThan(0);
      await context.close();
      await phone.throwAway();
    }
  });

  it('leaves it to the file picker where the browser has no camera to offer', async () => {
    const phone = newPhone();
    const { context, page } = await phone.open(PHONE);
    await page.addInitScript(() => {
      Object.defineProperty(navigator, 'mediaDevices', { value: undefined });
    });
    await page.goto(`${app.url}#/look/new`);
    await expect.poll(() => page.getByLabel('Take a photo').getAttribute('type')).toBe('file');
    expect(await page.getByLabel('Take a photo').getAttribute('capture')).toBe('environment');
    await context.close();
    await phone.throwAway();
  });
});
