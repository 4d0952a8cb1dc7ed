import { seededRandom } from '../../src/leaf/draw-leaf.ts';

/** Seeded draws; the same seed gives the same row of draws on every machine. */
export interface Dice {
  /** Uniform on 0–1. */
  readonly next: () => number;
  readonly between: (low: number, high: number) => number;
  /** Uniform in the logarithm: for sizes and counts that range over decades. */
  readonly logBetween: (low: number, high: number) => number;
  /** A whole number, both ends included. */
  readonly whole: (low: number, high: number) => number;
  readonly chance: (share: number) => boolean;
  readonly pick: <T>(list: readonly T[]) => T;
  /** Normal with mean 0 and the given spread (Box and Muller 1958). */
  readonly normal: (spread: number) => number;
}

export function rollDice(seed: number): Dice {
  // Neighbouring seeds are spread first, so that neighbouring pictures have nothing in common.
  const next = seededRandom(Math.imul(seed + 1, 0x9e3779b1) ^ (seed >>> 7));
  const between = (low: number, high: number): number => low + (high - low) * next();
  return {
    next,
    between,
    logBetween: (low, high) => low * (high / low) ** next(),
    whole: (low, high) => Math.min(high, Math.floor(between(low, high + 1))),
    chance: (share) => next() < share,
    pick: (list) => list[Math.min(list.length - 1, Math.floor(next() * list.length))]!,
    normal: (spread) => spread * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
