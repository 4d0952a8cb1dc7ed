import { labelRegions } from './label-regions.ts';
import { measureDistances } from './measure-distances.ts';
import { measureHull } from './measure-hull.ts';
import type { Measured, Measures } from './measures.ts';
import type { LeafSample } from './sample-leaf.ts';

/** What is missing of a leaf, and the whole leaf as it is thought to have been, on the sample's grid. */
export interface Loss {
  readonly measures: Measures;
  /** 255 where tissue is missing. */
  readonly missing: Uint8Array;
}

/**
 * Holes, edge loss and ribs left standing. Holes are what the outline encloses and tissue does not fill. Edge loss
 * needs a guess of the whole outline: leaves that are near convex are closed by their hull, others by their own mirror
 * image, since leaves are much alike on both sides; only deep pieces count that the mirror image fills, so that teeth,
 * lobes and hollow flanks do not. Errors: half a pixel along every border, and for the edge a share of what the guess added.
 *
 * @param overPlainGround whether holes would have been seen; where not, and none was, holes are left out, not called 0.
 * @param cutByFrame share of the outline that lies on the frame's rim: above 5 % the edge cannot be judged.
 */
export function measureLoss(sample: LeafSample, cutByFrame: number, overPlainGround: boolean): Loss {
  const { width, height, outline, tissue, sizePx } = sample;
  const holes = new Uint8Array(outline.length);
  for (let i = 0; i < holes.length; i++) if (outline[i] === 255 && tissue[i] === 0) holes[i] = 255;
  const regions = labelRegions(holes, width, height, 255, 8);
  const least = Math.max(3, 1e-4 * sizePx * sizePx);
  let holeCount = 0;
  let holeArea = 0;
  for (let k = 1; k <= regions.count; k++) {
    if (regions.sizes[k]! < least) continue;
    holeCount++;
    holeArea += regions.sizes[k]!;
  }
  for (let i = 0; i < holes.length; i++) {
    if (holes[i] === 255 && regions.sizes[regions.labels[i]!]! < least) holes[i] = 0;
  }
  const area = countOf(outline);
  const edge = cutByFrame > 0.05 ? undefined : guessEdgeLoss(sample);
  const edgeArea = edge === undefined ? 0 : countOf(edge.missing);
  const whole = area + edgeArea;
  const missing = holes;
  if (edge !== undefined)
    for (let i = 0; i < missing.length; i++) if (edge.missing[i] === 255) missing[i] = 255;

  const border = borderOf(holes, width);
  const borderError = (0.35 * Math.sqrt(border) + 0.02 * holeArea) / whole;
  const holeError = Math.hypot(borderError, 0.0015);
  const measures: { -readonly [Id in keyof Measures]: Measures[Id] } = {};
  const judgesHoles = overPlainGround || holeCount > 0;
  if (judgesHoles) {
    measures['hole-fraction'] = { value: holeArea / whole, se: holeError };
    measures['hole-count'] = { value: holeCount, se: Math.sqrt(0.1 + 0.15 * holeCount) };
  }
  if (edge !== undefined) {
    const edgeError = Math.hypot(0.005, (edge.doubt * edgeArea) / whole, 0.25 * edge.shallow);
    measures['edge-loss-fraction'] = { value: edgeArea / whole, se: edgeError };
    if (judgesHoles) {
      const se = Math.hypot(holeError, edgeError);
      measures['lost-fraction'] = { value: (holeArea + edgeArea) / whole, se };
    }
  }
  const ribs = !judgesHoles ? undefined : measureRibs(sample, missing, (holeArea + edgeArea) / whole);
  if (ribs !== undefined) measures['ribs-left'] = ribs;
  return { measures, missing };
}

interface EdgeGuess {
  readonly missing: Uint8Array;
  /** Share of the guessed area that may be wrong. */
  readonly doubt: number;
  /** Share of the leaf in shallow pieces that were left out. */
  readonly shallow: number;
}

/** Area over hull above which a leaf counts as near convex. */
const NEAR_CONVEX = 0.88;
/** Depth of a bite, in roots of the leaf's area, below which a dent is taken for the leaf's own shape. */
const LEAST_DEPTH = 0.028;

/** Deeper than this many times a leaf's own teeth is a bite. */
const TOOTH_FACTOR = 1.5;
const LEAST_TEETH = 8;

