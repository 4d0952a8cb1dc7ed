/**
 * Scores of probability forecasts, as they stand in the literature: Brier 1950 (BRIER), log loss, reliability table and
 * expected calibration error (Guo et al. 2017, GUO-2017), parts of the Brier score (Murphy 1973, MURPHY).
 */

/** One forecast of a yes/no event and what came of it. */
export interface Forecast {
  /** 0–1. */
  readonly probability: number;
  readonly happened: boolean;
}

const mean = (values: readonly number[]): number =>
  values.length === 0 ? Number.NaN : values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean squared distance between forecast and outcome: 0 is perfect, 0.25 is what a constant one half earns. */
export function brierScore(forecasts: readonly Forecast[]): number {
  return mean(forecasts.map(({ probability, happened }) => (probability - Number(happened)) ** 2));
}

/** Brier's own form for several classes: the sum of squares over all of them, 0 to 2. */
export function brierScoreOfClasses(probabilities: readonly number[], trueClass: number): number {
  return probabilities.reduce((sum, p, at) => sum + (p - Number(at === trueClass)) ** 2, 0);
}

/** Chances below this are scored as this, so that one flat mistake does not make the mean infinite. */
const LEAST_CHANCE = 1e-6;

/** −ln of the chance given to what came true, in nats. */
export function logLoss(probability: number): number {
  return -Math.log(Math.max(LEAST_CHANCE, probability));
}

/** Forecasts of about the same probability, and how often they came true. */
export interface ReliabilityBin {
  /** Lower and upper bound of the bin; the upper one is inside in the last bin only. */
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly meanProbability: number;
  readonly cameTrue: number;
}

/** Forecasts in bins of equal width; empty bins are left out. */
export function reliabilityTable(forecasts: readonly Forecast[], bins = 10): ReliabilityBin[] {
  const groups: Forecast[][] = Array.from({ length: bins }, () => []);
  // The nudge keeps 0.3 / 0.1 = 2.9999… in the bin that begins at 0.3.
  for (const forecast of forecasts)
    groups[Math.min(bins - 1, Math.floor(forecast.probability * bins + 1e-9))]!.push(forecast);
  return groups.flatMap((group, at): ReliabilityBin[] =>
    group.length === 0
      ? []
      : [
          {
            from: at / bins,
            to: (at + 1) / bins,
            count: group.length,
            meanProbability: mean(group.map(({ probability }) => probability)),
            cameTrue: mean(group.map(({ happened }) => Number(happened))),
          },
        ],
  );
}

/** Σ share of the bin × |how often it came true − mean forecast| (GUO-2017). */
export function calibrationError(forecasts: readonly Forecast[], bins = 10): number {
  return reliabilityTable(forecasts, bins).reduce(
    (sum, { count, meanProbability, cameTrue }) =>
      sum + (count / forecasts.length) * Math.abs(cameTrue - meanProbability),
    0,
  );
}

/** Murphy's parts: Brier = reliability − resolution + uncertainty, exact when all forecasts of a bin are equal (MURPHY). */
export function partsOfBrier(
  forecasts: readonly Forecast[],
  bins = 10,
): { readonly reliability: number; readonly resolution: number; readonly uncertainty: number } {
  const base = mean(forecasts.map(({ happened }) => Number(happened)));
  const table = reliabilityTable(forecasts, bins);
  const over = (value: (bin: ReliabilityBin) => number): number =>
    table.reduce((sum, bin) => sum + (bin.count / forecasts.length) * value(bin), 0);
  return {
    reliability: over(({ meanProbability, cameTrue }) => (meanProbability - cameTrue) ** 2),
    resolution: over(({ cameTrue }) => (cameTrue - base) ** 2),
    uncertainty: base * (1 - base),
  };
}
