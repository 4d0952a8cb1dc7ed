import type { Season } from '../causes/schema.ts';
import type { CauseId, CropId } from '../signs/vocabulary.ts';
import { drawBeta, fingerprint, seededUniform } from './draw-beta.ts';
import { cropOdds, type KnowledgeModel, seasonOdds } from './knowledge-model.ts';
import type { UncertainRate } from './network.ts';

/** A case of this garden whose end is known. */
export interface SettledCase {
  readonly id: string;
  /** What it turned out to be; several when they acted together. */
  readonly causes: readonly CauseId[];
  /** 0 = a guess, which teaches nothing; 1 = as good as proved. */
  readonly sureness: number;
  /** ISO day on which the trouble was first looked at. */
  readonly date: string;
  readonly crop?: CropId;
  readonly season?: Season;
  /** Cases with one key are one outbreak (one crop, bed, year and end) and count once. */
  readonly outbreak?: string;
}

/** How often a cause was met in this garden, and out of how many plants on which it could be expected. */
export interface CauseCount {
  readonly seen: number;
  readonly outOf: number;
}

/** What a garden has taught: sums only, no records. Causes that are left out were never in question. */
export type GardenCounts = { readonly [Id in CauseId]?: CauseCount };

/**
 * How a garden's settled cases move the base rates. All four are our own judgement (common practice, no source).
 * `hits`: a garden starts with the table's rate as if it had met the cause this many times already, so that one case
 * moves a rate by a half at most and cannot overturn it. `keptAYear`: what is left of a case's weight after each full year, so
 * that half is forgotten in three. `leastOdds`, `mostOdds`: how far the odds may go from the table's. Not having met a
 * cause is weak evidence, because what is never recognised is never settled; therefore the way down is short.
 */
export const LEARNING = { hits: 2, keptAYear: 0.8, leastOdds: 1 / 2, mostOdds: 8 } as const;

/** Full years from one ISO day to another, counted by anniversaries; 0 when the second is not later. */
export function fullYearsBetween(from: string, to: string): number {
  const years = Number(to.slice(0, 4)) - Number(from.slice(0, 4));
  return Math.max(0, to.slice(5, 10) < from.slice(5, 10) ? years - 1 : years);
}

const oddsOf = (rate: number): number => rate / (1 - rate);

/**
 * How the table shares out plants that look wrong among the causes, for a crop and a season: odds of single causes,
 * scaled to sum to 1. Causes that act together are left aside here; they change every share a little.
 */
export function shareOut(model: KnowledgeModel, crop?: CropId, season?: Season): Float64Array {
  const { rate } = model.network;
  const ofCrop = crop === undefined ? undefined : cropOdds(model, crop);
  const ofSeason = season === undefined ? undefined : seasonOdds(model, season);
  const odds = Float64Array.from(
    rate,
    ({ mean }, cause) => oddsOf(mean) * (ofCrop?.[cause] ?? 1) * (ofSeason?.[cause] ?? 1),
  );
  const sum = odds.reduce((total, one) => total + one, 0);
  return odds.map((one) => one / sum);
}

/** `shareOut` that works out each crop and season once: a garden has thousands of cases and few crops. */
export function shareOutOnce(model: KnowledgeModel): (crop?: CropId, season?: Season) => Float64Array {
  const known = new Map<string, Float64Array>();
  return (crop, season) => {
    const key = `${crop ?? ''} ${season ?? ''}`;
    const found = known.get(key) ?? shareOut(model, crop, season);
    known.set(key, found);
    return found;
  };
}

/** Of the cases of one outbreak only the surest counts; on a tie the first. */
function onePerOutbreak(cases: readonly SettledCase[]): SettledCase[] {
  const surest = new Map<string, SettledCase>();
  for (const settled of cases) {
    const key = settled.outbreak ?? settled.id;
    const before = surest.get(key);
    if (!before || settled.sureness > before.sureness) surest.set(key, settled);
  }
  return [...surest.values()];
}

/** What is left today of the weight of a settled case. */
export const weightToday = ({ sureness, date }: SettledCase, today: string): number =>
  sureness * LEARNING.keptAYear ** fullYearsBetween(date, today);

