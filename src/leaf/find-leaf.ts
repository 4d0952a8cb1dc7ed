import { convertPixelsToLab, type LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { scaleByBoxes } from '../photo/scale-to-working-frame.ts';
import type { Pixels, Spot } from '../photo/types.ts';
import { indexColours } from './colour-model.ts';
import { findCentre } from './find-centre.ts';
import { findHoles } from './find-holes.ts';
import { guessOutline, NETWORK_PX, NETWORK_STEP_PX } from './guess-outline.ts';
import { joinSeeds } from './join-seeds.ts';
import { judgePlant } from './judge-plant.ts';
import { fillHoles, labelRegions } from './label-regions.ts';
import { letGoOfGround } from './let-go-of-ground.ts';
import { type Proposal, proposeOutlines, type Seeds } from './propose-outlines.ts';
import { enlargeMask, type GridMask, refineOutline, resamplePlane } from './refine-outline.ts';
import type { OutlineScore } from './score-outline.ts';
import { shedShadow } from './shed-shadow.ts';
import type { Taps } from './types.ts';

/** A leaf as found: the filled outline, the tissue that is there, and how well the outline is bounded. */
export interface FoundLeaf {
  readonly outline: Uint8Array;
  readonly remaining: Uint8Array;
  /** Whether holes would have been seen had there been any. */
  readonly overPlainGround: boolean;
  readonly score: OutlineScore;
}

/** Pixels of the coarse frame on which outlines are proposed. */
const COARSE_PX = 9_000;
/** Radius of what a fingertip covers, over the shorter side of the frame. */
const TAP_RADIUS = 0.03;
/** Each refinement enlarges at most this much, so that the band it cuts stays narrow. */
const MOST_ENLARGED = 3;

/**
 * Finds the leaf in the working frame, from a tap or none, to the pixel.
 * @param frame working frame; `lab` its CIELAB planes before any white is set (outlines do not need true colours).
 */
export function findLeaf(frame: Pixels, lab: LabPlanes, taps: Taps = {}): FoundLeaf | undefined {
  const { width, height } = frame;
  const levels = buildLevels(frame, lab);
  const best = proposeBest(frame, levels[0]!, taps);
  if (best === undefined) return undefined;
  let mask: GridMask = { width: levels[0]!.width, height: levels[0]!.height, data: best.mask };
  for (let k = 1; k < levels.length; k++) mask = refineOutline(mask, levels[k - 1]!, levels[k]!);
  // Finer cuts may sever what holds the added places together.
  if (best.ways.length > 0) {
    const ways = {
      width: levels[0]!.width,
      height: levels[0]!.height,
      data: new Uint8Array(best.mask.length),
    };
    for (const i of best.ways) ways.data[i] = 255;
    enlargeMask(ways, width, height).forEach((there, i) => {
      if (there === 255) mask.data[i] = 255;
    });
  }
  const removed = (taps.remove ?? []).flatMap((spot) => discAt(lab, spot));
  for (const i of removed) mask.data[i] = 0;
  const filled = keepLargest(fillHoles(mask.data, width, height, removed), width, height);
  const tapped = [...(taps.leaf === undefined ? [] : [taps.leaf]), ...(taps.add ?? [])];
  const added = (taps.add ?? []).flatMap((spot) => discAt(lab, spot));
  const bare = shedShadow(lab, filled, added, () => {
    const { x, y } = findCentre(filled, width);
    const spots = tapped.length > 0 ? tapped : [{ x: x / width, y: y / height }];
    return guessOnGrid(frame, lab, spots, taps.remove ?? []);
  });
  const outline = bare === filled ? filled : keepLargest(bare, width, height);
  const { remaining, overPlainGround } = findHoles(lab, outline);
  const whole = letGoOfGround(outline, remaining, width, height)
    ? keepLargest(outline, width, height)
    : outline;
  return {
    outline: whole,
    remaining: whole === outline ? remaining : remaining.map((there, i) => (whole[i] === 255 ? there : 0)),
    overPlainGround,
    score: best.score,
  };
}

/** The picture from coarse to fine, the last being the working frame itself. */
function buildLevels(frame: Pixels, lab: LabPlanes): LabPlanes[] {
  const levels = [lab];
  let finer = frame;
  const coarse = Math.sqrt(COARSE_PX / (frame.width * frame.height));
  for (
    let shrink = Math.max(coarse, 1 / MOST_ENLARGED);
    coarse < 0.9;
    shrink = Math.max(coarse, shrink / MOST_ENLARGED)
  ) {
    const width = Math.max(16, Math.round(frame.width * shrink));
    const height = Math.max(16, Math.round(frame.height * shrink));
    finer = scaleByBoxes(finer, Math.min(width, finer.width), Math.min(height, finer.height));
    levels.unshift(convertPixelsToLab(finer));
    if (shrink === coarse) break;
  }
  return levels;
}

/** The best outline on the coarse frame, and the ways that join the places added to it. */
interface Best extends Proposal {
  readonly ways: readonly number[];
}

function proposeBest(frame: Pixels, lab: LabPlanes, taps: Taps): Best | undefined {
  const cells = indexColours(lab);
  const added = taps.add ?? [];
  const removed = taps.remove ?? [];
  const first = taps.leaf === undefined ? chooseStart(lab) : mendTap(frame, lab, taps.leaf, removed);
  // What is added belongs to the leaf that was found before, unless nothing there looked like one.
  const isOnlyAdded = taps.leaf === undefined && added.length > 0 && plantUnder(lab, first) < LEAST_PLANT;
  const spots = isOnlyAdded ? added : [first, ...added];
  const ground = removed.flatMap((spot) => discAt(lab, spot));
  const grounded = new Set(ground);
  const discs = spots
    .map((spot) => discAt(lab, spot).filter((i) => !grounded.has(i)))
    .filter((disc) => disc.length > 0);
  if (discs.length === 0) return undefined;
  const ways = joinSeeds(lab, discs, grounded);
  const seeds: Seeds = { leaf: [...discs.flat(), ...ways], ground };
  const [best] = proposeOutlines(lab, cells, seeds, () => guessOnGrid(frame, lab, spots, removed));
  return best && { ...best, ways };
}

const meanOf = (values: Float32Array, at: readonly number[]): number =>
  at.reduce((sum, i) => sum + values[i]!, 0) / at.length;
/** Mean share of plant colours under a fingertip. */
const plantUnder = (lab: LabPlanes, spot: Spot): number => meanOf(judgePlant(lab), discAt(lab, spot));

/** Below this share of plant colours under the finger, the tap may have missed. */
const LEAST_PLANT = 0.2;
/** Farthest from the tap that a missed leaf is looked for, over the shorter side of the frame. */
const MISSED_BY = 0.25;

/** A finger misses a small leaf now and then, or lies on the hand that holds it: the nearest place of what the network takes for the leaf. */
function mendTap(frame: Pixels, lab: LabPlanes, tap: Spot, removed: readonly Spot[]): Spot {
  const { width, height } = lab;
  if (plantUnder(lab, tap) > LEAST_PLANT) return tap;
  const odds = guessOnGrid(frame, lab, [tap], removed);
  if (odds === undefined || meanOf(odds, discAt(lab, tap)) > 0) return tap;
  let best = tap;
  let least = MISSED_BY * Math.min(width, height);
  for (let i = 0; i < odds.length; i++) {
    if (odds[i]! < 1) continue;
    const x = i % width;
    const y = (i / width) | 0;
    const far = Math.hypot(x + 0.5 - tap.x * width, y + 0.5 - tap.y * height);
    if (far >= least) continue;
    const spot = { x: (x + 0.5) / width, y: (y + 0.5) / height };
    if (meanOf(odds, discAt(lab, spot)) < 1) continue;
    best = spot;
    least = far;
  }
  return best;
}

/** What the network makes of the frame, carried over to the coarse grid; undefined for frames too small for it. */
function guessOnGrid(
  frame: Pixels,
  { width, height }: LabPlanes,
  leaf: readonly Spot[],
  ground: readonly Spot[],
): Float32Array | undefined {
  const shrink = Math.sqrt(NETWORK_PX / (frame.width * frame.height));
  const sideOf = (px: number): number =>
    Math.max(NETWORK_STEP_PX, NETWORK_STEP_PX * Math.round((px * shrink) / NETWORK_STEP_PX));
  const grid = { width: sideOf(frame.width), height: sideOf(frame.height) };
  if (grid.width > frame.width || grid.height > frame.height) return undefined;
  const lab = convertPixelsToLab(scaleByBoxes(frame, grid.width, grid.height));
  const placed = (spots: readonly Spot[]): [number, number][] =>
    spots.map(({ x, y }) => [x * grid.width, y * grid.height]);
  const odds = guessOutline(lab, { leaf: placed(leaf), ground: placed(ground) });
  return resamplePlane({ ...grid, data: odds }, width, height);
}

/** Pixels under a fingertip. */
function discAt(lab: LabPlanes, spot: Spot): number[] {
  const radius = Math.max(1, TAP_RADIUS * Math.min(lab.width, lab.height));
  const cx = Math.min(lab.width - 1, Math.floor(spot.x * lab.width));
  const cy = Math.min(lab.height - 1, Math.floor(spot.y * lab.height));
  const pixels: number[] = [];
  const reach = Math.ceil(radius);
  for (let y = Math.max(0, cy - reach); y <= Math.min(lab.height - 1, cy + reach); y++) {
    for (let x = Math.max(0, cx - reach); x <= Math.min(lab.width - 1, cx + reach); x++) {
      if (Math.hypot(x - cx, y - cy) <= radius) pixels.push(y * lab.width + x);
    }
  }
  return pixels;
}

/** Where to begin without a tap: the centre if it looks like a plant, else the nearest middle of a plant-like region. */
function chooseStart(lab: LabPlanes): Spot {
  const { width, height } = lab;
  const centre = { x: 0.5, y: 0.5 };
  const plant = judgePlant(lab);
  const disc = discAt(lab, centre);
  const share = disc.reduce((sum, i) => sum + plant[i]!, 0) / disc.length;
  if (share > 0.5) return centre;
  const radius = Math.max(2, Math.round(0.06 * Math.min(width, height)));
  let best = 0;
  let spot = centre;
  for (let y = radius; y < height - radius; y += 2) {
    for (let x = radius; x < width - radius; x += 2) {
      let sum = 0;
      let count = 0;
      for (let dy = -radius; dy <= radius; dy += 2) {
        for (let dx = -radius; dx <= radius; dx += 2) {
          sum += plant[(y + dy) * width + x + dx]!;
          count++;
        }
      }
      const off = Math.hypot(x / width - 0.5, y / height - 0.5);
      const worth = sum / count - 1.2 * off;
      if (sum / count > 0.6 && worth > best - 1) {
        best = worth + 1;
        spot = { x: (x + 0.5) / width, y: (y + 0.5) / height };
      }
    }
  }
  return spot;
}

function keepLargest(mask: Uint8Array, width: number, height: number): Uint8Array {
  const regions = labelRegions(mask, width, height, 255, 4);
  let largest = 0;
  for (let label = 1; label <= regions.count; label++) {
    if (largest === 0 || regions.sizes[label]! > regions.sizes[largest]!) largest = label;
  }
  return mask.map((_, i) => (regions.labels[i] === largest && largest > 0 ? 255 : 0));
}
