import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import {
  type Apart,
  beyond,
  comparePictures,
  TOLERATED,
  TOLERATED_OTHER_FACES,
} from '../browser/compare-pictures.ts';

const FOLDER = fileURLToPath(new URL('../browser/references', import.meta.url));
const names = readdirSync(FOLDER).filter((name) => name.endsWith('.webp'));

/** A reference at the size of the screen it was taken of. */
const screen = (name: string): Promise<Buffer> => {
  const size = name.includes('-phone-') ? { width: 390, height: 844 } : { width: 1440, height: 900 };
  return sharp(join(FOLDER, name))
    .resize({ ...size, fit: 'fill' })
    .png()
    .toBuffer();
};

const reference = (name: string): Buffer => readFileSync(join(FOLDER, name));

/** What lies in a box moved sideways, paper left behind. */
async function moved(
  picture: Buffer,
  box: { left: number; top: number; width: number; height: number },
  by: number,
): Promise<Buffer> {
  const { data } = await sharp(picture)
    .extract({ left: 4, top: 160, width: 1, height: 1 })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const background = { r: data[0]!, g: data[1]!, b: data[2]! };
  const input = await sharp(picture).extract(box).png().toBuffer();
  const paper = await sharp({ create: { width: box.width, height: box.height, channels: 3, background } })
    .png()
    .toBuffer();
  return sharp(picture)
    .composite([
      { input: paper, left: box.left, top: box.top },
      { input, left: box.left + by, top: box.top },
    ])
    .png()
    .toBuffer();
}

/** Every line of letters moved a little to its own side, and drawn a little bolder, as another library would draw it. */
async function drawnOtherwise(picture: Buffer): Promise<Buffer> {
  const { width = 0, height = 0 } = await sharp(picture).metadata();
  const band = 24;
  const bands = await Promise.all(
    Array.from({ length: Math.floor(height / band) }, async (_, at) => ({
      input: await sharp(picture)
        .extract({ left: 0, top: at * band, width: width - 2, height: band })
        .png()
        .toBuffer(),
      left: (at * 7) % 3,
      top: at * band,
    })),
  );
  return sharp(picture).composite(bands).linear(0.985, 0).png().toBuffer();
}

const faults = async (seen: Buffer, name: string, tolerated: Apart = TOLERATED): Promise<string[]> =>
  beyond(await comparePictures(seen, reference(name)), tolerated);

describe('comparing pictures of screens', () => {
  it('has a reference of each screen for a phone and a desk, of some for a small phone and a tablet, light and dusk, small enough for the repository', () => {
    const screens = new Set(
      names.map((name) => name.replace(/-(small|phone|tablet|desk)-(light|dusk)\.webp$/, '')),
    );
    expect(screens.size).toBeGreaterThanOrEqual(10);
    for (const screen of screens)
      for (const size of [
        'phone',
        'desk',
        ...['small', 'tablet'].filter((size) => names.includes(`${screen}-${size}-light.webp`)),
      ])
        for (const theme of ['light', 'dusk']) expect(names).toContain(`${screen}-${size}-${theme}.webp`);
    expect(names.filter((name) => name.includes('-tablet-')).length).toBeGreaterThanOrEqual(4);
    const bytes = names.reduce((sum, name) => sum + reference(name).length, 0);
    expect(bytes).toBeLessThan(1_500_000);
  });

  it('lets pass what was only drawn by other means', async () => {
    for (const name of ['case-desk-light.webp', 'walk-phone-dusk.webp', 'book-desk-dusk.webp']) {
      expect(await faults(await screen(name), name)).toEqual([]);
      expect(await faults(await drawnOtherwise(await screen(name)), name)).toEqual([]);
    }
  });

  it.each([
    ['the faces of the references', TOLERATED],
    ['other faces', TOLERATED_OTHER_FACES],
  ] as const)('fails on a wrong theme, with %s', async (_, tolerated) => {
    for (const name of names.filter((one) => one.endsWith('-light.webp'))) {
      const dusk = await screen(name.replace('-light', '-dusk'));
      expect(await faults(dusk, name, tolerated), name).not.toEqual([]);
    }
  });

  it('fails on a column that has moved', async () => {
    const name = 'book-desk-light.webp';
    const right = { left: 820, top: 200, width: 500, height: 640 };
    expect(await faults(await moved(await screen(name), right, 60), name)).not.toEqual([]);
    expect(await faults(await moved(await screen(name), right, -40), name)).not.toEqual([]);
  });

  it('fails on a picture that is lost', async () => {
    for (const [name, box] of [
      ['kept-look-desk-light.webp', { left: 180, top: 190, width: 520, height: 380 }],
      ['kept-look-phone-dusk.webp', { left: 24, top: 240, width: 340, height: 250 }],
    ] as const) {
      const whole = await screen(name);
      const paper = await sharp({
        create: { width: box.width, height: box.height, channels: 3, background: '#ebe2cd' },
      })
        .png()
        .toBuffer();
      const without = await sharp(whole)
        .composite([{ input: paper, left: box.left, top: box.top }])
        .png()
        .toBuffer();
      expect(await faults(without, name), name).not.toEqual([]);
      expect(await faults(without, name, TOLERATED_OTHER_FACES), name).not.toEqual([]);
    }
  });

  it('fails on one screen in place of another', async () => {
    expect(await faults(await screen('beds-desk-light.webp'), 'book-desk-light.webp')).not.toEqual([]);
    expect(await faults(await screen('walk-phone-light.webp'), 'case-phone-light.webp')).not.toEqual([]);
  });
});