/**
 * Add up what a garden's settled cases say. A case counts with its weight as met for the causes that it names, and for
 * every cause as one plant on which it could have been met. How much of a plant that is depends on crop and season: a
 * garden of nothing but cabbages meets clubroot often because of the cabbages, which the ranking knows already; only
 * what goes beyond that is the garden's own. A crop that cannot have a cause says nothing of it.
 * @param today ISO day; older seasons count less
 */
export function countOutcomes(
  model: KnowledgeModel,
  cases: readonly SettledCase[],
  today: string,
): GardenCounts {
  const shares = shareOutOnce(model);
  const usual = shares();
  const seen = new Float64Array(usual.length);
  const outOf = new Float64Array(usual.length);
  for (const settled of onePerOutbreak(cases)) {
    if (settled.sureness <= 0 || settled.causes.length === 0) continue;
    const weight = weightToday(settled, today);
    const here = shares(settled.crop, settled.season);
    model.causes.forEach(({ id }, cause) => {
      if (here[cause] === 0) return;
      outOf[cause]! += (weight * here[cause]!) / usual[cause]!;
      if (settled.causes.includes(id)) seen[cause]! += weight;
    });
  }
  return Object.fromEntries(
    model.causes.flatMap(({ id }, cause) =>
      outOf[cause]! > 0 ? [[id, { seen: seen[cause]!, outOf: outOf[cause]! }]] : [],
    ),
  );
}

/**
 * The base rate of a cause as this garden has taught it: the mean of the table's Beta distribution after `seen`
 * meetings in `outOf` plants, kept within the bounds of `LEARNING`. (Beta and binomial are conjugate: Beta(a, b) after
 * s successes in n trials is Beta(a + s, b + n − s); textbook result, from memory.)
 */
export function learnRate(table: UncertainRate, count: CauseCount): number {
  return withinBounds(table.mean, learntBeta(table, count).mean);
}

/** The Beta distribution after the garden's cases: its mean and equivalent number of observations. */
function learntBeta({ mean, observations }: UncertainRate, { seen, outOf }: CauseCount): UncertainRate {
  // The table's own observations tell how well the average garden is known. A single garden may differ from the average
  // by more than that, so the table never counts for more than `hits` meetings.
  const before = Math.min(observations, LEARNING.hits / mean);
  return { mean: (mean * before + seen) / (before + outOf), observations: before + outOf };
}

/** A rate kept within the bounds of `LEARNING` round the table's. */
function withinBounds(table: number, rate: number): number {
  const { leastOdds, mostOdds } = LEARNING;
  const odds = rate < 1 ? oddsOf(rate) : Number.POSITIVE_INFINITY;
  const kept = Math.min(mostOdds, Math.max(leastOdds, odds / oddsOf(table))) * oddsOf(table);
  return kept / (1 + kept);
}

/** Draws that the range is read from: their 10 and 90 % points are off by a few hundredths of the range. */
const DRAWS = 400;

/**
 * How well the learnt rate is known: the 10 and 90 % points of its Beta distribution, by draws seeded with the cause's
 * name, kept within the same bounds. The rate itself always lies within.
 */
export function learntRange(
  name: string,
  table: UncertainRate,
  count: CauseCount,
): { readonly low: number; readonly high: number } {
  const { mean, observations } = learntBeta(table, count);
  const uniform = seededUniform(fingerprint(`learnt ${name}`));
  const draws = Float64Array.from({ length: DRAWS }, () => drawBeta(mean, observations, uniform)).sort();
  const rate = learnRate(table, count);
  return {
    low: Math.min(rate, withinBounds(table.mean, draws[DRAWS * 0.1]!)),
    high: Math.max(rate, withinBounds(table.mean, draws[DRAWS * 0.9]!)),
  };
}

/** What the garden multiplies the odds of every cause by; 1 where it has taught nothing. */
export function gardenOdds(model: KnowledgeModel, counts: GardenCounts): Float64Array {
  return Float64Array.from(model.causes, ({ id }, cause) => {
    const count = counts[id];
    const rate = model.network.rate[cause]!;
    return count ? oddsOf(learnRate(rate, count)) / oddsOf(rate.mean) : 1;
  });
}
