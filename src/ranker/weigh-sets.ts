import { broadComponents } from './broad-components.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { componentLikelihood, factorLikelihood, signLikelihood, unionsAbsent } from './likelihoods.ts';
import type { Network, Tables } from './network.ts';

/** Log of the prior weight of every set: the product of its causes' odds, less what each further cause costs. */
export function priorLogWeights(network: Network, tables: Tables, sets: CauseSets): Float64Array {
  const logOdds = new Float64Array(tables.rate.length + 1);
  for (let cause = 0; cause < tables.rate.length; cause++) {
    const rate = tables.rate[cause]!;
    logOdds[cause] = Math.log(rate) - Math.log1p(-rate);
  }
  const out = new Float64Array(sets.count);
  const { first, second, third, none } = sets;
  const further = Math.log(network.furtherCause);
  for (let s = 0; s < sets.count; s++) {
    const more = (second[s] === none ? 0 : further) + (third[s] === none ? 0 : further);
    out[s] = logOdds[first[s]!]! + logOdds[second[s]!]! + logOdds[third[s]!]! + more;
  }
  return out;
}

/**
 * Visit the likelihood of every piece of evidence over all sets, one at a time. Broad reports come with the likelihood
 * they add to the reports before them in their component, and each with the power it is to be raised to. `values` is
 * reused between visits: copy what is kept.
 */
export function eachLikelihood(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: Evidence,
  visit: (label: string, values: Float64Array, power: number) => void,
): void {
  const { evidenceWeight } = network;
  const values = new Float64Array(sets.count);
  for (const { label, oddsFactor } of evidence.context) {
    const { first, second, third } = sets;
    const row = Float64Array.from([...oddsFactor, 1]);
    for (let s = 0; s < sets.count; s++) values[s] = row[first[s]!]! * row[second[s]!]! * row[third[s]!]!;
    visit(label, values, evidenceWeight.setting);
  }
  for (const factor of evidence.factors) {
    factorLikelihood(network, sets, factor, values);
    visit(factor.label, values, evidenceWeight.setting);
  }
  for (const sign of evidence.signs) {
    signLikelihood(network, tables, sets, sign, values);
    visit(sign.label, values, evidenceWeight.signs);
  }
  const reports = new Map(evidence.signs.map((report) => [report.sign, report]));
  const before = new Float64Array(sets.count);
  for (const component of broadComponents(evidence)) {
    const { unions } = unionsAbsent(network, tables, sets, component, reports);
    before.fill(1);
    component.reports.forEach(({ label }, last) => {
      componentLikelihood(component, unions, last, values);
      const joint = values.slice();
      for (let s = 0; s < sets.count; s++) values[s] = before[s]! > 0 ? values[s]! / before[s]! : 0;
      visit(label, values, evidenceWeight.signs);
      before.set(joint);
    });
  }
}

/** How many likelihoods are multiplied before their logarithm is taken; each is at least about 1e-4. */
const BLOCK = 24;

/**
 * Log weight of every set given the evidence, unnormalised: one pass a piece of evidence, products in blocks, logs
 * between blocks. Exact up to rounding.
 */
export function weighSets(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: Evidence,
): Float64Array {
  const logWeights = priorLogWeights(network, tables, sets);
  const product = new Float64Array(sets.count).fill(1);
  let pending = 0;
  let powerOfBlock = 1;
  const fold = (): void => {
    for (let s = 0; s < sets.count; s++) logWeights[s]! += powerOfBlock * Math.log(product[s]!);
    product.fill(1);
    pending = 0;
  };
  eachLikelihood(network, tables, sets, evidence, (_, values, power) => {
    if (power !== powerOfBlock && pending > 0) fold();
    powerOfBlock = power;
    for (let s = 0; s < sets.count; s++) product[s]! *= values[s]!;
    pending += 1;
    if (pending === BLOCK) fold();
  });
  if (pending > 0) fold();
  return logWeights;
}

/** Normalise log weights once: probabilities that sum to 1. All `-Infinity` gives all zero. */
export function normalise(logWeights: Float64Array): Float64Array {
  let top = Number.NEGATIVE_INFINITY;
  for (const weight of logWeights) if (weight > top) top = weight;
  const out = new Float64Array(logWeights.length);
  if (top === Number.NEGATIVE_INFINITY) return out;
  let sum = 0;
  for (let s = 0; s < out.length; s++) {
    out[s] = Math.exp(logWeights[s]! - top);
    sum += out[s]!;
  }
  for (let s = 0; s < out.length; s++) out[s]! /= sum;
  return out;
}

/** P(cause acts) for every cause: the sum over the sets it is in. */
export function marginals(causeCount: number, sets: CauseSets, posterior: Float64Array): Float64Array {
  const out = new Float64Array(causeCount + 1);
  for (let s = 0; s < sets.count; s++) {
    const p = posterior[s]!;
    out[sets.first[s]!]! += p;
    out[sets.second[s]!]! += p;
    out[sets.third[s]!]! += p;
  }
  return out.subarray(0, causeCount);
}
