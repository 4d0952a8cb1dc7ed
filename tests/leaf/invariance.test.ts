/**
 * A leaf is the same leaf however it is turned, mirrored or near. No measure of it may move by more than its stated error says;
 * on quarter turns and mirrors, where no pixel is mixed, by much less.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawLeaf, type LeafPicture } from '../../src/leaf/draw-leaf.ts';
import { MEASURES, type MeasureId, type Measures } from '../../src/leaf/measures.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import type { Pixels, Spot } from '../../src/photo/types.ts';
import { type Turn, turnPhoto, turnSpot } from '../pictures/retake-photo.ts';
import { decodePhoto, HAS_PHOTOS, pickPhotos } from './shared-photos.ts';

/** All but those that speak of the frame. */
const STEADY = MEASURES.map(({ id }) => id).filter((id) => id !== 'frame-share' && id !== 'sharpness');

const read = (pixels: Pixels, leaf: Spot): Measures =>
  readLeaf(pixels, { role: 'old', taps: { leaf } }).reading.measures;

/** Quarter turns without any resampling: width and height change places. */
function turnQuarter({ width, height, data }: Pixels, mirrored: boolean): Pixels {
  const out = new Uint8ClampedArray(data.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const to = (mirrored ? x * height + y : x * height + (height - 1 - y)) * 4;
      out.set(data.subarray((y * width + x) * 4, (y * width + x) * 4 + 4), to);
    }
  return { width: height, height: width, data: out };
}

/** Fine detail, whose values hang on how many pixels a vein, spot, dimple or hole has: steady as often as its error claims. */
const FINE: ReadonlySet<MeasureId> = new Set([
  'vein-contrast',
  'surface-relief',
  'tip-contrast',
  'stipple-density',
  'spot-count',
  'spot-fraction',
  'hole-count',
  'edge-loss-fraction',
  'lost-fraction',
  'ribs-left',
]);

function expectSteady(
  before: Measures,
  after: Measures,
  errors: number,
  ids: readonly MeasureId[] = STEADY,
): void {
  for (const id of ids) {
    const first = before[id];
    const second = after[id];
    if (first === undefined || second === undefined) continue;
    expect(
      Math.abs(second.value - first.value),
      `${id} ${first.value} → ${second.value} ± ${second.se}`,
    ).toBeLessThanOrEqual(errors * Math.hypot(first.se, second.se));
  }
}

const pictures: [string, LeafPicture][] = [
  ['yellow patches on soil', { yellow: { where: 'patches' } }],
  ['spots on paper', { background: 'paper', spots: { count: 12 } }],
  ['holes on grey', { background: 'grey', holes: { count: 4 }, shape: 'toothed' }],
  ['purple half on soil', { purple: true }],
];

describe('drawn leaves', () => {
  const tap = { x: 0.52, y: 0.46 };
  const drawn = pictures.map(([, picture]) => drawLeaf({ length: 0.6, ...picture }).pixels);
  const before = drawn.map((pixels) => read(pixels, tap));

  it('takes every measure of a leaf on one picture or another', () => {
    const taken = new Set(before.flatMap((measures) => Object.keys(measures)));
    expect(STEADY.filter((id) => !taken.has(id))).toEqual([]);
  });

  it.each(pictures.map(([name], k) => [name, k] as const))(
    '%s: quarter turns and mirrors leave all measures within half an error',
    (_, k) => {
      expectSteady(before[k]!, read(turnQuarter(drawn[k]!, true), { x: 0.46, y: 0.52 }), 0.5);
      expectSteady(before[k]!, read(turnQuarter(drawn[k]!, false), { x: 0.54, y: 0.52 }), 0.5);
    },
  );

  it('any turn, mirror and scale leaves coarse measures within their errors, and fine ones as often as they claim', () => {
    const coarse = STEADY.filter((id) => !FINE.has(id));
    let within = 0;
    let count = 0;
    const beyond: string[] = [];
    const turn = fc.record({
      angleDegrees: fc.integer({ min: 0, max: 359 }),
      scale: fc.double({ min: 0.6, max: 1.6, noNaN: true }),
      mirrored: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.nat({ max: drawn.length - 1 }), turn, (which, how: Turn) => {
        const pixels = drawn[which]!;
        const after = read(turnPhoto(pixels, how), turnSpot(tap, pixels, how));
        expectSteady(before[which]!, after, 1.5, coarse);
        for (const id of FINE) {
          const first = before[which]![id];
          const second = after[id];
          if (first === undefined || second === undefined) continue;
          count++;
          if (Math.abs(second.value - first.value) <= Math.hypot(first.se, second.se)) within++;
          else beyond.push(`${id} ${first.value} → ${second.value} ± ${second.se}`);
        }
      }),
      { numRuns: 10, seed: 20 },
    );
    expect(count).toBeGreaterThan(40);
    expect(within / count, beyond.join('\n')).toBeGreaterThanOrEqual(0.68);
  }, 120_000);
});

describe.skipIf(!HAS_PHOTOS)('real photographs', () => {
  it('turned, mirrored and scaled, nine in ten measures stay within their errors', async () => {
    const rows = [
      ...pickPhotos('papaya-spad', 'golden_white_bg', 1),
      ...pickPhotos('bean-uganda', 'healthy', 1),
      ...pickPhotos('blackgram-india', 'healthy', 1),
    ];
    let within = 0;
    let count = 0;
    const beyond: string[] = [];
    for (const [k, row] of rows.entries()) {
      const pixels = await decodePhoto(row.file);
      const how = { angleDegrees: 70 + 50 * k, scale: k % 2 === 0 ? 0.8 : 1.2, mirrored: k > 1 };
      const tap = { x: 0.5, y: 0.5 };
      const before = read(pixels, tap);
      const after = read(turnPhoto(pixels, how), turnSpot(tap, pixels, how));
      for (const id of STEADY) {
        const first = before[id];
        const second = after[id];
        if (first === undefined || second === undefined) continue;
        count++;
        if (Math.abs(second.value - first.value) <= Math.hypot(first.se, second.se)) within++;
        else beyond.push(`${row.file} ${id} ${first.value} → ${second.value} ± ${second.se}`);
      }
    }
    expect(count).toBeGreaterThan(30);
    expect(within / count, beyond.join('\n')).toBeGreaterThanOrEqual(0.9);
  }, 120_000);
});
