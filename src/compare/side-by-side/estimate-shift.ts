import { addChances, type Cut, cutFor, orderChances, signChances } from './count-orders.ts';
import { tQuantile } from './t-distribution.ts';

/** What was measured in one block, all in one unit; a trial without blocks is one block. */
export interface BlockValues {
  readonly first: readonly number[];
  readonly second: readonly number[];
}

/** `ranks`: exact by counting orders, whatever the shape of the spread. `t`: rests on a spread that is about normal. */
export type IntervalMethod = 'ranks' | 't';

/** How much the second treatment differs from the first, in the unit of the values. */
export interface Shift {
  readonly estimate: number;
  /** Absent where there is nothing to judge the spread by. */
  readonly interval?: {
    readonly low: number;
    readonly high: number;
    readonly method: IntervalMethod;
    /** How often such an interval holds the true difference: at least the level asked for. */
    readonly reached: number;
    /** So many wild values, anywhere, cannot carry an end of the interval away. */
    readonly bearsWild: number;
  };
}

const ascending = (values: Iterable<number>): Float64Array => Float64Array.from(values).sort();

/** Middle of a sorted list. */
function middleOf(sorted: ArrayLike<number>): number {
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

function* meansOfTwo(values: readonly number[]): Generator<number> {
  for (let i = 0; i < values.length; i += 1)
    for (let j = i; j < values.length; j += 1) yield (values[i]! + values[j]!) / 2;
}

function* differences(blocks: readonly BlockValues[]): Generator<number> {
  for (const { first, second } of blocks) for (const b of second) for (const a of first) yield b - a;
}

/** Centre of one set of values: the median of all means of two (Hodges and Lehmann 1963). A bad value among four moves it little. */
export const centreOf = (values: readonly number[]): number => middleOf(ascending(meansOfTwo(values)));

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const strays = (values: readonly number[]): number => {
  const centre = mean(values);
  return values.reduce((sum, v) => sum + (v - centre) ** 2, 0);
};

/** A difference of means, its standard error, and the degrees of freedom of that. */
interface MeanDifference {
  readonly estimate: number;
  readonly se: number;
  readonly df: number;
}

/** Welch (1947): spreads may differ between the two. */
export function welch({ first, second }: BlockValues): MeanDifference | undefined {
  const [m, n] = [first.length, second.length];
  if (m < 2 || n < 2) return undefined;
  const a = strays(first) / (m - 1) / m;
  const b = strays(second) / (n - 1) / n;
  const df = a + b > 0 ? (a + b) ** 2 / (a ** 2 / (m - 1) + b ** 2 / (n - 1)) : m + n - 2;
  return { estimate: mean(second) - mean(first), se: Math.sqrt(a + b), df };
}

/** Blocks and treatment add up, least squares (Fisher's randomised blocks); of pairs it is the paired t. */
export function blockMeans(blocks: readonly BlockValues[]): MeanDifference | undefined {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let count = 0;
  for (const { first, second } of blocks) {
    const [m, n] = [first.length, second.length];
    const all = [...first, ...second];
    const centre = mean(all);
    xx += (m * n) / (m + n);
    xy += ((mean(second) - mean(first)) * m * n) / (m + n);
    yy += all.reduce((sum, v) => sum + (v - centre) ** 2, 0);
    count += m + n;
  }
  const df = count - blocks.length - 1;
  if (df < 1) return undefined;
  return { estimate: xy / xx, se: Math.sqrt(Math.max(0, yy - xy ** 2 / xx) / df / xx), df };
}

function byMeans(blocks: readonly BlockValues[], level: number): Shift | undefined {
  const found = blocks.length === 1 ? welch(blocks[0]!) : blockMeans(blocks);
  if (!found) return undefined;
  const reach = tQuantile(1 - (1 - level) / 2, found.df) * found.se;
  const [low, high] = [found.estimate - reach, found.estimate + reach];
  return { estimate: found.estimate, interval: { low, high, method: 't', reached: level, bearsWild: 0 } };
}

/** Every block holds one of each. */
export const arePairs = (blocks: readonly BlockValues[]): boolean =>
  blocks.length > 1 && blocks.every(({ first, second }) => first.length === 1 && second.length === 1);

/** Chances of the count that an interval by ranks rests on, for blocks of these sizes. */
export function rankChances(sizes: readonly (readonly [number, number])[]): Float64Array {
  if (sizes.length > 1 && sizes.every(([m, n]) => m === 1 && n === 1)) return signChances(sizes.length);
  return sizes.map(([m, n]) => orderChances(m, n)).reduce(addChances, Float64Array.of(1));
}

/**
 * How many wild values an interval bears: it stays among the sound units' differences as long as those that touch a wild
 * value are fewer than `cut`. The worst place is where one value takes part in most.
 */
function wildBorne(blocks: readonly BlockValues[], cut: number): number {
  const touched = arePairs(blocks)
    ? blocks.map((_, i) => blocks.length - i)
    : blocks
        .flatMap(({ first, second }) => [
          ...first.map(() => second.length),
          ...second.map(() => first.length),
        ])
        .sort((a, b) => b - a);
  let sum = 0;
  let borne = 0;
  for (const each of touched) {
    sum += each;
    if (sum >= cut) break;
    borne += 1;
  }
  return borne;
}

function byRanks(blocks: readonly BlockValues[], cut: Cut): Shift {
  const sorted = ascending(
    arePairs(blocks)
      ? meansOfTwo(blocks.map(({ first, second }) => second[0]! - first[0]!))
      : differences(blocks),
  );
  return {
    estimate: middleOf(sorted),
    interval: {
      low: sorted[cut.cut - 1]!,
      high: sorted[sorted.length - cut.cut]!,
      method: 'ranks',
      reached: cut.reached,
      bearsWild: wildBorne(blocks, cut.cut),
    },
  };
}

/**
 * The shift from the first treatment to the second. Estimate: Hodges and Lehmann (1963), the median of all differences between
 * units of one block, of pairs the median of all means of two differences. Interval: the shifts that an exact rank test does not
 * refuse (Bauer 1972; in several blocks the sum of their Mann-Whitney counts, van Elteren 1960 with equal weights; pairs:
 * Wilcoxon's signed ranks). It holds at least so often as asked, for any shape of spread that both share. Ties make it wider, not
 * wrong. With too few units for that, the t interval of the difference of means (Welch, or blocks by least squares).
 * @param blocks those that hold both treatments, at least one
 * @param level between 0 and 1
 */
export function estimateShift(blocks: readonly BlockValues[], level: number): Shift {
  const cut = cutFor(rankChances(blocks.map(({ first, second }) => [first.length, second.length])), level);
  if (cut) return byRanks(blocks, cut);
  return byMeans(blocks, level) ?? { estimate: middleOf(ascending(differences(blocks))) };
}
