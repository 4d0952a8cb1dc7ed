import type { Evidence } from '../../src/ranker/evidence.ts';
import type { EvidenceWeight, Network } from '../../src/ranker/network.ts';

/** A small network written as plain tables, and the same sums done the long way. */
export interface SmallTables {
  readonly priors: readonly number[];
  /** `q[cause][sign]`. */
  readonly q: readonly (readonly number[])[];
  readonly leak: readonly number[];
  /** What every further cause costs; 1 = plain independence. */
  readonly further?: number;
  /** Powers of the likelihoods; 1 by default. */
  readonly weight?: EvidenceWeight;
  readonly factors?: readonly {
    readonly rates: readonly number[];
    readonly lean: readonly (readonly number[])[];
  }[];
}

export function buildNetwork({
  priors,
  q,
  leak,
  factors = [],
  further = 1,
  weight = { signs: 1, setting: 1 },
}: SmallTables): Network {
  return {
    causes: priors.map((_, i) => `cause-${i}`),
    rate: priors.map((mean) => ({ mean, observations: 40 })),
    furtherCause: further,
    evidenceWeight: weight,
    signs: leak.map((_, i) => `sign-${i}`),
    leak: Float64Array.from(leak),
    q: Float64Array.from(q.flat()),
    qObservations: new Float64Array(q.flat().length).fill(12),
    factors: factors.map(({ rates, lean }, i) => ({
      id: `factor-${i}`,
      outcomes: rates.map((_, o) => `outcome-${o}`),
      rates: Float64Array.from(rates),
      lean: Float64Array.from(lean.flat()),
    })),
  };
}

/** Every subset of causes of a size between the two bounds, as lists of indices. */
export function subsets(count: number, least: number, most: number): number[][] {
  return Array.from({ length: 2 ** count }, (_, mask) =>
    Array.from({ length: count }, (_, i) => i).filter((i) => mask & (1 << i)),
  ).filter(({ length }) => length >= least && length <= most);
}

/**
 * P(set, evidence) by summing over every state of every sign: no shortcut that the code under test takes.
 * @returns weights of the given sets, unnormalised
 */
export function bruteForceWeights(
  tables: SmallTables,
  evidence: Evidence,
  sets: readonly number[][],
): number[] {
  const signCount = tables.leak.length;
  return sets.map((set) => {
    const { signs: signsPower, setting: settingPower } = tables.weight ?? { signs: 1, setting: 1 };
    let prior = (tables.further ?? 1) ** (set.length - 1);
    tables.priors.forEach((p, i) => {
      prior *= set.includes(i) ? p : 1 - p;
    });
    let setting = 1;
    for (const { factor, outcome } of evidence.factors) {
      const { rates, lean } = tables.factors![factor]!;
      const weightOf = (o: number): number => rates[o]! * set.reduce((w, i) => w * lean[i]![o]!, 1);
      setting *= weightOf(outcome) / rates.reduce((sum, _, o) => sum + weightOf(o), 0) / rates[outcome]!;
    }
    for (const { oddsFactor } of evidence.context) for (const i of set) setting *= oddsFactor[i]!;
    let sum = 0;
    for (let state = 0; state < 2 ** signCount; state++) {
      const there = (sign: number): boolean => (state & (1 << sign)) !== 0;
      let p = 1;
      for (let sign = 0; sign < signCount; sign++) {
        const absent =
          (1 - tables.leak[sign]!) * set.reduce((product, i) => product * (1 - tables.q[i]![sign]!), 1);
        p *= there(sign) ? 1 - absent : absent;
      }
      for (const { sign, ifPresent, ifAbsent } of evidence.signs) p *= there(sign) ? ifPresent : ifAbsent;
      for (const { members, ifPresent, ifAbsent } of evidence.broad)
        p *= members.some(there) ? ifPresent : ifAbsent;
      sum += p;
    }
    return prior * setting ** settingPower * sum ** signsPower;
  });
}
