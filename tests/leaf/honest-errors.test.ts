/**
 * Stated errors against second shots. Photographs of every set are taken again by script: other light (on leaf and ground, and on
 * the leaf alone), exposure, JPEG quality, scale, turn, tap. The two readings must differ by less than both errors together
 * in about 68 of 100, as standard errors claim. `training/check-errors.ts` prints the same for larger samples.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf, seededRandom } from '../../src/leaf/draw-leaf.ts';
import type { MeasureId } from '../../src/leaf/measures.ts';
import { drawRetake, relight, takeAgain, turnPhoto, turnSpot } from '../pictures/retake-photo.ts';
import { binomialBounds, type RetakenPair, retakePhotos, tellCoverage } from './retake-photos.ts';
import { HAS_PHOTOS, pickPhotos } from './shared-photos.ts';

describe('second shots by script', () => {
  const { pixels, truth } = drawLeaf({ width: 320, height: 240 });

  it('turns a spot with its picture', () => {
    const marked = { ...pixels, data: new Uint8ClampedArray(pixels.data.length).fill(255) };
    for (let dy = -3; dy <= 3; dy++)
      for (let dx = -3; dx <= 3; dx++) marked.data.set([0, 0, 0, 255], ((60 + dy) * 320 + 200 + dx) * 4);
    for (const turn of [
      { angleDegrees: 90, scale: 0.75, mirrored: false },
      { angleDegrees: 33, scale: 0.6, mirrored: true },
    ]) {
      const turned = turnPhoto(marked, turn);
      const spot = turnSpot({ x: 200.5 / 320, y: 60.5 / 240 }, marked, turn);
      const at = (Math.floor(spot.y * turned.height) * turned.width + Math.floor(spot.x * turned.width)) * 4;
      expect(turned.data[at]).toBeLessThan(60);
    }
  });

  it('multiplies linear light: half of the light of full white is coded 188 (IEC 61966-2-1)', () => {
    const white = { width: 1, height: 1, data: Uint8ClampedArray.from([255, 255, 255, 255]) };
    expect([...relight(white, [0.5, 1, 2]).data]).toEqual([188, 255, 255, 255]);
  });

  it('lights the leaf apart from its ground', async () => {
    const retake = {
      ...drawRetake(seededRandom(1), false),
      light: [1, 1, 1] as const,
      leafLight: [0.25, 0.25, 0.25] as const,
      turn: { angleDegrees: 0, scale: 1, mirrored: false },
      quality: 95,
    };
    const again = await takeAgain(pixels, { x: 0.5, y: 0.5 }, truth.whole.data, retake);
    const green = (data: Uint8ClampedArray, x: number, y: number): number => data[(y * 320 + x) * 4 + 1]!;
    expect(green(again.pixels.data, 160, 110)).toBeLessThan(0.7 * green(pixels.data, 160, 110));
    expect(Math.abs(green(again.pixels.data, 20, 20) - green(pixels.data, 20, 20))).toBeLessThan(20);
  });
});

it('tells what a sample may show', () => {
  // Sums of the binomial distribution, from Python's math.comb: P(X <= 6 | 20, 0.6) = 0.0065, P(X <= 7) = 0.0210;
  // P(X >= 19 | 20, 0.76) = 0.0302, P(X >= 18) = 0.1085.
  expect(binomialBounds(20, 0.6, 0.76, 0.02)).toEqual([7 / 20, 1 - 1 / 20]);
  expect(binomialBounds(20, 0.6, 0.76, 0.05)[1]).toBeCloseTo(18 / 20, 12);
});

describe.skipIf(!HAS_PHOTOS)('photographs taken again', () => {
  const pairs: RetakenPair[] = [];
  beforeAll(async () => {
    const random = seededRandom(2024);
    for (const [set, label, most] of [
      ['papaya-spad', 'golden_natural_bg', 4],
      ['papaya-spad', 'tainung_white_bg', 4],
      ['chilli-india', 'nutritional', 4],
      ['blackgram-india', 'yellow_mosaic', 4],
      ['bean-uganda', 'angular_leaf_spot', 4],
    ] as const)
      pairs.push(...(await retakePhotos(pickPhotos(set, label, most), random)));
  }, 900_000);

  /** Colour and pattern: what `take-measures.ts` states errors for. Loss has its own masks to be tested against. */
  const TAKEN = [
    'chlorotic-fraction',
    'necrotic-fraction',
    'white-fraction',
    'lightness',
    'chroma',
    'hue',
    'dark-green-index',
    'evenness',
    'vein-contrast',
    'edge-contrast',
    'spot-count',
    'spot-fraction',
    'mottle',
    'surface-relief',
  ] as const satisfies readonly MeasureId[];

  /**
   * `training/check-errors.ts` finds each measure between 0.60 and 0.76 on more photographs and other draws. Here the bounds are
   * what a sample of this size may show of a share between those two: one of two hundred strays beyond, on either side. One
   * retake a photograph, because two of one are no independent trials.
   */
  const LOW = 0.6;
  const HIGH = 0.76;
  const STRAY = 0.005;

  it('hold at the rate they claim, 68 of 100: each measure', () => {
    expect(pairs.length).toBeGreaterThanOrEqual(16);
    const told = tellCoverage(pairs).filter(({ id }) => (TAKEN as readonly string[]).includes(id));
    const table = told.map(({ id, count, share }) => `${id} ${share.toFixed(2)} of ${count}`).join('\n');
    for (const { id, count, share } of told) {
      const [least, most] = binomialBounds(count, LOW, HIGH, STRAY);
      expect(share, `${id}\n${table}`).toBeGreaterThanOrEqual(least);
      expect(share, `${id}\n${table}`).toBeLessThanOrEqual(most);
    }
  });

  it('hold at the rate they claim: all together', () => {
    const told = tellCoverage(pairs).filter(({ id }) => (TAKEN as readonly string[]).includes(id));
    const count = told.reduce((sum, { count: n }) => sum + n, 0);
    const share = told.reduce((sum, { count: n, share: s }) => sum + n * s, 0) / count;
    // Measures of one pair move together: as many independent trials as there are pairs, three to a pair (level of colour,
    // what is counted by bounds of colour, pattern), and no more.
    const [least, most] = binomialBounds(3 * pairs.length, LOW, HIGH, STRAY);
    expect(share).toBeGreaterThanOrEqual(least);
    expect(share).toBeLessThanOrEqual(most);
  });
});
