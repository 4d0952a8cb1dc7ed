import { type BroadComponent, signsOfComponent } from './broad-components.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { FactorEvidence, SignEvidence } from './evidence.ts';
import type { Network, Tables } from './network.ts';

/** `base + times × ∏ row` over the causes of every set; `row` by place in `sets.alive`. */
export function fillProducts(
  sets: CauseSets,
  row: Float64Array,
  times: number,
  base: number,
  out: Float64Array,
): Float64Array {
  const n = row.length;
  const { most } = sets;
  let at = 0;
  if (sets.empty) out[at++] = base + times;
  for (let i = 0; i < n; i++) {
    const one = times * row[i]!;
    out[at++] = base + one;
    if (most < 2) continue;
    for (let j = i + 1; j < n; j++) {
      const two = one * row[j]!;
      out[at++] = base + two;
      if (most < 3) continue;
      for (let l = j + 1; l < n; l++) out[at++] = base + two * row[l]!;
    }
  }
  return out;
}

/** Multiply `out` by `base + times × ∏ row` over the causes of every set; `row` by place in `sets.alive`. */
export function multiplyProducts(
  sets: CauseSets,
  row: Float64Array,
  times: number,
  base: number,
  out: Float64Array,
): void {
  const n = row.length;
  const { most } = sets;
  let at = 0;
  if (sets.empty) out[at++]! *= base + times;
  for (let i = 0; i < n; i++) {
    const one = times * row[i]!;
    out[at++]! *= base + one;
    if (most < 2) continue;
    for (let j = i + 1; j < n; j++) {
      const two = one * row[j]!;
      out[at++]! *= base + two;
      if (most < 3) continue;
      for (let l = j + 1; l < n; l++) out[at++]! *= base + two * row[l]!;
    }
  }
}

export function multiplyEach(out: Float64Array, values: Float64Array): void {
  for (let s = 0; s < out.length; s++) out[s]! *= values[s]!;
}

/** `1 − q`, multiplied over some signs, by place in `sets.alive`. */
export function absentRow(
  network: Network,
  { q }: Pick<Tables, 'q'>,
  { alive }: Pick<CauseSets, 'alive'>,
  ...signs: readonly number[]
): Float64Array {
  const width = network.signs.length;
  const row = new Float64Array(alive.length).fill(1);
  for (const sign of signs) {
    for (let i = 0; i < row.length; i++) row[i]! *= 1 - q[alive[i]! * width + sign]!;
  }
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
  return fillProducts(sets, absentRow(network, tables, sets, sign), 1 - network.leak[sign]!, 0, out);
}

/** A pair scaled so that the larger of it is 1. */
export function scalePair<T extends Pick<SignEvidence, 'ifPresent' | 'ifAbsent'>>(report: T): T {
  const scale = 1 / Math.max(report.ifPresent, report.ifAbsent);
  return { ...report, ifPresent: report.ifPresent * scale, ifAbsent: report.ifAbsent * scale };
}

/**
 * P(report | set) of a report on one sign, or on the OR of several, as `base + times × ∏ (1 − q)`, the product going over
 * all these signs.
 */
export function formOfReport(
  network: Network,
  { ifPresent, ifAbsent }: Pick<SignEvidence, 'ifPresent' | 'ifAbsent'>,
  signs: readonly number[],
): { readonly base: number; readonly times: number } {
  const noLeak = signs.reduce((product, sign) => product * (1 - network.leak[sign]!), 1);
  return { base: ifPresent, times: (ifAbsent - ifPresent) * noLeak };
}

/** P(report | set) of one sign, scaled so that the larger of its pair is 1. */
export function signLikelihood(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  report: SignEvidence,
  out: Float64Array = new Float64Array(sets.count),
): Float64Array {
  const { base, times } = formOfReport(network, scalePair(report), [report.sign]);
  return fillProducts(sets, absentRow(network, tables, sets, report.sign), times, base, out);
}

/**
 * P(outcome | set) relative to P(outcome): the leanings of the causes in the set multiply, and are normalised over the
 * outcomes, so that an answer never tells more than asking could have told.
 */
