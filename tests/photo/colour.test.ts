import { readFileSync } from 'node:fs';
import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convertPixelsToLab } from '../../src/photo/convert-pixels-to-lab.ts';
import { convertSrgbToHsv } from '../../src/photo/convert-srgb-to-hsv.ts';
import { convertSrgbToLab } from '../../src/photo/convert-srgb-to-lab.ts';
import { convertLinearToSrgb, convertSrgbToLinear } from '../../src/photo/convert-srgb-to-linear.ts';
import { measureColourDifference } from '../../src/photo/measure-colour-difference.ts';
import { measureDarkGreen } from '../../src/photo/measure-dark-green.ts';
import { measureHue } from '../../src/photo/measure-hue.ts';

type Triple = [number, number, number];
const byte = fc.integer({ min: 0, max: 255 });
const colour = fc.tuple(byte, byte, byte);
const onePixel = (rgb: Triple) => ({ width: 1, height: 1, data: Uint8ClampedArray.from([...rgb, 255]) });

describe('hue', () => {
  it('is the angle in the plane of a* and b*', () => {
    const part = fc.double({ min: -120, max: 120, noNaN: true });
    fc.assert(
      fc.property(part, part, (a, b) => {
        const off = Math.abs(measureHue(a, b) - (Math.atan2(b, a) * 180) / Math.PI);
        // Just below and just above the negative half of a* are the same hue.
        expect(Math.min(off, 360 - off)).toBeLessThan(0.0007);
      }),
      { numRuns: 2000, seed: 5 },
    );
  });
});

