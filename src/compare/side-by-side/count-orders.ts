import { TrialError } from './trial-error.ts';

/** Plants or plots of one treatment up to which orders are counted out. More than any garden trial has. */
export const MOST_UNITS = 100;

/**
 * Chances of 0, 1, 2 … m·n pairs in which the second is the greater, when m of one and n of the other come in any order alike: the
 * distribution of Mann and Whitney (1947), counted by its generating function, the product of (1 − qⁿ⁺ʲ) / (1 − qʲ) over j to m
 * (Harding 1984, Applied Statistics 33, 1). Only the lower half is counted, where nothing cancels; the upper mirrors it.
 */
export function orderChances(m: number, n: number): Float64Array {
  if (m > MOST_UNITS || n > MOST_UNITS) throw new TrialError('too-many-units');
  const half = Math.floor((m * n) / 2);
  const counts = new Float64Array(half + 1);
  counts[0] = 1;
  for (let j = 1; j <= m; j += 1) {
    for (let u = half; u >= n + j; u -= 1) counts[u]! -= counts[u - n - j]!;
    for (let u = j; u <= half; u += 1) counts[u]! += counts[u - j]!;
  }
  const chances = Float64Array.from({ length: m * n + 1 }, (_, u) => counts[Math.min(u, m * n - u)]!);
  const total = chances.reduce((sum, count) => sum + count, 0);
  return chances.map((count) => count / total);
}

/** Chances of 0, 1, 2 … as the sum of ranks that stand on one side, when each of n signs is a toss: Wilcoxon's (1945) signed ranks. */
export function signChances(n: number): Float64Array {
  if (n > MOST_UNITS) throw new TrialError('too-many-units');
  let chances = Float64Array.of(1);
  for (let rank = 1; rank <= n; rank += 1) {
    const next = new Float64Array(chances.length + rank);
    for (let u = 0; u < chances.length; u += 1) {
      next[u]! += chances[u]! / 2;
      next[u + rank]! += chances[u]! / 2;
    }
    chances = next;
  }
  return chances;
}

/** Chances of the sum of two counts that do not hang together. */
export function addChances(a: Float64Array, b: Float64Array): Float64Array {
  const sum = new Float64Array(a.length + b.length - 1);
  for (let i = 0; i < a.length; i += 1) for (let j = 0; j < b.length; j += 1) sum[i + j]! += a[i]! * b[j]!;
  return sum;
}

/** The place of an interval's ends in a sorted list: the `cut`-th from below and from above, and how often it holds. */
export interface Cut {
  /** 1 is the outermost. */
  readonly cut: number;
  /** Chance that the interval holds the truth. */
  readonly reached: number;
}

/**
 * The narrowest interval that holds at least as often as wanted.
 * @param chances of a count under no difference, symmetric
 * @param level wanted, e.g. 0.9
 * @returns nothing where even the widest does not hold so often
 */
export function cutFor(chances: Float64Array, level: number): Cut | undefined {
  let tail = 0;
  let found: Cut | undefined;
  for (let k = 0; 2 * (k + 1) < chances.length + 1; k += 1) {
    tail += chances[k]!;
    if (1 - 2 * tail < level - 1e-12) break;
    found = { cut: k + 1, reached: 1 - 2 * tail };
  }
  return found;
}

/** How often the widest interval holds: what so few units can reach at most. */
export const mostReached = (chances: Float64Array): number => Math.max(0, 1 - 2 * chances[0]!);
