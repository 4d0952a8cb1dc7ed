import type { Pixels } from '../../src/photo/types.ts';

/** Box blurs of `size` px each way, one after another. */
export function blurPicture(pixels: Pixels, size: number, passes: number): Pixels {
  const half = size >> 1;
  let data = pixels.data;
  for (let pass = 0; pass < passes; pass++) {
    for (const [dx, dy] of [
      [1, 0],
      [0, 1],
    ] as const) {
      const next = new Uint8ClampedArray(data.length);
      for (let y = 0; y < pixels.height; y++) {
        for (let x = 0; x < pixels.width; x++) {
          for (let c = 0; c < 4; c++) {
            let sum = 0;
            for (let k = -half; k <= half; k++) {
              const sx = Math.max(0, Math.min(pixels.width - 1, x + k * dx));
              const sy = Math.max(0, Math.min(pixels.height - 1, y + k * dy));
              sum += data[(sy * pixels.width + sx) * 4 + c]!;
            }
            next[(y * pixels.width + x) * 4 + c] = sum / (2 * half + 1);
          }
        }
      }
      data = next;
    }
  }
  return { ...pixels, data };
}
