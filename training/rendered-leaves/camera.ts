import type { Dice } from './dice.ts';
import { noiseAt } from './noise.ts';

/** Three planes of linear light in one row: r, g, b of each pixel. */
export interface LightImage {
  readonly width: number;
  readonly height: number;
  readonly rgb: Float32Array;
}

/** What the camera does to the light that reaches it. */
export interface Camera {
  /** Mean light of the leaf that exposure aims at, 1 = full white. */
  readonly exposure: number;
  /** Multipliers of linear r, g, b that its white balance leaves. */
  readonly gains: readonly [number, number, number];
  readonly contrast: number;
  readonly saturation: number;
  /** Blur and sharpening in px and share; noise as a share of full white. */
  readonly blur: number;
  readonly sharpen: number;
  readonly noise: number;
  readonly colourNoise: number;
  readonly vignette: number;
  /** JPEG quality, 0 = none. */
  readonly quality: number;
  readonly haze: number;
}

export function drawCamera(dice: Dice, sidePx: number): Camera {
  const strong = dice.chance(0.14);
  const warm = dice.normal(strong ? 0.22 : 0.08);
  const tint = dice.normal(strong ? 0.1 : 0.05);
  const perPx = sidePx / 224;
  return {
    exposure: dice.logBetween(0.085, 0.29),
    gains: [Math.exp(warm), Math.exp(tint), Math.exp(-warm)],
    contrast: dice.between(0, 0.55),
    saturation: dice.between(0.72, 1.4),
    blur: (dice.chance(0.2) ? dice.between(0.8, 1.9) : dice.between(0.1, 0.7)) * Math.sqrt(perPx),
    sharpen: dice.chance(0.6) ? dice.between(0.1, 0.9) : 0,
    noise: dice.logBetween(0.0015, 0.012),
    colourNoise: dice.logBetween(0.0006, 0.006),
    vignette: dice.chance(0.3) ? dice.between(0, 0.35) : 0,
    quality: dice.chance(0.2) ? 0 : dice.between(38, 96),
    haze: dice.chance(0.2) ? dice.between(0, 0.05) : 0,
  };
}

/** Gaussian blur of interleaved channels, cut at three sigmas, the rim repeated; wide ones by three running means (Wells 1986). */
export function blurChannels(
  values: Float32Array,
  width: number,
  height: number,
  channels: number,
  sigma: number,
): void {
  if (sigma < 0.15) return;
  if (sigma > 2.5) {
    const half = Math.max(1, Math.round((Math.sqrt(4 * sigma * sigma + 1) - 1) / 2));
    for (let k = 0; k < 3; k++) {
      meanAlongRows(values, width, height, channels, half);
      meanDownColumns(values, width * channels, height, half);
    }
    return;
  }
  const reach = Math.ceil(3 * sigma);
  const kernel = Float32Array.from({ length: reach + 1 }, (_, k) => Math.exp((-k * k) / (2 * sigma * sigma)));
  let total = kernel[0]!;
  for (let k = 1; k <= reach; k++) total += 2 * kernel[k]!;
  for (let k = 0; k <= reach; k++) kernel[k]! /= total;
  const row = width * channels;
  const pad = reach * channels;
  const line = new Float32Array(row + 2 * pad);
  for (let y = 0; y < height; y++) {
    const at = y * row;
    line.set(values.subarray(at, at + row), pad);
    for (let k = 0; k < pad; k++) {
      line[k] = values[at + (k % channels)]!;
      line[pad + row + k] = values[at + row - channels + (k % channels)]!;
    }
    for (let x = 0; x < row; x++) {
      let sum = kernel[0]! * line[pad + x]!;
      for (let r = 1, off = channels; r <= reach; r++, off += channels) {
        sum += kernel[r]! * (line[pad + x - off]! + line[pad + x + off]!);
      }
      values[at + x] = sum;
    }
  }
  const before = values.slice();
  for (let y = 0; y < height; y++) {
    const at = y * row;
    for (let x = 0; x < row; x++) values[at + x] = kernel[0]! * before[at + x]!;
    for (let r = 1; r <= reach; r++) {
      const up = Math.max(0, y - r) * row;
      const down = Math.min(height - 1, y + r) * row;
      const weight = kernel[r]!;
      for (let x = 0; x < row; x++) values[at + x]! += weight * (before[up + x]! + before[down + x]!);
    }
  }
}

function meanAlongRows(
  values: Float32Array,
  width: number,
  height: number,
  channels: number,
  half: number,
): void {
  const over = 1 / (2 * half + 1);
  const line = new Float32Array(width + 2 * half + 1);
  for (let y = 0; y < height; y++) {
    for (let c = 0; c < channels; c++) {
      const at = y * width * channels + c;
      for (let k = 0; k < line.length; k++) {
        line[k] = values[at + Math.min(width - 1, Math.max(0, k - half)) * channels]!;
      }
      let sum = 0;
      for (let k = 0; k < 2 * half + 1; k++) sum += line[k]!;
      for (let x = 0; x < width; x++) {
        values[at + x * channels] = sum * over;
        sum += line[x + 2 * half + 1]! - line[x]!;
      }
    }
  }
}

