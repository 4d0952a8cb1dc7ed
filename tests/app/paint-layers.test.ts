import { describe, expect, it } from 'vitest';
import { layerUnder, paintLayers } from '../../src/app/parts/Specimen/paint-layers.ts';
import { type View, WHOLE } from '../../src/app/parts/Specimen/zoom-view.ts';
import { LAYERS, type LayerId, layLayers } from '../../src/app/workers/lay-layers.ts';
import { TISSUES, type Tissue } from '../../src/leaf/types.ts';

const SIZE = 128;
const index = (tissue: Tissue): number => TISSUES.indexOf(tissue);
const filledWith = (tissue: Tissue) => ({
  width: SIZE,
  height: SIZE,
  data: new Uint8Array(SIZE * SIZE).fill(index(tissue)),
});

interface How {
  readonly shown?: readonly LayerId[];
  readonly picked?: readonly LayerId[];
  readonly view?: View;
}

const paint = (map: ReturnType<typeof layLayers>, { shown = LAYERS, picked = [], view = WHOLE }: How = {}) =>
  paintLayers(map, { width: SIZE, height: SIZE, view, cell: 7, shown: new Set(shown), picked });

/** Which pixels are painted, as a string to compare patterns by. */
const patternOf = (data: Uint8ClampedArray): string =>
  Array.from({ length: SIZE * SIZE }, (_, i) => ((data[i * 4 + 3] ?? 0) > 0 ? '#' : '.')).join('');
const pattern = (tissue: Tissue): string => patternOf(paint(layLayers(filledWith(tissue))));
const share = (tissue: Tissue): number =>
  [...pattern(tissue)].filter((at) => at === '#').length / (SIZE * SIZE);

/** A healthy square on bare ground, with a square of something else in it from `from` to `to`. */
function leafWith(tissue: Tissue, from: readonly [number, number], to: readonly [number, number]) {
  const map = filledWith('outside');
  for (let y = 10; y < 118; y++) map.data.fill(index('healthy'), y * SIZE + 10, y * SIZE + 118);
  for (let y = from[1]; y < to[1]; y++) map.data.fill(index(tissue), y * SIZE + from[0], y * SIZE + to[0]);
  return layLayers(map);
}

describe('what is drawn over a photo', () => {
  it('leaves what is outside and what is healthy bare', () => {
    expect(share('outside')).toBe(0);
    expect(share('healthy')).toBe(0);
  });

  it('tells every layer by its pattern, not only by its colour', () => {
    const kinds: Tissue[] = ['vein', 'chlorotic', 'necrotic', 'purple', 'white', 'missing'];
    expect(new Set(kinds.map(pattern)).size).toBe(kinds.length);
    const hole = patternOf(paint(leafWith('missing', [40, 40], [80, 80])));
    const bite = patternOf(paint(leafWith('missing', [10, 40], [50, 80])));
    const inside = (painted: string, left: number): string =>
      Array.from({ length: 10 }, (_, y) =>
        painted.slice((55 + y) * SIZE + left, (55 + y) * SIZE + left + 10),
      ).join('');
    expect(inside(hole, 55)).not.toContain('#');
    expect(inside(bite, 25)).toContain('#');
  });

  it('never hides the leaf: less than six tenths of a patch is painted', () => {
    for (const kind of ['chlorotic', 'necrotic', 'purple', 'white', 'missing'] as const) {
      expect(share(kind), kind).toBeGreaterThan(0.02);
      expect(share(kind), kind).toBeLessThan(0.6);
    }
  });

  it('shows a dead spot that is smaller than the space between two lines', () => {
    for (let at = 20; at < 60; at += 1) {
      const painted = paint(leafWith('necrotic', [at, at], [at + 3, at + 3]));
      expect(painted.some((byte) => byte > 0)).toBe(true);
    }
  });

  it('shows only the layers that are switched on', () => {
    const map = leafWith('chlorotic', [40, 40], [80, 80]);
    expect(patternOf(paint(map, { shown: ['yellow'] }))).toContain('#');
    expect(patternOf(paint(map, { shown: LAYERS.filter((id) => id !== 'yellow') }))).not.toContain('#');
  });

  it('rings a picked layer and makes the others pale', () => {
    const map = leafWith('chlorotic', [40, 40], [80, 80]);
    const strongest = (data: Uint8ClampedArray): number =>
      data.reduce((most, byte, i) => (i % 4 === 3 ? Math.max(most, byte) : most), 0);
    expect(strongest(paint(map, { picked: ['dead'] }))).toBeLessThan(0.4 * strongest(paint(map)));
    const ringed = paint(map, { picked: ['yellow'] });
    for (let x = 40; x < 80; x++) expect(ringed[4 * (40 * SIZE + x) + 3]).toBeGreaterThan(200);
  });

  it('keeps the size of its strokes when the photo is enlarged, and draws no rim at the end of the window', () => {
    const map = leafWith('missing', [10, 10], [118, 118]);
    const middle = patternOf(
      paint(leafWith('chlorotic', [10, 10], [118, 118]), { view: { zoom: 4, left: 0.3, top: 0.3 } }),
    );
    const all = patternOf(paint(leafWith('chlorotic', [0, 0], [128, 128])));
    const part = (of: string): number => [...of].filter((at) => at === '#').length / of.length;
    expect(Math.abs(part(middle) - part(all))).toBeLessThan(0.03);
    expect(map.found.edge).toBeDefined();
    const hole = paint(leafWith('missing', [20, 20], [108, 108]), { view: { zoom: 4, left: 0.3, top: 0.3 } });
    expect(patternOf(hole)).not.toContain('#');
  });
});

describe('layers of a leaf', () => {
  it('parts holes from lost edge', () => {
    expect(Object.keys(leafWith('missing', [40, 40], [80, 80]).found)).toEqual(['holes']);
    expect(Object.keys(leafWith('missing', [10, 40], [50, 80]).found)).toEqual(['edge']);
  });

  it('knows a hole also when points between it and its rim count for neither', () => {
    const map = filledWith('outside');
    const fill = (tissue: Tissue, from: number, to: number): void => {
      for (let y = from; y < to; y++) map.data.fill(index(tissue), y * SIZE + from, y * SIZE + to);
    };
    fill('healthy', 10, 118);
    fill('outside', 40, 80);
    fill('missing', 42, 78);
    expect(Object.keys(layLayers(map).found)).toEqual(['holes']);
  });

  it('says where most of a layer lies, by thirds of the leaf', () => {
    expect(leafWith('chlorotic', [12, 12], [40, 40]).found.yellow).toBe('top-left');
    expect(leafWith('chlorotic', [90, 12], [118, 118]).found.yellow).toBe('right');
    expect(leafWith('chlorotic', [55, 55], [75, 75]).found.yellow).toBe('middle');
    expect(leafWith('chlorotic', [10, 10], [118, 118]).found.yellow).toBe('over');
  });

  it('finds what lies under a spot', () => {
    const map = leafWith('necrotic', [60, 60], [70, 70]);
    expect(layerUnder(map, { x: 0.5, y: 0.5 })).toBe('dead');
    expect(layerUnder(map, { x: 0.2, y: 0.2 })).toBeUndefined();
    expect(layerUnder(map, { x: 1, y: 1 })).toBeUndefined();
  });
});
