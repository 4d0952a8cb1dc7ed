import type { BroaderMarkId, MarkId } from '../signs/vocabulary.ts';

/** How one mark's log odds count beside the camera's measures. */
export interface MarkScale {
  readonly mark: MarkId | BroaderMarkId;
  /** Off where leaves of other crops did not bear the network out, or it added nothing to the camera. */
  readonly on: boolean;
  /** Log likelihood ratio = slope · log odds: the temperature, fitted beside the camera's own ratio, at even odds. */
  readonly slope: number;
  /** The strongest ratio that it may give: below 4, no report is confident. */
  readonly most: number;
}
