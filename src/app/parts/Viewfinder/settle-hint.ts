import type { FrameHint } from '../../../leaf/judge-frame.ts';

/** The hint that stands, and the one that may follow it. */
export interface SettledHint {
  readonly hint?: FrameHint;
  /** When the standing hint came, ms. */
  readonly since: number;
  /** What the last frame said. */
  readonly last?: FrameHint;
}

/** A sentence stands at least this long: it is read out, and a shorter one cannot be followed. */
export const LEAST_MS = 1000;

/**
 * The hint after one more frame. It changes only when two frames running say the same, and at most once a second: a single
 * frame is often blurred by a hand that is on its way.
 */
export function settleHint(before: SettledHint, said: FrameHint, now: number): SettledHint {
  const isFirst = before.hint === undefined;
  const isNew = said !== before.hint && said === before.last && now - before.since >= LEAST_MS;
  return isFirst || isNew ? { hint: said, since: now, last: said } : { ...before, last: said };
}
