import { describe, expect, it } from 'vitest';
import { drawLeaf, type LeafPicture } from '../../src/leaf/draw-leaf.ts';
import { findLeaf } from '../../src/leaf/find-leaf.ts';
import type { Taps } from '../../src/leaf/types.ts';
import { convertPixelsToLab } from '../../src/photo/convert-pixels-to-lab.ts';
import type { Pixels } from '../../src/photo/types.ts';
import { overlapOf } from './shared-photos.ts';

const outlineOf = (pixels: Pixels, taps: Taps): Uint8Array =>
  findLeaf(pixels, convertPixelsToLab(pixels), taps)!.outline;

/** One drawn leaf laid over another scene. */
function layOver(ground: Pixels, picture: LeafPicture): { pixels: Pixels; leaf: Uint8Array } {
  const drawn = drawLeaf(picture);
  const data = ground.data.slice();
  const leaf = drawn.truth.whole.data;
  for (let i = 0; i < leaf.length; i++) {
    if (leaf[i] === 255) data.set(drawn.pixels.data.subarray(i * 4, i * 4 + 4), i * 4);
  }
  return { pixels: { ...ground, data }, leaf };
}

/** A thumb of the given skin colour over the lower end of whatever lies in the middle. */
function layThumb(
  pixels: Pixels,
  skin: readonly [number, number, number],
): { pixels: Pixels; thumb: Uint8Array } {
  const data = pixels.data.slice();
  const thumb = new Uint8Array(pixels.width * pixels.height);
  for (let y = 0; y < pixels.height; y++) {
    for (let x = 0; x < pixels.width; x++) {
      const across = (x - 0.52 * pixels.width) / (0.09 * pixels.width);
      const up = (y - 0.72 * pixels.height) / (0.09 * pixels.height);
      if (across ** 2 + Math.min(0, up) ** 2 > 1) continue;
      const i = y * pixels.width + x;
      thumb[i] = 255;
      const shade = 1.05 - 0.25 * across ** 2;
      data.set(
        skin.map((v) => v * shade),
        i * 4,
      );
    }
  }
  return { pixels: { ...pixels, data }, thumb };
}

describe('the leaf under a tap', () => {
  const middle = { leaf: { x: 0.5, y: 0.5 } };

  it.each([
    ['dark', [92, 60, 44]],
    ['fair', [214, 160, 132]],
  ] as const)('ends at a %s thumb', (_, skin) => {
    const { pixels, truth } = drawLeaf({ slender: 0.8, background: 'soil' });
    const held = layThumb(pixels, skin);
    const seen = truth.whole.data.map((v, i) => (v === 255 && held.thumb[i] === 0 ? 255 : 0));
    expect(overlapOf(outlineOf(held.pixels, middle), seen)).toBeGreaterThan(0.93);
  });

  it('is green over green', () => {
    const { pixels, truth } = drawLeaf({ background: 'leaves', green: [58, 118, 46] });
    expect(overlapOf(outlineOf(pixels, middle), truth.whole.data)).toBeGreaterThan(0.93);
  });

  it('is yellow on straw, and goes on under a shadow', () => {
    const yellow = drawLeaf({ background: 'straw', yellow: { where: 'all' } });
    expect(overlapOf(outlineOf(yellow.pixels, middle), yellow.truth.whole.data)).toBeGreaterThan(0.95);
    const shaded = drawLeaf({ shadow: true });
    expect(overlapOf(outlineOf(shaded.pixels, middle), shaded.truth.whole.data)).toBeGreaterThan(0.8);
  });

  it.each([0.25, 0.4])('goes on across the hard edge of a shadow that leaves %s of the light', (light) => {
    const { pixels, truth } = drawLeaf({ slender: 0.7 });
    const data = pixels.data.slice();
    for (let i = 0; i < truth.whole.data.length; i++) {
      const x = i % pixels.width;
      const y = Math.floor(i / pixels.width);
      if (x > 0.62 * pixels.width - 0.3 * (y - 0.5 * pixels.height)) {
        for (let c = 0; c < 3; c++) data[i * 4 + c] = data[i * 4 + c]! * light ** (1 / 2.2);
      }
    }
    expect(overlapOf(outlineOf({ ...pixels, data }, middle), truth.whole.data)).toBeGreaterThan(0.93);
  });

  it('ends where the next leaflet of the stalk begins, of the same green', () => {
    const ground = drawLeaf({ shape: 'none' }).pixels;
    const behind = layOver(ground, {
      length: 0.45,
      slender: 0.7,
      angleDegrees: 60,
      centre: { x: 0.34, y: 0.66 },
      seed: 4,
    });
    const { pixels, leaf } = layOver(behind.pixels, {
      length: 0.5,
      slender: 0.7,
      centre: { x: 0.5, y: 0.42 },
      seed: 2,
    });
    // The upper one casts a thin shadow, as leaves do.
    const data = pixels.data.slice();
    for (let i = 0; i < leaf.length; i++) {
      const near = [-1, 1, -pixels.width, pixels.width, -2 * pixels.width].some((d) => leaf[i + d] === 255);
      if (leaf[i] === 0 && near) for (let c = 0; c < 3; c++) data[i * 4 + c] = data[i * 4 + c]! * 0.6;
    }
    expect(overlapOf(outlineOf({ ...pixels, data }, { leaf: { x: 0.5, y: 0.42 } }), leaf)).toBeGreaterThan(
      0.9,
    );
  });

  it('is the nearest one when the finger missed it and lies on soil', () => {
    const { pixels, truth } = drawLeaf({ length: 0.4, slender: 0.6, centre: { x: 0.4, y: 0.5 } });
    const found = outlineOf(pixels, { leaf: { x: 0.4, y: 0.7 } });
    expect(overlapOf(found, truth.whole.data)).toBeGreaterThan(0.93);
  });

  it('is cut by the frame where the frame cuts it', () => {
    const { pixels, truth } = drawLeaf({ centre: { x: 0.75, y: 0.5 }, length: 0.8 });
    const found = outlineOf(pixels, { leaf: { x: 0.75, y: 0.5 } });
    expect(overlapOf(found, truth.whole.data)).toBeGreaterThan(0.95);
  });
});

