import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CROP_SIDE_PX, cutCrop } from '../../src/classifier/cut-crop.ts';

/** A frame of one colour with a leaf of another: a rectangle. */
function frameWith(width: number, height: number, box: readonly [number, number, number, number]) {
  const data = new Uint8ClampedArray(4 * width * height);
  const outline = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const inside = x >= box[0] && y >= box[1] && x < box[2] && y < box[3];
      data.set(inside ? [40, 160, 60, 255] : [200, 180, 150, 255], 4 * (y * width + x));
      if (inside) outline[y * width + x] = 255;
    }
  }
  return { frame: { width, height, data }, outline };
}

describe('cutting the leaf out', () => {
  it('fills the square but for its rim, with the leaf in the middle', () => {
    const { frame, outline } = frameWith(400, 300, [100, 80, 260, 240]);
    const crop = cutCrop(frame, outline)!;
    expect(crop.side).toBe(CROP_SIDE_PX);
    const share = crop.mask.reduce((sum, value) => sum + value, 0) / 255 / crop.mask.length;
    expect(share).toBeCloseTo(1 / 1.15 ** 2, 2);
    const middle = (CROP_SIDE_PX / 2) * CROP_SIDE_PX + CROP_SIDE_PX / 2;
    expect([...crop.rgb.slice(3 * middle, 3 * middle + 3)]).toEqual([40, 160, 60]);
    expect(crop.mask[middle]).toBe(255);
    expect([...crop.rgb.slice(0, 3)]).toEqual([200, 180, 150]);
  });

  it('lays grey where the square leaves the frame', () => {
    const { frame, outline } = frameWith(200, 100, [0, 0, 200, 100]);
    const crop = cutCrop(frame, outline)!;
    expect([...crop.rgb.slice(0, 3)]).toEqual([128, 128, 128]);
    expect(crop.mask[0]).toBe(0);
  });

  it('cuts a mirrored frame to the mirrored crop', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 }));
    fc.assert(
      fc.property(place, fc.integer({ min: 5, max: 40 }), ([x, y], size) => {
        const box = [x, y, x + size, y + size + 3] as const;
        const plain = frameWith(70, 66, box);
        const mirrored = frameWith(70, 66, [70 - box[2], box[1], 70 - box[0], box[3]]);
        const a = cutCrop(plain.frame, plain.outline, 32)!;
        const b = cutCrop(mirrored.frame, mirrored.outline, 32)!;
        for (let i = 0; i < a.mask.length; i++) {
          const j = 32 * Math.floor(i / 32) + 31 - (i % 32);
          expect(Math.abs(a.mask[i]! - b.mask[j]!)).toBeLessThanOrEqual(1);
        }
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('has nothing to cut without an outline', () => {
    const { frame } = frameWith(40, 40, [0, 0, 4, 4]);
    expect(cutCrop(frame, new Uint8Array(1600))).toBeUndefined();
  });
});
