/**
 * Pictures lit again by known lights. A picture in sRGB, multiplied in linear light by the light's own linear sRGB, is what a
 * camera fixed to D65 would have taken (von Kries); what the photo step takes away again must bring the measures back.
 */
import Color from 'colorjs.io';
import { describe, expect, it } from 'vitest';
import { drawLeaf, type LeafPicture } from '../../src/leaf/draw-leaf.ts';
import { MEASURES, type MeasureId } from '../../src/leaf/measures.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import type { LeafAnalysis, LeafReading } from '../../src/leaf/types.ts';
import type { Pixels, Spot } from '../../src/photo/types.ts';
import { relight } from '../pictures/retake-photo.ts';
import { decodePhoto, HAS_PHOTOS, pickPhotos } from './shared-photos.ts';

type Triple = [number, number, number];

/**
 * Chromaticities x, y of the 1931 observer: CIE 15, tables of illuminants (A, D50, D65, D75) and of fluorescent lamps
 * (F2 cool white, F7 daylight, F11 narrow band). D65 is white in sRGB, and F7 is all but the same.
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

/** Linear sRGB of a light, green = 1. */
function linearOf([x, y]: readonly [number, number]): Triple {
  const white = new Color('xyz-d65', [x / y, 1, (1 - x - y) / y]).to('srgb-linear').coords as Triple;
  return white.map((v) => v / white[1]) as Triple;
}

const lights = Object.entries(LIGHTS).map(([name, xy]) => [name, linearOf(xy)] as const);
/**
 * So dim that no channel is clipped. A sheet gives the exposure back, and each light may be as bright as it can; else gains keep green,
 * and brightness is not colour: all lights but lamplight, which has far more red than green, share one.
 */
function dimUnder(name: string, onSheet: boolean): number {
  const alike = lights.filter(([other]) => (onSheet ? other === name : (other === 'A') === (name === 'A')));
  return 1 / Math.max(...alike.flatMap(([, light]) => light));
}
const lit = (pixels: Pixels, light: Triple, dim: number): Pixels =>
  relight(pixels, light.map((v) => dim * v) as Triple);

const read = (pixels: Pixels, white?: Spot): LeafAnalysis =>
  readLeaf(pixels, {
    role: 'old',
    taps: { leaf: { x: 0.5, y: 0.5 }, ...(white === undefined ? {} : { white }) },
  });

interface Relit {
  /** By its own light, and by each of the others beside the reading that it must agree with. */
  readonly plain: LeafReading;
  readonly lit: readonly (readonly [string, LeafReading, LeafReading])[];
}

/**
 * Reads a picture by its own light, and under others. A sheet gives the exposure back; where there is none, the picture is read
 * by its own light as dim as under the other.
 */
function readUnder(
  pixels: Pixels,
  { white, onSheet = false }: { readonly white?: Spot; readonly onSheet?: boolean },
  names: readonly string[] = Object.keys(LIGHTS),
): Relit {
  const readLit = (light: Triple, dim: number): LeafReading => read(lit(pixels, light, dim), white).reading;
  const plain = readLit([1, 1, 1], dimUnder('D65', onSheet));
  const dimmer = onSheet || !names.includes('A') ? plain : readLit([1, 1, 1], dimUnder('A', false));
  return {
    plain,
    lit: lights
      .filter(([name]) => names.includes(name))
      .map(([name, light]) => [name, readLit(light, dimUnder(name, onSheet)), name === 'A' ? dimmer : plain]),
  };
}

/** Of the measures, the share that a light moves by less than the error stated under it, and the moves that do not. */
function compareLights(relit: readonly Relit[], ids: readonly MeasureId[] = MEASURES.map(({ id }) => id)) {
  const beyond: string[] = [];
  let count = 0;
  for (const [name, { measures }, plain] of relit.flatMap(({ lit: readings }) => readings)) {
    for (const id of ids) {
      const before = plain.measures[id];
      const after = measures[id];
      if (before === undefined || after === undefined) continue;
      count++;
      if (Math.abs(after.value - before.value) > after.se)
        beyond.push(
          `${name} ${id} ${before.value.toFixed(3)} → ${after.value.toFixed(3)} ± ${after.se.toFixed(3)}`,
        );
    }
  }
  return { share: 1 - beyond.length / count, count, beyond };
}

