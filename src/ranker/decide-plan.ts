/**
 * Decisions under uncertain causes. Losses add over the causes that act, so expected loss needs only each cause's
 * chance: loss(plan) = cost of the plan + Σ P(cause) · what the cause still takes under the plan. Unit: percent of the
 * bed's crop this season.
 */
export interface DecisionTable {
  /** What each cause takes if nothing is done. */
  readonly leave: Float64Array;
  /** What each cause takes if it is looked at again and treated then. */
  readonly watch: Float64Array;
  /** Effort of looking again, which every plan but leaving alone takes. */
  readonly watchCost: number;
  readonly courses: readonly DecisionCourse[];
}

export interface DecisionCourse {
  readonly id: string;
  /** Effort, and harm where it helps nothing. */
  readonly needless: number;
  /** What each cause still takes under this course; equal to `watch` where the course does not help. */
  readonly remains: Float64Array;
}

export type Plan =
  | { readonly kind: 'leave' }
  | { readonly kind: 'watch' }
  /** Courses as indices of the table; at most three at once. */
  | { readonly kind: 'act'; readonly courses: readonly number[] };

const MOST_COURSES = 3;

function expected(chances: Float64Array, losses: Float64Array): number {
  let sum = 0;
  for (let cause = 0; cause < chances.length; cause++) sum += chances[cause]! * losses[cause]!;
  return sum;
}

function remainsUnder(table: DecisionTable, courses: readonly number[]): Float64Array {
  const [head, ...rest] = courses.map((course) => table.courses[course]!.remains);
  const out = Float64Array.from(head ?? table.leave);
  for (const remains of rest) lower(out, remains);
  return out;
}

/** Take the smaller of two losses, cause by cause. */
function lower(out: Float64Array, remains: Float64Array): void {
  for (let c = 0; c < out.length; c++) if (remains[c]! < out[c]!) out[c] = remains[c]!;
}

/** Expected loss of a plan given each cause's chance. */
export function lossOfPlan(table: DecisionTable, plan: Plan, chances: Float64Array): number {
  switch (plan.kind) {
    case 'leave':
      return expected(chances, table.leave);
    case 'watch':
      return table.watchCost + expected(chances, table.watch);
    case 'act': {
      const cost = plan.courses.reduce(
        (sum, course) => sum + table.courses[course]!.needless,
        table.watchCost,
      );
      return cost + expected(chances, remainsUnder(table, plan.courses));
    }
  }
}

/** The best way to act: the best single course, then any further course that still lowers the expected loss. */
export function bestAct(table: DecisionTable, chances: Float64Array): { plan: Plan; loss: number } {
  const chosen: number[] = [];
  const remaining = new Float64Array(chances.length).fill(Number.POSITIVE_INFINITY);
  let spent = table.watchCost;
  let loss = Number.POSITIVE_INFINITY;
  for (let round = 0; round < MOST_COURSES; round++) {
    let best = -1;
    for (let course = 0; course < table.courses.length; course++) {
      const { needless, remains } = table.courses[course]!;
      let tried = spent + needless;
      for (let c = 0; c < chances.length; c++) {
        const left = Math.min(remains[c]!, remaining[c]!);
        tried += chances[c]! * left;
      }
      if (tried < loss) {
        loss = tried;
        best = course;
      }
    }
    if (best < 0) break;
    chosen.push(best);
    spent += table.courses[best]!.needless;
    lower(remaining, table.courses[best]!.remains);
  }
  return { plan: { kind: 'act', courses: chosen }, loss };
}

/** The plan of least expected loss. Of equals the gentler one: leave before watch before act. */
export function bestPlan(table: DecisionTable, chances: Float64Array): { plan: Plan; loss: number } {
  const act = bestAct(table, chances);
  const leave = lossOfPlan(table, { kind: 'leave' }, chances);
  const watch = lossOfPlan(table, { kind: 'watch' }, chances);
  if (leave <= watch && leave <= act.loss) return { plan: { kind: 'leave' }, loss: leave };
  return watch <= act.loss ? { plan: { kind: 'watch' }, loss: watch } : act;
}

/** One possible answer: its chance, what is believed after it, and the losses that hold then. */
export interface PossibleAnswer {
  readonly chance: number;
  readonly chances: Float64Array;
  readonly table: DecisionTable;
}

/** What an answer is worth before it is known. */
export interface WorthOfAnswers {
  /**
   * Expected value: how much less is lost by deciding after it than by sticking to what would be decided now (Raiffa
   * 1968; worked example L7 in the tests). Never negative.
   */
  readonly gain: number;
  /** Chance that it turns the plan. */
  readonly turns: number;
  /** Kinds of plan, other than the present one, that it may turn to; the one it saves most by comes first. */
  readonly turnsTo: readonly Plan['kind'][];
}

/** Losses closer than this are equal. */
const EQUAL = 1e-9;

export function worthOfAnswers(planNow: Plan, answers: readonly PossibleAnswer[]): WorthOfAnswers {
  let gain = 0;
  let turns = 0;
  const savedBy = new Map<Plan['kind'], number>();
  for (const { chance, chances, table } of answers) {
    if (chance <= 0) continue;
    const best = bestPlan(table, chances);
    const saved = lossOfPlan(table, planNow, chances) - best.loss;
    gain += chance * saved;
    if (saved <= EQUAL) continue;
    turns += chance;
    const { kind } = best.plan;
    if (kind !== planNow.kind) savedBy.set(kind, (savedBy.get(kind) ?? 0) + chance * saved);
  }
  const turnsTo = [...savedBy].sort((a, b) => b[1] - a[1]).map(([kind]) => kind);
  return { gain: Math.max(0, gain), turns, turnsTo };
}

/** The expected value alone. */
export const valueOfAnswers = (planNow: Plan, answers: readonly PossibleAnswer[]): number =>
  worthOfAnswers(planNow, answers).gain;
