import { NETWORK_MARKS } from '../../../src/classifier/calibration.ts';
import type { LeafExample } from '../../../src/classifier/own-head/leaf-example.ts';
import { seededNormals } from '../../seeded-normals.ts';

/** A garden's photos made up of numbers, with a known truth. */
export interface MadeUp {
  readonly seed: number;
  readonly plantings: number;
  readonly perPlanting: number;
  readonly features?: number;
  /** How far the mark moves the features along one direction, in units of a photo's own spread; 0: they know nothing of it. */
  readonly signal: number;
  /** What the shipped head knows of it: its log odds lie this far to either side, give or take one. */
  readonly shipped?: number;
}

/** Features that go together, as a network's do. */
const SHARED = 8;
/** Photos of one planting are more alike than others: spread between plantings, beside one within. */
const BETWEEN = 0.6;

/** Every other planting has white powder. */
export function makePhotos({
  seed,
  plantings,
  perPlanting,
  features = 64,
  signal,
  shipped = 0,
}: MadeUp): LeafExample[] {
  const normal = seededNormals(2 * seed + 1);
  const draws = (count: number, sd = 1): number[] => Array.from({ length: count }, () => sd * normal());
  // The first numbers of neighbouring seeds are alike.
  draws(20);
  const direction = draws(features);
  const length = Math.hypot(...direction);
  const shares = Array.from({ length: SHARED }, () => draws(features));
  return Array.from({ length: plantings }, (_, planting) => {
    const isThere = planting % 2 === 0;
    const side = isThere ? 1 : -1;
    const own = draws(features, BETWEEN);
    const ownShared = draws(SHARED, BETWEEN);
    return Array.from({ length: perPlanting }, (): LeafExample => {
      const shared = ownShared.map((value) => value + normal());
      const seen = own.map(
        (value, k) =>
          value +
          normal() +
          shares.reduce((sum, share, j) => sum + share[k]! * shared[j]!, 0) +
          (side * signal * Math.sqrt(features) * direction[k]!) / length,
      );
      return {
        planting: `planting ${planting}`,
        features: seen.map((value) => Math.max(0, value)),
        logits: NETWORK_MARKS.map(() => side * shipped + normal()),
        marks: new Map([['white-powder', isThere]]),
        camera: new Map(),
      };
    });
  }).flat();
}
