/**
 * The network that the ranking is computed on: causes that act or not, signs with a leaky noisy-OR over the causes,
 * and factors (the setting) whose outcomes lean on the odds of causes. Plain numbers, independent of the knowledge
 * base, so that small networks with known answers can be tested.
 */

/** A rate known only so well: a Beta distribution given by its mean and equivalent number of observations. */
export interface UncertainRate {
  readonly mean: number;
  readonly observations: number;
}

export interface NetworkFactor {
  readonly id: string;
  readonly outcomes: readonly string[];
  /** P(outcome) among growers who would be asked; sums to 1. */
  readonly rates: Float64Array;
  /** Odds multipliers, `[cause × outcomes + outcome]`; 1 where the factor does not lean, 0 where it rules out. */
  readonly lean: Float64Array;
}

/**
 * The powers that likelihoods are raised to. At 1 words and reports count as the tables have them. Words such as "often"
 * and "rarely" turn out too timid when judged against outcomes; a common power sets the odds right without changing
 * which way any finding points, as temperature scaling does for other forecasts (Guo et al. 2017, GUO-2017).
 */
export interface EvidenceWeight {
  /** For reports on signs. */
  readonly signs: number;
  /** For the setting, crop and season. */
  readonly setting: number;
}

/** The words of the tables as they stand. */
export const AS_THE_TABLES_SAY: EvidenceWeight = { signs: 1, setting: 1 };

export interface Network {
  readonly causes: readonly string[];
  readonly rate: readonly UncertainRate[];
  /**
   * What every further cause in a set multiplies its odds by. Rates are those of plants that made somebody stop and
   * look; once one cause explains that, a second one is only as likely as on any plant. With a share k of all plants
   * making a grower stop, rates on any plant are k times those given, and sets of n causes weigh k^(n − 1) of the
   * plain product of odds.
   */
  readonly furtherCause: number;
  readonly evidenceWeight: EvidenceWeight;
  readonly signs: readonly string[];
  /** P(sign | no cause), one a sign. */
  readonly leak: Float64Array;
  /** P(sign through this cause alone), `[cause × signs + sign]`. */
  readonly q: Float64Array;
  /** Equivalent observations behind each `q`; 0 where it is fixed. */
  readonly qObservations: Float64Array;
  readonly factors: readonly NetworkFactor[];
}

/** The numbers of the tables that a draw replaces; by default the means. */
export interface Tables {
  readonly rate: Float64Array;
  readonly q: Float64Array;
}

/** The tables at their means. */
export function meanTables(network: Network): Tables {
  return { rate: Float64Array.from(network.rate, ({ mean }) => mean), q: network.q };
}
