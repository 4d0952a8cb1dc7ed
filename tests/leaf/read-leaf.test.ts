import { describe, expect, it } from 'vitest';
import { type DrawnLeaf, drawLeaf as drawAnew, type LeafPicture } from '../../src/leaf/draw-leaf.ts';
import type { MeasureId } from '../../src/leaf/measures.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import type { LeafAnalysis, Taps } from '../../src/leaf/types.ts';
import type { Pixels } from '../../src/photo/types.ts';
import { blurPicture } from '../pictures/blur-picture.ts';
import { overlapOf } from './shared-photos.ts';

/** Each picture is drawn once, and read once for the same taps, whatever number of tests look at it. */
const drawn = new Map<string, DrawnLeaf>();
const readings = new Map<Pixels, Map<string, LeafAnalysis>>();

function drawLeaf(picture: LeafPicture = {}): DrawnLeaf {
  const key = JSON.stringify(picture);
  const leaf = drawn.get(key) ?? drawAnew(picture);
  drawn.set(key, leaf);
  return leaf;
}

function read(pixels: Pixels, taps?: Taps): LeafAnalysis {
  const known = readings.get(pixels) ?? new Map<string, LeafAnalysis>();
  readings.set(pixels, known);
  const key = JSON.stringify(taps ?? {});
  const analysis =
    known.get(key) ?? readLeaf(pixels, { role: 'old', ...(taps === undefined ? {} : { taps }) });
  known.set(key, analysis);
  return analysis;
}

const measured = (analysis: LeafAnalysis, id: MeasureId): number =>
  analysis.reading.measures[id]?.value ?? Number.NaN;
const errorOf = (analysis: LeafAnalysis, id: MeasureId): number =>
  analysis.reading.measures[id]?.se ?? Number.NaN;

/** Within three stated errors of the truth. */
function expectWithinError(analysis: LeafAnalysis, id: MeasureId, truth: number): void {
  expect(
    Math.abs(measured(analysis, id) - truth),
    `${id} ${measured(analysis, id)} against ${truth}`,
  ).toBeLessThan(3 * errorOf(analysis, id));
}

describe('outline of drawn leaves', () => {
  const pictures: [string, LeafPicture, number][] = [
    ['green on soil', {}, 0.97],
    ['green over green leaves', { background: 'leaves', green: [58, 118, 46] }, 0.93],
    ['yellow over straw', { background: 'straw', yellow: { where: 'all' } }, 0.95],
    ['brown, dead leaf on grey', { background: 'grey', green: [112, 82, 48], veins: [120, 92, 60] }, 0.95],
    ['purple on paper', { background: 'paper', green: [96, 48, 78], veins: [120, 70, 98] }, 0.95],
    ['lobed, turned, on paper', { background: 'paper', shape: 'lobed', angleDegrees: 35 }, 0.96],
    ['toothed, pale between the veins', { shape: 'toothed', yellow: { where: 'between-veins' } }, 0.95],
    ['cut by the frame', { centre: { x: 0.2, y: 0.5 }, length: 0.8 }, 0.95],
    ['small and off the middle', { length: 0.3, centre: { x: 0.62, y: 0.4 } }, 0.93],
    ['under a shadow edge', { shadow: true }, 0.8],
  ];
  it.each(pictures)('%s', (_, picture, least) => {
    const { pixels, truth } = drawLeaf(picture);
    const { mask } = read(pixels);
    expect(overlapOf(mask!.data, truth.remaining.data)).toBeGreaterThan(least);
  });

  it('takes a dead leaf when it is tapped', () => {
    const { pixels, truth } = drawLeaf({
      background: 'paper',
      green: [104, 74, 44],
      centre: { x: 0.4, y: 0.5 },
    });
    const { mask } = read(pixels, { leaf: { x: 0.4, y: 0.5 } });
    expect(overlapOf(mask!.data, truth.remaining.data)).toBeGreaterThan(0.95);
  });

  it('takes the leaf that is tapped of two', () => {
    const { pixels, left, right } = twoLeaves();
    const one = read(pixels, { leaf: { x: 0.25, y: 0.5 } });
    expect(overlapOf(one.mask!.data, left)).toBeGreaterThan(0.93);
    const other = read(pixels, { leaf: { x: 0.75, y: 0.5 } });
    expect(overlapOf(other.mask!.data, right)).toBeGreaterThan(0.93);
  });

  it('gives up what a second tap takes away', () => {
    const { pixels, truth } = drawLeaf({ background: 'soil', length: 0.7 });
    const spot = { x: 0.74, y: 0.5 };
    expect(truth.remaining.data[240 * 640 + Math.round(0.74 * 640)]).toBe(255);
    const { mask } = read(pixels, { leaf: { x: 0.4, y: 0.5 }, remove: [spot] });
    expect(mask!.data[240 * 640 + Math.round(0.74 * 640)]).toBe(0);
  });

  it('draws the outline as a polygon of at most 200 corners with the area of the mask', () => {
    const analysis = read(drawLeaf({ shape: 'toothed', background: 'paper' }).pixels);
    const outline = analysis.reading.leaf.outline!;
    expect(outline.length).toBeLessThanOrEqual(200);
    let twice = 0;
    for (const [k, p] of outline.entries()) {
      const q = outline[(k + 1) % outline.length]!;
      twice += p.x * q.y - q.x * p.y;
    }
    expect(Math.abs(twice) / 2 / measured(analysis, 'frame-share')).toBeCloseTo(1, 1);
  });
});