describe('sRGB and CIELAB', () => {
  // Source: trade-facts J8 (IEC 61966-2-1 [IEC-SRGB]; arithmetic checked there).
  it.each([
    [
      [255, 0, 0],
      [53.23, 80.11, 67.22],
    ],
    [
      [60, 100, 50],
      [38.39, -24.87, 23.92],
    ],
    [
      [180, 190, 60],
      [74.1, -19.84, 61.32],
    ],
  ] as [Triple, Triple][])('%j is CIELAB %j', (rgb, lab) => {
    for (const [i, v] of convertSrgbToLab(...rgb).entries())
      expect(Math.abs(v - lab[i]!)).toBeLessThan(0.015);
  });

  it('puts the middle grey where the standard does', () => {
    expect(convertSrgbToLinear(128 / 255)).toBeCloseTo(0.21586, 5);
    expect(convertSrgbToLab(128, 128, 128)[0]).toBeCloseTo(53.585, 3);
  });

  it('goes to linear light and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (v) => {
        expect(convertLinearToSrgb(convertSrgbToLinear(v))).toBeCloseTo(v, 5);
      }),
    );
  });

  // Source: colorjs.io 0.7.1, space lab-d65. It carries the primaries to more digits than the standard prints, hence 0.05.
  it('agrees with a general-purpose colour library', () => {
    fc.assert(
      fc.property(colour, (rgb) => {
        const theirs = new Color('srgb', rgb.map((v) => v / 255) as Triple).to('lab-d65').coords;
        for (const [i, v] of convertSrgbToLab(...rgb).entries()) {
          expect(Math.abs(v - (theirs[i] ?? 0))).toBeLessThan(0.05);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('reads whole pictures through tables as it reads single colours', () => {
    fc.assert(
      fc.property(colour, (rgb) => {
        const { L, a, b } = convertPixelsToLab(onePixel(rgb));
        const exact = convertSrgbToLab(...rgb);
        for (const [i, v] of [L[0]!, a[0]!, b[0]!].entries())
          expect(Math.abs(v - exact[i]!)).toBeLessThan(0.06);
      }),
      { numRuns: 500 },
    );
  });
});

describe('CIEDE2000', () => {
  // Source: Sharma, Wu and Dalal 2005 [SHARMA-2005], pairs as in trade-facts J9.
  const pairs: [Triple, Triple, number][] = [
    [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
    [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
    [[50, 0, 0], [50, -1, 2], 2.3669],
    [[50, 2.49, -0.001], [50, -2.49, 0.001], 7.1792],
    [[50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
    [[50, -0.001, 2.49], [50, 0.001, -2.49], 4.8045],
    [[50, -0.001, 2.49], [50, 0.0011, -2.49], 4.7461],
    [[50, 2.5, 0], [73, 25, -18], 27.1492],
    [[50, 2.5, 0], [61, -5, 29], 22.8977],
    [[50, 2.5, 0], [56, -27, -3], 31.903],
    [[50, 2.5, 0], [58, 24, 15], 19.4535],
    [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
    [[35.0831, -44.1164, 3.7933], [35.0232, -40.0716, 1.5901], 1.8645],
    [[22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
    [[90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381],
    [[6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377],
    [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
  ];
  it.each(pairs)('%j against %j is %d, both ways', (first, second, expected) => {
    expect(Math.abs(measureColourDifference(first, second) - expected)).toBeLessThan(6e-5);
    expect(measureColourDifference(second, first)).toBeCloseTo(measureColourDifference(first, second), 12);
  });

  it('tells two leaf greens apart by 24.4367 (trade-facts J9)', () => {
    const difference = measureColourDifference(convertSrgbToLab(60, 100, 50), convertSrgbToLab(120, 160, 60));
    expect(difference).toBeCloseTo(24.4367, 2);
  });

  // Source: colorjs.io 0.7.1, deltaE2000.
  it('agrees with a general-purpose colour library', () => {
    const inSteps = (most: number) => (n: number) => (n * most) / 10_000;
    const part = fc.integer({ min: -10_000, max: 10_000 }).map(inSteps(80));
    const lab = fc.tuple(fc.nat(10_000).map(inSteps(100)), part, part);
    fc.assert(
      fc.property(lab, lab, (first, second) => {
        // Between opposite hues the formula jumps, and the last digit decides on which side a pair lies (SHARMA-2005); the
        // library takes what has hardly any chroma for neutral.
        const across = first[1] * second[2] - first[2] * second[1];
        const [one, other] = [Math.hypot(first[1], first[2]), Math.hypot(second[1], second[2])];
        fc.pre(Math.min(one, other) > 0.05 && Math.abs(across) > 1e-6 * one * other);
        // The library compares in CIELAB as given to it under D50; the formula itself knows no white.
        const theirs = Color.deltaE(new Color('lab', first), new Color('lab', second), '2000');
        expect(measureColourDifference(first, second)).toBeCloseTo(theirs, 5);
      }),
      { numRuns: 200 },
    );
  });
});

describe('dark green colour index', () => {
  // Source: trade-facts J1 (Karcher and Richardson 2003 [KARCHER-2003]; arithmetic there).
  it.each([
    [[60, 100, 50], 0.6359],
    [[120, 160, 60], 0.3825],
    [[180, 190, 60], 0.2159],
    [[34, 139, 34], 0.5665],
    [[255, 255, 0], 0],
    [[0, 255, 0], 0.3333],
  ] as [Triple, number][])('%j has %d', (rgb, index) => {
    expect(measureDarkGreen(...rgb)).toBeCloseTo(index, 4);
  });

  // Trap of trade-facts J2: without a guard grey scores 0.166 and reddish yellow is pushed below its neighbours.
  it('has no value for grey and holds hues outside 60–120 at the nearer end', () => {
    expect(measureDarkGreen(128, 128, 128)).toBeUndefined();
    const [hue, saturation, brightness] = convertSrgbToHsv(200, 180, 40);
    expect(hue).toBeCloseTo(52.5, 6);
    expect(measureDarkGreen(200, 180, 40)).toBeCloseTo((1 - saturation + 1 - brightness) / 3, 12);
  });
});

// Source: scikit-image 0.26.0 (`references/make-references.py`); its primaries carry more digits than the standard prints.
describe('colours beside a general image library', () => {
  const answer = JSON.parse(
    readFileSync(new URL('references/colours.json', import.meta.url), 'utf8'),
  ) as Record<'colours' | 'lab' | 'hsv', Triple[]> & { ciede2000: number[] };

  it('reads CIELAB, one by one and by tables', () => {
    for (const [k, rgb] of answer.colours.entries()) {
      const { L, a, b } = convertPixelsToLab(onePixel(rgb));
      const exact = convertSrgbToLab(...rgb);
      for (const [i, theirs] of answer.lab[k]!.entries()) {
        expect(Math.abs(exact[i]! - theirs)).toBeLessThan(0.05);
        expect(Math.abs([L[0]!, a[0]!, b[0]!][i]! - theirs)).toBeLessThan(0.06);
      }
    }
  });

  it('reads hue, saturation and brightness', () => {
    for (const [k, rgb] of answer.colours.entries()) {
      const [hue, saturation, brightness] = convertSrgbToHsv(...rgb);
      const [theirHue, theirSaturation, theirBrightness] = answer.hsv[k]!;
      expect(hue).toBeCloseTo(theirHue, 2);
      expect(saturation).toBeCloseTo(theirSaturation, 4);
      expect(brightness).toBeCloseTo(theirBrightness, 4);
    }
  });

  it('tells colours apart by as much', () => {
    const half = answer.ciede2000.length;
    for (const [k, theirs] of answer.ciede2000.entries()) {
      expect(measureColourDifference(answer.lab[k]!, answer.lab[k + half]!)).toBeCloseTo(theirs, 3);
    }
  });
});
