import { type CauseSets, eachSet } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { expectByCause, type JointChances, sumJointChances } from './joint-chances.ts';
import { type LocalFunction, localLikelihoods } from './local-likelihoods.ts';
import type { Network, Tables } from './network.ts';
import { marginals, normalise, priorLogWeights, weighSets } from './weigh-sets.ts';

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
  const within = marginals(causeCount, sets, posterior);
  const all = posterior.reduce((sum, p) => sum + p, 0);
  const out = within.map((p) => Math.log(p) - Math.log(all - p));
  // Beyond even odds the sets without the cause are summed, not subtracted, so that a chance very near 1 keeps its odds.
  sets.alive.forEach((cause, at) => {
    if (within[cause]! < 0.5 * all) return;
    let without = sets.empty ? posterior[0]! : 0;
    eachSet(sets, (place, i, j, l) => {
      if (i !== at && j !== at && l !== at) without += posterior[place]!;
    });
    out[cause] = Math.log(within[cause]!) - Math.log(without);
  });
  return out;
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
 * @param full log weights of all sets under the evidence, where they have been worked out already
 */
export function attributeEvidence(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: Evidence,
  full: Float64Array = weighSets(network, tables, sets, evidence),
): Attribution {
  const causeCount = network.causes.length;
  const likelihoods = localLikelihoods(network, tables, sets, evidence);
  // Where a likelihood is nought the set has no chance, so any number will do for its logarithm.
  const logs = likelihoods.map(({ at, subsets, values, power }): LocalFunction => {
    return { at, subsets, values: values.map((value) => (value > 0 ? power * Math.log(value) : 0)) };
  });
  const prior = priorLogWeights(network, tables, sets);
  const start = logOddsOf(causeCount, sets, normalise(prior));
  const nats = new Float64Array(causeCount * logs.length);
  const room = new Float64Array(sets.alive.length ** 3);
  const mixed = new Float64Array(sets.count);
  for (const { node, weight } of NODES) {
    for (let s = 0; s < mixed.length; s++) mixed[s] = (1 - node) * prior[s]! + node * full[s]!;
    addSlopes(nats, weight, sumJointChances(sets, normalise(mixed), room), logs);
  }
  if (logs.length > 0) closeSums(nats, logs.length, start, logOddsOf(causeCount, sets, normalise(full)));
  return {
    labels: likelihoods.map(({ label }) => label),
    decibans: nats.map((x) => x * DECIBANS_PER_NAT),
    priorDecibans: start.map((x) => x * DECIBANS_PER_NAT),
  };
}

/** Add `weight` times the slope of every cause's log-odds in every piece of evidence. */
function addSlopes(
  nats: Float64Array,
  weight: number,
  joint: JointChances,
  logs: readonly LocalFunction[],
): void {
  const { sets, chances, total } = joint;
  const n = sets.alive.length;
  const sums = new Float64Array(n);
  logs.forEach((log, f) => {
    const all = expectByCause(joint, log, sums);
    for (let i = 0; i < n; i++) {
      const within = chances[(i * n + i) * n + i]!;
      const without = total - within;
      if (within <= 0 || without <= 0) continue;
      nats[sets.alive[i]! * logs.length + f]! += weight * (sums[i]! / within - (all - sums[i]!) / without);
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
