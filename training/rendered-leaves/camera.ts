import type { Dice } from './dice.ts';
import { noiseAt } from './noise.ts';
import { squeezeAsJpeg } from './squeeze-as-jpeg.ts';

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
    exposure: dice.logBetween(0.14, 0.48),
    gains: [Math.exp(warm), Math.exp(tint), Math.exp(-warm)],
    contrast: dice.between(0, 0.55),
    saturation: dice.between(0.6, 1.25),
    blur: (dice.chance(0.2) ? dice.between(0.8, 1.9) : dice.between(0.1, 0.7)) * Math.sqrt(perPx),
    sharpen: dice.chance(0.75) ? dice.between(0.2, 1.3) : 0,
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
  if (camera.quality > 0) squeezeAsJpeg(out, width, height, camera.quality);
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
