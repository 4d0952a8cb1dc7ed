import { seededRandom } from '../../src/leaf/draw-leaf.ts';

/** A field of smooth noise is drawn once and read at any place, because reading is many times quicker than drawing. */
const SIDE = 512;
/** Texels a feature: 64 features before the field repeats. */
const FEATURE = 8;
const LAYERS = 4;

let fields: Float32Array[] | undefined;

function drawField(seed: number): Float32Array {
  const cells = SIDE / FEATURE;
  const random = seededRandom(seed);
  const lattice = Float32Array.from({ length: cells * cells }, random);
  const field = new Float32Array(SIDE * SIDE);
  const ease = Float32Array.from({ length: FEATURE }, (_, k) => {
    const t = k / FEATURE;
    return t * t * t * (t * (6 * t - 15) + 10);
  });
  for (let y = 0; y < SIDE; y++) {
    const row = Math.floor(y / FEATURE);
    const below = (row + 1) % cells;
    const fy = ease[y % FEATURE]!;
    for (let x = 0; x < SIDE; x++) {
      const column = Math.floor(x / FEATURE);
      const right = (column + 1) % cells;
      const fx = ease[x % FEATURE]!;
      const top = lattice[row * cells + column]! * (1 - fx) + lattice[row * cells + right]! * fx;
      const bottom = lattice[below * cells + column]! * (1 - fx) + lattice[below * cells + right]! * fx;
      field[y * SIDE + x] = top * (1 - fy) + bottom * fy;
    }
  }
  return field;
}

/** Smooth noise on 0–1 (mean a half) with features of one unit; layers have nothing in common. */
export function noiseAt(layer: number, x: number, y: number): number {
  fields ??= Array.from({ length: LAYERS }, (_, k) => drawField(7919 * (k + 1)));
  const field = fields[layer & (LAYERS - 1)]!;
  const px = x * FEATURE;
  const py = y * FEATURE;
  const ix = Math.floor(px);
  const iy = Math.floor(py);
  const fx = px - ix;
  const fy = py - iy;
  const left = ix & (SIDE - 1);
  const right = (ix + 1) & (SIDE - 1);
  const top = (iy & (SIDE - 1)) * SIDE;
  const bottom = ((iy + 1) & (SIDE - 1)) * SIDE;
  const upper = field[top + left]! * (1 - fx) + field[top + right]! * fx;
  const lower = field[bottom + left]! * (1 - fx) + field[bottom + right]! * fx;
  return upper * (1 - fy) + lower * fy;
}

/** Sum of octaves, each half as strong and twice as fine as the one before, brought to 0–1 with a mean of a half. */
export function cloudAt(layer: number, x: number, y: number, octaves: number): number {
  let sum = 0;
  let weight = 1;
  let total = 0;
  let scale = 1;
  for (let k = 0; k < octaves; k++) {
    sum += weight * noiseAt(layer + k, x * scale + 17.3 * k, y * scale + 5.1 * k);
    total += weight;
    weight *= 0.5;
    scale *= 2.03;
  }
  return sum / total;
}

/** 0 below `low`, 1 above `high`, smooth between; turned round where `low` is above `high`. */
export function smoothStep(low: number, high: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
}
