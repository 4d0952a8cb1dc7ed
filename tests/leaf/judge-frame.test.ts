import { describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { judgeFrame } from '../../src/leaf/judge-frame.ts';
import { blurPicture } from '../pictures/blur-picture.ts';

const SIZE = { width: 480, height: 360 };

describe('a frame of the viewfinder', () => {
  const spotted = { ...SIZE, spots: { count: 20, radius: 0.012 } } as const;

  it('is ready when a leaf in focus fills it and something white tells the light', () => {
    expect(judgeFrame(drawLeaf({ ...spotted, label: true }).pixels).hint).toBe('ready');
    expect(judgeFrame(drawLeaf({ ...spotted, background: 'paper' }).pixels).hint).toBe('ready');
    // Paper that the camera has burnt out is there all the same.
    const { pixels, truth } = drawLeaf({ ...spotted, background: 'paper' });
    for (let i = 0; i < truth.whole.data.length; i++)
      if (truth.whole.data[i] === 0) pixels.data.set([255, 254, 250], 4 * i);
    expect(judgeFrame(pixels).hint).toBe('ready');
  });

  it('is content without it, and asks for a label', () => {
    expect(judgeFrame(drawLeaf(spotted).pixels).hint).toBe('lay-label');
    expect(judgeFrame(drawLeaf({ ...spotted, background: 'leaves' }).pixels).hint).toBe('lay-label');
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
    expect(judgeFrame(blurPicture(pixels, 9, 2)).hint).toBe('hold-still');
  });

  it('asks for shade when the leaf has lost its colour, though it is not white yet', () => {
    const bright = judgeFrame(drawLeaf({ ...spotted, light: [6, 6, 6] }).pixels);
    expect(bright.leafShare).toBeGreaterThan(0.15);
    expect(bright.hint).toBe('burnt-out');
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