function meanDownColumns(values: Float32Array, row: number, height: number, half: number): void {
  const over = 1 / (2 * half + 1);
  const before = values.slice();
  const sum = new Float32Array(row);
  for (let k = -half; k <= half; k++) {
    const at = Math.min(height - 1, Math.max(0, k)) * row;
    for (let x = 0; x < row; x++) sum[x]! += before[at + x]!;
  }
  for (let y = 0; y < height; y++) {
    const leaves = Math.max(0, y - half) * row;
    const enters = Math.min(height - 1, y + half + 1) * row;
    for (let x = 0; x < row; x++) {
      values[y * row + x] = sum[x]! * over;
      sum[x]! += before[enters + x]! - before[leaves + x]!;
    }
  }
}

const CODED = Uint8Array.from({ length: 4097 }, (_, k) => {
  const v = k / 4096;
  return Math.round(255 * (v <= 0.0031308 ? v * 12.92 : 1.055 * v ** (1 / 2.4) - 0.055));
});

/** Light becomes an sRGB picture: lens, exposure, white balance, sensor, tone, compression. */
export function takePicture(
  { width, height, rgb }: LightImage,
  mask: Uint8Array,
  camera: Camera,
  dice: Dice,
): Uint8ClampedArray {
  const size = width * height;
  const gain = expose(rgb, mask, camera.exposure);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i += 3) {
      const dx = x / width - 0.5;
      const dy = y / height - 0.5;
      const dim = gain * (1 - camera.vignette * 2 * (dx * dx + dy * dy));
      for (let c = 0; c < 3; c++) rgb[i + c] = rgb[i + c]! * dim * camera.gains[c]! + camera.haze;
    }
  }
  blurChannels(rgb, width, height, 3, camera.blur);
  if (camera.sharpen > 0) {
    const soft = rgb.slice();
    blurChannels(soft, width, height, 3, Math.max(0.8, camera.blur));
    for (let i = 0; i < rgb.length; i++) rgb[i]! += camera.sharpen * (rgb[i]! - soft[i]!);
  }
  const out = new Uint8ClampedArray(size * 3);
  const colourAt = dice.between(0, 60);
  for (let i = 0, k = 0; i < size; i++, k += 3) {
    const r = rgb[k]!;
    const g = rgb[k + 1]!;
    const b = rgb[k + 2]!;
    const grey = 0.3 * r + 0.59 * g + 0.11 * b;
    // Sum of three uniform draws is near enough to normal, and quick.
    const shot =
      camera.noise *
      Math.sqrt(0.15 + Math.max(0, grey)) *
      2 *
      (dice.next() + dice.next() + dice.next() - 1.5);
    const x = (i % width) * 0.35 + colourAt;
    const y = Math.floor(i / width) * 0.35;
    const red = camera.colourNoise * (noiseAt(0, x, y) - 0.5) * 4;
    const blue = camera.colourNoise * (noiseAt(1, x, y) - 0.5) * 4;
    for (let c = 0; c < 3; c++) {
      let value =
        grey + camera.saturation * (rgb[k + c]! - grey) + shot + (c === 0 ? red : c === 2 ? blue : 0);
      value = Math.min(1, Math.max(0, value));
      let coded = CODED[Math.round(value * 4096)]! / 255;
      coded += camera.contrast * (coded * coded * (3 - 2 * coded) - coded);
      out[k + c] = Math.round(255 * coded);
    }
  }
  if (camera.quality > 0) squeeze(out, width, height, camera.quality);
  return out;
}

/** Meters leaf and picture: the leaf counts twice, and a picture of bright paper darkens it as it does in a phone. */
function expose(rgb: Float32Array, mask: Uint8Array, aim: number): number {
  let leaf = 0;
  let pixels = 0;
  let all = 0;
  for (let i = 0, k = 0; i < mask.length; i++, k += 3) {
    const grey = 0.3 * rgb[k]! + 0.59 * rgb[k + 1]! + 0.11 * rgb[k + 2]!;
    all += grey;
    if (mask[i] !== 255) continue;
    leaf += grey;
    pixels++;
  }
  const ofAll = all / mask.length;
  const ofLeaf = pixels > 0 ? leaf / pixels : ofAll;
  return aim / Math.max(1e-4, (2 * ofLeaf + Math.max(0.5 * ofLeaf, ofAll)) / 3);
}

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
function squeeze(rgb: Uint8ClampedArray, width: number, height: number, quality: number): void {
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
