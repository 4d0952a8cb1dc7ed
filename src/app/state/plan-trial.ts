/** A trial before it is sown: how many it takes, and the layout drawn by lot. Pure. */
import { MOST_UNITS } from '../../compare/side-by-side/count-orders.ts';
import { warnOfLayout } from '../../compare/side-by-side/find-independent.ts';
import {
  SPREAD_WORDS,
  type SpreadWord,
  spreadFromRange,
  spreadOfBedMeans,
} from '../../compare/side-by-side/guess-spread.ts';
import { layOutTrial } from '../../compare/side-by-side/lay-out-trial.ts';
import {
  chanceToSee,
  reachByRanks,
  smallestSeen,
  type TrialWish,
  unitsNeeded,
} from '../../compare/side-by-side/plan-numbers.ts';
import { TRIAL_LEVEL } from '../../compare/side-by-side/read-trial.ts';
import { growingYearOf, type Zone } from '../../days/growing-year.ts';
import type { BedRecord } from '../../garden/ground-records.ts';
import type { TrialLayout, TrialPlan, TrialRecord } from '../../garden/trial-record.ts';
import { coreUnits } from './read-kept-trial.ts';

/** Chance to see the difference that matters, unless another is wished (common practice, no source). */
export const USUAL_CHANCE = 0.8;
/** Plants measured in each bed where whole beds are treated, unless said. */
export const USUAL_PER_BED = 5;
/** How much beds treated alike differ by themselves, coefficient of variation: our own guess, no source. */
export const BEDS_DIFFER = SPREAD_WORDS['a-little-uneven'];

/** How the trial is to be laid out: whole beds only where beds are the units. */
export const howOf = ({ unit, plan }: TrialRecord): NonNullable<TrialPlan['how']> =>
  unit === 'bed' ? 'whole-beds' : plan?.how === 'random' ? 'random' : 'blocks';

/** Spread of single plants or plots as guessed, coefficient of variation; nothing while it was not said or makes no sense. */
export function spreadOf({ spreadWord, smallest, largest, outOf = 10 }: TrialPlan): number | undefined {
  if (spreadWord !== undefined && spreadWord in SPREAD_WORDS) return SPREAD_WORDS[spreadWord as SpreadWord];
  if (smallest === undefined || largest === undefined) return undefined;
  try {
    return spreadFromRange(smallest, largest, outOf);
  } catch {
    return undefined;
  }
}

/** What one usually comes to: as said, or the middle of the grower's own range. */
export const typicalOf = ({ typical, smallest, largest }: TrialPlan): number | undefined =>
  typical ?? (smallest === undefined || largest === undefined ? undefined : (smallest + largest) / 2);

/** What is not said yet, or how many of each way it takes and what so many as the grower has would see. */
export type PlanNumbers =
  | { readonly missing: 'matters' | 'typical' | 'spread' }
  | {
      readonly chance: number;
      /** Of each way; nothing where even `MOST_UNITS` do not do. */
      readonly needed: number | undefined;
      readonly each: number;
      /** With that many of each: chance to see what matters, and the smallest difference seen, in the unit of the measure or as a factor. */
      readonly chanceAtEach: number;
      readonly smallest: number | undefined;
      /** Ranks alone reach the level with that many of each. */
      readonly ranksReach: boolean;
    };

export function planNumbers(record: TrialRecord): PlanNumbers {
  const plan = record.plan ?? {};
  const ratio = record.scale === 'ratio';
  const { matters } = record;
  if (matters === undefined || (ratio && matters <= 1)) return { missing: 'matters' };
  const typical = typicalOf(plan);
  if (!ratio && !typical) return { missing: 'typical' };
  const amongPlants = spreadOf(plan);
  if (amongPlants === undefined) return { missing: 'spread' };
  const beds = record.unit === 'bed';
  const wish: TrialWish = {
    treatments: Math.max(2, record.ways.length),
    how: howOf(record) === 'blocks' ? 'blocks' : 'random',
    spread: beds ? spreadOfBedMeans(BEDS_DIFFER, amongPlants, plan.perBed ?? USUAL_PER_BED) : amongPlants,
  };
  const share = ratio ? matters - 1 : matters / typical!;
  const chance = plan.chance ?? USUAL_CHANCE;
  const needed = unitsNeeded(wish, share, chance);
  const each = Math.min(MOST_UNITS, Math.round(plan.each ?? needed ?? 0));
  const seen = each > 1 ? smallestSeen(wish, each, chance) : undefined;
  return {
    chance,
    needed,
    each,
    chanceAtEach: each > 0 ? chanceToSee(wish, each, share) : 0,
    smallest: seen === undefined ? undefined : ratio ? 1 + seen : seen * typical!,
    ranksReach: each > 0 && reachByRanks(wish.how, each) >= TRIAL_LEVEL,
  };
}

/** A bed with so many places for plants or plots. */
export interface BedChosen {
  readonly bed: Pick<BedRecord, 'id' | 'name'>;
  readonly places: number;
}

/** Name of the next season: the growing year; a second sowing of one year `2026-2`. */
export function nextSeason({ layouts }: TrialRecord, date: string, zone: Zone): string {
  const year = growingYearOf(date, zone);
  const taken = layouts.filter(({ id }) => id === year || id.startsWith(`${year}-`)).length;
  return taken === 0 ? year : `${year}-${taken + 1}`;
}

/**
 * Draws the lots for one season.
 * @throws TrialError `treatments`, `places`
 */
export function layOutSeason(
  record: TrialRecord,
  chosen: readonly BedChosen[],
  seed: number,
  date: string,
  zone: Zone,
): TrialLayout {
  const season = nextSeason(record, date, zone);
  const how = howOf(record);
  const perBed = record.plan?.perBed ?? USUAL_PER_BED;
  const beds = chosen.map(({ bed, places }) => ({
    bedId: bed.id,
    bedName: bed.name,
    places: how === 'whole-beds' ? perBed : places,
  }));
  const { units } = layOutTrial({
    treatments: record.ways.map(({ id }) => id),
    beds: beds.map(({ places }, at) => ({ bed: String(at), places })),
    how,
    seed,
  });
  return {
    id: season,
    date,
    how,
    seed,
    beds,
    units: units.map(({ treatment, bed, place = 1, block }) => ({
      id: [season, seed.toString(36), bed, place].join('.'),
      way: treatment,
      at: Number(bed),
      place,
      ...(block === undefined ? {} : { block: block.replace('/', '.') }),
    })),
  };
}

/** What the layouts make doubtful by themselves. */
export const warningsOf = (record: TrialRecord) => warnOfLayout({ units: coreUnits(record) });
