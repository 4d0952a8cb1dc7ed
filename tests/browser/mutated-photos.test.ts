import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { WORKING_SIDE_PX } from '../../src/photo/scale-to-working-frame.ts';
import { PHOTO_TROUBLES } from '../../src/photo/types.ts';
import { filesOfEachKind, spoil } from '../pictures/spoil-file.ts';
import { seededNumbers } from '../seeded-numbers.ts';
import { appOnPhone, PHONE, ROOT } from './browser.ts';

const MADE = 420;
const AT_ONCE = 30;

/** What came of one file. */
interface End {
  readonly end: string;
  readonly trouble: string[];
  readonly found: boolean;
  /** Of the map of what was measured. */
  readonly pixels: number;
}

const worker = readdirSync(join(ROOT, 'dist/assets')).find((name) => /^photo-worker-.*\.js$/.test(name))!;

describe('mutated picture files in the browser', () => {
  const { phone, app } = appOnPhone(4872);

  it(`${MADE} of them go through the app's own photo worker: each is read or refused with a known reason, and one worker outlives them all`, {
    timeout: 600_000,
  }, async () => {
    const files = await filesOfEachKind(drawLeaf({ width: 320, height: 240, length: 0.8, seed: 3 }).pixels);
    const number = seededNumbers(20260620);
    const { context, page } = await phone.open(PHONE);
    const crashed: string[] = [];
    page.on('crash', () => crashed.push('the page'));
    await page.goto(app.url);
    await page.evaluate((path) => {
      const opened = new Worker(path, { type: 'module' });
      let tell: (end: unknown) => void = () => {};
      const all = globalThis as unknown as { readAll: unknown; fallen: string[] };
      all.fallen = [];
      opened.onerror = (event) => {
        all.fallen.push(event.message);
        tell({ end: 'fallen', trouble: [], found: false, pixels: 0 });
      };
      opened.onmessage = ({ data: { reply } }) => {
        const { reading, layers } = reply;
        tell({
          end: reply.ok ? 'read' : reply.code,
          trouble: reading?.trouble ?? [],
          found: reading?.leaf.found ?? false,
          pixels: layers ? layers.width * layers.height : 0,
        });
      };
      let number = 0;
      // One after the other, as the app asks.
      all.readAll = async (texts: string[]) => {
        const ends: unknown[] = [];
        for (const text of texts) {
          number += 1;
          const picture = new Blob([Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))]);
          const [photoId, want] = [`p${number}`, { wantThumbnail: true, wantCrop: true }];
          const ended = new Promise((resolve) => {
            tell = resolve;
          });
          opened.postMessage({
            number,
            request: { kind: 'read-photo', photoId, picture, role: 'old', taps: {}, ...want },
          });
          ends.push(await ended);
        }
        return ends;
      };
    }, `/assets/${worker}`);

    const readAll = (batch: string[]): Promise<End[]> =>
      page.evaluate(
        (texts) => (globalThis as unknown as { readAll(all: string[]): Promise<End[]> }).readAll(texts),
        batch,
      );
    const ends: End[] = [];
    for (let made = 0; made < MADE; made += AT_ONCE) {
      const texts = Array.from({ length: AT_ONCE }, (_, at) => {
        const kind = (made + at) % files.length;
        return Buffer.from(spoil(files[kind]!, files[(kind + 1) % files.length]!, number)).toString('base64');
      });
      ends.push(...(await readAll(texts)));
    }
    expect(ends.length).toBe(MADE);
    expect(await page.evaluate(() => (globalThis as unknown as { fallen: string[] }).fallen)).toEqual([]);
    expect(crashed).toEqual([]);
    const known = new Set<string>(['read', ...PHOTO_TROUBLES]);
    expect(ends.filter(({ end }) => !known.has(end))).toEqual([]);
    expect(ends.flatMap(({ trouble }) => trouble).filter((code) => !known.has(code))).toEqual([]);
    // What a header claims makes no frame larger than any photo's.
    expect(Math.max(...ends.map(({ pixels }) => pixels))).toBeLessThanOrEqual(WORKING_SIDE_PX ** 2);
    // Both ways are really taken, and leaves are still found in what is left of some.
    const count = (is: (end: End) => boolean): number => ends.filter(is).length;
    expect(count(({ end }) => end === 'read')).toBeGreaterThan(40);
    expect(count(({ found }) => found)).toBeGreaterThan(10);
    expect(count(({ end }) => end === 'broken-picture')).toBeGreaterThan(40);
    // Nothing of it stays behind: the next whole photo is read.
    const [last] = await readAll([Buffer.from(files[0]!).toString('base64')]);
    expect(last).toMatchObject({ end: 'read' });
    await context.close();
  });
});