/** Median reach of the dents between the teeth of a toothed leaf, px; 0 when there are too few to be teeth. */
function typicalTooth(depth: Float32Array, sample: LeafSample): number {
  // Dents hang together through slivers along the hull, so only what lies deeper than a pixel is told apart.
  const cores = Uint8Array.from(depth, (d) => (d > Math.max(1, 0.004 * sample.sizePx) ? 255 : 0));
  const regions = labelRegions(cores, sample.width, sample.height, 255, 8);
  if (regions.count < LEAST_TEETH) return 0;
  const most = new Float32Array(regions.count);
  for (let i = 0; i < depth.length; i++) {
    const label = regions.labels[i]!;
    if (label > 0 && depth[i]! > most[label - 1]!) most[label - 1] = depth[i]!;
  }
  return most.sort()[regions.count >> 1]!;
}

function guessEdgeLoss(sample: LeafSample): EdgeGuess {
  const { width, height, outline, sizePx } = sample;
  const hull = measureHull(outline, width, height);
  const area = countOf(outline);
  const convex = area / hull.areaPx > NEAR_CONVEX;
  const hullMask = fillPolygon(hull.corners, width, height);
  const mirrored = mirrorLeaf(sample);
  const guess = convex
    ? hullMask
    : outline.map((v, i) => (v === 255 || (mirrored[i] === 255 && hullMask[i] === 255) ? 255 : 0));
  const lacking = new Uint8Array(outline.length);
  for (let i = 0; i < lacking.length; i++) if (guess[i] === 255 && outline[i] === 0) lacking[i] = 255;
  // Opening breaks the thin ties between a bite and the slivers along the rest of the outline.
  const depth = measureDistances(lacking, width, height, 255);
  const thick = new Uint8Array(lacking.length);
  const half = Math.max(0.5 * LEAST_DEPTH * sizePx, TOOTH_FACTOR * typicalTooth(depth, sample));
  for (let i = 0; i < thick.length; i++) if (depth[i]! > half) thick[i] = 255;
  const cores = labelRegions(thick, width, height, 255, 8);
  if (cores.count === 0) return { missing: thick.fill(0), doubt: 0.2, shallow: countOf(lacking) / area };
  const toCore = measureDistances(
    thick.map((v) => 255 - v),
    width,
    height,
    255,
  );
  const missing = new Uint8Array(lacking.length);
  let shallow = 0;
  for (let i = 0; i < missing.length; i++) {
    if (lacking[i] !== 255) continue;
    if (toCore[i]! <= half * 1.6) missing[i] = 255;
    else shallow++;
  }
  if (convex) shallow += dropTwinDents(missing, mirrored, width, height);
  return { missing, doubt: convex ? 0.12 : 0.35, shallow: shallow / area };
}

/**
 * Takes out dents that the other half of the leaf has too, such as the hollow flanks of a drawn-out tip: they are the
 * leaf's own shape. Returns how many pixels went.
 */
function dropTwinDents(missing: Uint8Array, mirrored: Uint8Array, width: number, height: number): number {
  const regions = labelRegions(missing, width, height, 255, 8);
  const covered = new Int32Array(regions.count + 1);
  for (let i = 0; i < missing.length; i++) if (mirrored[i] === 255) covered[regions.labels[i]!]!++;
  let dropped = 0;
  for (let i = 0; i < missing.length; i++) {
    const label = regions.labels[i]!;
    if (label === 0 || covered[label]! >= TWIN_SHARE * regions.sizes[label]!) continue;
    missing[i] = 0;
    dropped++;
  }
  return dropped;
}

/** Share of a dent that the mirror image must fill for it to count as bitten. */
const TWIN_SHARE = 0.1;

/** Mirror image of the leaf over the axis that it matches best. */
function mirrorLeaf(sample: LeafSample): Uint8Array {
  const { width, height, outline } = sample;
  const points: number[] = [];
  let mx = 0;
  let my = 0;
  const stride = Math.max(1, Math.floor(outline.length / 4000));
  for (let i = 0; i < outline.length; i += stride) {
    if (outline[i] !== 255) continue;
    points.push(i);
    mx += i % width;
    my += (i / width) | 0;
  }
  mx /= points.length;
  my /= points.length;
  let bestMatch = -1;
  let best: [number, number] = [0, 0];
  for (let step = 0; step < 60; step++) {
    const angle = (step * Math.PI) / 60;
    for (const shift of [-0.06, -0.03, 0, 0.03, 0.06]) {
      const match = countMirrored(sample, points, mx, my, angle, shift * sample.sizePx);
      if (match > bestMatch) {
        bestMatch = match;
        best = [angle, shift * sample.sizePx];
      }
    }
  }
  return mirrorMask(outline, width, height, mx, my, ...best);
}

