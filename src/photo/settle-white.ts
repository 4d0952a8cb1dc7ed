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
  /** Multiplier that brings the sheet under the leaf to a paper's brightness; only where such a sheet was found. */
  readonly exposure?: number;
  /** Where no sheet tells the exposure: multiplier that brings the ground to what ground is like on the whole. */
  readonly guessedExposure?: number;
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
  prior: LightPrior = LIGHT_PRIOR,
): SettledWhite {
  const tapped = tap === undefined ? undefined : readTapped(frame, tap);
  const settled = tapped ?? findSheet(frame, exclude) ?? estimateLight(frame, exclude, plantAt, prior);
  return settled.exposure === undefined
    ? { ...settled, guessedExposure: guessExposure(frame, exclude, settled.gains) }
    : settled;
}

/**
 * Luminance of the ground of a picture on the whole, full white = 1. Light meters are set to some 0.13 of what falls in (ISO
 * 2720, from memory). Fitted on 22 of the leaves that `papaya-spad` shows on paper and in place; `training/compare-papaya.ts`
 * tries it on all.
 */
const GROUND_REFLECTS = 0.1;
/** How far that is believed, stops; and where the leaf leaves nothing to see of the ground. */
const GUESSED_STOPS = { least: -2.25, most: 0.5, blind: -1.15 };
const LEAST_GROUND = 0.05;

/** How bright the ground is under the gains says how the camera exposed; a lid burnt out to white says it best. */
function guessExposure(
  frame: Pixels,
  exclude: Uint8Array | undefined,
  gains: readonly [number, number, number],
): number {
  let light = 0;
  let burnt = 0;
  let ground = 0;
  let looked = 0;
  const n = frame.width * frame.height;
  for (let i = 0; i < n; i += Math.max(3, Math.floor(n / 100_000))) {
    looked++;
    if (exclude?.[i] === 255) continue;
    ground++;
    const [r, g, b] = [0, 1, 2].map((c) => frame.data[i * 4 + c]!) as [number, number, number];
    if (Math.min(r, g, b) >= 250) burnt++;
    light +=
      0.2126 * gains[0] * LINEAR_OF_BYTE[r]! +
      0.7152 * gains[1] * LINEAR_OF_BYTE[g]! +
      0.0722 * gains[2] * LINEAR_OF_BYTE[b]!;
  }
  if (burnt > BURNT_SHEET * looked) return PAPER;
  if (ground < LEAST_GROUND * looked) return 2 ** GUESSED_STOPS.blind;
  const stops = Math.log2(GROUND_REFLECTS / Math.max(1e-4, light / ground));
  return 2 ** Math.max(GUESSED_STOPS.least, Math.min(GUESSED_STOPS.most, stops));
}

