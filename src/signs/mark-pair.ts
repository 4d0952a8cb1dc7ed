import type { MeasureId } from '../leaf/measures.ts';
import type { MeasureScale } from './measure-scale.ts';
import type { MarkId } from './vocabulary.ts';

/** Middle and spread of a measure on one class of photographs, on the scale of its pair. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** Photographs behind it. */
  readonly n: number;
}

/** What one measure says of one mark. */
export interface MarkPair {
  readonly mark: MarkId;
  readonly measure: MeasureId;
  readonly scale: MeasureScale;
  readonly present: Spread;
  readonly absent: Spread;
  /** The strongest ratio that it may give. */
  readonly most: number;
  /** How well the measure parts the photographs that it was fitted on. */
  readonly auc: number;
  readonly sets: readonly string[];
}