/** Two leaves side by side, each with its own mask. */
function twoLeaves(): { pixels: Pixels; left: Uint8Array; right: Uint8Array } {
  const first = drawLeaf({ length: 0.38, centre: { x: 0.25, y: 0.5 } });
  const second = drawLeaf({ length: 0.38, centre: { x: 0.75, y: 0.5 }, green: [84, 130, 52] });
  const data = first.pixels.data.slice();
  for (let i = 0; i < second.truth.whole.data.length; i++) {
    if (second.truth.whole.data[i] !== 255) continue;
    for (let c = 0; c < 4; c++) data[i * 4 + c] = second.pixels.data[i * 4 + c]!;
  }
  return {
    pixels: { ...first.pixels, data },
    left: first.truth.whole.data,
    right: second.truth.whole.data,
  };
}

describe('measures against drawn truth', () => {
  it.each([
    ['between veins', { yellow: { where: 'between-veins' } }],
    ['edges', { yellow: { where: 'edges' }, background: 'paper' }],
    ['patches', { yellow: { where: 'patches' } }],
    ['none', {}],
    ['all', { yellow: { where: 'all' } }],
  ] as [string, LeafPicture][])('yellow share: %s', (_, picture) => {
    const { pixels, truth } = drawLeaf(picture);
    expectWithinError(read(pixels), 'chlorotic-fraction', truth.chloroticFraction);
  });

  it('dead spots: share and count', () => {
    const { pixels, truth } = drawLeaf({ spots: { count: 14, radius: 0.024 }, background: 'paper' });
    const analysis = read(pixels);
    expectWithinError(analysis, 'spot-count', truth.spotCount);
    expectWithinError(analysis, 'spot-fraction', truth.necroticFraction);
    expectWithinError(analysis, 'necrotic-fraction', truth.necroticFraction);
  });

  it('purple and white shares', () => {
    const purple = drawLeaf({ purple: true, background: 'paper' });
    expectWithinError(read(purple.pixels), 'purple-fraction', purple.truth.purpleFraction);
    const powder = drawLeaf({ powder: true });
    expectWithinError(read(powder.pixels), 'white-fraction', powder.truth.whiteFraction);
  });

  it.each([
    ['oval', { shape: 'oval' }],
    ['toothed', { shape: 'toothed' }],
  ] as [string, LeafPicture][])('holes and bites of an %s leaf', (_, shape) => {
    const { pixels, truth } = drawLeaf({
      ...shape,
      background: 'paper',
      holes: { count: 6 },
      bites: { count: 2, radius: 0.09 },
    });
    const analysis = read(pixels);
    expect(measured(analysis, 'hole-count')).toBe(truth.holeCount);
    expectWithinError(analysis, 'hole-fraction', truth.holeFraction);
    expectWithinError(analysis, 'edge-loss-fraction', truth.edgeLossFraction);
    expectWithinError(analysis, 'lost-fraction', truth.lostFraction);
  });

  it('finds no loss on whole leaves, toothed or not', () => {
    for (const shape of ['oval', 'toothed'] as const) {
      const analysis = read(drawLeaf({ shape, background: 'paper' }).pixels);
      expect(measured(analysis, 'lost-fraction')).toBeLessThan(0.01);
    }
  });

  it('tells where the yellow lies', () => {
    const between = read(drawLeaf({ yellow: { where: 'between-veins' } }).pixels);
    const edges = read(drawLeaf({ yellow: { where: 'edges' } }).pixels);
    const tip = read(drawLeaf({ yellow: { where: 'tip' } }).pixels);
    const even = read(drawLeaf({ yellow: { where: 'all' } }).pixels);
    const plain = read(drawLeaf().pixels);
    expect(measured(between, 'vein-contrast')).toBeGreaterThan(2 * errorOf(between, 'vein-contrast'));
    for (const other of [plain, even]) {
      expect(Math.abs(measured(other, 'vein-contrast'))).toBeLessThan(errorOf(other, 'vein-contrast'));
    }
    expect(measured(edges, 'edge-contrast')).toBeGreaterThan(10);
    expect(Math.abs(measured(plain, 'edge-contrast'))).toBeLessThan(2);
    expect(measured(tip, 'tip-contrast')).toBeGreaterThan(10);
    expect(Math.abs(measured(plain, 'tip-contrast'))).toBeLessThan(2);
    expect(measured(even, 'evenness')).toBeGreaterThan(0.8);
    expect(measured(tip, 'evenness')).toBeLessThan(0.5);
    expect(measured(plain, 'mottle')).toBeLessThan(0.2);
    expect(measured(read(drawLeaf({ yellow: { where: 'patches' } }).pixels), 'mottle')).toBeGreaterThan(0.5);
  });

  it('takes a spot with a pale middle as one spot, and glare as none', () => {
    const { pixels, truth } = drawLeaf({ background: 'paper', spots: { count: 8, radius: 0.03 } });
    const ringed = { ...pixels, data: pixels.data.slice() };
    const brown = (i: number): boolean => pixels.data[i]! > pixels.data[i + 1]! + 15;
    const inSpot = (x: number, y: number): boolean => brown((y * 640 + x) * 4);
    for (let y = 8; y < 472; y++) {
      for (let x = 8; x < 632; x++) {
        const i = y * 640 + x;
        if (truth.remaining.data[i] !== 255) continue;
        const isMiddle = [0, 5, -5, 5 * 640, -5 * 640].every((d) => brown((i + d) * 4));
        if (isMiddle && inSpot(x, y)) ringed.data.set([214, 206, 196, 255], i * 4);
      }
    }
    expectWithinError(read(ringed), 'spot-count', truth.spotCount);
    const shiny = { ...pixels, data: drawLeaf({ background: 'paper' }).pixels.data.slice() };
    for (let i = 0; i < truth.remaining.data.length; i++) {
      const x = i % 640;
      const y = Math.floor(i / 640);
      const isGlare = Math.hypot((x % 70) - 35, (y % 70) - 35) < 9;
      if (isGlare && truth.remaining.data[i] === 255) shiny.data.set([206, 218, 214, 255], i * 4);
    }
    expect(measured(read(shiny), 'spot-count')).toBeLessThan(1);
  });

  it('feels dimples, the more the deeper they are, and next to none in veins or at the edge of a shadow', () => {
    const flat = measured(read(drawLeaf().pixels), 'surface-relief');
    const shallow = read(drawLeaf({ dimples: 0.15 }).pixels);
    const deep = read(drawLeaf({ dimples: 0.3 }).pixels);
    expect(measured(shallow, 'surface-relief')).toBeGreaterThan(
      flat + 2 * errorOf(shallow, 'surface-relief'),
    );
    const rise = measured(deep, 'surface-relief') - flat;
    expect(rise / (measured(shallow, 'surface-relief') - flat)).toBeGreaterThan(1.5);
    expect(rise / (measured(shallow, 'surface-relief') - flat)).toBeLessThan(2.5);
    const folded = read(drawLeaf({ shadow: true }).pixels, { leaf: { x: 0.5, y: 0.5 } });
    expect(measured(folded, 'surface-relief')).toBeLessThan(measured(shallow, 'surface-relief') / 2);
  });

  it('counts strewn pale dots and none on a plain leaf', () => {
    const { pixels, truth } = drawLeaf({ background: 'paper' });
    const dotted = { ...pixels, data: pixels.data.slice() };
    let area = 0;
    let dots = 0;
    for (let y = 4; y < 476; y += 1) {
      for (let x = 4; x < 636; x += 1) {
        if (truth.whole.data[y * 640 + x] !== 255) continue;
        area++;
        if (x % 16 !== 0 || y % 16 !== 0) continue;
        dots++;
        for (const d of [0, 1, 640, 641]) dotted.data.set([188, 196, 150, 255], (y * 640 + x + d) * 4);
      }
    }
    const density = (1000 * dots) / area;
    expectWithinError(read(dotted), 'stipple-density', density);
    expect(measured(read(pixels), 'stipple-density')).toBeLessThan(0.2 * density);
  });
});

