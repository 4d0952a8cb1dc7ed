import type { BroadComponent } from './broad-components.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { FactorEvidence, SignEvidence } from './evidence.ts';
import type { Network, Tables } from './network.ts';

/** `1 − q` of one sign for every cause, with a neutral 1 for "no cause" at the end. */
export function absentRow(network: Network, tables: Tables, sign: number): Float64Array {
  const causes = network.causes.length;
  const signs = network.signs.length;
  const row = new Float64Array(causes + 1).fill(1);
  for (let cause = 0; cause < causes; cause++) row[cause] = 1 - tables.q[cause * signs + sign]!;
  return row;
}

/** P(sign absent | set) for every set: (1 − leak) ∏ (1 − q). */
export function absentGivenSets(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  sign: number,
  out: Float64Array = new Float64Array(sets.count),
): Float64Array {
  const row = absentRow(network, tables, sign);
  const noLeak = 1 - network.leak[sign]!;
  const { first, second, third, count } = sets;
  for (let s = 0; s < count; s++) out[s] = noLeak * row[first[s]!]! * row[second[s]!]! * row[third[s]!]!;
  return out;
}

/** P(report | set) of one sign, scaled so that the larger of its pair is 1. */
export function signLikelihood(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: SignEvidence,
  out: Float64Array,
): void {
  const scale = 1 / Math.max(evidence.ifPresent, evidence.ifAbsent);
  const present = evidence.ifPresent * scale;
  const difference = evidence.ifAbsent * scale - present;
  absentGivenSets(network, tables, sets, evidence.sign, out);
  for (let s = 0; s < sets.count; s++) out[s] = present + difference * out[s]!;
}

/**
 * P(outcome | set) relative to P(outcome): the leanings of the causes in the set multiply, and are normalised over the
 * outcomes, so that an answer never tells more than asking could have told.
 */
export function factorLikelihood(
  network: Network,
  sets: CauseSets,
  evidence: FactorEvidence,
  out: Float64Array,
): void {
  const { rates, outcomes, ...factor } = network.factors[evidence.factor]!;
  const lean = evidence.lean ?? factor.lean;
  const width = outcomes.length;
  const rowsOf = (outcome: number): Float64Array => {
    const row = new Float64Array(network.causes.length + 1).fill(1);
    for (let cause = 0; cause < network.causes.length; cause++) row[cause] = lean[cause * width + outcome]!;
    return row;
  };
  const { first, second, third, count } = sets;
  out.fill(0);
  for (let outcome = 0; outcome < width; outcome++) {
    const row = rowsOf(outcome);
    const rate = rates[outcome]!;
    for (let s = 0; s < count; s++) out[s]! += rate * row[first[s]!]! * row[second[s]!]! * row[third[s]!]!;
  }
  const row = rowsOf(evidence.outcome);
  for (let s = 0; s < count; s++) {
    const given = row[first[s]!]! * row[second[s]!]! * row[third[s]!]!;
    // A set whose every outcome is ruled out has no likelihood at all.
    out[s] = out[s]! > 0 ? given / out[s]! : 0;
  }
}

/** P(sign absent | set, reports on that very sign) for each sign of a component; a sign without a report just P(absent). */
function absentAfterReports(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  sign: number,
  report: SignEvidence | undefined,
): Float64Array {
  const absent = absentGivenSets(network, tables, sets, sign);
  if (!report) return absent;
  for (let s = 0; s < sets.count; s++) {
    const there = (1 - absent[s]!) * report.ifPresent;
    const notThere = absent[s]! * report.ifAbsent;
    absent[s] = there + notThere > 0 ? notThere / (there + notThere) : 0;
  }
  return absent;
}

/** For every subset T of the component's reports: P(all members of ∪T absent | set, reports on single signs). */
export function unionsAbsent(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  component: BroadComponent,
  reports: ReadonlyMap<number, SignEvidence>,
): { readonly unions: Float64Array[]; readonly bySign: ReadonlyMap<number, Float64Array> } {
  const members = component.unions[component.unions.length - 1]!;
  const bySign = new Map(
    members.map(
      (sign) => [sign, absentAfterReports(network, tables, sets, sign, reports.get(sign))] as const,
    ),
  );
  const unions = component.unions.map((union) => {
    const product = new Float64Array(sets.count).fill(1);
    for (const sign of union) {
      const absent = bySign.get(sign)!;
      for (let s = 0; s < sets.count; s++) product[s]! *= absent[s]!;
    }
    return product;
  });
  return { unions, bySign };
}

/** P(the first m + 1 reports of the component | set, reports on single signs). */
export function componentLikelihood(
  component: BroadComponent,
  unions: readonly Float64Array[],
  last: number,
  out: Float64Array,
): void {
  const coefficients = component.coefficients[last]!;
  out.fill(0);
  for (let subset = 0; subset < coefficients.length; subset++) {
    const coefficient = coefficients[subset]!;
    const union = unions[subset]!;
    for (let s = 0; s < out.length; s++) out[s]! += coefficient * union[s]!;
  }
}
