import { broadComponents, signsOfComponent } from './broad-components.ts';
import { type CauseSets, enumerateSets } from './enumerate-sets.ts';
import type { Evidence, FactorEvidence } from './evidence.ts';
import {
  componentLikelihood,
  factorLikelihood,
  fillProducts,
  signLikelihood,
  unionsAbsent,
} from './likelihoods.ts';
import type { Network, Tables } from './network.ts';
import { reportsBySign } from './part-reports.ts';

/**
 * The few causes that something depends on, and all their subsets. A sign that a cause never shows is the same with and
 * without it; so what is known of a sign need only be worked out on the subsets of the causes that can show it.
 */
export interface Touched {
  /** Places in `alive` of the sets it belongs to, ascending. */
  readonly at: Uint8Array;
  /** All subsets of these causes, the empty one among them. */
  readonly subsets: CauseSets;
}

/** A number for every set of causes that depends only on which of the touched causes are in it. */
export interface LocalFunction extends Touched {
  /** By place in `subsets`. */
  readonly values: Float64Array;
}

export interface LocalLikelihood extends LocalFunction {
  readonly label: string;
  /** What it is raised to. */
  readonly power: number;
}

/** From this many causes on, going through all sets is cheaper than through the subsets of these causes. */
export const WIDE = 36;

function touchedWhere(network: Network, sets: CauseSets, touches: (cause: number) => boolean): Touched {
  const all = Uint8Array.from(sets.alive.keys());
  const few = all.filter((i) => touches(sets.alive[i]!));
  const at = few.length < WIDE ? few : all;
  const causes = at.map((i) => sets.alive[i]!);
  return { at, subsets: enumerateSets(network.causes.length, causes, { most: sets.most, empty: true }) };
}

/** The causes that can show any of some signs. Draws of the tables leave it as it is: a rate of nought stays nought. */
export function touchedBySigns(network: Network, sets: CauseSets, signs: readonly number[]): Touched {
  const width = network.signs.length;
  return touchedWhere(network, sets, (cause) => signs.some((sign) => network.q[cause * width + sign]! > 0));
}

/** The causes that lean on any of some factors. */
export function touchedByFactors(
  network: Network,
  sets: CauseSets,
  factors: readonly Pick<FactorEvidence, 'factor' | 'lean'>[],
): Touched {
  return touchedWhere(network, sets, (cause) =>
    factors.some(({ factor, lean = network.factors[factor]!.lean }) => {
      const width = network.factors[factor]!.outcomes.length;
      return lean.subarray(cause * width, (cause + 1) * width).some((odds) => odds !== 1);
    }),
  );
}

/**
 * The likelihood of every piece of evidence. Broad reports come with the likelihood that they add to the reports before
 * them in their component.
 */
export function localLikelihoods(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  evidence: Evidence,
): LocalLikelihood[] {
  const reports = reportsBySign(evidence);
  const { signs: ofSigns, setting: ofSetting } = network.evidenceWeight;
  return [
    ...evidence.context.map(({ label, oddsFactor }): LocalLikelihood => {
      const touched = touchedWhere(network, sets, (cause) => oddsFactor[cause] !== 1);
      const odds = Float64Array.from(touched.subsets.alive, (cause) => oddsFactor[cause]!);
      const values = new Float64Array(touched.subsets.count);
      fillProducts(touched.subsets, odds, 1, 0, values);
      return { ...touched, label, power: ofSetting, values };
    }),
    ...evidence.factors.map((factor): LocalLikelihood => {
      const touched = touchedByFactors(network, sets, [factor]);
      const values = factorLikelihood(network, touched.subsets, factor);
      return { ...touched, label: factor.label, power: ofSetting, values };
    }),
    ...evidence.signs.map((report): LocalLikelihood => {
      const touched = touchedBySigns(network, sets, [report.sign]);
      const values = signLikelihood(network, tables, touched.subsets, report);
      return { ...touched, label: report.label, power: ofSigns, values };
    }),
    ...broadComponents(evidence).flatMap((component) => {
      const touched = touchedBySigns(network, sets, signsOfComponent(component));
      const unions = unionsAbsent(network, tables, touched.subsets, component, reports);
      let before = new Float64Array(touched.subsets.count).fill(1);
      return component.reports.map(({ label }, last): LocalLikelihood => {
        const joint = new Float64Array(before.length);
        componentLikelihood(component, unions, last, joint);
        const values = joint.map((p, s) => (before[s]! > 0 ? p / before[s]! : 0));
        before = joint;
        return { ...touched, label, power: ofSigns, values };
      });
    }),
  ];
}
