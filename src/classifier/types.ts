/** Why there is no network. The app owns the sentence; without it the tool works as before. */
export const NETWORK_TROUBLES = ['network-missing', 'network-altered', 'network-cannot-run'] as const;
export type NetworkTrouble = (typeof NETWORK_TROUBLES)[number];

/** Thrown while the network is opened. `code` survives the worker boundary, the message does not. */
export class NetworkError extends Error {
  override readonly name = 'NetworkError';
  constructor(
    readonly code: NetworkTrouble,
    options?: { cause?: unknown },
  ) {
    super(`the network cannot be used: ${code}`, options);
  }
}

/** What the network makes of one crop, before it is weighed. */
export interface NetworkAnswer {
  /** Log odds in the order of `NETWORK_MARKS` that all experts who know the mark bear out; 0 where they part. */
  readonly logits: readonly number[];
  /** How unlike the picture is to all that was taught; about 1 on these. */
  readonly strangeness: number;
  /** What the experts' last layers but one see: for a head that learns a garden's look. */
  readonly features: readonly number[];
}
