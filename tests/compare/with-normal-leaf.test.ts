import Color from 'colorjs.io';
import { describe, expect, it } from 'vitest';
import { colourApart, meanColourOf } from '../../src/compare/with-normal-leaf.ts';
import { seededNormals } from '../seeded-normals.ts';

type Triple = readonly [number, number, number];

const leaf = ([l, c, h]: Triple, se = 0) => ({
  lightness: { value: l, se },
  chroma: { value: c, se },
  hue: { value: h, se },
});

describe('a leaf beside a normal one of its variety', () => {
  it('differs as a colour library says (colorjs.io, CIEDE2000)', () => {
    for (const [a, b] of [
      [
        [45, 35, 138],
        [60, 50, 110],
      ],
      [
        [50, 30, 140],
        [52, 31, 137],
      ],
      [
        [70, 60, 95],
        [45, 35, 140],
      ],
    ] as const) {
      const library = new Color('lch', [...a]).deltaE(new Color('lch', [...b]), '2000');
      expect(colourApart(leaf(a), leaf(b))!.value).toBeCloseTo(library, 6);
    }
  });

  it('carries the errors: drawn colours lie within the stated error about two times in three', () => {
    const normal = seededNormals(11);
    const a = [60, 50, 108] as const;
    const b = [45, 35, 138] as const;
    const { value, se } = colourApart(leaf(a, 1.5), leaf(b, 1.5))!;
    const noisy = ([l, c, h]: Triple) =>
      leaf([l + 1.5 * normal(), c + 1.5 * normal(), h + 1.5 * normal()], 1.5);
    const draws = 2000;
    let within = 0;
    for (let i = 0; i < draws; i++)
      if (Math.abs(colourApart(noisy(a), noisy(b))!.value - value) < se) within++;
    // 68 in 100 for a normal error; four binomial standard errors over 2,000 draws are 4 in 100.
    expect(within / draws).toBeGreaterThan(0.64);
    expect(within / draws).toBeLessThan(0.74);
  });

  it('holds against the mean of several, whose error shrinks with their number and grows with how far they differ', () => {
    const alike = meanColourOf([leaf([50, 30, 140], 2), leaf([50, 30, 140], 2)]);
    expect(alike.hue!.se).toBeCloseTo(2 / Math.SQRT2, 9);
    const apart = meanColourOf([leaf([50, 30, 130], 2), leaf([50, 30, 150], 2)]);
    expect(apart.hue!.value).toBe(140);
    // Two draws 20 apart: sample deviation 14.1, over the root of two.
    expect(apart.hue!.se).toBeCloseTo(10, 9);
    expect(meanColourOf([])).toEqual({});
  });

  it('says nothing where one leaf has no colour', () => {
    expect(colourApart({}, leaf([50, 30, 140]))).toBeUndefined();
  });
});
