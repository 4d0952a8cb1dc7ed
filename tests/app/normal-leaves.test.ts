import Color from 'colorjs.io';
import { describe, expect, it } from 'vitest';
import { cssColourOf } from '../../src/app/places/Ground/NormalLeaves/leaf-swatch.tsx';
import { sayApart } from '../../src/app/words/say-apart.ts';

describe('the patch of a leaf’s colour', () => {
  it('is the colour that was measured (colorjs.io, CIELAB under D65)', () => {
    for (const [l, c, h] of [
      [45, 35, 138],
      [76, 64, 102],
      [3, 2, 120],
    ] as const) {
      const css = cssColourOf({
        lightness: { value: l, se: 1 },
        chroma: { value: c, se: 1 },
        hue: { value: h, se: 1 },
      })!;
      const angle = (h * Math.PI) / 180;
      const wanted = new Color('lab-d65', [l, c * Math.cos(angle), c * Math.sin(angle)]);
      expect(new Color(css).deltaE(wanted, '2000')).toBeLessThan(0.05);
    }
    expect(cssColourOf({ hue: { value: 120, se: 1 } })).toBeUndefined();
  });
});

describe('how far a leaf lies from a healthy one, in words', () => {
  it('carries its doubt, and is no clear difference where it could be none', () => {
    expect(sayApart({ value: 14.2, se: 2 }, 1)).toContain('by 14 points, give or take 3');
    expect(sayApart({ value: 14.2, se: 2 }, 3)).toContain('3 healthy leaves');
    expect(sayApart({ value: 2, se: 2 }, 1)).toMatch(/^No clear difference .* 2 points, give or take 3/);
  });
});
