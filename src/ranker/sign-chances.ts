import { type BroadComponent, broadComponents, signsOfComponent } from './broad-components.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { absentAfterReport, absentRow, fillProducts, unionsAbsent } from './likelihoods.ts';
import type { Network, Tables } from './network.ts';
import { reportsBySign } from './part-reports.ts';

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
  const reports = reportsBySign(evidence);
  const components = broadComponents(evidence);
  const known = new Map<number, Float64Array>();
  const learnComponent = (component: BroadComponent): void => {
    const { coefficients, unions } = component;
    const terms = unionsAbsent(network, tables, sets, component, reports);
    terms.forEach((term, subset) => {
      const coefficient = coefficients[component.reports.length - 1]![subset]!;
      for (let s = 0; s < term.length; s++) term[s]! *= coefficient;
    });
    const all = new Float64Array(sets.count);
    for (const term of terms) for (let s = 0; s < all.length; s++) all[s]! += term[s]!;
    for (const sign of signsOfComponent(component)) {
      const absent = absentAfterReport(network, tables, sets, sign, reports.get(sign));
      const without = new Float64Array(sets.count);
      terms.forEach((term, subset) => {
        // In unions that hold the sign its absence is already counted in.
        if (unions[subset]!.includes(sign)) for (let s = 0; s < without.length; s++) without[s]! += term[s]!;
        else for (let s = 0; s < without.length; s++) without[s]! += term[s]! * absent[s]!;
      });
      for (let s = 0; s < without.length; s++)
        without[s] = all[s]! > 0 ? Math.min(1, Math.max(0, 1 - without[s]! / all[s]!)) : 1 - absent[s]!;
      known.set(sign, without);
    }
  };
  const learnLone = (sign: number): void => {
    const report = reports.get(sign);
    if (!report) {
      const row = absentRow(network, tables, sets, sign);
      known.set(sign, fillProducts(sets, row, network.leak[sign]! - 1, 1, new Float64Array(sets.count)));
      return;
    }
    const there = absentAfterReport(network, tables, sets, sign, report);
    for (let s = 0; s < there.length; s++) there[s] = 1 - there[s]!;
    known.set(sign, there);
  };
  return (sign) => {
    if (!known.has(sign)) {
      const component = components.find((one) => signsOfComponent(one).includes(sign));
      if (component) learnComponent(component);
      else learnLone(sign);
    }
    return known.get(sign)!;
  };
}