/** Gains that make a linear colour grey, held within what real lights do (CIE A needs 0.45 and 3.5). */
function gainsFor(r: number, g: number, b: number): [number, number, number] {
  const held = (v: number): number => Math.max(0.35, Math.min(4.5, v));
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
/**
 * Error of an estimate: between what retakes by script ask, and what 22 leaves of `papaya-spad` on paper and in place do
 * (`training/compare-papaya.ts` tries it on all).
 */
const ESTIMATED_SE = 7;

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

/**
 * Natural lights and lamps lie on a line from blue to amber; here its direction in log R/G, log B/G of linear sRGB, from CIE
 * D50 to D65 (CIE 15). Reddish soil, skin and foliage lie off it, and only what lies on it is taken for light (the
 * illuminant constraint of Finlayson and Hordley 1999, "Selection for gamut mapping colour constancy").
 */
const DAYLIGHT: readonly [number, number] = [0.53, -0.85];
/** Where a linear colour lies along the line of daylight (above 0: amber) and beside it (above 0: towards magenta). */
function placeOnDaylight(r: number, g: number, b: number): { along: number; beside: number } {
  const red = Math.log(Math.max(1e-4, r) / Math.max(1e-4, g));
  const blue = Math.log(Math.max(1e-4, b) / Math.max(1e-4, g));
  return { along: DAYLIGHT[0] * red + DAYLIGHT[1] * blue, beside: DAYLIGHT[0] * blue - DAYLIGHT[1] * red };
}

/** Cells of the grid on which a sheet is looked for, along the longer side. */
const GRID = 96;
/** A cell may be part of a sheet: bright, near grey or of a lamp's warmth, without grain. */
const LEAST_BRIGHTNESS = 0.4;
const MOST_CHROMA = 12;
/** Reach of lights on the line of daylight (CIE A lies at 1.5, a blue sky at −0.6), and how far beside it. */
const MOST_AMBER = 1.7;
const MOST_BLUE = 0.6;
const MOST_BESIDE = 0.12;
const MOST_GRAIN = 0.02;
/** Least share of the frame: a plant label at arm's length. */
const LEAST_SHEET = 0.012;
/**
 * A patch smaller than this is a sheet or label only if hardly anything in the frame is brighter: pale soil and walls lay at
 * 0.45–0.8 of the brightest hundredth in 23 of 25 places that were wrongly taken for a sheet on `papaya-spad` in place.
 */
const LARGE_SHEET = 0.06;
const LEAST_OF_BRIGHTEST = 0.82;
/** Luminance of white paper (0.8–0.9; common practice, no source). */
const PAPER = 0.85;

/** A sheet of paper, label or card: the largest bright, even, nearly grey region outside the leaf. */
/** Byte of every channel from which a sheet has burnt out to white. */
const BURNT_WHITE = 246;

/**
 * Whether a sheet, label or card lies in the frame, outside what is excluded (255): one that tells the colour of the light, or one
 * that the camera has burnt out to white.
 */
export function hasSheet(frame: Pixels, exclude?: Uint8Array): boolean {
  if (findSheet(frame, exclude)) return true;
  const { data } = frame;
  const n = frame.width * frame.height;
  let white = 0;
  for (let i = 0; i < n; i++) {
    if (exclude?.[i]) continue;
    if (Math.min(data[4 * i]!, data[4 * i + 1]!, data[4 * i + 2]!) >= BURNT_WHITE) white++;
  }
  return white >= LEAST_SHEET * n;
}

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
  if (best.share < LARGE_SHEET && best.g < LEAST_OF_BRIGHTEST * brightest(light)) return undefined;
  const gains = gainsFor(best.r, best.g, best.b);
  const found: SettledWhite = { from: 'found', gains, se: FOUND_SE + 0.15 * castOf(gains) };
  return best.share < LARGE_SHEET ? found : { ...found, exposure: PAPER / best.g };
}

