import { signsOfComponent } from './broad-components.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import {
  absentRow,
  factorLikelihood,
  fillProducts,
  formOfReport,
  jointLikelihood,
  multiplyEach,
  multiplyProducts,
} from './likelihoods.ts';
import type { Network, Tables } from './network.ts';
import { partReports, reportsBySign } from './part-reports.ts';

export const oddsOf = (rate: number): number => rate / (1 - rate);

/** Log of the prior weight of every set: the product of its causes' odds, less what each further cause costs. */
export function priorLogWeights(network: Network, tables: Tables, sets: CauseSets): Float64Array {
  const odds = Float64Array.from(sets.alive, (cause) => network.furtherCause * oddsOf(tables.rate[cause]!));
  const out = fillProducts(sets, odds, 1 / network.furtherCause, 0, new Float64Array(sets.count));
  if (sets.empty) out[0] = 1;
  for (let s = 0; s < out.length; s++) out[s] = Math.log(out[s]!);
  return out;
}

/** How many likelihoods are multiplied before their logarithm is taken; each is at least about 1e-4. */
const BLOCK = 24;

/** A product of likelihoods over all sets, which takes its logarithm before it can leave the range of numbers. */
function logOfProducts(sets: CauseSets) {
  const product = new Float64Array(sets.count).fill(1);
  const log = new Float64Array(sets.count);
  let pending = 0;
  const fold = (): void => {
    for (let s = 0; s < product.length; s++) log[s]! += Math.log(product[s]!);
    product.fill(1);
    pending = 0;
  };
  return {
    /** @param pieces likelihoods that are multiplied in at once */
    multiply(into: (product: Float64Array) => void, pieces = 1): void {
      into(product);
      pending += pieces;
      if (pending >= BLOCK) fold();
    },
    log(): Float64Array {
      if (pending > 0) fold();
      return log;
    },
  };
}

/** Log likelihood of crop, season and settings under every set, before it is weighed. */
export function logLikelihoodOfSetting(network: Network, sets: CauseSets, evidence: Evidence): Float64Array {
  const products = logOfProducts(sets);
  for (const { oddsFactor } of evidence.context) {
    const odds = Float64Array.from(sets.alive, (cause) => oddsFactor[cause]!);
    products.multiply((product) => multiplyProducts(sets, odds, 1, 0, product));
  }
  const scratch = new Float64Array(evidence.factors.length > 0 ? sets.count : 0);
  for (const factor of evidence.factors) {
    factorLikelihood(network, sets, factor, scratch);
    products.multiply((product) => multiplyEach(product, scratch));
  }
  return products.log();
}

function logLikelihoodOfSigns(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: Evidence,
): Float64Array {
  const products = logOfProducts(sets);
  const { lone, tied } = partReports(evidence);
  for (const { report, signs } of lone) {
    const { base, times } = formOfReport(network, report, signs);
    const row = absentRow(network, tables, sets, ...signs);
    products.multiply((product) => multiplyProducts(sets, row, times, base, product));
  }
  const reports = reportsBySign(evidence);
  for (const component of tied) {
    const joint = jointLikelihood(network, tables, sets, component, reports);
    const pieces = component.reports.length + signsOfComponent(component).length;
    products.multiply((product) => multiplyEach(product, joint), pieces);
  }
  return products.log();
}

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
  const { evidenceWeight } = network;
  const out = priorLogWeights(network, tables, sets);
  const add = (log: Float64Array, power: number): void => {
    for (let s = 0; s < out.length; s++) out[s]! += power * log[s]!;
  };
  if (evidence.context.length + evidence.factors.length > 0)
    add(logLikelihoodOfSetting(network, sets, evidence), evidenceWeight.setting);
  if (evidence.signs.length + evidence.broad.length > 0)
    add(logLikelihoodOfSigns(network, tables, sets, evidence), evidenceWeight.signs);
  return out;
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
export function marginals(
  causeCount: number,
  { alive, most, empty }: CauseSets,
  posterior: Float64Array,
): Float64Array {
  const n = alive.length;
  const mass = new Float64Array(n);
  let at = empty ? 1 : 0;
  for (let i = 0; i < n; i++) {
    let ofFirst = posterior[at++]!;
    for (let j = i + 1; j < n && most > 1; j++) {
      let ofPair = posterior[at++]!;
      for (let l = j + 1; l < n && most > 2; l++) {
        const p = posterior[at++]!;
        mass[l]! += p;
        ofPair += p;
      }
      mass[j]! += ofPair;
      ofFirst += ofPair;
    }
    mass[i]! += ofFirst;
  }
  const out = new Float64Array(causeCount);
  for (let i = 0; i < n; i++) out[alive[i]!] = mass[i]!;
  return out;
}
