import type { CautionId } from '../causes/cautions.ts';
import { COURSES, DESTROYS_PLANTS } from '../causes/courses.ts';
import { dayAfter } from '../days/days.ts';
import type { VerdictId } from '../signs/vocabulary.ts';
import { type NextChecks, PLAUSIBLE, type Scored } from './choose-next-check.ts';
import { bestAct, bestPlan, type DecisionTable, lossOfPlan, type Plan } from './decide-plan.ts';
import type { KnowledgeModel } from './knowledge-model.ts';
import type { NextCheck, Verdict } from './types.ts';

/** From this chance on, a cause's cautions are shown whatever the verdict. */
const CAUTION_FROM = 0.2;
const CARRIES_FROM = 0.15;
const MOST_CARRIERS = 3;

/** The causes that a plan is about: for action those it helps against, else the most probable. */
function carriersOf(table: DecisionTable, plan: Plan, chances: Float64Array): number[] {
  const byChance = Array.from(chances.keys()).sort((a, b) => chances[b]! - chances[a]!);
  if (plan.kind === 'act') {
    const saved = (cause: number): number =>
      chances[cause]! *
      (table.leave[cause]! -
        Math.min(...plan.courses.map((course) => table.courses[course]!.remains[cause]!)));
    const helped = byChance.filter((cause) => chances[cause]! >= 0.05 && saved(cause) > 0.1);
    if (helped.length > 0) return helped.sort((a, b) => saved(b) - saved(a)).slice(0, MOST_CARRIERS);
  }
  const likely = byChance.filter((cause) => chances[cause]! >= CARRIES_FROM);
  return (likely.length > 0 ? likely : byChance.slice(0, 1)).slice(0, MOST_CARRIERS);
}

/** Cautions of what is likely, of what is acted on, and of what is done. A leader at 1 in 10 is no reason to alarm anybody. */
function cautionsOf(
  model: KnowledgeModel,
  chances: Float64Array,
  carriers: readonly number[],
  courses: readonly number[],
): CautionId[] {
  const causes = model.causes.filter(
    (_, cause) => chances[cause]! >= CAUTION_FROM || (courses.length > 0 && carriers[0] === cause),
  );
  return [
    ...new Set([
      ...causes.flatMap(({ cautions }) => cautions),
      ...courses.flatMap((course) => COURSES[course]!.cautions),
    ]),
  ];
}

/**
 * The check to make while the best course only holds back: a load under suspicion stays where it is until the test is
 * read, and that is no reason to call it proven. None when the proof is there, or nobody can make it.
 */
function checkUntilProven(plan: Plan, { all }: NextChecks): NextChecks['worthwhile'] {
  const until = plan.kind === 'act' ? COURSES[plan.courses[0]!]!.until : undefined;
  const open = (until ?? []).map((check) =>
    all.find(({ target }) => target.kind === 'check' && target.check === check),
  );
  return open.at(-1) && open.find((check) => check !== undefined);
}

/** What destroys plants is done once it is likelier than not to help. */
const LIKELIER_THAN_NOT = 0.5;

/**
 * The check to make before plants are lifted or cut down on less than even odds: one that the cause most at stake names, read on
 * the same day and able to turn the plan; what leaves the plants standing before what costs one. Its saving need not reach what puts
 * off a course that can be taken back. None when all of them have been made.
 */
function checkBeforeDestroying(
  model: KnowledgeModel,
  table: DecisionTable,
  plan: Plan,
  chances: Float64Array,
  { all }: NextChecks,
): NextChecks['worthwhile'] {
  const courses = plan.kind === 'act' ? plan.courses : [];
  const destroying = courses.filter((course) => DESTROYS_PLANTS.includes(COURSES[course]!.id));
  const saved = chances.map((chance, cause) => {
    const remains = destroying.map((course) => table.courses[course]!.remains[cause]!);
    return chance * (table.watch[cause]! - Math.min(table.watch[cause]!, ...remains));
  });
  const inVain = chances.reduce((none, chance, cause) => (saved[cause]! > 0 ? none * (1 - chance) : none), 1);
  if (destroying.length === 0 || 1 - inVain >= LIKELIER_THAN_NOT) return undefined;
  const atStake = model.causes[saved.indexOf(Math.max(...saved))]!;
  const named = new Set<string>(atStake.checks.map(({ check }) => check));
  const spends = ({ id }: Scored): boolean =>
    model.checks.some((check) => check.id === id && check.spends !== undefined);
  return all
    .filter(
      ({ target, waitDays, turns }) =>
        target.kind === 'check' && named.has(target.check) && waitDays === 0 && turns >= PLAUSIBLE,
    )
    .sort((a, b) => Number(spends(a)) - Number(spends(b)) || b.net - a.net)[0];
}

/**
 * The verdict of least expected loss over the joint posterior. `check` wins when the best hands-on check is expected
 * to save more than it costs in effort and waiting, and while what would be done only holds back until it is made.
 * @param today ISO date
 */
export function decideVerdict(
  model: KnowledgeModel,
  table: DecisionTable,
  chances: Float64Array,
  next: NextChecks,
  today: string,
): Verdict {
  const best = bestPlan(table, chances);
  const act = bestAct(table, chances);
  const expectedLoss: { [Id in VerdictId]?: number } = {
    leave: lossOfPlan(table, { kind: 'leave' }, chances),
    watch: lossOfPlan(table, { kind: 'watch' }, chances),
    act: act.loss,
  };
  const check =
    next.worthwhile ??
    checkUntilProven(best.plan, next) ??
    checkBeforeDestroying(model, table, best.plan, chances, next);
  // A check that only holds back has no saving of its own: it costs what the course it belongs to costs.
  if (check) expectedLoss.check = best.loss - (next.worthwhile ? check.net : 0);
  const id: VerdictId = check ? 'check' : best.plan.kind;
  const carriers = carriersOf(table, best.plan, chances);
  const courses = best.plan.kind === 'act' ? best.plan.courses : [];
  const helped = carriers.filter((cause) =>
    courses.some((course) => table.courses[course]!.remains[cause]! < table.watch[cause]!),
  );
  const waitDays = check?.waitDays ?? 0;
  const lookAgainDays = Math.min(...carriers.map((cause) => model.causes[cause]!.recovery.lookAgainDays));
  return {
    id,
    because: {
      causes: carriers.map((cause) => model.causes[cause]!.id),
      helped: helped.map((cause) => model.causes[cause]!.id),
      expectedLoss,
    },
    courses: courses.map((course) => COURSES[course]!.id),
    ...(check ? { check: asShown(check) } : {}),
    lookAgain: dayAfter(today, Math.max(waitDays, lookAgainDays)),
    recovery: carriers.map((cause) => ({
      cause: model.causes[cause]!.id,
      looksLike: model.causes[cause]!.recovery.looksLike,
    })),
    cautions: cautionsOf(model, chances, carriers, courses),
  };
}

/** A check as it is shown: what it was ordered by is not part of the result. */
export function asShown({ net: _, offered: __, effort: ___, early: ____, ...check }: Scored): NextCheck {
  return check;
}
