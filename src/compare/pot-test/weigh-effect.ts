/**
 * A hidden effect on a grid, with what the data say of each value. All three measures of a pot test (emergence, injury, size)
 * come out as this, so that they are read alike.
 */
export interface EffectOnGrid {
  /** Values of the effect, rising. */
  readonly values: readonly number[];
  /** Prior weight of each; they sum to 1. */
  readonly prior: readonly number[];
  /** Likelihood of the data at each, up to one factor for all. */
  readonly likelihood: readonly number[];
}

/** What the data say of one effect. */
export interface EffectWeighed {
  /** How much likelier the data are with an effect that counts as harm than without: a Bayes factor, above 0. */
  readonly ratio: number;
  /** Chance of harm where it was taken to be so likely beforehand. */
  chanceFrom(before: number): number;
  /** Mean and 10 to 90 % span of the effect, the grid's prior taken as it is. */
  readonly effect: { readonly mean: number; readonly low: number; readonly high: number };
}

/** Chance after the data, from the chance before and the Bayes factor. */
export const chanceAfter = (before: number, ratio: number): number => {
  const weight = before * ratio;
  return weight / (weight + 1 - before);
};

/**
 * Weighs an effect. @param harmFrom values at or above this count as harm
 */
export function weighEffect({ values, prior, likelihood }: EffectOnGrid, harmFrom: number): EffectWeighed {
  const sums = { harm: [0, 0], none: [0, 0] };
  for (const [at, value] of values.entries()) {
    const side = value >= harmFrom ? sums.harm : sums.none;
    side[0]! += prior[at]! * likelihood[at]!;
    side[1]! += prior[at]!;
  }
  const [ifHarm, ifNone] = [sums.harm[0]! / sums.harm[1]!, sums.none[0]! / sums.none[1]!];
  const tiny = Number.MIN_VALUE;
  const ratio = Math.max(ifHarm, tiny) / Math.max(ifNone, tiny);
  const weights = values.map((_, at) => prior[at]! * likelihood[at]!);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const share = (part: number): number => {
    let below = 0;
    for (const [at, value] of values.entries()) {
      below += weights[at]! / total;
      if (below >= part) return value;
    }
    return values.at(-1)!;
  };
  return {
    ratio,
    chanceFrom: (before) => chanceAfter(before, ratio),
    effect: {
      mean: values.reduce((sum, value, at) => sum + (value * weights[at]!) / total, 0),
      low: share(0.1),
      high: share(0.9),
    },
  };
}

/** Midpoints of so many equal steps from one value to another. */
export const midpoints = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, at) => from + ((at + 0.5) * (to - from)) / count);

/** Weights that sum to 1. */
export function normalised(weights: readonly number[]): number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** So many results are remembered; then all are forgotten. */
const REMEMBERED = 20_000;

/** Remembers what was worked out: few counts are possible in a few pots, so the same ones come again and again. */
export function remembering<Value>(): (key: string, workOut: () => Value) => Value {
  const known = new Map<string, Value>();
  return (key, workOut) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = workOut();
    if (known.size >= REMEMBERED) known.clear();
    known.set(key, value);
    return value;
  };
}

/** A chance to a small whole power, by multiplying: `**` is ten times as slow where the power is 1 to 6. */
export function timesOver(chance: number, times: number): number {
  let all = chance;
  for (let more = 1; more < times; more++) all *= chance;
  return all;
}
