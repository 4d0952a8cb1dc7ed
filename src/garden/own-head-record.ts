import { type Loose, list, number, text } from './loose.ts';
import type { Stamp } from './records.ts';
import type { OWN_MARK_BEFORE, OWN_MARK_ENDS } from './whole-own-head.ts';

/** What was counted of one mark: photos where the eye said it is there, or is not, and the plantings that they come from. */
export interface OwnMarkCounts {
  readonly present: number;
  readonly absent: number;
  readonly presentPlantings: number;
  readonly absentPlantings: number;
}

/** How three ways of telling a mark did on plantings that they had not learnt from: mean log losses, natural, a photo. */
export interface OwnMarkTested {
  readonly camera: number;
  /** With the shipped head's level and weight set anew. */
  readonly shipped: number;
  /** With weights on the features too. */
  readonly own: number;
  /** What it is held against. */
  readonly before: (typeof OWN_MARK_BEFORE)[number];
  /** By how much what was learnt is better than that, and the standard error of that over plantings. */
  readonly gain: number;
  readonly gainSe: number;
  /** Photos told right: by what was learnt, and by what it is held against. */
  readonly right: number;
  readonly rightBefore: number;
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
