import type { CauseId } from '../signs/vocabulary.ts';
import type { KnowledgeModel } from './knowledge-model.ts';
import {
  countOutcomes,
  type GardenCounts,
  learnRate,
  learntRange,
  type SettledCase,
  shareOutOnce,
} from './learn-rates.ts';
import { type GardenScore, type JudgedLook, type ShownChances, scoreLooks } from './learn-score.ts';

/** A settled case with the chances as they were shown. */
export interface LessonCase extends SettledCase {
  /** At the first look. */
  readonly first?: ShownChances;
  /** At the last look, where that is another one. */
  readonly last?: ShownChances;
}

/** What the table says of a cause and what this garden has made of it. */
export interface TaughtRate {
  readonly cause: CauseId;
  /** Share of plants that look wrong, as the table has it, and as it is reckoned in this garden. */
  readonly table: number;
  readonly garden: number;
  /** 10 and 90 % point of the garden's rate. */
  readonly low: number;
  readonly high: number;
  /** Cases that settled on this cause and were sure enough to teach. */
  readonly cases: readonly string[];
}

export interface GardenLessons {
  /** What goes into the ranking. */
  readonly counts: GardenCounts;
  /** Cases that taught something. */
  readonly teaching: number;
  /** Every cause; those met here first, the largest rise before the others. */
  readonly rates: readonly TaughtRate[];
  /** The tool's own score, by first and by last look. */
  readonly score: { readonly first?: GardenScore; readonly last?: GardenScore };
}

function scoreBy(
  model: KnowledgeModel,
  cases: readonly LessonCase[],
  shownIn: (settled: LessonCase) => ShownChances | undefined,
): GardenScore | undefined {
  const sharesOf = shareOutOnce(model);
  const looks = cases.flatMap((settled): JudgedLook[] => {
    const shown = shownIn(settled);
    if (!shown) return [];
    const shares = sharesOf(settled.crop, settled.season);
    const tableAlone = Object.fromEntries(model.causes.map(({ id }, cause) => [id, shares[cause]!]));
    return [{ causes: settled.causes, shown, tableAlone }];
  });
  return scoreLooks(looks);
}

/**
 * All that the settled cases of a garden teach: sums for the ranking, rates for people, and the score. Guesses and cases
 * whose cause was never found teach nothing and are not scored.
 *
 * The selection in this cannot be undone and must be said wherever it is shown: only what was recognised and settled is
 * counted, so causes that are easy to recognise come out too often.
 * @param today ISO day
 */
export function drawLessons(
  model: KnowledgeModel,
  cases: readonly LessonCase[],
  today: string,
): GardenLessons {
  const teaching = cases.filter(({ sureness, causes }) => sureness > 0 && causes.length > 0);
  const counts = countOutcomes(model, teaching, today);
  const rates = model.causes.map(({ id }, cause): TaughtRate => {
    const table = model.network.rate[cause]!;
    const count = counts[id];
    return {
      cause: id,
      table: table.mean,
      garden: count ? learnRate(table, count) : table.mean,
      ...learntRange(id, table, count ?? { seen: 0, outOf: 0 }),
      cases: teaching.filter(({ causes }) => causes.includes(id)).map((settled) => settled.id),
    };
  });
  const rise = ({ table, garden }: TaughtRate): number => garden / table;
  rates.sort(
    (a, b) =>
      Number(b.cases.length > 0) - Number(a.cases.length > 0) || rise(b) - rise(a) || b.table - a.table,
  );
  const first = scoreBy(model, teaching, (settled) => settled.first);
  const last = scoreBy(model, teaching, (settled) => settled.last);
  return {
    counts,
    teaching: teaching.length,
    rates,
    score: { ...(first ? { first } : {}), ...(last ? { last } : {}) },
  };
}
