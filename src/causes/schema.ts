/**
 * What a file of the knowledge base holds. One file a cause in `knowledge/`, data and no code; the checks over all of
 * them live in `tests/causes/`. Losses are in percent of this season's crop on the bed (100 = the whole crop; more than
 * 100 where later seasons or other beds are lost too).
 */
import type { CropGroup } from '../signs/crops.ts';
import type { SettingId } from '../signs/settings.ts';
import type {
  CauseId,
  CreatureSignId,
  CropId,
  FrequencyWord,
  MarkId,
  PlantSignId,
  SignId,
  SpreadSignId,
  TestSignId,
} from '../signs/vocabulary.ts';
import type { CautionId } from './cautions.ts';
import type { CheckId } from './checks.ts';
import type { CourseId } from './courses.ts';
import type { SourceKey } from './sources.ts';

/** Where a statement comes from: a published source, or one of the two honest admissions. */
export type Source = SourceKey | 'common practice, no source' | 'from memory';

/**
 * Seasons follow the place (zone), never month names. `no-winter` is the whole year of a place without winter: a leaning on it
 * says what comes of the want of cold alone, since nothing that hangs on a temperate year holds there.
 */
export const SEASONS = ['spring', 'summer', 'autumn', 'winter', 'no-winter'] as const;
export type Season = (typeof SEASONS)[number];

/** How far a circumstance moves the odds of a cause; the log-odds are in `LEANING_LOG_ODDS`. */
export type LeaningWord =
  | 'far-more'
  | 'more'
  | 'a-little-more'
  | 'a-little-less'
  | 'less'
  | 'far-less'
  | 'never';

/** Natural-log odds behind each leaning word: factors of about 9, 3, 1.6 and their inverses. Our own scale. */
export const LEANING_LOG_ODDS: Record<LeaningWord, number> = {
  'far-more': 2.2,
  more: 1.1,
  'a-little-more': 0.5,
  'a-little-less': -0.5,
  less: -1.1,
  'far-less': -2.2,
  never: Number.NEGATIVE_INFINITY,
};

/** A circumstance: a setting with one of its outcomes (`yes`, `no`, an option id, a band id), a crop, or a season. */
export type Circumstances =
  | { readonly setting: SettingId; readonly is: string }
  | { readonly crop: CropId | CropGroup }
  | { readonly season: Season };

export interface Leaning {
  readonly when: Circumstances;
  readonly leans: LeaningWord;
  /** Half a sentence a grower would say: "no pigeon eats under a net". */
  readonly because: string;
  readonly source: Source;
}

/** How much is known about a frequency; sets the spread of its Beta distribution (equivalent observations). */
export type Confidence = 'measured' | 'described' | 'disputed';
export const EQUIVALENT_OBSERVATIONS: Record<Confidence, number> = {
  measured: 40,
  described: 12,
  disputed: 4,
};

interface SignBase {
  readonly source: Source;
  /** Default `described`. Use `disputed` where published sources disagree. */
  readonly confidence?: Confidence;
}
/** How often a plant with this cause shows the mark on its old and on its new leaves. A position left out is `never` seen through this cause. */
export interface LeafSign extends SignBase {
  readonly mark: MarkId;
  readonly old?: FrequencyWord;
  readonly new?: FrequencyWord;
}
export interface OtherSign extends SignBase {
  readonly sign: PlantSignId | CreatureSignId | SpreadSignId | TestSignId;
  readonly frequency: FrequencyWord;
}
export type CauseSign = LeafSign | OtherSign;

/** What is lost if nothing is done, and if it is only looked at again after `lookAgainDays` and treated then. */
export interface Losses {
  readonly leave: number;
  readonly watch: number;
  readonly because: string;
  readonly source: Source;
}

/** Losses that hold instead when something is known: predators at work, an old plant, summer. The first that fits counts. */
export interface TemperedLosses extends Losses {
  readonly when: Circumstances | { readonly sign: SignId };
}

/** A course of action that helps against this cause, and what is lost all the same. */
export interface Remedy {
  readonly course: CourseId;
  readonly remains: number;
  readonly because: string;
  readonly source: Source;
}

export interface Cause {
  readonly id: CauseId;
  /** One or two sentences a grower would say. */
  readonly what: string;
  /** Share of plants that made a grower stop and look (all crops, all seasons) in which this cause acts. */
  readonly baseRate: { readonly rate: number; readonly confidence: Confidence; readonly source: Source };
  /** No other crop can have it; the ranker rules it out there. Left out: any crop can. */
  readonly onlyCrops?: readonly (CropId | CropGroup)[];
  readonly leanings: readonly Leaning[];
  readonly signs: readonly CauseSign[];
  readonly mistakenFor: readonly {
    readonly cause: CauseId;
    readonly tellsApart: string;
    readonly source: Source;
  }[];
  /** What each result of a check says about this cause. */
  readonly checks: readonly {
    readonly check: CheckId;
    readonly ifFound: string;
    readonly ifNotFound: string;
  }[];
  readonly losses: Losses;
  readonly tempered?: readonly TemperedLosses[];
  readonly remedies: readonly Remedy[];
  /** Days until it makes sense to look again, and what recovery (or harmlessness) should look like by then. */
  readonly recovery: { readonly lookAgainDays: number; readonly looksLike: string; readonly source: Source };
  readonly cautions: readonly CautionId[];
}