it('takes D65 for white and lamplight for orange', () => {
  const [, d65] = lights.find(([name]) => name === 'D65')!;
  for (const v of d65) expect(v).toBeCloseTo(1, 2);
  const [, lamp] = lights.find(([name]) => name === 'A')!;
  expect(lamp[0]).toBeGreaterThan(1.5);
  expect(lamp[2]).toBeLessThan(0.4);
});

describe('drawn leaves under known lights', () => {
  const size = { width: 480, height: 360 };
  const drawn = [
    ['on a white sheet', 'found', { background: 'paper', yellow: { where: 'patches' } }, { onSheet: true }],
    ['beside a label', 'found', { label: true, spots: { count: 9 } }, {}],
    ['beside a label', 'tapped', { label: true, seed: 4 }, { white: { x: 0.09, y: 0.09 } }],
  ] as const satisfies [string, string, LeafPicture, { white?: Spot; onSheet?: boolean }][];
  const relit = drawn.map(([, , picture, how]) => readUnder(drawLeaf(picture).pixels, how));

  it.each(drawn.map(([name, from], k) => [name, from, relit[k]!] as const))(
    '%s, %s: at least 95 of 100 measures move by less than their error',
    (_, from, readings) => {
      const { share, count, beyond } = compareLights([readings]);
      for (const [name, { white }] of readings.lit) expect(white?.from, name).toBe(from);
      expect(count).toBeGreaterThan(100);
      expect(share, beyond.join('\n')).toBeGreaterThanOrEqual(0.95);
    },
  );

  it('brings hue and dark green back to within 2 degrees and 0.02 on a white sheet', () => {
    const { plain, lit: readings } = relit[0]!;
    for (const [name, { measures }] of readings) {
      const off = (id: MeasureId): number => Math.abs(measures[id]!.value - plain.measures[id]!.value);
      expect(off('hue'), name).toBeLessThan(2);
      expect(off('dark-green-index'), name).toBeLessThan(0.02);
    }
  });

  it('states a wider error without a reference, and one that holds', () => {
    const colours = ['hue', 'chroma', 'lightness', 'dark-green-index', 'chlorotic-fraction'] as const;
    const { plain, lit: readings } = readUnder(drawLeaf({ ...size, seed: 3 }).pixels, {}, [
      'A',
      'D50',
      'D75',
      'F2',
      'F11',
    ]);
    expect(plain.white?.from).toBe('estimated');
    let within = 0;
    let count = 0;
    for (const [, { leaf, measures }, own] of readings) {
      if (!leaf.found) continue;
      for (const id of colours) {
        const before = own.measures[id];
        const after = measures[id];
        if (before === undefined || after === undefined) continue;
        count++;
        if (Math.abs(after.value - before.value) <= Math.hypot(after.se, before.se)) within++;
      }
    }
    const onPaper = read(drawLeaf({ ...size, seed: 3, background: 'paper' }).pixels).reading.measures;
    for (const id of ['hue', 'chroma', 'lightness', 'dark-green-index'] as const)
      expect(plain.measures[id]!.se, id).toBeGreaterThan(onPaper[id]!.se);
    expect(count).toBeGreaterThanOrEqual(20);
    expect(within / count).toBeGreaterThanOrEqual(0.68);
  }, 240_000);
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
    const rows = ['golden', 'tainung'].flatMap((kind) => pickPhotos('papaya-spad', `${kind}_white_bg`, 1));
    const relit: Relit[] = [];
    for (const row of rows)
      relit.push(readUnder(await decodePhoto(row.file), { onSheet: true }, ['A', 'D50', 'D75', 'F2', 'F11']));
    for (const { plain } of relit) expect(plain.white?.from).toBe('found');
    const { share, count, beyond } = compareLights(relit, COLOURS);
    expect(count).toBeGreaterThanOrEqual(80);
    expect(share, beyond.join('\n')).toBeGreaterThanOrEqual(0.95);
  }, 900_000);
});
