import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { outlineWeights } from './outline-weights.ts';

/** Sides of the network's grid are multiples of this. */
export const NETWORK_STEP_PX = 16;
/** Area of the grid it was trained on, px. */
export const NETWORK_PX: number = 128 * 128;

/** Where the person tapped, in pixels of the grid. */
export interface GridTaps {
  readonly leaf: readonly (readonly [number, number])[];
  readonly ground: readonly (readonly [number, number])[];
}

/** Channels of planes of `width` × `height`, one after another. */
export interface Planes {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  readonly data: Float32Array;
}

/**
 * Log odds that each pixel belongs to the tapped leaf, by a small network (U-Net of separable convolutions; Ronneberger
 * et al. 2015, Howard et al. 2017) trained by `training/outline-network`. It knows what cuts by colour cannot: which
 * edges are a leaf's own and which are folds, veins, shadows or neighbours. Its card: `models/README.md`.
 *
 * @param lab picture on the network's grid: sides multiples of 16 px, about 128 × 128 px in all.
 * @returns one number a pixel, above 0 for leaf
 */
export function guessOutline(lab: LabPlanes, taps: GridTaps): Float32Array {
  return runNetwork(composeInput(lab, taps));
}

/** The network itself, from its five channels to log odds; for the test of the port. */
export function runNetwork(input: Planes): Float32Array {
  const e1 = repeat(convolve(input, 'stem', 2, true), 'e1', 2);
  const e2 = repeat(shrink(e1, 'd2'), 'e2', 3);
  const e3 = repeat(shrink(e2, 'd3'), 'e3', 4);
  const e4 = addContext(repeat(shrink(e3, 'd4'), 'e4', 8));
  const f3 = repeat(addOver(mixChannels(e4, 'u3', false), e3), 'f3', 2);
  const f2 = repeat(addOver(mixChannels(f3, 'u2', false), e2), 'f2', 2);
  const f1 = repeat(addOver(mixChannels(f2, 'u1', false), e1), 'f1', 2);
  const f0 = repeat(addOver(mixChannels(f1, 'u0', false), convolve(input, 'fine', 1, false)), 'f0', 1);
  return mixChannels(f0, 'out', false).data;
}

/** Radius of the bell that marks a tap, px; as in training. */
const TAP_SIGMA_PX = 6;

function composeInput(lab: LabPlanes, taps: GridTaps): Planes {
  const { width, height } = lab;
  const n = width * height;
  const data = new Float32Array(5 * n);
  for (let i = 0; i < n; i++) {
    data[i] = lab.L[i]! / 50 - 1;
    data[n + i] = lab.a[i]! / 40;
    data[2 * n + i] = lab.b[i]! / 40;
  }
  for (const [channel, spots] of [
    [3, taps.leaf],
    [4, taps.ground],
  ] as const) {
    for (const [sx, sy] of spots) {
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          const squared = (x + 0.5 - sx) ** 2 + (y + 0.5 - sy) ** 2;
          const i = channel * n + y * width + x;
          data[i] = Math.max(data[i]!, Math.exp(-squared / (2 * TAP_SIGMA_PX ** 2)));
        }
      }
    }
  }
  return { width, height, channels: 5, data };
}

/** Blocks that add to their input what a convolution within channels and one across them make of it. */
function repeat(input: Planes, name: string, times: number): Planes {
  let planes = input;
  for (let k = 0; k < times; k++) {
    const change = mixChannels(spread(planes, `${name}.${k}.deep`, 1), `${name}.${k}.point`, false);
    const sums = change.data;
    const before = planes.data;
    for (let i = 0; i < sums.length; i++) {
      sums[i] = Math.max(0, sums[i]! + before[i]!);
    }
    planes = change;
  }
  return planes;
}

function shrink(input: Planes, name: string): Planes {
  return mixChannels(spread(input, `${name}.deep`, 2), `${name}.point`, true);
}

