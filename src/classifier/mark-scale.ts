import type { BroaderMarkId, MarkId } from '../signs/vocabulary.ts';

/** How one mark's log odds count beside the camera's measures. */
export interface MarkScale {
  readonly mark: MarkId | BroaderMarkId;
  /** Off where leaves of other crops did not bear the network out, or it added nothing to the camera. */
  readonly on: boolean;
  /** Log likelihood ratio = slope · z + bias: temperature and level, fitted beside the camera's own ratio, at even odds. */
  readonly slope: number;
  readonly bias: number;
  /** The strongest ratio that it may give. */
  readonly most: number;
}
