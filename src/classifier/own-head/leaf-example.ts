/** One photo of a leaf that the garden has told about: what the network saw in it, and what the grower's eye said of it. */
export interface LeafExample {
  /** The planting that it comes from: photos of one planting are kept aside together. */
  readonly planting: string;
  /** What the network's last layer but one saw. */
  readonly features: readonly number[];
  /** The shipped head's log odds, in the order of `NETWORK_MARKS`. */
  readonly logits: readonly number[];
  /** Marks that the eye found (`true`) or looked for in vain; what is left out is unknown. */
  readonly marks: ReadonlyMap<string, boolean>;
  /** What the camera's measures say of these marks on this photo: natural log likelihood ratios; left out: nothing. */
  readonly camera: ReadonlyMap<string, number>;
}
