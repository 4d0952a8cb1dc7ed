/** Luminance and chrominance tables of the JPEG standard (ITU-T T.81, Annex K). */
const LUMA = [
  16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22,
  29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, 49, 64, 78, 87, 103,
  121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99,
];
const CHROMA = [
  17, 18, 24, 47, 99, 99, 99, 99, 18, 21, 26, 66, 99, 99, 99, 99, 24, 26, 56, 99, 99, 99, 99, 99, 47, 66, 99,
  99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99,
  99, 99, 99, 99, 99, 99, 99, 99, 99, 99,
];

const COSINE = Float32Array.from({ length: 64 }, (_, k) => {
  const n = k & 7;
  const f = k >> 3;
  return (f === 0 ? Math.SQRT1_2 : 1) * 0.5 * Math.cos(((2 * n + 1) * f * Math.PI) / 16);
});

/** What JPEG at this quality (libjpeg's scale) takes away: quantised cosines of 8 × 8 blocks, colour at half the size. */
export function squeezeAsJpeg(rgb: Uint8ClampedArray, width: number, height: number, quality: number): void {
  const scale = quality < 50 ? 50 / quality : 2 - quality / 50;
  const halfWidth = Math.ceil(width / 2);
  const halfHeight = Math.ceil(height / 2);
  const luma = new Float32Array(width * height);
  const cb = new Float32Array(halfWidth * halfHeight);
  const cr = new Float32Array(halfWidth * halfHeight);
  const share = new Float32Array(halfWidth * halfHeight);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const r = rgb[3 * i]!;
      const g = rgb[3 * i + 1]!;
      const b = rgb[3 * i + 2]!;
      const one = 0.299 * r + 0.587 * g + 0.114 * b;
      luma[i] = one - 128;
      const k = (y >> 1) * halfWidth + (x >> 1);
      cb[k]! += (b - one) * 0.564;
      cr[k]! += (r - one) * 0.713;
      share[k]!++;
    }
  }
  for (let k = 0; k < share.length; k++) {
    cb[k]! /= share[k]!;
    cr[k]! /= share[k]!;
  }
  quantise(luma, width, height, LUMA, scale);
  quantise(cb, halfWidth, halfHeight, CHROMA, scale);
  quantise(cr, halfWidth, halfHeight, CHROMA, scale);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const k = (y >> 1) * halfWidth + (x >> 1);
      const one = luma[i]! + 128;
      rgb[3 * i] = one + cr[k]! / 0.713;
      rgb[3 * i + 1] = one - 0.344 * cb[k]! - 0.714 * cr[k]!;
      rgb[3 * i + 2] = one + cb[k]! / 0.564;
    }
  }
}

function quantise(
  plane: Float32Array,
  width: number,
  height: number,
  table: readonly number[],
  scale: number,
): void {
  const steps = Float32Array.from(table, (step) => Math.max(1, Math.min(255, step * scale)));
  const block = new Float32Array(64);
  const half = new Float32Array(64);
  for (let by = 0; by < height; by += 8) {
    for (let bx = 0; bx < width; bx += 8) {
      for (let k = 0; k < 64; k++) {
        const x = Math.min(width - 1, bx + (k & 7));
        const y = Math.min(height - 1, by + (k >> 3));
        block[k] = plane[y * width + x]!;
      }
      for (let row = 0; row < 8; row++) {
        for (let f = 0; f < 8; f++) {
          let sum = 0;
          for (let n = 0; n < 8; n++) sum += block[row * 8 + n]! * COSINE[f * 8 + n]!;
          half[row * 8 + f] = sum;
        }
      }
      for (let f = 0; f < 8; f++) {
        for (let column = 0; column < 8; column++) {
          let sum = 0;
          for (let n = 0; n < 8; n++) sum += half[n * 8 + column]! * COSINE[f * 8 + n]!;
          const step = steps[f * 8 + column]!;
          block[f * 8 + column] = Math.round(sum / step) * step;
        }
      }
      for (let n = 0; n < 8; n++) {
        for (let column = 0; column < 8; column++) {
          let sum = 0;
          for (let f = 0; f < 8; f++) sum += block[f * 8 + column]! * COSINE[f * 8 + n]!;
          half[n * 8 + column] = sum;
        }
      }
      for (let row = 0; row < 8 && by + row < height; row++) {
        for (let n = 0; n < 8 && bx + n < width; n++) {
          let sum = 0;
          for (let f = 0; f < 8; f++) sum += half[row * 8 + f]! * COSINE[f * 8 + n]!;
          plane[(by + row) * width + bx + n] = sum;
        }
      }
    }
  }
}
