import type { Pixels } from './types.ts';

/** Longest side of the working frame, px: enough for side veins, cheap enough for a phone. */
export const WORKING_SIDE_PX = 1024;

/**
 * Scales a picture down by averaging boxes, so that its longest side is at most `longestPx`; never up. Our own, not the
 * decoders' shrinking: resized decoding differs between a browser and sharp by up to 19 levels, this does not.
 * Pixels cut by a box edge count by the part inside. Averages are of coded values, as cameras themselves average.
 */
export function scaleToWorkingFrame(pixels: Pixels, longestPx: number = WORKING_SIDE_PX): Pixels {
  const longest = Math.max(pixels.width, pixels.height);
  if (longest <= longestPx) return pixels;
  const width = Math.max(1, Math.round((pixels.width * longestPx) / longest));
  const height = Math.max(1, Math.round((pixels.height * longestPx) / longest));
  return scaleByBoxes(pixels, width, height);
}

/** Averages boxes down to exactly `width` × `height`, neither larger than the picture. */
export function scaleByBoxes(pixels: Pixels, width: number, height: number): Pixels {
  const source = pixels.data;
  const rowBytes = pixels.width * 4;
  const out = new Uint8ClampedArray(width * height * 4);
  const row = new Float32Array(rowBytes);
  const stepX = pixels.width / width;
  const stepY = pixels.height / height;
  const share = 1 / (stepX * stepY);
  for (let y = 0; y < height; y++) {
    sumRows(source, rowBytes, pixels.height, y * stepY, (y + 1) * stepY, row);
    for (let x = 0, o = y * width * 4; x < width; x++, o += 4) {
      const left = x * stepX;
      const right = Math.min(pixels.width, left + stepX);
      const first = Math.floor(left);
      const last = Math.min(pixels.width - 1, Math.ceil(right) - 1);
      let r = 0;
      let g = 0;
      let b = 0;
      for (let k = first, i = first * 4; k <= last; k++, i += 4) {
        const part =
          k === first
            ? first + 1 - left - (k === last ? first + 1 - right : 0)
            : k === last
              ? right - last
              : 1;
        r += part * row[i]!;
        g += part * row[i + 1]!;
        b += part * row[i + 2]!;
      }
      out[o] = r * share;
      out[o + 1] = g * share;
      out[o + 2] = b * share;
      out[o + 3] = 255;
    }
  }
  return { width, height, data: out };
}

/** Weighted sum of the source rows between `top` and `bottom` into `row`. */
function sumRows(
  source: Uint8ClampedArray,
  rowBytes: number,
  rows: number,
  top: number,
  bottom: number,
  row: Float32Array,
): void {
  const first = Math.floor(top);
  const last = Math.min(rows - 1, Math.ceil(bottom - 1e-9) - 1);
  for (let y = first; y <= last; y++) {
    const part = Math.min(bottom, y + 1) - Math.max(top, y);
    const at = y * rowBytes;
    if (y === first) for (let i = 0; i < rowBytes; i++) row[i] = part * source[at + i]!;
    else if (part === 1) for (let i = 0; i < rowBytes; i++) row[i]! += source[at + i]!;
    else for (let i = 0; i < rowBytes; i++) row[i]! += part * source[at + i]!;
  }
}
