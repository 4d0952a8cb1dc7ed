import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { growFromSeed, STEP_X, STEP_Y } from './grow-from-seed.ts';
import { judgePlant } from './judge-plant.ts';

/**
 * Ways between places that are all said to be of one leaf: from each to the first over what is coloured like a plant, along
 * which the colour changes least. Without them a cut may give every finger of a leaf a piece of its own, of which only one can be kept.
 *
 * @param places pixel indices of each place
 * @param ground what was said to be none of the leaf; no way leads over it
 * @returns pixel indices, each way as wide as three pixels so that a finer cut does not sever it
 */
export function joinSeeds(
  lab: LabPlanes,
  places: readonly (readonly number[])[],
  ground: ReadonlySet<number>,
): number[] {
  const [first, ...others] = places;
  if (first === undefined || others.length === 0) return [];
  const { width, height } = lab;
  const unlikePlant = judgePlant(lab).map((plant) => UNLIKE_PLANT * (1 - plant));
  const far = growFromSeed(lab, first, TOLL, SOFT, unlikePlant);
  for (const i of ground) far[i] = Number.POSITIVE_INFINITY;
  const ways = new Set<number>();
  for (const other of others) {
    let at = other.reduce((best, i) => (far[i]! < far[best]! ? i : best));
    while (far[at]! > 0) {
      const next = nearest(far, at, width, height);
      if (far[next]! >= far[at]!) break;
      for (const i of [at, ...beside(at, width, height)]) if (!ground.has(i)) ways.add(i);
      at = next;
    }
  }
  return [...ways];
}

/** Dearer than any step within the leaf: soil is smoother than a leaf between its veins. Set on drawn palmate leaves. */
const UNLIKE_PLANT = 3;
/** As `proposeOutlines` grows from its seeds. */
const TOLL = 0.012;
const SOFT = 9;

function* beside(at: number, width: number, height: number): Generator<number> {
  const x = at % width;
  const y = (at / width) | 0;
  for (let k = 0; k < 8; k++) {
    const nx = x + STEP_X[k]!;
    const ny = y + STEP_Y[k]!;
    if (nx >= 0 && ny >= 0 && nx < width && ny < height) yield ny * width + nx;
  }
}

function nearest(far: Float32Array, at: number, width: number, height: number): number {
  let best = at;
  for (const i of beside(at, width, height)) if (far[i]! < far[best]!) best = i;
  return best;
}
