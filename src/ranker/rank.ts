import { cropMatches } from '../signs/crops.ts';
import { familyOf } from '../signs/family-of.ts';
import { SETTINGS, type SettingId } from '../signs/settings.ts';
import type { CauseId, CropId } from '../signs/vocabulary.ts';
import { isToTheMatter } from '../signs/when-to-ask.ts';
import { type Attribution, attributeEvidence } from './attribute-evidence.ts';
import { type Asked, chooseNextCheck } from './choose-next-check.ts';
import { asShown, decideVerdict } from './decide-verdict.ts';
import { drawRanges } from './draw-ranges.ts';
import { type CauseSets, eachSet, enumerateSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { answeredByEye, gatherEvidence, type Known, ruledOut } from './gather-evidence.ts';
import {
  circumstanceKey,
  decisionTable,
  type Facts,
  type KnowledgeModel,
  networkUnder,
} from './knowledge-model.ts';
import { meanTables } from './network.ts';
import type { Assumption, RankedCause, Ranking, Reason, Together } from './types.ts';
import { marginals, normalise, weighSets } from './weigh-sets.ts';

export interface RankInput extends Known {
  /** ISO date of today. */
  readonly today: string;
  readonly cannotSay?: readonly string[];
  /** Draws behind the ranges. */
  readonly draws?: number;
}

/** Sets of several causes below this chance are not worth a line. */
const TOGETHER_FROM = 0.01;
const MOST_TOGETHER = 8;

function factsOf(known: Known): Facts {
  const seen = known.findings.filter(
    ({ from, ifPresent, ifAbsent }) => from === 'eye' && ifPresent > ifAbsent,
  );
  const options = known.circumstances.map(({ id, outcome }) => {
    const [setting, option] = id.split(':');
    // `compost-kinds:horse-manure` with outcome yes is the fact `compost-kinds=horse-manure`.
    return option === undefined ? `${id}=${outcome}` : outcome === 'yes' ? `${setting}=${option}` : '';
  });
  return new Set([
    ...seen.map(({ sign }) => sign),
    ...options.filter((fact) => fact !== ''),
    ...(known.crop ? [`crop=${known.crop}`] : []),
    ...(known.season ? [`season=${known.season}`] : []),
  ]);
}

/** Why a circumstance leans on a cause, in the words of the knowledge base. */
function becauseOf(model: KnowledgeModel, cause: number, label: string): string | undefined {
  const normal = label.replace(/:([^=]+)=yes$/, '=$1');
  const crop = label.startsWith('crop=') ? (label.slice(5) as CropId) : undefined;
  return model.causes[cause]!.leanings.find(({ when }) =>
    'crop' in when ? crop !== undefined && cropMatches(crop, when.crop) : circumstanceKey(when) === normal,
  )?.because;
}

function reasonsFor(
  model: KnowledgeModel,
  attribution: Attribution,
  evidence: Evidence,
  cause: number,
): Reason[] {
  const reporters = new Map(
    [...evidence.signs, ...evidence.broad, ...evidence.factors].map(
      ({ label, from }) => [label, from] as const,
    ),
  );
  const worked = new Map(evidence.factors.map(({ label, because }) => [label, because] as const));
  const width = attribution.labels.length;
  return attribution.labels.flatMap((sign, f): Reason[] => {
    const decibans = attribution.decibans[cause * width + f]!;
    if (Math.abs(decibans) < 1e-9) return [];
    const because = worked.get(sign)?.get(cause) ?? becauseOf(model, cause, sign);
    return [
      { sign, decibans, from: reporters.get(sign) ?? ['eye'], ...(because === undefined ? {} : { because }) },
    ];
  });
}

function togetherOf(model: KnowledgeModel, sets: CauseSets, posterior: Float64Array): Together[] {
  const found: Together[] = [];
  eachSet(sets, (place, ...members) => {
    const probability = posterior[place]!;
    if (members[1] < 0 || probability < TOGETHER_FROM) return;
    const causes = members.filter((at) => at >= 0).map((at) => model.causes[sets.alive[at]!]!.id);
    found.push({ causes, probability });
  });
  return found.sort((a, b) => b.probability - a.probability).slice(0, MOST_TOGETHER);
}

/** Settings that nobody answered although they lean on one of the leading causes. */
function assumptions(
  model: KnowledgeModel,
  known: Known,
  facts: Facts,
  leading: readonly RankedCause[],
): Assumption[] {
  const answered = new Set(known.circumstances.map(({ id }) => id.split(':')[0]));
  const leadingIds = new Set(leading.map(({ id }) => id));
  const leaning = new Set(
    model.causes
      .filter(({ id }) => leadingIds.has(id))
      .flatMap(({ leanings }) => leanings.flatMap(({ when }) => ('setting' in when ? [when.setting] : []))),
  );
  return [
    ...(known.crop ? [] : [{ setting: 'crop' } as const]),
    ...(known.season ? [] : [{ setting: 'date' } as const]),
    ...(Object.keys(SETTINGS) as SettingId[])
      .filter((setting) => leaning.has(setting) && !answered.has(setting) && isToTheMatter(setting, facts))
      .map((setting) => ({ setting })),
  ];
}

/** The exact posterior over sets of up to three causes, and all that it was made of. */
function weigh(model: KnowledgeModel, known: Known) {
  const evidence = gatherEvidence(model, known);
  const network = networkUnder(model, evidence);
  const out = ruledOut(model, evidence);
  const alive = model.causes.map((_, cause) => cause).filter((cause) => !out.has(cause));
  const sets = enumerateSets(network.causes.length, alive);
  const tables = meanTables(network);
  const logWeights = weighSets(network, tables, sets, evidence);
  const posterior = normalise(logWeights);
  const chances = marginals(network.causes.length, sets, posterior);
  return { evidence, network, out, sets, tables, logWeights, posterior, chances };
}

/** The chances of all causes as `rank` gives them, without ranges, reasons and checks: a fifth of the work. */
export const rankChancesOnly = (model: KnowledgeModel, known: Known): ReadonlyMap<CauseId, number> => {
  const { chances } = weigh(model, known);
  return new Map(model.causes.map(({ id }, cause) => [id, chances[cause]!]));
};

/**
 * Rank the causes of what is known of a plant: exact posterior over sets of up to three causes, ranges, reasons, next
 * checks and the verdict.
 */
export function rank(model: KnowledgeModel, input: RankInput): Ranking {
  const { evidence, network, out, sets, tables, logWeights, posterior, chances } = weigh(model, input);
  const ranges = drawRanges(network, sets, evidence, posterior, input.draws);
  const attribution = attributeEvidence(network, tables, sets, evidence, logWeights);
  const causes = model.causes.map(({ id }, cause): RankedCause => {
    const excludedBy = out.get(cause);
    const shared = { id, family: familyOf(id), probability: chances[cause]! };
    if (excludedBy !== undefined)
      return { ...shared, low: 0, high: 0, priorDecibans: 0, for: [], against: [], ruledOut: excludedBy };
    const reasons = reasonsFor(model, attribution, evidence, cause);
    return {
      ...shared,
      low: ranges.low[cause]!,
      high: ranges.high[cause]!,
      priorDecibans: attribution.priorDecibans[cause]!,
      for: reasons.filter(({ decibans }) => decibans > 0).sort((a, b) => b.decibans - a.decibans),
      against: reasons.filter(({ decibans }) => decibans < 0).sort((a, b) => a.decibans - b.decibans),
    };
  });
  causes.sort(
    (a, b) =>
      b.probability - a.probability ||
      Number(a.ruledOut !== undefined) - Number(b.ruledOut !== undefined) ||
      (a.id < b.id ? -1 : 1),
  );
  const settledSigns = answeredByEye(input.findings);
  const asked: Asked = {
    signs: settledSigns,
    settings: new Set(input.circumstances.map(({ id }) => id.split(':')[0]!)),
    cannotSay: new Set(input.cannotSay),
  };
  const facts = factsOf(input);
  const table = decisionTable(model, facts);
  const next = chooseNextCheck(model, sets, posterior, evidence, facts, table, asked, input.openLeanings);
  return {
    causes,
    together: togetherOf(model, sets, posterior),
    verdict: decideVerdict(model, table, chances, next, input.today),
    nextChecks: next.all.filter(({ offered }) => offered).map(asShown),
    openQuestions: next.all.map(asShown),
    assumed: assumptions(model, input, facts, causes.slice(0, 5)),
    nothingSaid: input.findings.length === 0 && input.circumstances.length === 0,
    nothingSeen: !input.findings.some(({ ifPresent, ifAbsent }) => ifPresent > ifAbsent),
    settledSigns: [...settledSigns],
  };
}
