import { describe, expect, it } from 'vitest';
import { judgeFrame } from '../../src/leaf/judge-frame.ts';
import type { Pixels } from '../../src/photo/types.ts';
import { drawLeaf } from '../pictures/draw-leaf.ts';

const SIZE = { width: 480, height: 360 };

/** Box blur of `size` px each way, twice. */
function blur(pixels: Pixels, size: number): Pixels {
  let data = pixels.data;
  const half = size >> 1;
  for (const [dx, dy] of [
    [1, 0],
    [0, 1],
    [1, 0],
    [0, 1],
  ] as const) {
    const next = new Uint8ClampedArray(data.length);
    for (let y = 0; y < pixels.height; y++) {
      for (let x = 0; x < pixels.width; x++) {
        for (let c = 0; c < 4; c++) {
          let sum = 0;
          for (let k = -half; k <= half; k++) {
            const sx = Math.max(0, Math.min(pixels.width - 1, x + k * dx));
            const sy = Math.max(0, Math.min(pixels.height - 1, y + k * dy));
            sum += data[(sy * pixels.width + sx) * 4 + c]!;
          }
          next[(y * pixels.width + x) * 4 + c] = sum / (2 * half + 1);
        }
      }
    }
    data = next;
  }
  return { ...pixels, data };
}

describe('a frame of the viewfinder', () => {
  const spotted = { ...SIZE, spots: { count: 20, radius: 0.012 } } as const;

  it('is ready when a leaf in focus fills it', () => {
    expect(judgeFrame(drawLeaf(spotted).pixels).hint).toBe('ready');
    expect(judgeFrame(drawLeaf({ ...spotted, background: 'paper' }).pixels).hint).toBe('ready');
    expect(judgeFrame(drawLeaf({ ...spotted, background: 'leaves' }).pixels).hint).toBe('ready');
  });

  it('asks to come closer to a small leaf, and says so when there is none', () => {
    expect(judgeFrame(drawLeaf({ ...spotted, length: 0.3 }).pixels).hint).toBe('come-closer');
    expect(judgeFrame(drawLeaf({ ...SIZE, shape: 'none' }).pixels).hint).toBe('no-leaf');
  });

  it('asks for light in the dark, and for shade in glare', () => {
    expect(judgeFrame(drawLeaf({ ...spotted, light: [0.05, 0.05, 0.05] }).pixels).hint).toBe('too-dark');
    expect(judgeFrame(drawLeaf({ ...spotted, light: [30, 30, 30] }).pixels).hint).toBe('burnt-out');
  });

  it('asks to hold still when the leaf is blurred', () => {
    const { pixels } = drawLeaf(spotted);
    expect(judgeFrame(blur(pixels, 9)).hint).toBe('hold-still');
  });

  it('is quick enough for ten frames a second', () => {
    const { pixels } = drawLeaf(spotted);
    judgeFrame(pixels);
    const times = Array.from({ length: 5 }, () => {
      const start = performance.now();
      judgeFrame(pixels);
      return performance.now() - start;
    }).sort((p, q) => p - q);
    expect(times[0]).toBeLessThan(100);
  });

  it('judges frames of any size', () => {
    for (const [width, height] of [
      [1, 1],
      [33, 500],
      [1280, 960],
    ] as const) {
      const data = new Uint8ClampedArray(width * height * 4).fill(90);
      expect(judgeFrame({ width, height, data }).hint).toBe('no-leaf');
    }
  });
});
