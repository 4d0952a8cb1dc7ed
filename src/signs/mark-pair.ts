import type { MeasureId } from '../leaf/measures.ts';
import type { MeasureScale } from './measure-scale.ts';
import type { BroaderMarkId, MarkId } from './vocabulary.ts';

/** Middle and spread of a measure on one class of photographs, on the scale of its pair. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** Photographs behind it. */
  readonly n: number;
}

/** What one measure says of one mark, or of several marks that it cannot tell apart. */
export interface MarkPair {
  readonly mark: MarkId | BroaderMarkId;
  readonly measure: MeasureId;
  readonly scale: MeasureScale;
  readonly present: Spread;
  readonly absent: Spread;
  /** Least and greatest value met on the photographs, strays left out: beyond it there is nothing to say. */
  readonly seen: readonly [number, number];
  /** Power that the ratio is raised to, at most 1: how far photographs of groups left out of the fit bore it out. */
  readonly trust: number;
  /** The strongest ratio that it may give. */
  readonly most: number;
  /** How well the measure parts photographs of groups that were left out of the fit. */
  readonly auc: number;
  readonly sets: readonly string[];
}
