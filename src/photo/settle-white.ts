import { convertLinearToLab } from './convert-srgb-to-lab.ts';
import { LINEAR_OF_BYTE } from './convert-srgb-to-linear.ts';
import type { Pixels, Spot } from './types.ts';

/** How the colour of the light was settled; the shape is `WhiteReference` of the leaf's types. */
export interface SettledWhite {
  readonly from: 'tapped' | 'found' | 'estimated';
  /** Multipliers of linear R, G, B; green = 1. */
  readonly gains: readonly [number, number, number];
  /** Standard error of the illuminant, CIELAB units of a mid grey. */
  readonly se: number;
}

/**
 * Settles the colour of the light, as gains for von Kries scaling in linear light: from the white or grey thing that
 * was tapped, else from a sheet, label or card found in the frame, else by estimate.
 *
 * @param frame working frame.
 * @param exclude 255 where the leaf is: a leaf is never white. Its size is the frame's.
 * @param plantAt how plant-like the colour of a pixel is, 0–1: foliage tells little about the light.
 */
export function settleWhite(
  frame: Pixels,
  exclude: Uint8Array | undefined,
  plantAt: (pixel: number) => number,
  tap?: Spot,
): SettledWhite {
  if (tap !== undefined) {
    const tapped = readTapped(frame, tap);
    if (tapped !== undefined) return tapped;
  }
  return findSheet(frame, exclude) ?? estimateLight(frame, exclude, plantAt);
}

/** Gains that make a linear colour grey, held within what real lights do (CIE A needs about 0.6 and 2.6). */
function gainsFor(r: number, g: number, b: number): [number, number, number] {
  const held = (v: number): number => Math.max(0.4, Math.min(3, v));
  return [held(g / Math.max(1e-4, r)), 1, held(g / Math.max(1e-4, b))];
}

/** Chroma that a mid grey shows under gains: how strong a cast they take away. */
export function castOf(gains: readonly [number, number, number]): number {
  const [, a, b] = convertLinearToLab(0.2 / gains[0], 0.2 / gains[1], 0.2 / gains[2]);
  return Math.hypot(a, b);
}

/** Error of a tapped card, from the spread of re-taps on papers in the photographs: 1.5 units, more when it clips. */
const TAPPED_SE = 1.5;
/** Error of a sheet found: papers are themselves up to 3 units off neutral. */
const FOUND_SE = 2.5;
/** Error of an estimate: what hue strays about the meter on `papaya-spad` in place beyond what it strays on paper. */
const ESTIMATED_SE = 5;

/** The even surroundings of the tap; undefined if it is too dark or burnt out to tell. */
function readTapped(frame: Pixels, tap: Spot): SettledWhite | undefined {
  const cx = Math.min(frame.width - 1, Math.floor(tap.x * frame.width));
  const cy = Math.min(frame.height - 1, Math.floor(tap.y * frame.height));
  const radius = Math.max(1, Math.round(0.012 * Math.min(frame.width, frame.height)));
  const channels: [number[], number[], number[]] = [[], [], []];
  let clipped = 0;
  for (let y = Math.max(0, cy - radius); y <= Math.min(frame.height - 1, cy + radius); y++) {
    for (let x = Math.max(0, cx - radius); x <= Math.min(frame.width - 1, cx + radius); x++) {
      const p = (y * frame.width + x) * 4;
      for (let c = 0; c < 3; c++) channels[c]!.push(frame.data[p + c]!);
      if (Math.max(frame.data[p]!, frame.data[p + 1]!, frame.data[p + 2]!) >= 254) clipped++;
    }
  }
  const [r, g, b] = channels.map(median) as [number, number, number];
  if (g < 25) return undefined;
  // Where channels are full, their ratio is lost: then only the error can tell.
  const share = clipped / channels[0].length;
  const gains = gainsFor(LINEAR_OF_BYTE[r]!, LINEAR_OF_BYTE[g]!, LINEAR_OF_BYTE[b]!);
  return { from: 'tapped', gains, se: TAPPED_SE + 4 * share };
}

