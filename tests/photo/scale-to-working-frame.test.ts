import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  createBoxScaler,
  scaleByBoxes,
  scaleToWorkingFrame,
} from '../../src/photo/scale-to-working-frame.ts';

describe('box scaling', () => {
  it('leaves small pictures alone and bounds the longest side of large ones', () => {
    const small = { width: 40, height: 30, data: new Uint8ClampedArray(40 * 30 * 4) };
    expect(scaleToWorkingFrame(small)).toBe(small);
    const large = { width: 3000, height: 2000, data: new Uint8ClampedArray(3000 * 2000 * 4).fill(90) };
    const frame = scaleToWorkingFrame(large);
    expect([frame.width, frame.height]).toEqual([1024, 683]);
    expect(frame.data[12345 * 4]).toBe(90);
  });

  // Worked by hand: 3 pixels into 2 boxes of 1.5 pixels: (2·0 + 90)/3 and (90 + 2·180)/3.
  it('counts cut pixels by the part inside', () => {
    const row = Uint8ClampedArray.from([0, 0, 0, 255, 90, 90, 90, 255, 180, 180, 180, 255]);
    const { data } = scaleByBoxes({ width: 3, height: 1, data: row }, 2, 1);
    expect([data[0], data[4]]).toEqual([30, 150]);
  });

  it('gives the same picture band by band as in one', () => {
    const data = Uint8ClampedArray.from(
      { length: 97 * 83 * 4 },
      (_, i) => Math.imul(i, 2_654_435_761) >>> 24,
    );
    const whole = scaleByBoxes({ width: 97, height: 83, data }, 41, 30);
    const scaler = createBoxScaler({ width: 97, height: 83 }, { width: 41, height: 30 });
    for (let from = 0; from < 30; from += 7) {
      const to = Math.min(30, from + 7);
      const rows = scaler.rowsFor(from, to);
      scaler.scaleBand(data.slice(rows.from * 97 * 4, rows.to * 97 * 4), rows.from, from, to);
    }
    expect(scaler.data).toEqual(whole.data);
  });

  // Worked in floating point by the definition; parts of rows are whole steps, so a level may be off by one.
  it('averages boxes of any size', () => {
    const width = 120;
    const height = 50;
    const data = Uint8ClampedArray.from(
      { length: width * height * 4 },
      (_, i) => Math.imul(i, 2_654_435_761) >>> 24,
    );
    for (const [w, h] of [
      [119, 49],
      [31, 9],
      [1, 1],
    ] as const) {
      const scaled = scaleByBoxes({ width, height, data }, w, h).data;
      for (let y = 0; y < h; y++) {
        for (let x = 0; x < w; x++) {
          let sum = 0;
          let part = 0;
          for (let sy = 0; sy < height; sy++) {
            const down = Math.min(((y + 1) * height) / h, sy + 1) - Math.max((y * height) / h, sy);
            if (down <= 0) continue;
            for (let sx = 0; sx < width; sx++) {
              const across = Math.min(((x + 1) * width) / w, sx + 1) - Math.max((x * width) / w, sx);
              if (across <= 0) continue;
              sum += down * across * data[(sy * width + sx) * 4 + 1]!;
              part += down * across;
            }
          }
          expect(Math.abs(scaled[(y * w + x) * 4 + 1]! - sum / part)).toBeLessThan(1.6);
        }
      }
    }
  });

  it('keeps the mean of any picture', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 50 }),
        fc.integer({ min: 8, max: 50 }),
        fc.integer({ min: 2, max: 8 }),
        fc.integer({ min: 2, max: 8 }),
        fc.integer(),
        (width, height, w, h, seed) => {
          const data = new Uint8ClampedArray(width * height * 4);
          let state = seed;
          for (let i = 0; i < data.length; i++) {
            state = (Math.imul(state, 1103515245) + 12345) | 0;
            data[i] = (state >>> 16) & 255;
          }
          const mean = (d: Uint8ClampedArray): number => {
            let sum = 0;
            for (let i = 0; i < d.length; i += 4) sum += d[i]!;
            return (sum * 4) / d.length;
          };
          const scaled = scaleByBoxes({ width, height, data }, w, h);
          expect(Math.abs(mean(scaled.data) - mean(data))).toBeLessThan(0.5);
        },
      ),
      { numRuns: 60 },
    );
  });
});
