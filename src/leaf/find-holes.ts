import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { indexColours, modelColours } from './colour-model.ts';
import { colourStep } from './grow-from-seed.ts';
import { labelRegions } from './label-regions.ts';
import { type PlainGround, settleBareGround } from './settle-bare-ground.ts';

export interface FoundHoles {
  /** 255 where tissue is there. */
  readonly remaining: Uint8Array;
  /** Whether holes would have been seen: only over a plain ground can their absence be told. */
  readonly overPlainGround: boolean;
}

/**
 * Finds where the ground shows through a leaf. `outline` is the filled leaf; the result has 255 where tissue is there.
 *
 * A hole shows what lies around the leaf, so the colours inside are held against those outside. Colour alone would
 * punch out brown spots over soil and powder over paper, so a piece counts as a hole only if its border is a sharp step
 * and, over anything but a plain ground (paper, scanner lid, cloth), if it is large and unlike the leaf besides.
 */
export function findHoles(lab: LabPlanes, outline: Uint8Array): FoundHoles {
  const { width, height } = lab;
  const cells = indexColours(lab);
  const inside = new Uint8Array(outline.length);
  const outside = new Uint8Array(outline.length);
  for (let i = 0; i < outline.length; i++) {
    if (outline[i] === 255) inside[i] = 1;
    else outside[i] = 1;
  }
  const ground = modelColours(cells, outside);
  const paper = describePlainGround(lab, outline);
  const candidate = new Uint8Array(outline.length);
  // Twice, because the first model of the leaf still has the holes in it.
  for (let round = 0; round < 2; round++) {
    const leaf = modelColours(cells, inside);
    const groundLike = leaf.map((p, cell) => ((ground[cell]! + 1e-5) / (p + 1e-5) > LEAST_RATIO ? 1 : 0));
    for (let i = 0; i < outline.length; i++) {
      if (outline[i] !== 255) continue;
      const isGround = groundLike[cells[i]!] === 1 || (paper !== undefined && isNear(lab, i, paper));
      candidate[i] = isGround ? 1 : 0;
      inside[i] = isGround ? 0 : 1;
    }
  }
  const regions = labelRegions(candidate, width, height, 1, 8);
  const pieces = describePieces(lab, candidate, regions.labels, regions.count);
  const nats = new Float32Array(regions.count + 1);
  const leafNow = modelColours(cells, inside);
  for (let i = 0; i < outline.length; i++) {
    const cell = cells[i]!;
    if (regions.labels[i]! > 0) {
      nats[regions.labels[i]!]! += Math.log((ground[cell]! + 1e-5) / (leafNow[cell]! + 1e-5));
    }
  }
  const groundNats = (label: number): number => nats[label]! / regions.sizes[label]!;
  let area = 0;
  for (let i = 0; i < outline.length; i++) if (outline[i] === 255) area++;
  const least = Math.max(4, area * 5e-5);
  const isHole = pieces.map(({ step }, label) => {
    const size = regions.sizes[label]!;
    if (paper !== undefined) return size >= least && step > SHARP_STEP;
    return (
      size >= LEAST_OVER_GRAIN * area &&
      step > SHARP_STEP_OVER_GRAIN &&
      groundNats(label) > LEAST_NATS_OVER_GRAIN
    );
  });
  if (paper !== undefined) {
    const seen = Uint8Array.from(regions.labels, (label) => (isHole[label] === true ? 1 : 0));
    return { remaining: settleBareGround(lab, outline, seen, inside, paper), overPlainGround: true };
  }
  const remaining = settleBorders(lab, outline, regions.labels, isHole, pieces);
  return { remaining, overPlainGround: false };
}

/**
 * Takes the holes out of the outline with their borders where a pixel is half hole, half leaf: each pixel within three
 * of a hole's border goes to the nearer of the hole's mean colour and the leaf's just beyond.
 */
function settleBorders(
  lab: LabPlanes,
  outline: Uint8Array,
  labels: Int32Array,
  isHole: readonly boolean[],
  pieces: readonly Piece[],
): Uint8Array {
  const { width } = lab;
  const remaining = outline.slice();
  const owner = new Int32Array(outline.length);
  let rim: number[] = [];
  for (let i = 0; i < outline.length; i++) {
    if (isHole[labels[i]!] !== true) continue;
    remaining[i] = 0;
    owner[i] = labels[i]!;
    if ([1, -1, width, -width].some((d) => labels[i + d] !== labels[i])) rim.push(i);
  }
  const border = rim.slice();
  const sums = new Float64Array(isHole.length * 4);
  for (let step = 1; step <= BORDER_PX + 2; step++) {
    const next: number[] = [];
    for (const i of rim) {
      for (const d of [1, -1, width, -width]) {
        const to = i + d;
        if (outline[to] !== 255 || owner[to] !== 0) continue;
        const label = owner[i]!;
        owner[to] = label;
        next.push(to);
        if (step <= BORDER_PX) continue;
        sums[label * 4]! += lab.L[to]!;
        sums[label * 4 + 1]! += lab.a[to]!;
        sums[label * 4 + 2]! += lab.b[to]!;
        sums[label * 4 + 3]!++;
      }
    }
    if (step <= BORDER_PX) border.push(...next);
    rim = next;
  }
  for (const i of border) {
    const label = owner[i]!;
    const count = sums[label * 4 + 3]!;
    if (count === 0) continue;
    const { L, a, b } = pieces[label]!;
    const toHole = Math.hypot(lab.L[i]! - L, lab.a[i]! - a, lab.b[i]! - b);
    const toLeaf = Math.hypot(
      lab.L[i]! - sums[label * 4]! / count,
      lab.a[i]! - sums[label * 4 + 1]! / count,
      lab.b[i]! - sums[label * 4 + 2]! / count,
    );
    remaining[i] = toHole < toLeaf ? 0 : 255;
  }
  return remaining;
}

