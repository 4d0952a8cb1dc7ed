import type { Zone } from '../../days/growing-year.ts';
import { enumerateSets } from '../../ranker/enumerate-sets.ts';
import { type Evidence, NO_EVIDENCE } from '../../ranker/evidence.ts';
import { gatherEvidence, type Known, ruledOut } from '../../ranker/gather-evidence.ts';
import { type EvidenceWeight, meanTables, type Network } from '../../ranker/network.ts';
import type { Ranking } from '../../ranker/types.ts';
import { marginals, normalise, weighSets } from '../../ranker/weigh-sets.ts';
import { seasonOf } from '../../season/season-of.ts';
import { circumstancesFromAnswers } from '../../signs/circumstances-from-answers.ts';
import { findingsFromAnswers } from '../../signs/findings-from-answers.ts';
import type { Answers } from '../../signs/types.ts';
import type { CauseId } from '../../signs/vocabulary.ts';
import { workOutLeanings } from '../../signs/work-out-leanings.ts';
import { knowledgeModel, type TriageInput, triage, triageChances } from '../../triage.ts';

export type Chances = ReadonlyMap<CauseId, number>;

/**
 * Published cases name no place that could be read by rule. All that give a date come from north of the equator; the few from
 * the south give none, and without a date north and south weigh the same.
 */
const ZONE: Zone = 'north';

function knownFrom(answers: Answers): Known {
  const { crop, date } = answers;
  return {
    findings: findingsFromAnswers(answers),
    circumstances: circumstancesFromAnswers(answers, workOutLeanings(answers, { zone: ZONE })),
    ...(crop === undefined ? {} : { crop }),
    ...(date === undefined ? {} : { season: seasonOf(date, ZONE) }),
  };
}

/** Dates the verdict of a case that gives no date of its own. */
const SOME_DAY = '2026-06-18';

const inputOf = (answers: Answers): TriageInput => ({
  photos: [],
  answers,
  today: answers.date ?? SOME_DAY,
  zone: ZONE,
  // The ranges are not scored.
  draws: 1,
});

/** The ranking of answers without photos, as both faces give it, but for the ranges. */
export const weighAnswers = (answers: Answers): Ranking => triage(inputOf(answers));

/** The chances of that ranking alone: a fifth of the work. */
export const weighChances = (answers: Answers): Chances => triageChances(inputOf(answers));

function chancesOfSets(network: Network, evidence: Evidence, most: 1 | 3): Chances {
  const out = ruledOut(knowledgeModel(), evidence);
  const alive = network.causes.map((_, cause) => cause).filter((cause) => !out.has(cause));
  const sets = enumerateSets(network.causes.length, alive, { most });
  const posterior = normalise(weighSets(network, meanTables(network), sets, evidence));
  const chances = marginals(network.causes.length, sets, posterior);
  return new Map(network.causes.map((cause, at) => [cause as CauseId, chances[at]!]));
}

/** The chances under a network with other weights of evidence than the model's own. */
export function chancesWeighed(evidenceWeight: EvidenceWeight, answers: Answers): Chances {
  const network = { ...knowledgeModel().network, evidenceWeight };
  return chancesOfSets(network, gatherEvidence(knowledgeModel(), knownFrom(answers)), 3);
}

/** Baseline: base rates alone, whatever was said. */
export function chancesByPriorOnly(): Chances {
  return chancesOfSets(knowledgeModel().network, NO_EVIDENCE, 3);
}

/** Baseline: the usual naive Bayes, exactly one cause acts, on the very same tables and with their words as they stand. */
export function chancesByNaiveBayes(answers: Answers): Chances {
  return chancesOfSets(
    knowledgeModel().networkBeforeSigns,
    gatherEvidence(knowledgeModel(), knownFrom(answers)),
    1,
  );
}

/** The chances of a ranking, by cause. */
export function chancesOfRanking({ causes }: Ranking): Chances {
  return new Map(causes.map(({ id, probability }) => [id, probability]));
}
