import { describe, expect, it } from 'vitest';
import { paintOverlay } from '../../src/app/workers/paint-overlay.ts';
import { TISSUES, type Tissue } from '../../src/leaf/types.ts';

const SIZE = 128;
const filledWith = (tissue: Tissue) =>
  paintOverlay({
    width: SIZE,
    height: SIZE,
    data: new Uint8Array(SIZE * SIZE).fill(TISSUES.indexOf(tissue)),
  });

/** Which pixels are painted, as a string to compare patterns by. */
const pattern = (tissue: Tissue): string => {
  const { data } = filledWith(tissue);
  return Array.from({ length: SIZE * SIZE }, (_, i) => ((data[i * 4 + 3] ?? 0) > 0 ? '#' : '.')).join('');
};
const share = (tissue: Tissue): number =>
  [...pattern(tissue)].filter((at) => at === '#').length / (SIZE * SIZE);

describe('the hatching over a photo', () => {
  it('leaves what is outside and what is healthy bare', () => {
    expect(share('outside')).toBe(0);
    expect(share('healthy')).toBe(0);
  });

  it('tells every kind of tissue by its pattern, not only by its colour', () => {
    const kinds: Tissue[] = ['chlorotic', 'necrotic', 'purple', 'white'];
    expect(new Set(kinds.map(pattern)).size).toBe(kinds.length);
  });

  it('never hides the leaf: less than half of a patch is painted', () => {
    for (const kind of ['chlorotic', 'necrotic', 'purple', 'white', 'missing'] as const) {
      expect(share(kind), kind).toBeGreaterThan(0.02);
      expect(share(kind), kind).toBeLessThan(0.55);
    }
  });

  it('shows a dead spot that is smaller than the space between two lines', () => {
    for (let at = 20; at < 60; at += 1) {
      const data = new Uint8Array(SIZE * SIZE).fill(TISSUES.indexOf('healthy'));
      for (let y = at; y < at + 3; y += 1)
        data.fill(TISSUES.indexOf('necrotic'), y * SIZE + at, y * SIZE + at + 3);
      const painted = paintOverlay({ width: SIZE, height: SIZE, data });
      expect(painted.data.some((byte) => byte > 0)).toBe(true);
    }
  });

  it('outlines what is missing and leaves its middle open', () => {
    const { data } = filledWith('missing');
    const alphaAt = (x: number, y: number): number => data[(y * SIZE + x) * 4 + 3] ?? 0;
    expect(alphaAt(0, 40)).toBeGreaterThan(0);
    expect(alphaAt(SIZE / 2, SIZE / 2)).toBe(0);
  });
});