/** Cells of the grid on which a sheet is looked for, along the longer side. */
const GRID = 96;
/** A cell may be part of a sheet: bright, near grey or of a lamp's warmth, without grain. */
const LEAST_BRIGHTNESS = 0.4;
const MOST_CHROMA = 12;
const MOST_CHROMA_OF_LAMP = 38;
const MOST_CHROMA_OF_SKY = 24;
const MOST_GRAIN = 0.02;
/** Least share of the frame: a plant label at arm's length. */
const LEAST_SHEET = 0.012;

/** A sheet of paper, label or card: the largest bright, even, nearly grey region outside the leaf. */
function findSheet(frame: Pixels, exclude: Uint8Array | undefined): SettledWhite | undefined {
  const cell = Math.max(1, Math.ceil(Math.max(frame.width, frame.height) / GRID));
  const columns = Math.floor(frame.width / cell);
  const rows = Math.floor(frame.height / cell);
  const light = new Float32Array(columns * rows * 3);
  const fits = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      readCell(frame, exclude, column, row, cell, columns, light, fits);
    }
  }
  const best = growLargest(fits, light, columns, rows);
  if (best === undefined || best.share < LEAST_SHEET) return undefined;
  const gains = gainsFor(best.r, best.g, best.b);
  return { from: 'found', gains, se: FOUND_SE + 0.15 * castOf(gains) };
}

/** Mean linear colour of a cell into `light`, and whether it may belong to a sheet into `fits`. */
function readCell(
  frame: Pixels,
  exclude: Uint8Array | undefined,
  column: number,
  row: number,
  cell: number,
  columns: number,
  light: Float32Array,
  fits: Uint8Array,
): void {
  let r = 0;
  let g = 0;
  let b = 0;
  let g2 = 0;
  let n = 0;
  let full = 0;
  let leaf = 0;
  for (let y = row * cell; y < (row + 1) * cell; y++) {
    for (let x = column * cell; x < (column + 1) * cell; x++) {
      const i = y * frame.width + x;
      if (exclude?.[i] === 255) leaf++;
      const p = i * 4;
      r += LINEAR_OF_BYTE[frame.data[p]!]!;
      b += LINEAR_OF_BYTE[frame.data[p + 2]!]!;
      const coded = frame.data[p + 1]! / 255;
      g += LINEAR_OF_BYTE[frame.data[p + 1]!]!;
      g2 += coded;
      if (frame.data[p]! >= 254 || frame.data[p + 1]! >= 254 || frame.data[p + 2]! >= 254) full++;
      n++;
    }
  }
  const mean = g2 / n;
  let grain = 0;
  for (let y = row * cell; y < (row + 1) * cell; y++) {
    for (let x = column * cell; x < (column + 1) * cell; x++) {
      grain += (frame.data[(y * frame.width + x) * 4 + 1]! / 255 - mean) ** 2;
    }
  }
  const k = row * columns + column;
  light[k * 3] = r / n;
  light[k * 3 + 1] = g / n;
  light[k * 3 + 2] = b / n;
  if (leaf > 0 || g / n < LEAST_BRIGHTNESS || full > 0.5 * n) return;
  const [, labA, labB] = convertLinearToLab(r / n, g / n, b / n);
  // Greenish greys are leaves' undersides and walls in green shade; real lights do not go there. Lamplight lies from
  // yellow to orange, sky light is blue; straw and soil, cloth and sky are so too, but have grain or are no sheet.
  const chroma = Math.hypot(labA * (labA < 0 ? 1.6 : 1), labB);
  const ofLamp = labB > 0 && labA > 0 && labA < 0.75 * labB && chroma < MOST_CHROMA_OF_LAMP;
  const ofSky = labB < 0 && Math.abs(labA) < 0.5 * -labB && chroma < MOST_CHROMA_OF_SKY;
  const grainLimit = chroma < MOST_CHROMA ? MOST_GRAIN : 0.3 * MOST_GRAIN;
  if ((chroma < MOST_CHROMA || ofLamp || ofSky) && Math.sqrt(grain / n) < grainLimit) fits[k] = 1;
}

