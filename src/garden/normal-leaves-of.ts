import type { NormalLeafRecord } from './ground-records.ts';
import { bedKey } from './group-by-bed.ts';

/** A plant as far as it decides which healthy leaves may stand beside it. */
export interface LeafWanted {
  readonly crop?: string | undefined;
  readonly variety?: string | undefined;
  /** Stage of growth, where it is known. */
  readonly stage?: string | undefined;
}

/** One key for every spelling of a variety: letter case and spaces do not make a second one. */
export const varietyKey = bedKey;

/** Are these leaves of one variety? Never where the crop or the variety was not said: leaf colours differ within a crop. */
export const sameVariety = (a: LeafWanted, b: LeafWanted): boolean =>
  Boolean(a.crop) &&
  a.crop === b.crop &&
  varietyKey(a.variety ?? '') !== '' &&
  varietyKey(a.variety ?? '') === varietyKey(b.variety ?? '');

/**
 * The healthy leaves on record that a plant may be held against: those of its variety, and of them those of its stage of
 * growth where there are any. In the order given; deleted ones are left out.
 */
export function normalLeavesOf(
  leaves: readonly NormalLeafRecord[],
  plant: LeafWanted,
): readonly NormalLeafRecord[] {
  const all = leaves.filter((leaf) => !leaf.deletedAt && sameVariety(leaf, plant));
  const ofStage = all.filter(({ stage }) => stage !== undefined && stage === plant.stage);
  return ofStage.length > 0 ? ofStage : all;
}
