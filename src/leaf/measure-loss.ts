import { guessEdgeLoss } from './guess-edge-loss.ts';
import { labelRegions } from './label-regions.ts';
import { measureDistances } from './measure-distances.ts';
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
 * lobes and hollow flanks do not. Errors: half a pixel along every border, and for the edge a share of what the
 * guess added, and of what a lobed leaf's halves are unlike.
 *
 * @param overPlainGround whether holes would have been seen; where not, and none was, holes are left out, not called 0.
 * @param holesInFrame count of holes (`countHoles`), taken where pixels are finest.
 * @param cutByFrame share of the outline that lies on the frame's rim: above 5 % the edge cannot be judged.
 */
export function measureLoss(
  sample: LeafSample,
  cutByFrame: number,
  overPlainGround: boolean,
  holesInFrame: Measured,
): Loss {
  const { width, height, outline, tissue, sizePx } = sample;
  const holes = new Uint8Array(outline.length);
  for (let i = 0; i < holes.length; i++) if (outline[i] === 255 && tissue[i] === 0) holes[i] = 255;
  const regions = labelRegions(holes, width, height, 255, 8);
  const least = Math.max(3, 1e-4 * sizePx * sizePx);
  let holeArea = 0;
  for (let k = 1; k <= regions.count; k++) {
    if (regions.sizes[k]! < least) continue;
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
  const judgesHoles = overPlainGround || holeArea > 0;
  if (judgesHoles) {
    measures['hole-fraction'] = { value: holeArea / whole, se: holeError };
    measures['hole-count'] = holesInFrame;
  }
  if (edge !== undefined) {
    const edgeError = Math.hypot(
      0.005,
      (edge.doubt * edgeArea) / whole,
      0.25 * edge.shallow,
      UNLIKE * edge.unlike,
    );
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

/** Loss that may be missed or made up per share of a lobed leaf unlike its mirror image; set on bitten papaya leaves. */
const UNLIKE = 0.9;
