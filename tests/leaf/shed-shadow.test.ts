import { describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { findLeaf } from '../../src/leaf/find-leaf.ts';
import { overlapOfMasks } from '../../src/leaf/overlap-of-masks.ts';
import { shedShadow } from '../../src/leaf/shed-shadow.ts';
import { convertPixelsToLab } from '../../src/photo/convert-pixels-to-lab.ts';
import { convertLinearToSrgb, LINEAR_OF_BYTE } from '../../src/photo/convert-srgb-to-linear.ts';
import type { Pixels } from '../../src/photo/types.ts';

/** Paper beside the leaf under a shadow of the leaf's own shape, thrown `by` px down and to the right. */
function castShadow(pixels: Pixels, leaf: Uint8Array, by: number, light: number): Pixels {
  const { width, height } = pixels;
  const data = pixels.data.slice();
  for (let y = by; y < height; y++) {
    for (let x = by; x < width; x++) {
      const i = y * width + x;
      if (leaf[i] === 255 || leaf[i - by * (width + 1)] !== 255) continue;
      for (let c = 0; c < 3; c++) {
        const linear = LINEAR_OF_BYTE[data[i * 4 + c]!]!;
        data[i * 4 + c] = Math.round(255 * convertLinearToSrgb(light * linear));
      }
    }
  }
  return { width, height, data };
}

const both = (outline: Uint8Array, shade: Uint8Array): Uint8Array =>
  outline.map((v, i) => (v === 255 || shade[i] === 255 ? 255 : 0));

describe.each([
  ['green', {}],
  ['pale', { yellow: { where: 'all' as const } }],
  ['dark, in warm light', { green: [52, 74, 40] as const, light: [1, 0.85, 0.7] as const }],
])('a %s leaf on paper with its own shadow', (_, picture) => {
  const { pixels, truth } = drawLeaf({ background: 'paper', shape: 'lobed', ...picture });
  const { width, height } = pixels;
  const leaf = truth.whole.data;

  it('is outlined without the shadow, deep or light', () => {
    for (const light of [0.12, 0.3, 0.55]) {
      const shaded = castShadow(pixels, leaf, 22, light);
      const found = findLeaf(shaded, convertPixelsToLab(shaded), { leaf: { x: 0.5, y: 0.5 } });
      expect(overlapOfMasks(found!.outline, leaf)).toBeGreaterThan(0.96);
    }
  });

  it('sheds a shadow that was taken along, and keeps what the person said is leaf', () => {
    const shaded = castShadow(pixels, leaf, 22, 0.12);
    const lab = convertPixelsToLab(shaded);
    const thrown = leaf.map((_, i) => {
      const from = i - 22 * (width + 1);
      return from >= 0 && i % width >= 22 && leaf[from] === 255 ? 255 : 0;
    });
    const greedy = both(leaf, thrown);
    expect(overlapOfMasks(greedy, leaf)).toBeLessThan(0.9);
    expect(
      overlapOfMasks(
        shedShadow(lab, greedy, [], () => undefined),
        leaf,
      ),
    ).toBeGreaterThan(0.97);
    const sure = thrown.findIndex((v, i) => v === 255 && leaf[i] !== 255 && leaf[i - 8 * width] !== 255);
    expect(shedShadow(lab, greedy, [sure], () => undefined)[sure]).toBe(255);
    // Whoever can see better is believed: odds for leaf everywhere leave the outline as it is.
    const all = new Float32Array(width * height).fill(3);
    expect(shedShadow(lab, greedy, [], () => all)).toEqual(greedy);
  });
});

describe('what looks like shadow and is not', () => {
  it('keeps powder, purple and dead tissue at the rim of a leaf on paper', () => {
    for (const picture of [{ powder: true }, { purple: true }, { yellow: { where: 'edges' as const } }]) {
      const { pixels, truth } = drawLeaf({ background: 'paper', ...picture });
      const kept = shedShadow(convertPixelsToLab(pixels), truth.whole.data, [], () => undefined);
      expect(overlapOfMasks(kept, truth.whole.data)).toBeGreaterThan(0.985);
    }
  });

  it('does nothing over soil', () => {
    const { pixels, truth } = drawLeaf({ background: 'soil' });
    const outline = truth.whole.data;
    expect(shedShadow(convertPixelsToLab(pixels), outline, [], () => undefined)).toBe(outline);
  });
});