describe('the same leaf, seen otherwise', () => {
  const COLOUR: MeasureId[] = ['lightness', 'chroma', 'hue', 'dark-green-index', 'chlorotic-fraction'];
  const PATTERN: MeasureId[] = [
    'evenness',
    'vein-contrast',
    'edge-contrast',
    'mottle',
    'surface-relief',
    'spot-fraction',
    'lost-fraction',
  ];
  const picture: LeafPicture = {
    background: 'paper',
    yellow: { where: 'patches' },
    spots: { count: 8 },
    holes: { count: 3 },
  };
  const compare = (first: LeafAnalysis, second: LeafAnalysis, ids: readonly MeasureId[]): void => {
    for (const id of ids) {
      const allowed = 2 * Math.hypot(errorOf(first, id), errorOf(second, id));
      expect(Math.abs(measured(first, id) - measured(second, id)), id).toBeLessThan(allowed);
    }
  };
  const upright = drawLeaf(picture);
  const first = read(upright.pixels);

  it('mirrored', () => compare(first, read(mirror(upright).pixels), [...COLOUR, ...PATTERN]));
  it('turned by a quarter', () => compare(first, read(quarterTurn(upright.pixels)), [...COLOUR, ...PATTERN]));
  it('turned by 50 degrees', () => {
    compare(first, read(drawLeaf({ ...picture, angleDegrees: 50 }).pixels), [...COLOUR, ...PATTERN]);
  });
  it('nearer and farther', () => {
    for (const size of [
      { width: 1280, height: 960 },
      { width: 400, height: 300 },
    ]) {
      compare(first, read(drawLeaf({ ...picture, ...size }).pixels), [...COLOUR, ...PATTERN]);
    }
  });
  it('tapped elsewhere on the leaf', () => {
    const moved = read(upright.pixels, { leaf: { x: 0.4, y: 0.52 } });
    expect(overlapOf(moved.mask!.data, first.mask!.data)).toBeGreaterThan(0.98);
    compare(first, moved, [...COLOUR, ...PATTERN]);
  });
});