interface Sheet {
  readonly r: number;
  readonly g: number;
  readonly b: number;
  readonly share: number;
}

/** The best connected region of fitting cells: brightness times the root of its size. */
function growLargest(
  fits: Uint8Array,
  light: Float32Array,
  columns: number,
  rows: number,
): Sheet | undefined {
  const seen = new Uint8Array(fits.length);
  let best: Sheet | undefined;
  let bestWorth = 0;
  for (let start = 0; start < fits.length; start++) {
    if (fits[start] !== 1 || seen[start] === 1) continue;
    const stack = [start];
    seen[start] = 1;
    const cells: number[] = [];
    while (stack.length > 0) {
      const at = stack.pop()!;
      cells.push(at);
      const x = at % columns;
      for (const to of [x > 0 ? at - 1 : -1, x < columns - 1 ? at + 1 : -1, at - columns, at + columns]) {
        if (to < 0 || to >= fits.length || fits[to] !== 1 || seen[to] === 1) continue;
        if (Math.abs(light[to * 3 + 1]! / light[at * 3 + 1]! - 1) > 0.15) continue;
        seen[to] = 1;
        stack.push(to);
      }
    }
    const r = median(cells.map((k) => light[k * 3]!));
    const g = median(cells.map((k) => light[k * 3 + 1]!));
    const b = median(cells.map((k) => light[k * 3 + 2]!));
    const worth = g * Math.sqrt(Math.min(0.2, cells.length / (columns * rows)));
    if (worth > bestWorth) {
      bestWorth = worth;
      best = { r, g, b, share: cells.length / (columns * rows) };
    }
  }
  return best;
}

/**
 * Exponent of the mean (Finlayson and Trezzi 2004, "Shades of gray and colour constancy", recommend 6 for pictures in
 * general; 2–3 left the smallest spread of hue about the chlorophyll meter on `papaya-spad` in place, 4.8 degrees against 6.1
 * uncorrected and 5.3 with 6).
 */
const MINKOWSKI = 3;
/**
 * Most that an estimate may take away, CIELAB units of a mid grey. Cameras balance their pictures already, so a stronger
 * cast is more likely a brown ground than a brown light.
 */
const MOST_CAST = 7;

/** Shades of grey over what is neither plant nor burnt out. */
function estimateLight(
  frame: Pixels,
  exclude: Uint8Array | undefined,
  plantAt: (pixel: number) => number,
): SettledWhite {
  const sums = [0, 0, 0];
  let count = 0;
  const n = frame.width * frame.height;
  const stride = Math.max(3, Math.floor(n / 100_000));
  for (let i = 0; i < n; i += stride) {
    if (exclude?.[i] === 255) continue;
    const weight = 1 - plantAt(i);
    const p = i * 4;
    const top = Math.max(frame.data[p]!, frame.data[p + 1]!, frame.data[p + 2]!);
    if (weight <= 0 || top >= 252 || top < 12) continue;
    count += weight;
    for (let c = 0; c < 3; c++) sums[c]! += weight * LINEAR_OF_BYTE[frame.data[p + c]!]! ** MINKOWSKI;
  }
  if (count < (0.03 * n) / stride) return { from: 'estimated', gains: [1, 1, 1], se: ESTIMATED_SE + 1 };
  const [r, g, b] = sums.map((s) => (s / count) ** (1 / MINKOWSKI)) as [number, number, number];
  const full = gainsFor(r, g, b);
  const cast = castOf(full);
  const part = Math.min(1, MOST_CAST / Math.max(1e-6, cast));
  const gains: [number, number, number] = [full[0] ** part, 1, full[2] ** part];
  return { from: 'estimated', gains, se: ESTIMATED_SE + 0.15 * Math.max(0, cast - MOST_CAST) };
}

function median(values: readonly number[]): number {
  const sorted = values.slice().sort((p, q) => p - q);
  return sorted[sorted.length >> 1] ?? 0;
}
