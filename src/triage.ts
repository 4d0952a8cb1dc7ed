import { CHECKS, type CheckId } from './causes/checks.ts';
import { KNOWLEDGE } from './causes/knowledge/index.ts';
import { leakOf, UNLISTED_Q } from './causes/leaks.ts';
import { daysBetween } from './days/days.ts';
import type { Zone } from './days/growing-year.ts';
import type { LeafReading } from './leaf/types.ts';
import { compileKnowledge, type KnowledgeModel } from './ranker/knowledge-model.ts';
import { drawLessons, type GardenLessons, type LessonCase } from './ranker/learn-lessons.ts';
import { type GardenCounts, gardenOdds } from './ranker/learn-rates.ts';
import { type RankInput, rank, rankChancesOnly } from './ranker/rank.ts';
import type { Ranking } from './ranker/types.ts';
import { seasonOf } from './season/season-of.ts';
import { circumstancesFromAnswers } from './signs/circumstances-from-answers.ts';
import { findingFromPotTests, isDecided } from './signs/finding-from-pot-tests.ts';
import type { NetworkSaid } from './signs/findings-from-reports.ts';
import { answersOverLooks, findingsOverLooks } from './signs/findings-over-looks.ts';
import type { SeenAtLook } from './signs/seen-at-look.ts';
import type { Answers, Finding } from './signs/types.ts';
import type { CauseId } from './signs/vocabulary.ts';
import { workOutLeanings } from './signs/work-out-leanings.ts';

/** Everything that is known about one look at a plant. Photos have been read by `readLeaf` before. */
export interface TriageInput {
  readonly photos: readonly LeafReading[];
  readonly answers: Answers;
  /** What the network of signs said of the photos, where it was switched on: another voice beside the camera. */
  readonly network?: readonly NetworkSaid[];
  /** Earlier looks at the same plant, in any order: what they showed still counts, and so does what changed since. */
  readonly earlier?: readonly SeenAtLook[];
  /** ISO date of today, `YYYY-MM-DD`: dates the verdict. */
  readonly today: string;
  /** Where the garden lies: south of the equator the seasons are turned by half a year. */
  readonly zone: Zone;
  /** Mean soil temperature since something was mixed in, °C, where records give it; else the season's. */
  readonly soilCelsius?: number;
  /** Draws of the tables for the ranges. Default 200. */
  readonly draws?: number;
  /** Questions that were answered "can't say": not offered again. */
  readonly cannotSay?: readonly string[];
  /**
   * What pot tests of the loads under this plant say of injury, as one Bayes factor a load (`testedLoadsUnder` of the garden).
   * An answer about the pots by the grower counts instead.
   */
  readonly potTests?: readonly number[];
  /** What the settled cases of this garden have taught, as sums. */
  readonly garden?: GardenCounts;
}

/** The answer, the same for both faces. */
export interface TriageResult extends Ranking {
  readonly photos: readonly LeafReading[];
  readonly findings: readonly Finding[];
  /** Version of the knowledge base that the ranking was made with. */
  readonly knowledge: string;
}

let compiled: KnowledgeModel | undefined;

/** The knowledge base as a network, compiled once. */
export function knowledgeModel(): KnowledgeModel {
  compiled ??= compileKnowledge(KNOWLEDGE, leakOf, UNLISTED_Q);
  return compiled;
}

/**
 * From what was photographed and answered to a ranking, the next check and a verdict. Pure: the same input gives the
 * same result, on every device.
 */
export function triage(input: TriageInput): TriageResult {
  const { model, known } = gather(input);
  const ranking = rank(model, known);
  return { ...ranking, photos: input.photos, findings: known.findings, knowledge: model.version };
}

/** The chances of all causes that `triage` gives for the same, and nothing else; for whoever asks for many. Pure. */
export function triageChances(input: TriageInput): ReadonlyMap<CauseId, number> {
  const { model, known } = gather(input);
  return rankChancesOnly(model, known);
}

function gather(input: TriageInput): { readonly model: KnowledgeModel; readonly known: RankInput } {
  const model = knowledgeModel();
  const { photos, earlier = [], network = [] } = input;
  const now: SeenAtLook = {
    date: input.answers.date ?? input.today,
    photos,
    answers: input.answers,
    network,
  };
  const seen = findingsOverLooks(now, earlier);
  const tested = findingFromPotTests(input.potTests ?? [], seen);
  const findings = tested ? [...seen, tested] : seen;
  const made: CheckId[] = [
    ...(tested && isDecided(tested) ? (['pot-test'] as const) : []),
    ...(hasCompared(now, earlier, seen) ? (['wait-and-compare'] as const) : []),
  ];
  const cannotSay = [...(input.cannotSay ?? []), ...made];
  const answers = answersOverLooks(now, earlier);
  const { crop, date } = answers;
  const { zone, soilCelsius } = input;
  const leanings = workOutLeanings(answers, {
    zone,
    ...(soilCelsius === undefined ? {} : { soilCelsius }),
  });
  const known: RankInput = {
    findings,
    circumstances: circumstancesFromAnswers(answers, leanings),
    openLeanings: leanings,
    today: input.today,
    ...(crop === undefined ? {} : { crop }),
    ...(date === undefined ? {} : { season: seasonOf(date, zone) }),
    ...(cannotSay.length === 0 ? {} : { cannotSay }),
    ...(input.draws === undefined ? {} : { draws: input.draws }),
    ...(input.garden === undefined ? {} : { garden: gardenOdds(model, input.garden) }),
  };
  return { model, known };
}

const COMPARED_AFTER = CHECKS.find(({ id }) => id === 'wait-and-compare')!.waitDays;

/** A check that is made already is not asked for: the leaf of a week ago has been set beside today's. */
const hasCompared = (now: SeenAtLook, earlier: readonly SeenAtLook[], seen: readonly Finding[]): boolean =>
  seen.some(({ sign, from }) => sign === 'getting-better' && from === 'records') &&
  earlier.some(({ date }) => daysBetween(date, now.date) >= COMPARED_AFTER);

/** The settled cases of a garden, to learn from. */
export interface LearnInput {
  /** The season follows from the date and the zone. */
  readonly cases: readonly Omit<LessonCase, 'season'>[];
  /** ISO date of today: older seasons count less. */
  readonly today: string;
  readonly zone: Zone;
}

/** What a garden's settled cases teach. `counts` of the result is what `triage` takes as `garden`. Pure. */
export function learn({ cases, today, zone }: LearnInput): GardenLessons {
  const dated = cases.map((settled) => ({ ...settled, season: seasonOf(settled.date, zone) }));
  return drawLessons(knowledgeModel(), dated, today);
}