function mirror({ pixels }: DrawnLeaf): { pixels: Pixels } {
  const data = new Uint8ClampedArray(pixels.data.length);
  for (let y = 0; y < pixels.height; y++) {
    for (let x = 0; x < pixels.width; x++) {
      const from = (y * pixels.width + x) * 4;
      data.set(pixels.data.subarray(from, from + 4), (y * pixels.width + pixels.width - 1 - x) * 4);
    }
  }
  return { pixels: { ...pixels, data } };
}

function quarterTurn(pixels: Pixels): Pixels {
  const data = new Uint8ClampedArray(pixels.data.length);
  for (let y = 0; y < pixels.height; y++) {
    for (let x = 0; x < pixels.width; x++) {
      const from = (y * pixels.width + x) * 4;
      data.set(pixels.data.subarray(from, from + 4), (x * pixels.height + pixels.height - 1 - y) * 4);
    }
  }
  return { width: pixels.height, height: pixels.width, data };
}

describe('white reference', () => {
  // A warm lamp through a window: about half way from CIE D65 to A in sRGB primaries (from memory).
  // Dimmed, so that no channel of the label is full.
  const warm = [0.9, 0.72, 0.42] as const;

  it('finds a label and takes the colour of the light away', () => {
    const plain = read(drawLeaf({ label: true }).pixels);
    const lit = read(drawLeaf({ label: true, light: warm }).pixels);
    expect(lit.reading.white?.from).toBe('found');
    for (const id of ['hue', 'chlorotic-fraction', 'dark-green-index'] as const) {
      expect(Math.abs(measured(lit, id) - measured(plain, id)), id).toBeLessThan(2 * errorOf(lit, id));
    }
  });

  it('believes a tapped white thing', () => {
    const { pixels } = drawLeaf({ label: true, light: warm });
    const { reading } = read(pixels, { white: { x: 0.09, y: 0.09 } });
    expect(reading.white?.from).toBe('tapped');
    // Grey once more: gains are the inverse of the light up to green.
    expect(reading.white!.gains[0]).toBeCloseTo(0.72 / 0.9, 1);
    expect(reading.white!.gains[2]).toBeCloseTo(0.72 / 0.42, 1);
  });

  it('states a wider error where it must guess', () => {
    const guessed = read(drawLeaf().pixels);
    const found = read(drawLeaf({ label: true }).pixels);
    expect(guessed.reading.white?.from).toBe('estimated');
    expect(guessed.reading.white!.se).toBeGreaterThan(found.reading.white!.se);
    expect(errorOf(guessed, 'hue')).toBeGreaterThan(errorOf(found, 'hue'));
  });
});

