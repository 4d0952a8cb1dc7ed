import type { MarkScale } from '../mark-scale.ts';
import type { LeafExample } from './leaf-example.ts';

/**
 * How far a garden may differ from the shipped head before its photos say so: standard deviations, in log odds, of the prior on
 * the level, on the shipped head's weight and on all that the features say together (our own judgement).
 */
const PRIOR = { level: 1, logit: 1, features: 1 } as const;
/** A feature that hardly varies is as good as one that never does. */
const LEAST_SPREAD = 1e-4;

/** Three ways of telling a mark, from the least to the most: the camera alone, the shipped head set level, the garden's own head. */
export const WAYS = ['camera', 'shipped', 'own'] as const;
export type Way = (typeof WAYS)[number];

/** One mark's photos as numbers; every row is a photo on which the eye said yes or no. */
export interface MarkRows {
  readonly features: readonly (readonly number[])[];
  /** The shipped head's log odds. */
  readonly logits: readonly number[];
  /** What the camera says: natural log likelihood ratios. */
  readonly camera: readonly number[];
  readonly labels: readonly boolean[];
  readonly plantings: readonly string[];
}

export function rowsOf(examples: readonly LeafExample[], mark: string, at: number): MarkRows {
  const told = examples.filter(({ marks }) => marks.has(mark));
  return {
    features: told.map(({ features }) => features),
    logits: told.map(({ logits }) => logits[at]!),
    camera: told.map(({ camera }) => camera.get(mark) ?? 0),
    labels: told.map(({ marks }) => marks.get(mark)!),
    plantings: told.map(({ planting }) => planting),
  };
}

/** Means and spreads over the rows that are learnt from. The first column is the shipped head's log odds. */
export interface Standard {
  readonly mean: readonly number[];
  readonly spread: readonly number[];
}

const columnsOf = ({ logits, features }: MarkRows, row: number): number[] => [
  logits[row]!,
  ...features[row]!,
];

export function standardOf(rows: MarkRows, isLearnt: (row: number) => boolean): Standard {
  const learnt = rows.labels.flatMap((_, row) => (isLearnt(row) ? [columnsOf(rows, row)] : []));
  const width = columnsOf(rows, 0).length;
  const mean = Array.from(
    { length: width },
    (_, k) => learnt.reduce((sum, row) => sum + row[k]!, 0) / learnt.length,
  );
  const spread = mean.map((middle, k) => {
    const sd = Math.sqrt(learnt.reduce((sum, row) => sum + (row[k]! - middle) ** 2, 0) / learnt.length);
    // An infinite spread makes nothing of whatever stands there.
    return sd > LEAST_SPREAD ? sd : Number.POSITIVE_INFINITY;
  });
  return { mean, spread };
}

/**
 * A row's inputs, each scaled by its prior, so that every coefficient has a prior of one: level, shipped head, features. What a
 * way of telling does not look at is nought.
 */
export function inputsOf(rows: MarkRows, row: number, { mean, spread }: Standard, way: Way): number[] {
  const values = columnsOf(rows, row).map((value, k) => (value - mean[k]!) / spread[k]!);
  const perFeature = PRIOR.features / Math.sqrt(values.length - 1);
  const [logit, ...features] = values;
  return [
    PRIOR.level,
    way === 'camera' ? 0 : PRIOR.logit * logit!,
    ...features.map((value) => (way === 'own' ? perFeature * value : 0)),
  ];
}

/**
 * Where a row's log odds start from: how often the mark is there among what is learnt from, what the camera says, and
 * the shipped head as it was fitted beside the camera. With no photos to learn from it stays at that.
 */
export function offsetOf(
  rows: MarkRows,
  row: number,
  baseOdds: number,
  scale: MarkScale | undefined,
  way: Way,
): number {
  const shipped = way === 'camera' || scale === undefined ? 0 : scale.slope * rows.logits[row]!;
  return baseOdds + rows.camera[row]! + shipped;
}

/** Log odds of the mark among the rows that are learnt from, half a photo added to either side. */
export function baseOddsOf({ labels }: MarkRows, isLearnt: (row: number) => boolean): number {
  const count = (wanted: boolean): number =>
    labels.filter((label, row) => label === wanted && isLearnt(row)).length + 0.5;
  return Math.log(count(true) / count(false));
}

/** Coefficients as the fit has them, turned back into those of `OwnMarkHead`, the level for the shipped head's raw log odds. */
export function headFrom(
  coefficients: readonly number[],
  { mean, spread }: Standard,
  scale: MarkScale | undefined,
): { level: number; logit: number; weights: number[]; mean: number[]; spread: number[] } {
  const [level, logit, ...weights] = coefficients as [number, number, ...number[]];
  const [logitMean, ...featureMeans] = mean as [number, ...number[]];
  const [logitSpread, ...featureSpreads] = spread as [number, ...number[]];
  const perLogit = (PRIOR.logit * logit) / logitSpread;
  const perFeature = PRIOR.features / Math.sqrt(weights.length);
  return {
    level: PRIOR.level * level - perLogit * logitMean,
    logit: (scale?.slope ?? 0) + perLogit,
    weights: weights.map((weight, k) => (Number.isFinite(featureSpreads[k]) ? perFeature * weight : 0)),
    mean: featureMeans,
    spread: featureSpreads.map((one) => (Number.isFinite(one) ? one : 1)),
  };
}