export function factorLikelihood(
  network: Network,
  sets: CauseSets,
  evidence: FactorEvidence,
  out: Float64Array = new Float64Array(sets.count),
): Float64Array {
  const { rates, outcomes, ...factor } = network.factors[evidence.factor]!;
  const lean = evidence.lean ?? factor.lean;
  const width = outcomes.length;
  const leaning = new Float64Array(sets.count);
  const fill = (outcome: number, rate: number): Float64Array => {
    const row = Float64Array.from(sets.alive, (cause) => lean[cause * width + outcome]!);
    return fillProducts(sets, row, rate, 0, leaning);
  };
  out.fill(0);
  for (let outcome = 0; outcome < width; outcome++) {
    fill(outcome, rates[outcome]!);
    for (let s = 0; s < out.length; s++) out[s]! += leaning[s]!;
  }
  fill(evidence.outcome, 1);
  // A set whose every outcome is ruled out has no likelihood at all.
  for (let s = 0; s < out.length; s++) out[s] = out[s]! > 0 ? leaning[s]! / out[s]! : 0;
  return out;
}

/** P(sign absent | set, a report on that very sign); without a report just P(absent). */
export function absentAfterReport(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  sign: number,
  report: SignEvidence | undefined,
): Float64Array {
  const absent = absentGivenSets(network, tables, sets, sign);
  if (!report) return absent;
  const { ifPresent, ifAbsent } = report;
  for (let s = 0; s < absent.length; s++) {
    const there = (1 - absent[s]!) * ifPresent;
    const notThere = absent[s]! * ifAbsent;
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
): Float64Array[] {
  const known = new Map<number, Float64Array>();
  const afterReport = (sign: number): Float64Array => {
    const absent = known.get(sign) ?? absentAfterReport(network, tables, sets, sign, reports.get(sign));
    known.set(sign, absent);
    return absent;
  };
  return component.unions.map((union) => {
    // Signs without a report of their own multiply cause by cause, before anything is spread over the sets.
    const unreported = union.filter((sign) => !reports.has(sign));
    const noLeak = unreported.reduce((chance, sign) => chance * (1 - network.leak[sign]!), 1);
    const row = absentRow(network, tables, sets, ...unreported);
    const product = fillProducts(sets, row, noLeak, 0, new Float64Array(sets.count));
    for (const sign of union) {
      if (!reports.has(sign)) continue;
      multiplyEach(product, afterReport(sign));
    }
    return product;
  });
}

/** P(the first m + 1 reports of the component | set, reports on single signs). */
export function componentLikelihood(
  component: BroadComponent,
  unions: readonly Float64Array[],
  last: number,
  out: Float64Array,
): Float64Array {
  const coefficients = component.coefficients[last]!;
  out.fill(0);
  for (let subset = 0; subset < coefficients.length; subset++) {
    const coefficient = coefficients[subset]!;
    const union = unions[subset]!;
    for (let s = 0; s < out.length; s++) out[s]! += coefficient * union[s]!;
  }
  return out;
}

/**
 * P(all reports of the component and all reports on its members | set), up to a constant factor. The same as
 * `componentLikelihood` times the likelihood of each member's report, but without a division in it:
 *   Σ_T coefficient_T · ∏_{m ∈ ∪T} P(m absent) P(report on m | absent) · ∏_{m ∉ ∪T} P(report on m).
 */
export function jointLikelihood(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  component: BroadComponent,
  reports: ReadonlyMap<number, SignEvidence>,
  scratch: Float64Array = new Float64Array(sets.count),
  out: Float64Array = new Float64Array(sets.count),
): Float64Array {
  const coefficients = component.coefficients[component.reports.length - 1]!;
  const reported = signsOfComponent(component).filter((sign) => reports.has(sign));
  component.unions.forEach((union, subset) => {
    const term = subset === 0 ? out : scratch;
    const times = union.reduce((product, sign) => {
      const report = reports.get(sign);
      return product * (1 - network.leak[sign]!) * (report ? scalePair(report).ifAbsent : 1);
    }, coefficients[subset]!);
    if (union.length === 0) term.fill(times);
    else fillProducts(sets, absentRow(network, tables, sets, ...union), times, 0, term);
    for (const sign of reported) {
      if (union.includes(sign)) continue;
      const form = formOfReport(network, scalePair(reports.get(sign)!), [sign]);
      multiplyProducts(sets, absentRow(network, tables, sets, sign), form.times, form.base, term);
    }
    if (subset > 0) for (let s = 0; s < out.length; s++) out[s]! += term[s]!;
  });
  return out;
}
