import type { SettingId, SettingValue } from './settings.ts';
import type { AskableId, CauseId, CropId, SignId } from './vocabulary.ts';

/** Who reports a sign. */
export type Reporter = 'eye' | 'camera' | 'records' | 'network';

/**
 * A soft report of a sign (virtual evidence; Pearl 1988): how likely this very report is if the sign is there, and if
 * it is not. Only the ratio matters. `sign` may be broader than one node: then it speaks of the OR of its members.
 */
export interface Finding {
  readonly sign: AskableId;
  readonly from: Reporter;
  readonly ifPresent: number;
  readonly ifAbsent: number;
  /** Day of the earlier look that showed it, `YYYY-MM-DD`; absent for what this look shows. */
  readonly seenOn?: string;
}

/** What a person said, in the format of the vocabulary. Left out = not looked at, never absent. */
export interface Answers {
  readonly crop?: CropId;
  /** Variety in the grower's words. */
  readonly variety?: string;
  /** ISO 8601 date of the look, `YYYY-MM-DD`. */
  readonly date?: string;
  readonly setting: { readonly [Id in SettingId]?: SettingValue<Id> };
  readonly signs: { readonly [Id in AskableId]?: 'seen' | 'absent' };
  /** Signs where the person overrules the camera and the network: their reports on them are set aside. */
  readonly overruled?: readonly SignId[];
  /** Settings that nobody was asked: the garden's records gave them. */
  readonly recorded?: readonly SettingId[];
  /** Settings where the person overrules the records: what they say is set aside, and may be asked. */
  readonly notAsRecorded?: readonly SettingId[];
}

/**
 * How a factor leans on one cause where several answers are weighed together (what was mixed in, how long ago, how warm
 * since). Holds instead of the leaning that the knowledge base gives this factor by itself.
 */
export interface WorkedLeaning {
  readonly cause: CauseId;
  /** Odds multipliers, one an outcome of the factor, in its order. Never 0. */
  readonly odds: readonly number[];
  /** Half a sentence for the outcome that was answered; can follow "because". */
  readonly because?: string;
}

/** Something known about the circumstances: one value of one setting, as one of its settled outcomes. */
export interface Circumstance {
  /** `netted`, `compost-kinds:horse-manure`, `cold-days`. */
  readonly id: FactorId;
  /** Outcome of the factor: `yes`, `no`, an option, or a band such as `10+`. */
  readonly outcome: string;
  readonly from: Reporter;
  readonly leans?: readonly WorkedLeaning[];
}

/** A setting as the network sees it: every option of an any-of list is a yes/no factor of its own. */
export type FactorId = SettingId | `${SettingId}:${string}`;
