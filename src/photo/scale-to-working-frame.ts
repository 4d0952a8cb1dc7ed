import type { Pixels } from './types.ts';

/** Longest side of the working frame, px: enough for side veins, cheap enough for a phone. */
export const WORKING_SIDE_PX = 1024;

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Size of the working frame of a picture: longest side at most `longestPx`; never larger than the picture. */
export function sizeOfWorkingFrame({ width, height }: Size, longestPx: number = WORKING_SIDE_PX): Size {
  const longest = Math.max(width, height);
  if (longest <= longestPx) return { width, height };
  const scaled = (side: number): number => Math.max(1, Math.round((side * longestPx) / longest));
  return { width: scaled(width), height: scaled(height) };
}

/**
 * Scales a picture down by averaging boxes, so that its longest side is at most `longestPx`; never up. Our own, not the
 * decoders' shrinking: resized decoding differs between a browser and sharp by up to 19 levels, this does not.
 * Pixels cut by a box edge count by the part inside. Averages are of coded values, as cameras themselves average.
 */
export function scaleToWorkingFrame(pixels: Pixels, longestPx: number = WORKING_SIDE_PX): Pixels {
  const { width, height } = sizeOfWorkingFrame(pixels, longestPx);
  return width === pixels.width && height === pixels.height ? pixels : scaleByBoxes(pixels, width, height);
}

/** Averages boxes down to exactly `width` × `height`, neither larger than the picture. */
export function scaleByBoxes(pixels: Pixels, width: number, height: number): Pixels {
  const scaler = createBoxScaler(pixels, { width, height });
  scaler.scaleBand(pixels.data, 0, 0, height);
  return { width, height, data: scaler.data };
}

/** Scales a picture band by band, so that it need never be whole in memory. */
export interface BoxScaler {
  /** The scaled picture, opaque; filled as bands come in. */
  readonly data: Uint8ClampedArray;
  /** Rows of the picture that the scaled rows `from` up to but without `to` are made of, in the same form. */
  rowsFor(from: number, to: number): { readonly from: number; readonly to: number };
  /** Fills the scaled rows `from` up to but without `to`; `band` holds whole rows of the picture from row `top` on. */
  scaleBand(band: Uint8ClampedArray, top: number, from: number, to: number): void;
}

/** @param size of the scaled picture, at least 1 px and no larger than `whole` each way */
export function createBoxScaler(whole: Size, size: Size): BoxScaler {
  const out = new Uint8ClampedArray(size.width * size.height * 4);
  const stepY = whole.height / size.height;
  const columns = splitColumns(whole.width, size.width);
  // Two channels are summed in one number, 16 bits each, so that a pixel costs two additions and not four.
  const redBlue = new Int32Array(whole.width);
  const green = new Int32Array(whole.width);
  const starts = new Int32Array(ROWS_AT_ONCE);
  const weights = new Int32Array(ROWS_AT_ONCE);
  // Parts of rows are counted in steps as fine as 16 bits allow: 1/32 at a box of 4 rows.
  const unit = 2 ** Math.max(0, Math.floor(Math.log2(257 / Math.ceil(stepY + 1))));
  const firstRow = (y: number): number => Math.floor(y * stepY + 1e-9);
  const endRow = (y: number): number => Math.min(whole.height, Math.ceil((y + 1) * stepY - 1e-9));
  return {
    data: out,
    rowsFor: (from, to) => ({ from: firstRow(from), to: endRow(to - 1) }),
    scaleBand(band, top, from, to) {
      const source = asWords(band);
      for (let y = from; y < to; y++) {
        const first = firstRow(y);
        const last = endRow(y) - 1;
        let total = 0;
        for (let row = first; row <= last; row += ROWS_AT_ONCE) {
          for (let k = 0; k < ROWS_AT_ONCE; k++) {
            const isIn = row + k <= last;
            starts[k] = (isIn ? row + k - top : row - top) * whole.width;
            weights[k] = isIn ? partOf(row + k, y * stepY, stepY, unit) : 0;
            total += weights[k]!;
          }
          addRows(source, starts, weights, redBlue, green, row === first);
        }
        averageColumns(redBlue, green, columns, 1 / (total * columns.step), out, y * size.width * 4);
      }
    },
  };
}

