import { type Loose, list, number, text } from './loose.ts';
import type { Stamp } from './records.ts';

/** Id of the one record of its kind. */
export const OWN_HEAD_ID = 'own-head';

/**
 * What came of one mark: `used`: the garden's own head reports it; `no-better`: on plants kept aside it was not clearly better;
 * `overlaps`: a mark that takes it in, or a part of it, gained more; `too-few`: not tried.
 */
export const OWN_MARK_ENDS = ['used', 'no-better', 'overlaps', 'too-few'] as const;

/** What was counted of one mark: photos where the eye said it is there, or is not, and the plantings that they come from. */
export interface OwnMarkCounts {
  readonly present: number;
  readonly absent: number;
  readonly presentPlantings: number;
  readonly absentPlantings: number;
}

/** How three ways of telling a mark did on plantings that they had not learnt from: mean log losses, natural, a photo. */
export interface OwnMarkTested {
  readonly own: number;
  readonly shipped: number;
  readonly camera: number;
  /** By how much the own head was better than the better of the two others, and the standard error of that over plantings. */
  readonly gain: number;
  readonly gainSe: number;
  /** Photos told right. */
  readonly ownRight: number;
  readonly shippedRight: number;
}

/** Log likelihood ratio = level + logit · z + Σ weights · (features − mean) / spread; z is the shipped head's log odds. */
export interface OwnMarkHead {
  readonly level: number;
  readonly logit: number;
  readonly weights: readonly number[];
  readonly mean: readonly number[];
  readonly spread: readonly number[];
  /** The strongest ratio that it may give. */
  readonly most: number;
}

export interface OwnMark extends OwnMarkCounts {
  readonly mark: string;
  readonly end: (typeof OWN_MARK_ENDS)[number];
  /** Absent where it was not tried. */
  readonly tested?: OwnMarkTested;
  /** Only where it is used. */
  readonly head?: OwnMarkHead;
}

/**
 * What the network of signs has learnt of one garden's look. Merged whole: the newer holds. Only what `isWholeOwnHead` lets through may be
 * used or taken from a backup.
 */
export interface OwnHeadRecord extends Stamp {
  readonly kind: 'own-head';
  /** Which network's features it was learnt on, as `SeenByNetwork.network` names it. */
  readonly network: string;
  /** When it was learnt, ISO 8601, UTC. */
  readonly learntAt: string;
  /** Photos and plantings that it was learnt from. */
  readonly photos: number;
  readonly plantings: number;
  readonly marks: readonly OwnMark[];
}

/** Its numbers travel through here unopened. */
export const repairOwnHead = (found: Loose, stamp: Stamp): OwnHeadRecord => ({
  ...stamp,
  kind: 'own-head',
  network: text(found.network),
  learntAt: text(found.learntAt),
  photos: number(found.photos, 0, Number.MAX_SAFE_INTEGER) ?? 0,
  plantings: number(found.plantings, 0, Number.MAX_SAFE_INTEGER) ?? 0,
  marks: list(found.marks) as readonly OwnMark[],
});