/** 3 × 3 convolution within each channel, with ReLU. */
function spread(input: Planes, name: string, stride: 1 | 2): Planes {
  const { weights, bias } = outlineWeights(name);
  const { width, height, channels } = input;
  const out = emptyPlanes(width / stride, height / stride, channels);
  const size = out.width * out.height;
  for (let c = 0; c < channels; c++) {
    out.data.fill(bias[c]!, c * size, (c + 1) * size);
    addFiltered(input, c, weights, c * 9, stride, out, c);
  }
  dropNegative(out.data);
  return out;
}

/** 3 × 3 convolution across all channels. */
function convolve(input: Planes, name: string, stride: 1 | 2, relu: boolean): Planes {
  const { weights, bias } = outlineWeights(name);
  const out = emptyPlanes(input.width / stride, input.height / stride, bias.length);
  const size = out.width * out.height;
  for (let o = 0; o < bias.length; o++) {
    out.data.fill(bias[o]!, o * size, (o + 1) * size);
    for (let c = 0; c < input.channels; c++) {
      addFiltered(input, c, weights, (o * input.channels + c) * 9, stride, out, o);
    }
  }
  if (relu) dropNegative(out.data);
  return out;
}

/** Adds one channel filtered by nine weights to a channel of the output; beyond the rim there is nothing. */
function addFiltered(
  input: Planes,
  from: number,
  weights: Float32Array,
  at: number,
  stride: 1 | 2,
  out: Planes,
  to: number,
): void {
  const { width, height, data } = input;
  for (let y = 0; y < out.height; y++) {
    const target = (to * out.height + y) * out.width;
    for (let ky = -1; ky <= 1; ky++) {
      const sy = y * stride + ky;
      if (sy < 0 || sy >= height) continue;
      const row = (from * height + sy) * width;
      const k = at + (ky + 1) * 3;
      const before = weights[k]!;
      const here = weights[k + 1]!;
      const after = weights[k + 2]!;
      out.data[target]! += here * data[row]! + after * data[row + 1]!;
      const last = out.width - 1;
      const sums = out.data;
      for (let x = 1, sx = row + stride; x < last; x++, sx += stride) {
        sums[target + x]! += before * data[sx - 1]! + here * data[sx]! + after * data[sx + 1]!;
      }
      const sx = last * stride;
      out.data[target + last]! +=
        before * data[row + sx - 1]! +
        here * data[row + sx]! +
        (sx + 1 < width ? after * data[row + sx + 1]! : 0);
    }
  }
}

/** Every output channel a weighted sum of all input channels, pixel by pixel. */
function mixChannels(input: Planes, name: string, relu: boolean): Planes {
  const { weights, bias } = outlineWeights(name);
  const { width, height, channels, data } = input;
  const out = emptyPlanes(width, height, bias.length);
  const size = width * height;
  for (let o = 0; o < bias.length; o++) out.data.fill(bias[o]!, o * size, (o + 1) * size);
  // A stretch of pixels at a time, so that what all outputs read stays in the processor's nearest memory.
  for (let from = 0; from < size; from += STRETCH_PX) {
    const n = Math.min(STRETCH_PX, size - from);
    // Channels come in fours, but for the one that comes out at the end.
    let o = 0;
    for (; o + 4 <= bias.length; o += 4) {
      for (let c = 0; c < channels; c += 4) mixFour(data, out.data, size, from, n, weights, channels, o, c);
    }
    for (; o < bias.length; o++) {
      for (let c = 0; c < channels; c++) {
        const weight = weights[o * channels + c]!;
        const p = c * size + from;
        const q = o * size + from;
        for (let i = 0; i < n; i++) out.data[q + i]! += weight * data[p + i]!;
      }
    }
  }
  if (relu) dropNegative(out.data);
  return out;
}

const STRETCH_PX = 256;