/** Green of the brightest hundredth of the cells, linear light. */
function brightest(light: Float32Array): number {
  const green = light.filter((_, k) => k % 3 === 1).sort();
  return green[Math.floor(0.99 * (green.length - 1))] ?? 0;
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
  if (leaf > 0 || Math.max(r, g, b) / n < LEAST_BRIGHTNESS || full > 0.5 * n) return;
  const [, labA, labB] = convertLinearToLab(r / n, g / n, b / n);
  // Greenish greys are leaves' undersides and walls in green shade; real lights do not go there. Lamplight lies from
  // yellow to orange, sky light is blue; straw and soil, cloth and sky are so too, but have grain or are no sheet.
  const chroma = Math.hypot(labA * (labA < 0 ? 1.6 : 1), labB);
  const { along, beside } = placeOnDaylight(r, g, b);
  const ofLight = Math.abs(beside) < MOST_BESIDE && along < MOST_AMBER && along > -MOST_BLUE;
  const grainLimit = chroma < MOST_CHROMA ? MOST_GRAIN : 0.3 * MOST_GRAIN;
  if ((chroma < MOST_CHROMA || ofLight) && Math.sqrt(grain / n) < grainLimit) fits[k] = 1;
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
 * Without a sheet the light is told from what is bright and no plant: of all statistics of a picture, the mean colour of
 * its bright, unclipped pixels serves best (Vaezi Joze, Drew, Finlayson and Troncoso Rey 2012, "The role of bright pixels in
 * illumination estimation", CIC 20). On `papaya-spad` in place the rank correlation of the dark green index with the meter
 * is 0.83 uncorrected, 0.87 with shades of grey over the ground and 0.89 with its bright pixels.
 */
const LEAST_BRIGHT = 0.34;
const MOST_BYTE = 240;
/** Least share of the frame that must be so bright. */
const LEAST_SHARE = 0.003;
/**
 * From the mean of what is bright to the light, by a fixed correction as in Finlayson 2013 ("Corrected-moment illuminant
 * estimation"): pale ground is amber by `ground` on that line; a cast shows weaker in the highlights, where a camera's
 * curve is flat, than in the middle tones of leaves, by `highlights`; and light among leaves, as cameras render it, is
 * greener by `greenShade` (log of R over G). Fitted on leaves photographed twice (`papaya-spad`, on paper and in place: one
 * greenhouse, one telephone; ten-fold by leaf in `training/check-chlorosis.ts`).
 */
export interface LightPrior {
  readonly ground: number;
  readonly highlights: number;
  readonly greenShade: number;
}
export const LIGHT_PRIOR: LightPrior = { ground: 0.2, highlights: 1.25, greenShade: 0.1 };
/**
 * Cast up to which the estimate is believed, CIELAB units of a mid grey. Cameras balance their pictures already, so a
 * stronger one may be a brown table as well as a brown light: half of the rest is taken away, and the error grows with it.
 */
const BELIEVED_CAST = 8;
const BEYOND_SE = 0.4;
/** Dark soils lie at 0.2 to 0.9 on the line of daylight (sRGB of Munsell 10YR to 5YR, from memory); error where they are all. */
const SOIL = 0.55;
const SOIL_SPREAD = 0.35;
const DARK_GROUND_SE = 9;
/** Share of the frame that is full white above which the leaf lies on a burnt-out sheet or scanner lid: neutral, no more. */
const BURNT_SHEET = 0.15;

function estimateLight(
  frame: Pixels,
  exclude: Uint8Array | undefined,
  plantAt: (pixel: number) => number,
  prior: LightPrior,
): SettledWhite {
  const bright: [number, number, number] = [0, 0, 0];
  const ground: [number, number, number] = [0, 0, 0];
  let brightPart = 0;
  let looked = 0;
  let burnt = 0;
  const n = frame.width * frame.height;
  const stride = Math.max(3, Math.floor(n / 100_000));
  for (let i = 0; i < n; i += stride) {
    looked++;
    if (exclude?.[i] === 255) continue;
    const red = frame.data[i * 4]!;
    const green = frame.data[i * 4 + 1]!;
    const blue = frame.data[i * 4 + 2]!;
    if (Math.min(red, green, blue) >= 250) burnt++;
    if (Math.max(red, green, blue) >= MOST_BYTE) continue;
    const weight = 1 - plantAt(i);
    if (weight <= 0) continue;
    const r = LINEAR_OF_BYTE[red]!;
    const g = LINEAR_OF_BYTE[green]!;
    const b = LINEAR_OF_BYTE[blue]!;
    const isBright = 0.2126 * r + 0.7152 * g + 0.0722 * b >= LEAST_BRIGHT;
    ground[0] += weight * r;
    ground[1] += weight * g;
    ground[2] += weight * b;
    if (!isBright) continue;
    brightPart += weight;
    bright[0] += weight * r;
    bright[1] += weight * g;
    bright[2] += weight * b;
  }
  if (burnt > BURNT_SHEET * looked) return { from: 'estimated', gains: [1, 1, 1], se: ESTIMATED_SE };
  if (brightPart >= LEAST_SHARE * looked) {
    const size = prior.highlights * (placeOnDaylight(...bright).along - prior.ground);
    return removeCast(size, prior.greenShade, ESTIMATED_SE);
  }
  if (ground[1] === 0) return { from: 'estimated', gains: [1, 1, 1], se: DARK_GROUND_SE };
  // Dark ground says little: only a cast stronger than any soil's own is light.
  const beyond = placeOnDaylight(...ground).along - SOIL;
  const size = Math.sign(beyond) * Math.max(0, Math.abs(beyond) - SOIL_SPREAD);
  return removeCast(size, 0, DARK_GROUND_SE);
}

/**
 * Takes away a cast of the given size on the line of daylight (above 0: amber), as far as it is believed, and makes up for
 * green shade (log of R over G).
 */
function removeCast(size: number, shade: number, se: number): SettledWhite {
  const at = (t: number): [number, number, number] => [
    Math.exp(shade - t * DAYLIGHT[0]),
    1,
    Math.exp(-t * DAYLIGHT[1]),
  ];
  const cast = castOf([Math.exp(-size * DAYLIGHT[0]), 1, Math.exp(-size * DAYLIGHT[1])]);
  const beyond = 0.5 * Math.max(0, cast - BELIEVED_CAST);
  return {
    from: 'estimated',
    gains: at((size * (cast - beyond)) / Math.max(1e-6, cast)),
    se: se + BEYOND_SE * beyond,
  };
}

function median(values: readonly number[]): number {
  const sorted = values.slice().sort((p, q) => p - q);
  return sorted[sorted.length >> 1] ?? 0;
}
