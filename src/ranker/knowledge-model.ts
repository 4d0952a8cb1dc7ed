import { CHECKS, type Check, type CheckId } from '../causes/checks.ts';
import { COURSES } from '../causes/courses.ts';
import {
  type Cause,
  type CauseSign,
  type Circumstances,
  EQUIVALENT_OBSERVATIONS,
  LEANING_LOG_ODDS,
  type Leaning,
  type Season,
} from '../causes/schema.ts';
import { cropMatches } from '../signs/crops.ts';
import { FACTORS, type Factor } from '../signs/factors.ts';
import { ALL_SIGNS } from '../signs/members-of.ts';
import { type CropId, FREQUENCY_WORDS, type FrequencyWord, type SignId } from '../signs/vocabulary.ts';
import type { DecisionTable } from './decide-plan.ts';
import { fingerprint } from './draw-beta.ts';
import type { Evidence } from './evidence.ts';
import {
  AS_THE_TABLES_SAY,
  type EvidenceWeight,
  type Network,
  type NetworkFactor,
  type UncertainRate,
} from './network.ts';

/** The knowledge base, ready to compute with. */
export interface KnowledgeModel {
  readonly causes: readonly Cause[];
  readonly network: Network;
  /** The same while no report speaks for any sign: words count as they stand, so that the setting alone convicts nobody. */
  readonly networkBeforeSigns: Network;
  readonly signIndex: ReadonlyMap<SignId, number>;
  readonly factorIndex: ReadonlyMap<string, number>;
  readonly checks: readonly Check<CheckId>[];
  /** Facts that temper some loss: an answer that settles one changes what is at stake, not only beliefs. */
  readonly tempering: ReadonlySet<string>;
  /** Changes with every change of the knowledge base. */
  readonly version: string;
}

/** What a decision may depend on besides the causes: `sign`, `setting=outcome`, `crop=x`, `season=x`. */
export type Facts = ReadonlySet<string>;

/**
 * Effort of looking again and of checks, in percent of a bed's crop; `leastSaving` is the share of the expected loss that
 * a check must save to be put ahead of deciding now, `leastSavingLeftAlone` any question on a plant that is left alone. `seenInPassing` is the share of what a second look would save that
 * is saved without one: who leaves a plant alone still walks past it, and sees in time about every other trouble that
 * grows. `worthOfBit` is what a bit learnt about the causes is worth besides what it changes at once. Our own judgement
 * (common practice, no source).
 */
export const EFFORT = {
  lookAgain: 1.5,
  seenInPassing: 0.5,
  perMinute: 0.05,
  perDayWaited: 0.1,
  perCheck: 0.5,
  worthOfBit: 0.5,
  leastSaving: 0.05,
  leastSavingLeftAlone: 0.1,
} as const;

/** Share of all plants on a plot that make a grower stop and look; our own estimate (common practice, no source). */
const SHARE_THAT_STOPS = 0.1;

/**
 * Fitted by `training/fit-evidence-weight.ts` on two sets of published cases that were written down by people who had not
 * seen these tables; a fit on either was checked on the other (figures in `training/README.md`). With the words of the
 * tables as they stand, what was shown as 4 in 10 came true 6 times in 10.
 */
const EVIDENCE_WEIGHT: EvidenceWeight = { signs: 1.75, setting: 1.6 };

/** Words that a cause's sign holds at each node: both positions of a mark, or the sign itself. */
function nodesOf(entry: CauseSign): (readonly [SignId, FrequencyWord])[] {
  if ('sign' in entry) return [[entry.sign, entry.frequency]];
  const nodes: (readonly [SignId, FrequencyWord])[] = [];
  if (entry.old) nodes.push([`${entry.mark}@old`, entry.old]);
  if (entry.new) nodes.push([`${entry.mark}@new`, entry.new]);
  return nodes;
}

/** Name of the circumstance as a fact and as a reason. */
export function circumstanceKey(when: Circumstances): string {
  if ('setting' in when) return `${when.setting}=${when.is}`;
  return 'crop' in when ? `crop=${when.crop}` : `season=${when.season}`;
}

function leansOn(leaning: Leaning, factor: Factor, outcome: string): boolean {
  if (!('setting' in leaning.when) || leaning.when.setting !== factor.setting) return false;
  // Options of an any-of list are yes/no factors: a leaning on an option speaks of its "yes".
  if (factor.option !== undefined) return leaning.when.is === factor.option && outcome === 'yes';
  return leaning.when.is === outcome;
}

function networkFactor(factor: Factor, causes: readonly Cause[]): NetworkFactor {
  const width = factor.outcomes.length;
  const lean = new Float64Array(causes.length * width).fill(1);
  causes.forEach(({ leanings }, cause) => {
    for (const leaning of leanings) {
      factor.outcomes.forEach(({ id }, outcome) => {
        if (leansOn(leaning, factor, id))
          lean[cause * width + outcome]! *= Math.exp(LEANING_LOG_ODDS[leaning.leans]);
      });
    }
  });
  return {
    id: factor.id,
    outcomes: factor.outcomes.map(({ id }) => id),
    rates: Float64Array.from(factor.outcomes, ({ rate }) => rate),
    lean,
  };
}

