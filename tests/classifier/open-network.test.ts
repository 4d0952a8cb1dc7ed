import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { MARK_SCALES } from '../../src/classifier/calibration.ts';
import { cutCrop, type LeafCrop } from '../../src/classifier/cut-crop.ts';
import { findingsFromNetwork, reportsOf } from '../../src/classifier/findings-from-network.ts';
import { isUnlike } from '../../src/classifier/is-unlike.ts';
import { openNetwork } from '../../src/classifier/session/open-network.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../../src/photo/scale-to-working-frame.ts';
import type { Pixels } from '../../src/photo/types.ts';

const FILE = new Uint8Array(readFileSync(new URL('../../models/signs.onnx', import.meta.url)));
const PHOTOS = new URL('../../../shared/photos/', import.meta.url);

describe('opening the network', () => {
  it('says that the file is missing', async () => {
    await expect(openNetwork(undefined)).rejects.toMatchObject({ code: 'network-missing' });
    await expect(openNetwork(new Uint8Array())).rejects.toMatchObject({ code: 'network-missing' });
  });

  it('refuses a file that was cut off or altered by one bit', async () => {
    await expect(openNetwork(FILE.slice(0, FILE.length - 1))).rejects.toMatchObject({
      code: 'network-altered',
    });
    const altered = FILE.slice();
    altered[FILE.length >> 1]! ^= 1;
    await expect(openNetwork(altered)).rejects.toMatchObject({ code: 'network-altered' });
  });
});

/** Every mark switched on, so that silence is the picture's doing. */
const ALL_ON = MARK_SCALES.map((scale) => ({ ...scale, on: true, most: 12 }));

/** The whole picture, as if all of it were leaf. */
const wholeOf = (frame: Pixels): LeafCrop =>
  cutCrop(frame, new Uint8Array(frame.width * frame.height).fill(255))!;

/** Noise of a fixed seed (xorshift; Marsaglia 2003). */
function drawNoise(seed: number, grey: boolean): Pixels {
  let state = seed;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state & 255;
  };
  const data = new Uint8ClampedArray(4 * 200 * 200).fill(255);
  for (let i = 0; i < 200 * 200; i++) {
    const level = next();
    for (let c = 0; c < 3; c++) data[4 * i + c] = grey ? level : next();
  }
  return { width: 200, height: 200, data };
}

describe('silence', () => {
  it.each([
    ['coloured', false],
    ['grey', true],
  ] as const)('falls on %s noise', async (_, grey) => {
    const network = await openNetwork(FILE);
    for (const seed of [3, 1999]) {
      const answer = await network.look(wholeOf(drawNoise(seed, grey)));
      expect(isUnlike(answer)).toBe(true);
      expect(reportsOf(answer, ALL_ON)).toEqual([]);
      expect(findingsFromNetwork(answer, 'old')).toEqual([]);
    }
    network.close();
  });

  const folder = new URL('other/not-a-leaf/', PHOTOS);
  it.runIf(existsSync(folder))('falls on what is not a leaf', async () => {
    const { listPhotos } = await import('../../training/list-photos.ts');
    const network = await openNetwork(FILE);
    const rows = listPhotos().filter(({ label }) => label === 'not_a_leaf');
    expect(rows.length).toBeGreaterThan(3);
    for (const { file } of rows) {
      const { pixels } = await decodeInNode(readFileSync(new URL(file, PHOTOS)));
      const answer = await network.look(wholeOf(scaleToWorkingFrame(pixels)));
      expect(isUnlike(answer), file).toBe(true);
      expect(reportsOf(answer, ALL_ON), file).toEqual([]);
    }
    network.close();
  });
});
