import {
  brierScore,
  brierScoreOfClasses,
  calibrationError,
  type Forecast,
  logLoss,
  type ReliabilityBin,
  reliabilityTable,
} from '../../ranker/score-forecasts.ts';
import type { Reason } from '../../ranker/types.ts';
import type { CauseId, VerdictId } from '../../signs/vocabulary.ts';
import {
  CASE_GROUPS,
  type CaseGroup,
  GROUP_IDS,
  NORMAL_GROUPS,
  placeOf,
  scoreGroups,
} from './case-groups.ts';
import { INFORMATION_LEVELS, type InformationLevel, type JudgedCase } from './read-cases.ts';
import {
  type Chances,
  chancesByNaiveBayes,
  chancesByPriorOnly,
  chancesOfRanking,
  weighAnswers,
} from './weigh-answers.ts';

/** Ways of ranking that are compared in the same run. */
export const METHODS = ['network', 'naive-bayes', 'prior-only'] as const;
export type Method = (typeof METHODS)[number];

/** What one method made of one case. */
interface Judgement {
  readonly first: CaseGroup;
  /** Place of the expert's group. */
  readonly place: number;
  /** Chance shown for the leading group. */
  readonly confidence: number;
  /** Chance shown for the expert's group. */
  readonly chance: number;
  readonly brier: number;
  readonly logLoss: number;
  /** A yes/no forecast for every group. */
  readonly forecasts: readonly Forecast[];
}

/** Scores over several cases. */
export interface Scores {
  readonly cases: number;
  readonly first: number;
  readonly inFirstThree: number;
  /** Sum form over the groups, 0–2; the groups' scores are scaled to sum to 1, as one expert names one group. */
  readonly brier: number;
  /** Nats, of the same scaled scores. */
  readonly logLoss: number;
  /** Nats, of the chance as it is shown: causes may act together, so the groups' chances need not sum to 1. */
  readonly logLossShown: number;
  /** Of the chance shown for the leading group against how often it is the expert's, ten bins. */
  readonly calibrationError: number;
  /** Of every group's chance as a yes/no forecast, and its Brier score. */
  readonly calibrationErrorOfAll: number;
  readonly brierOfAll: number;
  /** Nats a case: every group a yes/no forecast of its own, the only proper log score of chances that need not sum to 1. */
  readonly logLossOfAll: number;
}

export interface Miss {
  readonly id: string;
  readonly information: InformationLevel;
  readonly expected: CaseGroup;
  readonly also: readonly CaseGroup[];
  readonly place: number;
  readonly chance: number;
  readonly got: CaseGroup;
  readonly gotChance: number;
  /** Heaviest reasons for the cause that led, and for and against the best cause of the expert's group. */
  readonly leading: { readonly cause: CauseId; readonly reasons: readonly Reason[] };
  readonly missed: { readonly cause: CauseId; readonly reasons: readonly Reason[] };
}

export interface Evaluation {
  /** By `rich`, `fair`, `poor`, `rich and fair`, `all`. */
  readonly byInformation: Readonly<Record<string, Readonly<Record<Method, Scores>>>>;
  readonly byGroup: Readonly<Record<string, Scores>>;
  readonly reliability: Readonly<Record<Method, readonly ReliabilityBin[]>>;
  readonly verdicts: Readonly<Record<string, Readonly<Record<VerdictId, number>>>>;
  /** Cases of residue that end in "leave", and normal ones that end in "act": there should be none. */
  readonly broken: readonly string[];
  readonly misses: readonly Miss[];
}