const BORDER_PX = 3;

/** How much commoner a colour must be in the ground than in the leaf. */
const LEAST_RATIO = Math.E;
/** Mean colour step across a hole's border, over three pixels, that a soft spot or a patch of powder does not reach. */
const SHARP_STEP = 7;
/**
 * Over soil or foliage a brown spot and a hole can look alike, so there a hole must be large, its border sharp and its
 * colour far commoner outside than in the leaf.
 */
const LEAST_OVER_GRAIN = 0.006;
const SHARP_STEP_OVER_GRAIN = 13;
const LEAST_NATS_OVER_GRAIN = 2.5;
/** Median distance from the median colour, and median step of L* over two pixels, of a plain ground at most. */
const PLAIN_SPREAD = 8;
const PLAIN_GRAIN = 1.6;

/** Near enough to a plain ground: its colour as it is or brighter, as scanner lids are under a hole. */
function isNear(lab: LabPlanes, i: number, ground: PlainGround): boolean {
  const dL = lab.L[i]! - ground.L;
  return dL > -14 && Math.hypot(lab.a[i]! - ground.a, lab.b[i]! - ground.b) < 10;
}

/** The colour of the ground if it is plain, shadows apart: pale, nearly grey and without grain. */
export function describePlainGround(lab: LabPlanes, outline: Uint8Array): PlainGround | undefined {
  const as: number[] = [];
  const bs: number[] = [];
  const Ls: number[] = [];
  const grain: number[] = [];
  const stride = Math.max(7, Math.floor(outline.length / 8000));
  for (let i = 2; i < outline.length; i += stride) {
    if (outline[i] === 255 || outline[i - 2] === 255) continue;
    as.push(lab.a[i]!);
    bs.push(lab.b[i]!);
    Ls.push(lab.L[i]!);
    grain.push(Math.abs(lab.L[i]! - lab.L[i - 2]!));
  }
  if (Ls.length < 50) return undefined;
  const L = median(Ls);
  const a = median(as);
  const b = median(bs);
  const off = Ls.map((v, k) => Math.hypot(0.5 * (v - L), as[k]! - a, bs[k]! - b));
  const isPlain =
    median(off) < PLAIN_SPREAD && median(grain) < PLAIN_GRAIN && Math.hypot(a, b) < 16 && L > 45;
  return isPlain ? { L, a, b } : undefined;
}

interface Piece {
  readonly step: number;
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** Mean colour of every candidate piece, and the mean colour step over three pixels across its border. */
function describePieces(lab: LabPlanes, candidate: Uint8Array, labels: Int32Array, count: number): Piece[] {
  const { width, height } = lab;
  const sums = new Float64Array((count + 1) * 6);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      if (labels[i] === 0) continue;
      const k = labels[i]! * 6;
      sums[k]! += lab.L[i]!;
      sums[k + 1]! += lab.a[i]!;
      sums[k + 2]! += lab.b[i]!;
      sums[k + 3]!++;
      for (const stride of [-1, 1, -width, width]) {
        // Over three pixels, since a camera spreads an edge over as many.
        const beyond = i + 2 * stride;
        if (candidate[i + stride] === 1 || beyond < 0 || beyond >= labels.length) continue;
        sums[k + 4]! += colourStep(lab, labels[i - stride] === labels[i] ? i - stride : i, beyond);
        sums[k + 5]!++;
      }
    }
  }
  return Array.from({ length: count + 1 }, (_, label) => {
    const [L, a, b, n, step, steps] = sums.subarray(label * 6, label * 6 + 6) as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    return { step: steps > 0 ? step / steps : 0, L: L / n, a: a / n, b: b / n };
  });
}

/** Middle value, the upper one of two, of at least one number. */
export function median(values: readonly number[]): number {
  const sorted = values.slice().sort((p, q) => p - q);
  return sorted[sorted.length >> 1]!;
}
