import type { CauseSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import type { Network, Tables } from './network.ts';
import { eachLikelihood, normalise, priorLogWeights } from './weigh-sets.ts';

/** Decibans in one nat of log-odds: 10 / ln 10 (Good, GOOD-WOE). */
export const DECIBANS_PER_NAT = 10 / Math.LN10;

export interface Attribution {
  readonly labels: readonly string[];
  /** Weight of each piece of evidence for each cause, `[cause × labels + label]`, decibans. */
  readonly decibans: Float64Array;
  /** Odds of each cause with nothing said, decibans. */
  readonly priorDecibans: Float64Array;
}

/** Nodes and weights of Gauss–Legendre quadrature on 0–1, by Newton's method on the Legendre polynomial. */
export function gaussLegendre(n: number): { readonly node: number; readonly weight: number }[] {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 50; round++) {
      let previous = 1;
      let value = x;
      for (let k = 2; k <= n; k++)
        [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k];
      slope = (n * (x * value - previous)) / (x * x - 1);
      const step = value / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    return { node: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
  });
}

const NODES = gaussLegendre(10);

/** Log-odds of every cause under normalised set probabilities. */
function logOddsOf(causeCount: number, sets: CauseSets, posterior: Float64Array): Float64Array {
  const within = new Float64Array(causeCount + 1);
  const all = posterior.reduce((sum, p) => sum + p, 0);
  // Both sides are summed, not subtracted, so that a chance very near 1 keeps its odds.
  const without = new Float64Array(causeCount + 1);
  for (let s = 0; s < sets.count; s++) {
    within[sets.first[s]!]! += posterior[s]!;
    if (sets.second[s] !== sets.none) within[sets.second[s]!]! += posterior[s]!;
    if (sets.third[s] !== sets.none) within[sets.third[s]!]! += posterior[s]!;
  }
  for (let cause = 0; cause < causeCount; cause++) {
    if (within[cause]! < 0.5 * all) {
      without[cause] = all - within[cause]!;
      continue;
    }
    for (let s = 0; s < sets.count; s++) {
      if (sets.first[s] !== cause && sets.second[s] !== cause && sets.third[s] !== cause)
        without[cause]! += posterior[s]!;
    }
  }
  return Float64Array.from({ length: causeCount }, (_, c) => Math.log(within[c]!) - Math.log(without[c]!));
}

/**
 * What each piece of evidence adds to the log-odds of each cause, against the field without that cause.
 *
 * Findings are not independent given one cause (other causes explain them too), so a weight that depended on the order
 * of the answers would be arbitrary. Instead all evidence is let in together, little by little: with every likelihood
 * raised to the power t, the log-odds of a cause grow by Σ_f (E[ln L_f | cause] − E[ln L_f | no cause]) per unit of t.
 * Integrated from t = 0 to 1 each finding gets a weight that no order can change (Aumann and Shapley 1974, from
 * memory), equal to its plain log likelihood ratio where findings are independent. The quadrature's remainder, well
 * below a tenth of a deciban, is spread in proportion, so the weights add up to the change in odds exactly.
 */
export function attributeEvidence(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: Evidence,
): Attribution {
  const causeCount = network.causes.length;
  const labels: string[] = [];
  const logs: Float64Array[] = [];
  eachLikelihood(network, tables, sets, evidence, (label, values, power) => {
    labels.push(label);
    const log = new Float64Array(values.length);
    for (let s = 0; s < log.length; s++) log[s] = power * Math.log(values[s]!);
    logs.push(log);
  });
  const prior = priorLogWeights(network, tables, sets);
  const at = (t: number): Float64Array => {
    const logWeights = prior.slice();
    for (const log of logs) for (let s = 0; s < sets.count; s++) logWeights[s]! += t * log[s]!;
    return normalise(logWeights);
  };
  const start = logOddsOf(causeCount, sets, at(0));
  const nats = new Float64Array(causeCount * labels.length);
  for (const { node, weight } of NODES) addSlopes(nats, weight, causeCount, sets, at(node), logs);
  if (labels.length > 0) closeSums(nats, labels.length, start, logOddsOf(causeCount, sets, at(1)));
  return {
    labels,
    decibans: nats.map((x) => x * DECIBANS_PER_NAT),
    priorDecibans: start.map((x) => x * DECIBANS_PER_NAT),
  };
}

/** Add `weight` times the slope of every cause's log-odds in every piece of evidence. */
function addSlopes(
  nats: Float64Array,
  weight: number,
  causeCount: number,
  sets: CauseSets,
  posterior: Float64Array,
  logs: readonly Float64Array[],
): void {
  const { first, second, third, count } = sets;
  const mass = new Float64Array(causeCount + 1);
  let total = 0;
  for (let s = 0; s < count; s++) {
    const p = posterior[s]!;
    total += p;
    mass[first[s]!]! += p;
    mass[second[s]!]! += p;
    mass[third[s]!]! += p;
  }
  const sums = new Float64Array(causeCount + 1);
  logs.forEach((log, f) => {
    sums.fill(0);
    let all = 0;
    for (let s = 0; s < count; s++) {
      const p = posterior[s]!;
      if (p === 0) continue;
      const value = p * log[s]!;
      all += value;
      sums[first[s]!]! += value;
      sums[second[s]!]! += value;
      sums[third[s]!]! += value;
    }
    for (let cause = 0; cause < causeCount; cause++) {
      const within = mass[cause]!;
      const without = total - within;
      if (within <= 0 || without <= 0) continue;
      nats[cause * logs.length + f]! += weight * (sums[cause]! / within - (all - sums[cause]!) / without);
    }
  });
}

/** Spread what the quadrature left over, so that the weights of each cause add up to its change in log-odds. */
function closeSums(nats: Float64Array, width: number, start: Float64Array, end: Float64Array): void {
  for (let cause = 0; cause < start.length; cause++) {
    const row = nats.subarray(cause * width, (cause + 1) * width);
    const change = end[cause]! - start[cause]!;
    if (!Number.isFinite(change)) {
      row.fill(0);
      continue;
    }
    const rest = change - row.reduce((sum, x) => sum + x, 0);
    const size = row.reduce((sum, x) => sum + Math.abs(x), 0);
    for (let f = 0; f < width; f++) row[f]! += size > 0 ? (rest * Math.abs(row[f]!)) / size : rest / width;
  }
}