function judge(chances: Chances, group: CaseGroup): Judgement {
  const scores = scoreGroups(chances);
  const place = placeOf(group, scores);
  const [leading] = [...scores].sort(
    (a, b) => b[1] - a[1] || GROUP_IDS.indexOf(a[0]) - GROUP_IDS.indexOf(b[0]),
  );
  const total = [...scores.values()].reduce((sum, score) => sum + score, 0);
  const scaled = GROUP_IDS.map((id) => scores.get(id)! / total);
  const at = GROUP_IDS.indexOf(group);
  return {
    first: place === 1 ? group : leading![0],
    place,
    confidence: leading![1],
    chance: scores.get(group)!,
    brier: brierScoreOfClasses(scaled, at),
    logLoss: logLoss(scaled[at]!),
    forecasts: GROUP_IDS.map((id) => ({ probability: scores.get(id)!, happened: id === group })),
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

const asForecast = ({ confidence, place }: Judgement): Forecast => ({
  probability: confidence,
  happened: place === 1,
});

function scoresOf(judgements: readonly Judgement[]): Scores {
  const all = judgements.flatMap(({ forecasts }) => forecasts);
  return {
    cases: judgements.length,
    first: mean(judgements.map(({ place }) => Number(place === 1))),
    inFirstThree: mean(judgements.map(({ place }) => Number(place <= 3))),
    brier: mean(judgements.map(({ brier }) => brier)),
    logLoss: mean(judgements.map((judgement) => judgement.logLoss)),
    logLossShown: mean(judgements.map(({ chance }) => logLoss(chance))),
    calibrationError: calibrationError(judgements.map(asForecast)),
    calibrationErrorOfAll: calibrationError(all),
    brierOfAll: brierScore(all),
    logLossOfAll:
      all.reduce(
        (sum, { probability, happened }) => sum + logLoss(happened ? probability : 1 - probability),
        0,
      ) / judgements.length,
  };
}

const HEAVIEST = 4;

interface Weighed {
  readonly judged: JudgedCase;
  readonly by: Readonly<Record<Method, Judgement>>;
  readonly verdict: VerdictId;
  readonly miss?: Miss;
}

function weigh(judged: JudgedCase, prior: Chances): Weighed {
  const ranking = weighAnswers(judged.answers);
  const by = {
    network: judge(chancesOfRanking(ranking), judged.group),
    'naive-bayes': judge(chancesByNaiveBayes(judged.answers), judged.group),
    'prior-only': judge(prior, judged.group),
  };
  const weighed = { judged, by, verdict: ranking.verdict.id };
  const { place, chance, first, confidence } = by.network;
  if (place === 1) return weighed;
  const reasonsOf = (group: CaseGroup): Miss['leading'] => {
    const members: readonly CauseId[] = CASE_GROUPS[group];
    const best = ranking.causes.find(({ id }) => members.includes(id))!;
    const reasons = [...best.for, ...best.against]
      .sort((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans))
      .slice(0, HEAVIEST);
    return { cause: best.id, reasons };
  };
  const { id, information, group, also } = judged;
  const miss: Miss = {
    id,
    information,
    expected: group,
    also,
    place,
    chance,
    got: first,
    gotChance: confidence,
    leading: reasonsOf(first),
    missed: reasonsOf(group),
  };
  return { ...weighed, miss };
}

/** Weigh every case by the network and by the two baselines, and score them against the expert. */
export function evaluateCases(cases: readonly JudgedCase[]): Evaluation {
  const prior = chancesByPriorOnly();
  const weighed = cases.map((judged) => weigh(judged, prior));
  const levels: readonly (readonly [string, readonly InformationLevel[]])[] = [
    ...INFORMATION_LEVELS.map((level) => [level, [level]] as const),
    ['rich and fair', ['rich', 'fair']],
    ['all', INFORMATION_LEVELS],
  ];
  const byInformation: Record<string, Record<Method, Scores>> = {};
  for (const [name, wanted] of levels) {
    const some = weighed.filter(({ judged }) => wanted.includes(judged.information));
    if (some.length > 0)
      byInformation[name] = {
        network: scoresOf(some.map(({ by }) => by.network)),
        'naive-bayes': scoresOf(some.map(({ by }) => by['naive-bayes'])),
        'prior-only': scoresOf(some.map(({ by }) => by['prior-only'])),
      };
  }
  const byGroup: Record<string, Scores> = {};
  const verdicts: Record<string, Record<VerdictId, number>> = {};
  for (const group of GROUP_IDS) {
    const some = weighed.filter(({ judged }) => judged.group === group);
    if (some.length === 0) continue;
    byGroup[group] = scoresOf(some.map(({ by }) => by.network));
    verdicts[group] = { leave: 0, watch: 0, check: 0, act: 0 };
    for (const { verdict } of some) verdicts[group][verdict] += 1;
  }
  const table = (method: Method): ReliabilityBin[] =>
    reliabilityTable(weighed.map(({ by }) => asForecast(by[method])));
  return {
    byInformation,
    byGroup,
    reliability: {
      network: table('network'),
      'naive-bayes': table('naive-bayes'),
      'prior-only': table('prior-only'),
    },
    verdicts,
    broken: weighed.flatMap(({ judged: { id, group }, verdict }) => [
      ...(group === 'herbicide_residue_in_compost' && verdict === 'leave'
        ? [`${id}: residue ends in leave`]
        : []),
      ...(NORMAL_GROUPS.has(group) && verdict === 'act' ? [`${id}: a normal plant ends in act`] : []),
    ]),
    misses: weighed.flatMap(({ miss }) => (miss ? [miss] : [])),
  };
}
