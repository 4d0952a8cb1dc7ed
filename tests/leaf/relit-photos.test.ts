/**
 * Pictures lit again by known lights. A picture in sRGB, multiplied in linear light by the light's own linear sRGB, is what a
 * camera fixed to D65 would have taken (von Kries); what the photo step takes away again must bring the measures back.
 */
import Color from 'colorjs.io';
import { describe, expect, it } from 'vitest';
import { MEASURES, type MeasureId } from '../../src/leaf/measures.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import type { LeafAnalysis } from '../../src/leaf/types.ts';
import type { Pixels, Spot } from '../../src/photo/types.ts';
import { drawLeaf } from '../pictures/draw-leaf.ts';
import { relight } from '../pictures/retake-photo.ts';
import { decodePhoto, HAS_PHOTOS, pickPhotos } from './shared-photos.ts';

type Triple = [number, number, number];

/**
 * Chromaticities x, y of the 1931 observer: CIE 15, tables of illuminants (A, D50, D65, D75) and of fluorescent lamps
 * (F2 cool white, F7 daylight, F11 narrow band).
 */
const LIGHTS = {
  A: [0.44757, 0.40745],
  D50: [0.34567, 0.3585],
  D65: [0.31271, 0.32902],
  D75: [0.29902, 0.31485],
  F2: [0.37208, 0.37529],
  F7: [0.31292, 0.32933],
  F11: [0.38052, 0.37713],
} as const;

/** Linear sRGB of a light, its strongest channel 1, so that nothing is clipped. */
function linearOf([x, y]: readonly [number, number]): Triple {
  const white = new Color('xyz-d65', [x / y, 1, (1 - x - y) / y]).to('srgb-linear').coords as Triple;
  const top = Math.max(...white);
  return white.map((v) => v / top) as Triple;
}

const read = (pixels: Pixels, white?: Spot): LeafAnalysis =>
  readLeaf(pixels, {
    role: 'old',
    taps: { leaf: { x: 0.5, y: 0.5 }, ...(white === undefined ? {} : { white }) },
  });

/**
 * Reads a picture under every light and under its own; of all measures the share that moves by less than its stated error,
 * and the moves that do not. Where no sheet gives the exposure back, its own light is dimmed to the same green: gains keep
 * green, and brightness is not colour.
 */
function compareLights(
  pixels: Pixels,
  { white, onSheet }: { white?: Spot | undefined; onSheet: boolean },
  ids: readonly MeasureId[] = MEASURES.map(({ id }) => id),
) {
  const own = onSheet ? read(pixels, white).reading.measures : undefined;
  const beyond: string[] = [];
  const from: string[] = [];
  let count = 0;
  for (const [name, light] of lights) {
    const plain = own ?? read(relight(pixels, [light[1], light[1], light[1]]), white).reading.measures;
    const { reading } = read(relight(pixels, light), white);
    from.push(reading.white?.from ?? 'none');
    for (const id of ids) {
      const before = plain[id];
      const after = reading.measures[id];
      if (before === undefined || after === undefined) continue;
      count++;
      if (Math.abs(after.value - before.value) > after.se)
        beyond.push(
          `${name} ${id} ${before.value.toFixed(3)} → ${after.value.toFixed(3)} ± ${after.se.toFixed(3)}`,
        );
    }
  }
  return { share: 1 - beyond.length / count, beyond, from };
}

const lights = Object.entries(LIGHTS).map(([name, xy]) => [name, linearOf(xy)] as const);

it('takes D65 for white and lamplight for orange', () => {
  const [, d65] = lights.find(([name]) => name === 'D65')!;
  for (const v of d65) expect(v).toBeCloseTo(1, 2);
  const [, lamp] = lights.find(([name]) => name === 'A')!;
  expect(lamp[0]).toBe(1);
  expect(lamp[2]).toBeLessThan(0.2);
});

describe('drawn leaves under known lights', () => {
  const drawn: [string, Pixels, Spot | undefined][] = [
    ['on a white sheet', drawLeaf({ background: 'paper', yellow: { where: 'patches' } }).pixels, undefined],
    ['beside a white label, found', drawLeaf({ label: true, spots: { count: 9 } }).pixels, undefined],
    ['beside a white label, tapped', drawLeaf({ label: true, seed: 4 }).pixels, { x: 0.09, y: 0.09 }],
  ];
  it.each(drawn)('%s: at least 95 of 100 measures move by less than their error', (_, pixels, white) => {
    const { share, beyond, from } = compareLights(pixels, { white, onSheet: false });
    expect(from).not.toContain('estimated');
    expect(share, beyond.join('\n')).toBeGreaterThanOrEqual(0.95);
  });

  it('brings hue and dark green back to within 2 degrees and 0.02 on a white sheet', () => {
    const { pixels } = drawLeaf({ background: 'paper' });
    const plain = read(pixels).reading.measures;
    for (const [name, light] of lights) {
      const lit = read(relight(pixels, light)).reading.measures;
      expect(Math.abs(lit.hue!.value - plain.hue!.value), name).toBeLessThan(2);
      expect(Math.abs(lit['dark-green-index']!.value - plain['dark-green-index']!.value), name).toBeLessThan(
        0.02,
      );
    }
  });

  it('states a wider error without a reference, and one that holds', () => {
    const colours = ['hue', 'chroma', 'lightness', 'dark-green-index', 'chlorotic-fraction'] as const;
    const without = drawLeaf({ seed: 3 }).pixels;
    const sheet = read(drawLeaf({ seed: 3, background: 'paper' }).pixels).reading.measures;
    const plain = read(without).reading;
    expect(plain.white?.from).toBe('estimated');
    let within = 0;
    let count = 0;
    for (const [, light] of lights) {
      const { reading } = read(relight(without, light));
      if (!reading.leaf.found) continue;
      for (const id of colours) {
        const before = plain.measures[id];
        const after = reading.measures[id];
        if (before === undefined || after === undefined) continue;
        count++;
        if (Math.abs(after.value - before.value) <= Math.hypot(after.se, before.se)) within++;
      }
    }
    expect(plain.measures.hue!.se).toBeGreaterThan(sheet.hue!.se);
    expect(count).toBeGreaterThanOrEqual(20);
    expect(within / count).toBeGreaterThanOrEqual(0.68);
  });
});

/** Measures of colour. Holes, edge loss, stipples and spots also hang on an outline found anew in other light. */
const COLOURS = [
  'chlorotic-fraction',
  'necrotic-fraction',
  'purple-fraction',
  'lightness',
  'chroma',
  'hue',
  'dark-green-index',
  'evenness',
  'vein-contrast',
  'mottle',
] as const satisfies readonly MeasureId[];

describe.skipIf(!HAS_PHOTOS)('papaya leaves on paper under known lights (papaya-spad)', () => {
  it('measures of colour move by less than their stated errors in 95 of 100', async () => {
    // All measures together: 0.935 on four photographs; holes and stipples at the limit of sight come and go.
    const rows = ['golden', 'tainung'].flatMap((kind) => pickPhotos('papaya-spad', `${kind}_white_bg`, 2));
    const beyond: string[] = [];
    let within = 0;
    for (const row of rows) {
      const told = compareLights(await decodePhoto(row.file), { onSheet: true }, COLOURS);
      within += told.share / rows.length;
      beyond.push(...told.beyond.map((line) => `${row.file} ${line}`));
    }
    expect(within, beyond.join('\n')).toBeGreaterThanOrEqual(0.95);
  }, 300_000);
});
