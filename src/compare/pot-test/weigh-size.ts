import { type EffectWeighed, midpoints, normalised, weighEffect } from './weigh-effect.ts';

/** Growth below 80 % of the control marks immature compost (CCQC-2001, numbers from memory). */
export const HARMFUL_SIZE = 0.8;

/** Spread of the logarithm of a pot's mean height among pots of one kind, with weights (common practice, no source). */
export const SIZE_SPREADS: readonly (readonly [spread: number, weight: number])[] = [
  [0.05, 0.1],
  [0.08, 0.2],
  [0.12, 0.25],
  [0.18, 0.2],
  [0.27, 0.15],
  [0.4, 0.1],
];

/** How much smaller: logarithm of control over test. Compost may also feed: then it is below 0. */
const LAGS = midpoints(-0.6, 1.6, 55);
/** Half of all batches change the size by no more than about a tenth; else any lag is as likely as any other up to a fifth left. */
const NO_CHECK = { weight: 0.5, mean: -0.03, spread: 0.1 } as const;

/** Prior weights of the lags. */
const PRIOR: readonly number[] = (() => {
  const none = normalised(LAGS.map((lag) => Math.exp(-(((lag - NO_CHECK.mean) / NO_CHECK.spread) ** 2) / 2)));
  const some = normalised(LAGS.map((lag) => (lag > 0 ? 1 : 0)));
  return LAGS.map((_, at) => NO_CHECK.weight * none[at]! + (1 - NO_CHECK.weight) * some[at]!);
})();

interface Arm {
  readonly n: number;
  readonly mean: number;
  /** Sum of squares about the mean. */
  readonly squares: number;
}

function armOf(heights: readonly number[]): Arm {
  const logs = heights.map(Math.log);
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  return { n: logs.length, mean, squares: logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) };
}

/**
 * Likelihood of the lag given two arms' pot means, normal with one spread for both, the spread summed over its grid. The difference of
 * means and the pooled squares are all that the data say (sufficient). With a spread flat in its logarithm this is Student's t on
 * the pooled error, which the tests check.
 */
export function likelihoodOfLag(
  test: readonly number[],
  control: readonly number[],
  lags: readonly number[],
  spreads: readonly (readonly [spread: number, weight: number])[],
): number[] {
  const [a, b] = [armOf(test), armOf(control)];
  const freedom = a.n + b.n - 2;
  const difference = b.mean - a.mean;
  const squares = a.squares + b.squares;
  const perPot = 1 / a.n + 1 / b.n;
  return lags.map((lag) =>
    spreads.reduce((sum, [spread, weight]) => {
      const variance = spread * spread;
      const power = squares / (2 * variance) + (difference - lag) ** 2 / (2 * variance * perPot);
      return sum + weight * spread ** -(freedom + 1) * Math.exp(-power);
    }, 0),
  );
}

/**
 * What the heights say of how far the batch keeps plants small. `effect` is in logarithms of control over test.
 * @param test mean height of each pot, mm, above 0
 */
export function weighSize(test: readonly number[], control: readonly number[]): EffectWeighed {
  return weighEffect(
    { values: LAGS, prior: PRIOR, likelihood: likelihoodOfLag(test, control, LAGS, SIZE_SPREADS) },
    -Math.log(HARMFUL_SIZE),
  );
}
