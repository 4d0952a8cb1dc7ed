import type { Pixels } from '../photo/types.ts';

/** Side of the square that the network sees, px. */
export const CROP_SIDE_PX = 224;
/** The square over the longer side of the leaf's box: a rim of ground on either side. */
const GROWN = 1.15;
/** What stands where the square reaches beyond the frame. */
const BEYOND = 128;

/** A leaf brought to one square, as the network was taught on it. */
export interface LeafCrop {
  readonly side: number;
  /** Red, green, blue as coded in sRGB, 0–255, row by row. */
  readonly rgb: Uint8Array;
  /** Share of each pixel that the leaf covers, 0–255. */
  readonly mask: Uint8Array;
}

/**
 * Cuts the outlined leaf out of a frame as a square and brings it to `side` px, up or down, by a tent as wide as one step
 * (bilinear interpolation with anti-aliasing). Only sums and products, so that every machine cuts the same bytes.
 * @param outline one byte a pixel of the frame, 255 = leaf, holes filled
 * @returns undefined when the outline is empty
 */
export function cutCrop(
  frame: Pixels,
  outline: Uint8Array,
  side: number = CROP_SIDE_PX,
): LeafCrop | undefined {
  const box = boxOf(outline, frame.width, frame.height);
  if (box === undefined) return undefined;
  const square = GROWN * Math.max(box.right - box.left, box.bottom - box.top);
  const columns = tentsOf((box.left + box.right - square) / 2, square / side, side, frame.width);
  const rows = tentsOf((box.top + box.bottom - square) / 2, square / side, side, frame.height);
  const rgb = new Uint8Array(side * side * 3);
  const mask = new Uint8Array(side * side);
  const plane = (at: (i: number) => number, beyond: number, put: (k: number, value: number) => void): void =>
    scalePlane(at, frame.width, columns, rows, beyond, put);
  for (let c = 0; c < 3; c++) {
    plane(
      (i) => frame.data[4 * i + c]!,
      BEYOND,
      (k, value) => {
        rgb[3 * k + c] = value;
      },
    );
  }
  plane(
    (i) => outline[i]!,
    0,
    (k, value) => {
      mask[k] = value;
    },
  );
  return { side, rgb, mask };
}

interface Edges {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function boxOf(mask: Uint8Array, width: number, height: number): Edges | undefined {
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (mask[y * width + x] !== 255) continue;
      left = Math.min(left, x);
      right = Math.max(right, x + 1);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y + 1);
    }
  }
  return right > left ? { left, top, right, bottom } : undefined;
}

/** What one pixel of the crop is made of along one axis: pixels of the frame from `from` on, and what lies beyond it. */
interface Tent {
  readonly from: number;
  readonly weights: readonly number[];
  readonly beyond: number;
}

function tentsOf(start: number, step: number, count: number, length: number): Tent[] {
  const reach = Math.max(1, step);
  return Array.from({ length: count }, (_, k) => {
    const centre = start + (k + 0.5) * step;
    const first = Math.ceil(centre - reach - 0.5);
    const last = Math.floor(centre + reach - 0.5);
    const all: number[] = [];
    for (let i = first; i <= last; i++) all.push(Math.max(0, 1 - Math.abs(i + 0.5 - centre) / reach));
    const total = all.reduce((sum, weight) => sum + weight, 0);
    const from = Math.max(0, first);
    const inside = all.slice(from - first, Math.max(0, Math.min(last, length - 1) - first + 1));
    const weights = inside.map((weight) => weight / total);
    return { from, weights, beyond: Math.max(0, 1 - weights.reduce((sum, weight) => sum + weight, 0)) };
  });
}

function scalePlane(
  at: (i: number) => number,
  width: number,
  columns: readonly Tent[],
  rows: readonly Tent[],
  beyond: number,
  put: (k: number, value: number) => void,
): void {
  const done = new Map<number, Float64Array>();
  const rowAt = (y: number): Float64Array => {
    const kept = done.get(y);
    if (kept !== undefined) return kept;
    const row = Float64Array.from(columns, (tent) =>
      tent.weights.reduce(
        (sum, weight, k) => sum + weight * at(y * width + tent.from + k),
        tent.beyond * beyond,
      ),
    );
    done.set(y, row);
    return row;
  };
  rows.forEach((tent, y) => {
    const made = new Float64Array(columns.length).fill(tent.beyond * beyond);
    tent.weights.forEach((weight, k) => {
      const row = rowAt(tent.from + k);
      for (let x = 0; x < made.length; x++) made[x] = made[x]! + weight * row[x]!;
    });
    for (let x = 0; x < made.length; x++) put(y * columns.length + x, Math.round(made[x]!));
  });
}