/** How many of the points fall on the leaf again when mirrored. */
function countMirrored(
  { width, height, outline }: LeafSample,
  points: readonly number[],
  cx: number,
  cy: number,
  angle: number,
  shift: number,
): number {
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  let match = 0;
  for (const i of points) {
    const x = i % width;
    const y = (i / width) | 0;
    const off = 2 * ((x - cx) * nx + (y - cy) * ny - shift);
    const sx = Math.round(x - off * nx);
    const sy = Math.round(y - off * ny);
    if (sx >= 0 && sy >= 0 && sx < width && sy < height && outline[sy * width + sx] === 255) match++;
  }
  return match;
}

function mirrorMask(
  mask: Uint8Array,
  width: number,
  height: number,
  cx: number,
  cy: number,
  angle: number,
  shift: number,
): Uint8Array {
  const out = new Uint8Array(mask.length);
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const off = 2 * ((x - cx) * nx + (y - cy) * ny - shift);
      const sx = Math.round(x - off * nx);
      const sy = Math.round(y - off * ny);
      if (sx >= 0 && sy >= 0 && sx < width && sy < height && mask[sy * width + sx] === 255) {
        out[y * width + x] = 255;
      }
    }
  }
  return out;
}

/** Ribs: strips of tissue narrower than a thirtieth of the leaf with loss on both sides, over the border of the loss. */
function measureRibs(sample: LeafSample, missing: Uint8Array, lost: number): Measured | undefined {
  if (lost < 0.015) return undefined;
  const { width, height, tissue, sizePx } = sample;
  const reach = Math.max(1.5, 0.017 * sizePx);
  const away = measureDistances(
    missing.map((v) => 255 - v),
    width,
    height,
    255,
  );
  const grown = Uint8Array.from(away, (d) => (d <= reach ? 255 : 0));
  const back = measureDistances(grown, width, height, 255);
  let ribs = 0;
  for (let i = 0; i < tissue.length; i++) {
    if (tissue[i] === 255 && missing[i] === 0 && back[i]! > reach + 0.5) ribs++;
  }
  const border = borderOf(missing, width);
  const length = ribs / Math.max(1.5, reach);
  const value = Math.min(1, (2 * length) / Math.max(1, border));
  return { value, se: Math.max(0.04, 0.3 * value, 2 / Math.sqrt(Math.max(1, border))) };
}

/** Pixels of a mask that touch the outside through an edge. */
function borderOf(mask: Uint8Array, width: number): number {
  let border = 0;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] !== 255) continue;
    if (mask[i - 1] !== 255 || mask[i + 1] !== 255 || mask[i - width] !== 255 || mask[i + width] !== 255) {
      border++;
    }
  }
  return border;
}

function countOf(mask: Uint8Array): number {
  let count = 0;
  for (let i = 0; i < mask.length; i++) if (mask[i] === 255) count++;
  return count;
}

/** Pixels whose centres lie inside a convex polygon. */
function fillPolygon(
  corners: readonly (readonly [number, number])[],
  width: number,
  height: number,
): Uint8Array {
  const out = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    const at = y + 0.5;
    let left = Number.POSITIVE_INFINITY;
    let right = Number.NEGATIVE_INFINITY;
    for (const [k, [x0, y0]] of corners.entries()) {
      const [x1, y1] = corners[(k + 1) % corners.length]!;
      if (y0 === y1 || at < Math.min(y0, y1) || at > Math.max(y0, y1)) continue;
      const x = x0 + ((at - y0) / (y1 - y0)) * (x1 - x0);
      left = Math.min(left, x);
      right = Math.max(right, x);
    }
    for (let x = Math.max(0, Math.ceil(left - 0.5)); x < Math.min(width, right - 0.5 + 1e-9); x++) {
      out[y * width + x] = 255;
    }
  }
  return out;
}