describe('fingers of a leaf that are added', () => {
  const FINGERS = [
    { x: 0.316, y: 0.156 },
    { x: 0.623, y: 0.092 },
    { x: 0.8, y: 0.621 },
    { x: 0.444, y: 0.931 },
    { x: 0.197, y: 0.617 },
  ];
  // Yellow between green veins: each finger is likelier a leaf of its own than a part of one.
  const of = (background: 'soil' | 'straw') =>
    drawLeaf({ shape: 'palmate', background, yellow: { where: 'between-veins' }, angleDegrees: 20 });

  it.each(['soil', 'straw'] as const)(
    'are all in the outline, and all of them make the whole leaf: over %s',
    (ground) => {
      const { pixels, truth } = of(ground);
      const { width, height } = pixels;
      const whole = truth.whole.data;
      const overlaps = [2, 3, 5].map((count) => {
        const add = FINGERS.slice(0, count);
        const found = outlineOf(pixels, { add });
        const indexOf = ({ x, y }: (typeof FINGERS)[number]): number =>
          Math.floor(y * height) * width + Math.floor(x * width);
        expect(add.map((spot) => whole[indexOf(spot)])).toEqual(add.map(() => 255));
        expect(add.map((spot) => found[indexOf(spot)])).toEqual(add.map(() => 255));
        return overlapOf(found, whole);
      });
      expect(overlaps.at(-1)).toBeGreaterThan(0.98);
    },
  );

  it('do not take what was said to be none of it', () => {
    const { pixels } = of('soil');
    const remove = [{ x: 0.5, y: 0.3 }];
    const found = outlineOf(pixels, { add: FINGERS.slice(0, 2), remove });
    expect(found[Math.floor(0.3 * pixels.height) * pixels.width + Math.floor(0.5 * pixels.width)]).toBe(0);
  });
});

describe('a second tap', () => {
  const base = drawLeaf({ length: 0.4, centre: { x: 0.3, y: 0.5 } });
  const { pixels, leaf: other } = layOver(base.pixels, {
    length: 0.4,
    centre: { x: 0.66, y: 0.5 },
    green: [90, 134, 50],
  });
  const first = base.truth.whole.data;

  it('adds what it lies on', () => {
    const both = first.map((v, i) => (v === 255 || other[i] === 255 ? 255 : 0));
    const found = outlineOf(pixels, { leaf: { x: 0.3, y: 0.5 }, add: [{ x: 0.66, y: 0.5 }] });
    expect(overlapOf(found, both)).toBeGreaterThan(0.9);
  });

  it('takes away what it lies on', () => {
    const found = outlineOf(pixels, { leaf: { x: 0.3, y: 0.5 }, remove: [{ x: 0.66, y: 0.5 }] });
    expect(overlapOf(found, first)).toBeGreaterThan(0.9);
  });
});
