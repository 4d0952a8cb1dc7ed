import { describe, expect, it } from 'vitest';
import { blurInside, blurPlane } from '../../src/leaf/blur-inside.ts';

const width = 90;
const height = 70;

describe('blur', () => {
  it('spreads a point with the variance of the Gaussian it stands for', () => {
    for (const sigma of [1.5, 2.5, 3.5, 5]) {
      const plane = new Float32Array(width * height);
      plane[35 * width + 45] = 1;
      const blurred = blurPlane(plane, width, height, sigma);
      let sum = 0;
      let variance = 0;
      blurred.forEach((v, i) => {
        sum += v;
        variance += v * ((i % width) - 45) ** 2;
      });
      expect(sum).toBeCloseTo(1, 3);
      // Boxes have whole widths, so the variance comes in steps.
      expect(Math.abs(Math.sqrt(variance) - sigma)).toBeLessThan(0.5);
    }
  });

  it('leaves a constant alone up to the rim', () => {
    const plane = new Float32Array(width * height).fill(7);
    for (const sigma of [1, 4]) {
      for (const v of blurPlane(plane, width, height, sigma)) expect(v).toBeCloseTo(7, 4);
    }
  });

  it('takes nothing from outside the mask, however wide', () => {
    const plane = Float32Array.from({ length: width * height }, (_, i) => (i % width < 45 ? 3 : 1000));
    const mask = Uint8Array.from({ length: width * height }, (_, i) => (i % width < 45 ? 255 : 0));
    for (const sigma of [1, 3, 9]) {
      const blurred = blurInside(plane, mask, width, height, sigma);
      for (let i = 0; i < plane.length; i++) if (mask[i] === 255) expect(blurred[i]).toBeCloseTo(3, 3);
    }
  });
});