describe('photos in trouble', () => {
  const flat = (width: number, height: number, rgb: readonly [number, number, number]): Pixels => {
    const data = new Uint8ClampedArray(width * height * 4);
    for (let i = 0; i < width * height; i++) data.set([...rgb, 255], i * 4);
    return { width, height, data };
  };

  it('is too dark when all is black, and when all but black', () => {
    expect(read(flat(320, 240, [0, 0, 0])).reading.trouble).toEqual(['too-dark']);
    expect(read(drawLeaf({ light: [0.006, 0.006, 0.006] }).pixels).reading.trouble).toContain('too-dark');
  });

  it('is burnt out when all is white', () => {
    expect(read(flat(320, 240, [255, 255, 255])).reading.trouble).toEqual(['burnt-out']);
  });

  it.each([
    ['grey wall', flat(320, 240, [128, 126, 122])],
    ['soil alone', drawLeaf({ shape: 'none' }).pixels],
    ['straw alone', drawLeaf({ shape: 'none', background: 'straw' }).pixels],
    ['32 px square', flat(32, 32, [90, 120, 70])],
    ['strip', flat(900, 33, [90, 120, 70])],
  ] as [string, Pixels][])('finds no leaf on %s', (_, pixels) => {
    const { reading, mask } = read(pixels);
    expect(reading.leaf.found).toBe(false);
    expect(reading.trouble).toContain('no-leaf');
    expect(reading.measures).toEqual({});
    expect(mask).toBeUndefined();
  });

  it('says when the leaf is too small', () => {
    const { reading } = read(drawLeaf({ length: 0.09, background: 'paper' }).pixels, {
      leaf: { x: 0.5, y: 0.5 },
    });
    expect(reading.trouble).toContain('leaf-too-small');
  });

  it('says when the picture is blurred, and widens the errors', () => {
    const sharp = drawLeaf({ background: 'soil', spots: { count: 10 } }).pixels;
    const blurred = blurPicture(sharp, 9, 3);
    const analysis = read(blurred);
    expect(analysis.reading.trouble).toContain('too-blurred');
    expect(measured(analysis, 'sharpness')).toBeLessThan(measured(read(sharp), 'sharpness'));
    expect(errorOf(analysis, 'hue')).toBeGreaterThan(errorOf(read(sharp), 'hue'));
  });

  it('never throws, whatever the noise', () => {
    let state = 7;
    for (const [width, height] of [
      [32, 32],
      [33, 500],
      [200, 150],
    ] as const) {
      const data = new Uint8ClampedArray(width * height * 4);
      for (let i = 0; i < data.length; i++) {
        state = (Math.imul(state, 1103515245) + 12345) | 0;
        data[i] = i % 4 === 3 ? 255 : (state >>> 16) & 255;
      }
      expect(() => read({ width, height, data })).not.toThrow();
      expect(() =>
        read({ width, height, data }, { leaf: { x: 1, y: 1 }, white: { x: 0, y: 1 } }),
      ).not.toThrow();
    }
  });
});