function temperingFacts(causes: readonly Cause[]): ReadonlySet<string> {
  return new Set(
    causes.flatMap(({ tempered }) =>
      (tempered ?? []).map(({ when }) => ('sign' in when ? when.sign : circumstanceKey(when))),
    ),
  );
}

/**
 * Turn the knowledge base into a network.
 * @param causes all causes, `unlisted` among them
 * @param leakOf P(sign | no listed cause acts)
 * @param unlistedQ the flat rate at which the unlisted cause shows any sign
 */
export function compileKnowledge(
  causes: readonly Cause[],
  leakOf: (sign: SignId) => number,
  unlistedQ: number,
): KnowledgeModel {
  const signIndex = new Map(ALL_SIGNS.map((sign, i) => [sign, i] as const));
  const width = ALL_SIGNS.length;
  const q = new Float64Array(causes.length * width);
  const qObservations = new Float64Array(causes.length * width);
  causes.forEach((cause, row) => {
    if (cause.id === 'unlisted') q.fill(unlistedQ, row * width, (row + 1) * width);
    for (const entry of cause.signs) {
      for (const [sign, word] of nodesOf(entry)) {
        const at = row * width + signIndex.get(sign)!;
        q[at] = FREQUENCY_WORDS[word];
        qObservations[at] = EQUIVALENT_OBSERVATIONS[entry.confidence ?? 'described'];
      }
    }
  });
  const network: Network = {
    causes: causes.map(({ id }) => id),
    rate: causes.map(
      ({ baseRate }): UncertainRate => ({
        mean: baseRate.rate,
        observations: EQUIVALENT_OBSERVATIONS[baseRate.confidence] / Math.max(baseRate.rate, 0.02),
      }),
    ),
    furtherCause: SHARE_THAT_STOPS,
    evidenceWeight: EVIDENCE_WEIGHT,
    signs: ALL_SIGNS,
    leak: Float64Array.from(ALL_SIGNS, leakOf),
    q,
    qObservations,
    factors: FACTORS.map((factor) => networkFactor(factor, causes)),
  };
  const content = JSON.stringify([
    causes,
    [...network.leak],
    unlistedQ,
    network.evidenceWeight,
    network.furtherCause,
  ]);
  return {
    causes,
    network,
    networkBeforeSigns: { ...network, evidenceWeight: AS_THE_TABLES_SAY },
    signIndex,
    factorIndex: new Map(FACTORS.map(({ id }, i) => [id, i])),
    checks: CHECKS,
    tempering: temperingFacts(causes),
    version: fingerprint(content).toString(16).padStart(8, '0'),
  };
}

/** The network to weigh this evidence with. */
export function networkUnder(model: KnowledgeModel, { signs, broad }: Evidence): Network {
  const speaks = [...signs, ...broad].some(({ ifPresent, ifAbsent }) => ifPresent > ifAbsent);
  return speaks ? model.network : model.networkBeforeSigns;
}

/** Odds multipliers of the crop for every cause; 0 where the crop cannot have it. */
export function cropOdds(model: KnowledgeModel, crop: CropId): Float64Array {
  return Float64Array.from(model.causes, ({ leanings, onlyCrops }) => {
    if (onlyCrops && !onlyCrops.some((name) => cropMatches(crop, name))) return 0;
    return leanings.reduce(
      (odds, { when, leans }) =>
        'crop' in when && cropMatches(crop, when.crop) ? odds * Math.exp(LEANING_LOG_ODDS[leans]) : odds,
      1,
    );
  });
}

/** Odds multipliers of the season for every cause. */
export function seasonOdds(model: KnowledgeModel, season: Season): Float64Array {
  return Float64Array.from(model.causes, ({ leanings }) =>
    leanings.reduce(
      (odds, { when, leans }) =>
        'season' in when && when.season === season ? odds * Math.exp(LEANING_LOG_ODDS[leans]) : odds,
      1,
    ),
  );
}

function holds(when: Circumstances | { readonly sign: SignId }, facts: Facts): boolean {
  if ('sign' in when) return facts.has(when.sign);
  if ('crop' in when) {
    for (const fact of facts) {
      if (fact.startsWith('crop=') && cropMatches(fact.slice(5) as CropId, when.crop)) return true;
    }
    return false;
  }
  return facts.has(circumstanceKey(when));
}

/**
 * The losses that hold under what is known. Whoever acts looks again too: what a course does not help is found then and
 * costs what watching costs.
 */
export function decisionTable(model: KnowledgeModel, facts: Facts): DecisionTable {
  const losses = model.causes.map(
    ({ losses, tempered }) => tempered?.find(({ when }) => holds(when, facts)) ?? losses,
  );
  const watch = Float64Array.from(losses, (loss) => loss.watch);
  return {
    leave: Float64Array.from(losses, ({ leave, watch }) => leave - EFFORT.seenInPassing * (leave - watch)),
    watch,
    watchCost: EFFORT.lookAgain,
    courses: COURSES.map(({ id, needless }) => ({
      id,
      needless,
      remains: Float64Array.from(model.causes, ({ remedies }, cause) => {
        const remedy = remedies.find(({ course }) => course === id);
        return remedy ? Math.min(remedy.remains, watch[cause]!) : watch[cause]!;
      }),
    })),
  };
}
