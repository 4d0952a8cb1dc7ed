import { broadComponents } from './broad-components.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { absentGivenSets, unionsAbsent } from './likelihoods.ts';
import type { Network, Tables } from './network.ts';

/**
 * P(sign there | set, everything reported so far) for any sign, exactly: reports on the sign itself by Bayes' rule,
 * broad reports that it belongs to through the sums of their component.
 * @returns a function of the sign's index; its result is over the sets and must not be changed
 */
export function signChances(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: Evidence,
): (sign: number) => Float64Array {
  const reports = new Map(evidence.signs.map((report) => [report.sign, report]));
  const viaBroad = new Map<number, Float64Array>();
  for (const component of broadComponents(evidence)) {
    const { unions, bySign } = unionsAbsent(network, tables, sets, component, reports);
    const coefficients = component.coefficients[component.reports.length - 1]!;
    for (const [sign, absent] of bySign) {
      const there = new Float64Array(sets.count);
      for (let s = 0; s < sets.count; s++) {
        let all = 0;
        let without = 0;
        for (let subset = 0; subset < coefficients.length; subset++) {
          const term = coefficients[subset]! * unions[subset]![s]!;
          all += term;
          // In unions that hold the sign its absence is already counted in.
          without += component.unions[subset]!.includes(sign) ? term : term * absent[s]!;
        }
        there[s] = all > 0 ? Math.min(1, Math.max(0, 1 - without / all)) : 1 - absent[s]!;
      }
      viaBroad.set(sign, there);
    }
  }
  return (sign) => {
    const known = viaBroad.get(sign);
    if (known) return known;
    const there = absentGivenSets(network, tables, sets, sign);
    const report = reports.get(sign);
    for (let s = 0; s < sets.count; s++) {
      const absent = there[s]!;
      const yes = (1 - absent) * (report?.ifPresent ?? 1);
      const no = absent * (report?.ifAbsent ?? 1);
      there[s] = yes + no > 0 ? yes / (yes + no) : 0;
    }
    return there;
  };
}
