import { labelRegions } from './label-regions.ts';
import { measureDistances } from './measure-distances.ts';
import { measureHull } from './measure-hull.ts';
import { mirrorLeaf } from './mirror-leaf.ts';
import type { LeafSample } from './sample-leaf.ts';

/** What is thought to be bitten off the edge. */
export interface EdgeGuess {
  /** 255 where tissue is missing, on the sample's grid. */
  readonly missing: Uint8Array;
  /** Share of the guessed area that may be wrong. */
  readonly doubt: number;
  /** Share of the leaf in pieces that were left out: what may have been overlooked. */
  readonly shallow: number;
  /** Share of a lobed leaf that its own mirror image does not cover, the bites apart: how little the halves tell of each other. */
  readonly unlike: number;
}

/** Area over hull above which a leaf counts as near convex. */
const NEAR_CONVEX = 0.88;
/** The same with its mirror image laid over it: one large bite does not make a leaf lobed. */
const CONVEX_TOGETHER = 0.95;
/** Depth of a bite, in roots of the leaf's area, below which a dent is taken for the leaf's own shape. */
const LEAST_DEPTH = 0.028;
/** Deeper than this many times a leaf's own teeth is a bite. */
const TOOTH_FACTOR = 1.5;
const LEAST_TEETH = 8;
/** Overlap over union with another dent's mirror image from which two dents are the leaf's own shape. */
const TWIN_OVERLAP = 0.4;
/** Flanks of a drawn-out tip are shallow: half their depth is under this share of the leaf's size. */
const MOST_TWIN_DEPTH = 0.05;
/** A dent across the midrib fuller than this, over its own length and width, is a bite and not the notch at the stalk. */
const NOTCH_FULL = 0.55;
/** Share of a piece lacking on one half that must lie in a hollow of the outline, narrower than this many leaf sizes. */
const HOLLOW_SHARE = 0.4;
const HOLLOW_SIZE = 0.3;

/**
 * Guesses what is missing from a leaf's edge. A near convex leaf, or one that is so with its mirror image laid over it, is closed by its hull; dents that its other half has too,
 * such as the flanks of a drawn-out tip or the notch at the stalk, are its own shape. Any other leaf is completed by its
 * own mirror image, but only where its outline turns inward: a lobe that merely stands elsewhere on the other half leaves
 * no hollow. In both only deep pieces count, so that teeth do not.
 */
export function guessEdgeLoss(sample: LeafSample): EdgeGuess {
  const { width, height, outline, sizePx } = sample;
  const hull = measureHull(outline, width, height);
  const area = countOf(outline);
  const within = fillPolygon(hull.corners, width, height);
  const mirrored = mirrorLeaf(sample);
  let either = 0;
  let both = 0;
  for (let i = 0; i < outline.length; i++) {
    if (within[i] === 255 && (outline[i] === 255 || mirrored.mask[i] === 255)) either++;
    if (outline[i] === 255 && mirrored.mask[i] === 255) both++;
  }
  const convex = area / hull.areaPx > NEAR_CONVEX || either / hull.areaPx > CONVEX_TOGETHER;
  const lacking = new Uint8Array(outline.length);
  for (let i = 0; i < lacking.length; i++) {
    if (within[i] === 255 && outline[i] === 0 && (convex || mirrored.mask[i] === 255)) lacking[i] = 255;
  }
  // Opening breaks the thin ties between a bite and the slivers along the rest of the outline.
  const depth = measureDistances(lacking, width, height, 255);
  const half = Math.max(0.5 * LEAST_DEPTH * sizePx, TOOTH_FACTOR * typicalTooth(depth, sample));
  const missing = openMask(lacking, depth, half, width, height);
  const found = countOf(missing);
  if (found > 0) {
    if (convex) dropTwins(missing, depth, MOST_TWIN_DEPTH * sizePx, mirrored.imageOf, width, height);
    else
      keepPieces(
        missing,
        closeMask(outline, width, height, HOLLOW_SIZE * sizePx),
        HOLLOW_SHARE,
        width,
        height,
      );
  }
  const shallow = (countOf(lacking) - countOf(missing)) / area;
  const unlike = convex ? 0 : Math.max(0, (area - both - countOf(missing)) / area);
  return { missing, doubt: convex ? 0.12 : 0.35, shallow, unlike };
}

/** What of a mask can be reached by a disc of radius `half` px that lies within it, and a little more. */
function openMask(
  mask: Uint8Array,
  depth: Float32Array,
  half: number,
  width: number,
  height: number,
): Uint8Array {
  const beyond = Uint8Array.from(depth, (d) => (d > half ? 0 : 255));
  if (beyond.every((v) => v === 255)) return new Uint8Array(mask.length);
  const toCore = measureDistances(beyond, width, height, 255);
  return mask.map((v, i) => (v === 255 && toCore[i]! <= half * 1.6 ? 255 : 0));
}