/** Adds four channels to four: each value read or written serves four sums. */
function mixFour(
  data: Float32Array,
  out: Float32Array,
  size: number,
  from: number,
  n: number,
  weights: Float32Array,
  channels: number,
  o: number,
  c: number,
): void {
  const k0 = o * channels + c;
  const k1 = k0 + channels;
  const k2 = k1 + channels;
  const k3 = k2 + channels;
  const a0 = weights[k0]!;
  const a1 = weights[k0 + 1]!;
  const a2 = weights[k0 + 2]!;
  const a3 = weights[k0 + 3]!;
  const b0 = weights[k1]!;
  const b1 = weights[k1 + 1]!;
  const b2 = weights[k1 + 2]!;
  const b3 = weights[k1 + 3]!;
  const c0 = weights[k2]!;
  const c1 = weights[k2 + 1]!;
  const c2 = weights[k2 + 2]!;
  const c3 = weights[k2 + 3]!;
  const d0 = weights[k3]!;
  const d1 = weights[k3 + 1]!;
  const d2 = weights[k3 + 2]!;
  const d3 = weights[k3 + 3]!;
  const p0 = c * size + from;
  const p1 = p0 + size;
  const p2 = p1 + size;
  const p3 = p2 + size;
  const q0 = o * size + from;
  const q1 = q0 + size;
  const q2 = q1 + size;
  const q3 = q2 + size;
  for (let i = 0; i < n; i++) {
    const v0 = data[p0 + i]!;
    const v1 = data[p1 + i]!;
    const v2 = data[p2 + i]!;
    const v3 = data[p3 + i]!;
    out[q0 + i]! += a0 * v0 + a1 * v1 + a2 * v2 + a3 * v3;
    out[q1 + i]! += b0 * v0 + b1 * v1 + b2 * v2 + b3 * v3;
    out[q2 + i]! += c0 * v0 + c1 * v1 + c2 * v2 + c3 * v3;
    out[q3 + i]! += d0 * v0 + d1 * v1 + d2 * v2 + d3 * v3;
  }
}

/** Adds to each channel what the means of all channels say about the whole picture. */
function addContext(planes: Planes): Planes {
  const { weights, bias } = outlineWeights('context');
  const { channels, data } = planes;
  const size = planes.width * planes.height;
  const means = new Float32Array(channels);
  for (let c = 0; c < channels; c++) {
    let sum = 0;
    for (let i = c * size; i < (c + 1) * size; i++) sum += data[i]!;
    means[c] = sum / size;
  }
  const out = emptyPlanes(planes.width, planes.height, channels);
  for (let o = 0; o < channels; o++) {
    let add = bias[o]!;
    for (let c = 0; c < channels; c++) add += weights[o * channels + c]! * means[c]!;
    for (let i = o * size; i < (o + 1) * size; i++) out.data[i] = Math.max(0, data[i]! + add);
  }
  return out;
}

/** Doubles the coarse planes, straight lines between the middles of their pixels, and adds them to the fine, with ReLU. */
function addOver(coarse: Planes, fine: Planes): Planes {
  const { width, height, channels } = fine;
  const out = emptyPlanes(width, height, channels);
  const { width: cw, height: ch, data } = coarse;
  for (let c = 0; c < channels; c++) {
    for (let y = 0; y < height; y++) {
      const near = c * ch + (y >> 1);
      const far = c * ch + Math.max(0, Math.min(ch - 1, (y >> 1) + ((y & 1) === 0 ? -1 : 1)));
      const row = (c * height + y) * width;
      for (let x = 0; x < width; x++) {
        const nx = x >> 1;
        const fx = Math.max(0, Math.min(cw - 1, nx + ((x & 1) === 0 ? -1 : 1)));
        const value =
          0.75 * (0.75 * data[near * cw + nx]! + 0.25 * data[near * cw + fx]!) +
          0.25 * (0.75 * data[far * cw + nx]! + 0.25 * data[far * cw + fx]!);
        out.data[row + x] = Math.max(0, value + fine.data[row + x]!);
      }
    }
  }
  return out;
}

function emptyPlanes(width: number, height: number, channels: number): Planes {
  return { width, height, channels, data: new Float32Array(width * height * channels) };
}

function dropNegative(data: Float32Array): void {
  for (let i = 0; i < data.length; i++) if (data[i]! < 0) data[i] = 0;
}