/** How much of a row lies in the box of `step` rows from `top` on, in units of 1 / `unit`, at least one. */
function partOf(row: number, top: number, step: number, unit: number): number {
  const part = Math.min(top + step, row + 1) - Math.max(top, row);
  return Math.max(1, Math.round(part * unit));
}

/** A picture as one word a pixel; the lowest byte is red on every machine that runs this (all are little-endian). */
function asWords(bytes: Uint8ClampedArray): Int32Array {
  const aligned = bytes.byteOffset % 4 === 0 ? bytes : bytes.slice();
  return new Int32Array(aligned.buffer, aligned.byteOffset, aligned.length >> 2);
}

const TWO_BYTES = 0x00ff00ff;

/** As many rows as a box has at 12 megapixels, so that each sum is written once. */
const ROWS_AT_ONCE = 5;

/** Adds weighted rows to the sums of the columns, or begins them anew. */
function addRows(
  source: Int32Array,
  starts: Int32Array,
  weights: Int32Array,
  redBlue: Int32Array,
  green: Int32Array,
  anew: boolean,
): void {
  const n = redBlue.length;
  const [s0, s1, s2, s3, s4] = starts as unknown as [number, number, number, number, number];
  const [w0, w1, w2, w3, w4] = weights as unknown as [number, number, number, number, number];
  const keep = anew ? 0 : -1;
  for (let x = 0; x < n; x++) {
    const p0 = source[s0 + x]!;
    const p1 = source[s1 + x]!;
    const p2 = source[s2 + x]!;
    const p3 = source[s3 + x]!;
    const p4 = source[s4 + x]!;
    redBlue[x] =
      ((redBlue[x]! & keep) +
        Math.imul(p0 & TWO_BYTES, w0) +
        Math.imul(p1 & TWO_BYTES, w1) +
        Math.imul(p2 & TWO_BYTES, w2) +
        Math.imul(p3 & TWO_BYTES, w3) +
        Math.imul(p4 & TWO_BYTES, w4)) |
      0;
    green[x] =
      ((green[x]! & keep) +
        Math.imul((p0 >>> 8) & 0xff, w0) +
        Math.imul((p1 >>> 8) & 0xff, w1) +
        Math.imul((p2 >>> 8) & 0xff, w2) +
        Math.imul((p3 >>> 8) & 0xff, w3) +
        Math.imul((p4 >>> 8) & 0xff, w4)) |
      0;
  }
}

/** For each box of columns its first and last column and the part of each that lies inside. */
interface Columns {
  readonly step: number;
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly firstPart: Float64Array;
  readonly lastPart: Float64Array;
}

function splitColumns(whole: number, count: number): Columns {
  const step = whole / count;
  const first = new Int32Array(count);
  const last = new Int32Array(count);
  const firstPart = new Float64Array(count);
  const lastPart = new Float64Array(count);
  for (let x = 0; x < count; x++) {
    const left = x * step;
    const right = Math.min(whole, left + step);
    first[x] = Math.floor(left);
    last[x] = Math.max(first[x]!, Math.min(whole - 1, Math.ceil(right) - 1));
    firstPart[x] = Math.min(right, first[x]! + 1) - left;
    lastPart[x] = last[x] === first[x] ? 0 : right - last[x]!;
  }
  return { step, first, last, firstPart, lastPart };
}

function averageColumns(
  redBlue: Int32Array,
  green: Int32Array,
  columns: Columns,
  share: number,
  out: Uint8ClampedArray,
  at: number,
): void {
  const { first, last, firstPart, lastPart } = columns;
  for (let x = 0, o = at; x < first.length; x++, o += 4) {
    const from = first[x]!;
    const to = last[x]!;
    let r = 0;
    let g = 0;
    let b = 0;
    for (let k = from + 1; k < to; k++) {
      const two = redBlue[k]!;
      r = (r + (two & 0xffff)) | 0;
      b = (b + (two >>> 16)) | 0;
      g = (g + green[k]!) | 0;
    }
    const one = redBlue[from]!;
    const other = redBlue[to]!;
    const p = firstPart[x]!;
    const q = lastPart[x]!;
    out[o] = (r + p * (one & 0xffff) + q * (other & 0xffff)) * share;
    out[o + 1] = (g + p * green[from]! + q * green[to]!) * share;
    out[o + 2] = (b + p * (one >>> 16) + q * (other >>> 16)) * share;
    out[o + 3] = 255;
  }
}