/** A mask with every hollow filled that a disc of `radius` px cannot enter. */
function closeMask(mask: Uint8Array, width: number, height: number, radius: number): Uint8Array {
  const margin = Math.ceil(radius) + 2;
  const wide = width + 2 * margin;
  const high = height + 2 * margin;
  const room = new Uint8Array(wide * high).fill(255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (mask[y * width + x] === 255) room[(y + margin) * wide + x + margin] = 0;
    }
  }
  const toLeaf = measureDistances(room, wide, high, 255);
  const near = Uint8Array.from(toLeaf, (d) => (d <= radius ? 255 : 0));
  const toFree = measureDistances(near, wide, high, 255);
  const closed = new Uint8Array(mask.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (toFree[(y + margin) * wide + x + margin]! > radius) closed[y * width + x] = 255;
    }
  }
  return closed;
}

/**
 * Takes out dents that another dent mirrors, and the cusp that a heart-shaped leaf has at its stalk: those are the leaf's
 * own shape. A dent that lies across the midrib is its own mirror image, so for it only its shape can tell.
 */
function dropTwins(
  mask: Uint8Array,
  depth: Float32Array,
  mostDepth: number,
  imageOf: (i: number) => number,
  width: number,
  height: number,
): void {
  const { labels, sizes, count } = labelRegions(mask, width, height, 255, 8);
  const shared = new Int32Array((count + 1) * (count + 1));
  for (let i = 0; i < mask.length; i++) {
    if (labels[i] === 0) continue;
    const image = imageOf(i);
    if (image >= 0) shared[labels[i]! * (count + 1) + labels[image]!]!++;
  }
  const deepest = new Float32Array(count + 1);
  for (let i = 0; i < mask.length; i++) deepest[labels[i]!] = Math.max(deepest[labels[i]!]!, depth[i]!);
  const isOwnShape = new Uint8Array(count + 1);
  for (let piece = 1; piece <= count; piece++) {
    for (let other = 1; other <= count; other++) {
      const both = shared[piece * (count + 1) + other]!;
      const alike = both / (sizes[piece]! + sizes[other]! - both);
      if (alike < TWIN_OVERLAP) continue;
      const isFlank = other !== piece && deepest[piece]! < mostDepth;
      if (isFlank || (other === piece && measureFullness(labels, piece, sizes[piece]!, width) < NOTCH_FULL)) {
        isOwnShape[piece] = 1;
      }
    }
  }
  for (let i = 0; i < mask.length; i++) if (isOwnShape[labels[i]!] === 1) mask[i] = 0;
}

/** Area of a piece over that of the rectangle about it, along its own axes: a disc 0.79, a triangle 0.5, a cusp less. */
function measureFullness(labels: Int32Array, label: number, size: number, width: number): number {
  let mx = 0;
  let my = 0;
  const pixels: number[] = [];
  for (let i = 0; i < labels.length; i++) {
    if (labels[i] !== label) continue;
    pixels.push(i);
    mx += (i % width) / size;
    my += ((i / width) | 0) / size;
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const i of pixels) {
    const dx = (i % width) - mx;
    const dy = ((i / width) | 0) - my;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const reach = [0, 0, 0, 0];
  for (const i of pixels) {
    const dx = (i % width) - mx;
    const dy = ((i / width) | 0) - my;
    const along = dx * Math.cos(angle) + dy * Math.sin(angle);
    const across = dy * Math.cos(angle) - dx * Math.sin(angle);
    reach[0] = Math.max(reach[0]!, along);
    reach[1] = Math.max(reach[1]!, -along);
    reach[2] = Math.max(reach[2]!, across);
    reach[3] = Math.max(reach[3]!, -across);
  }
  return size / ((reach[0]! + reach[1]! + 1) * (reach[2]! + reach[3]! + 1));
}

/** Takes out of a mask every piece of which `by` covers less than a share. */
function keepPieces(mask: Uint8Array, by: Uint8Array, share: number, width: number, height: number): void {
  const { labels, sizes, count } = labelRegions(mask, width, height, 255, 8);
  const covered = new Int32Array(count + 1);
  for (let i = 0; i < mask.length; i++) if (by[i] === 255) covered[labels[i]!]!++;
  for (let i = 0; i < mask.length; i++) {
    const label = labels[i]!;
    if (label > 0 && covered[label]! < share * sizes[label]!) mask[i] = 0;
  }
}

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
