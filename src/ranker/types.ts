import type { CautionId } from '../causes/cautions.ts';
import type { CheckId } from '../causes/checks.ts';
import type { CourseId } from '../causes/courses.ts';
import type { SettingId } from '../signs/settings.ts';
import type { Reporter } from '../signs/types.ts';
import type { AskableId, CauseId, FamilyId, SignId, VerdictId } from '../signs/vocabulary.ts';

/** A reason: what one finding or circumstance adds to the log-odds of a cause, in decibans (10 log10 of odds). */
export interface Reason {
  /** A sign (`mottled@new`, `curled@some`), a circumstance (`netted=yes`, `compost-kinds:horse-manure=yes`), `crop=kale` or `season=winter`. */
  readonly sign: string;
  readonly decibans: number;
  /** Who reported it; several when they combined on one sign. */
  readonly from: readonly Reporter[];
  /** For leanings: why, in the words of the knowledge base. */
  readonly because?: string;
}

export interface RankedCause {
  readonly id: CauseId;
  readonly family: FamilyId;
  /** Chance that the cause acts, alone or with others. */
  readonly probability: number;
  /** 10 % and 90 % point of that chance over draws of the knowledge tables. */
  readonly low: number;
  readonly high: number;
  /** The chance with nothing said, in decibans of odds; `prior + Σ for + Σ against` gives the odds of `probability`. */
  readonly priorDecibans: number;
  readonly for: readonly Reason[];
  readonly against: readonly Reason[];
  /** Set when a circumstance rules the cause out; `probability` is then 0. */
  readonly ruledOut?: string;
}

export interface Together {
  readonly causes: readonly CauseId[];
  readonly probability: number;
}

/** Something worth finding out: a question about a sign or setting, or a check that needs hands. */
export type NextCheckTarget =
  | { readonly kind: 'sign'; readonly sign: AskableId }
  | { readonly kind: 'setting'; readonly setting: SettingId }
  | { readonly kind: 'check'; readonly check: CheckId };

export interface NextCheck {
  /** Sign, setting or check id: unique in the list. */
  readonly id: string;
  readonly target: NextCheckTarget;
  readonly minutes: number;
  readonly waitDays: number;
  /** Expected fall in expected loss (percent of the bed's crop) before its cost in effort. Never negative. */
  readonly gain: number;
  /** Chance that its answer changes what to do. */
  readonly turns: number;
  /** Expected information about the causes in bits; breaks ties. */
  readonly bits: number;
  /** The two leading causes that it tells apart best. */
  readonly tellsApart: readonly CauseId[];
  /** Other verdicts that its answer may turn to, the one that saves most first. Looks kept before have none. */
  readonly turnsTo?: readonly VerdictId[];
}

export interface Verdict {
  readonly id: VerdictId;
  /** Machine-readable reason; the app owns the words. */
  readonly because: {
    /** The causes that carry the verdict, most probable first. */
    readonly causes: readonly CauseId[];
    /** Those of them that the courses help against; the others are only looked at again. Absent in looks kept before it was told. */
    readonly helped?: readonly CauseId[];
    /** Expected loss of each verdict, percent of the bed's crop. */
    readonly expectedLoss: { readonly [Id in VerdictId]?: number };
  };
  /** Courses of action when the verdict is `act`; for `watch` and `check`, what would be done if it came to it. */
  readonly courses: readonly CourseId[];
  /** The check to do first when the verdict is `check`. */
  readonly check?: NextCheck;
  /** ISO date, `YYYY-MM-DD`. */
  readonly lookAgain: string;
  /** What should be seen by then, in the words of the knowledge base, for the causes that carry the verdict. */
  readonly recovery: readonly { readonly cause: CauseId; readonly looksLike: string }[];
  readonly cautions: readonly CautionId[];
}

/** A question or circumstance that nobody answered, and what was taken for granted instead. */
export interface Assumption {
  readonly setting: SettingId | 'crop' | 'date';
}

export interface Ranking {
  /** Most probable first; ties by id. Ruled-out causes last. */
  readonly causes: readonly RankedCause[];
  /** Sets of two or three causes that act together, most probable first. */
  readonly together: readonly Together[];
  readonly verdict: Verdict;
  /** Best first. Empty when nothing that is left to ask is worth its minutes or could plausibly turn the verdict. */
  readonly nextChecks: readonly NextCheck[];
  /** Every question still open (also those not worth asking), best first: the list for those who prefer it. */
  readonly openQuestions: readonly NextCheck[];
  readonly assumed: readonly Assumption[];
  /** True when neither sign nor photo has said anything yet: the ranking is the prior. */
  readonly nothingSaid: boolean;
  /** True while no report speaks for any sign: looked for and not found, or only the setting is known. */
  readonly nothingSeen: boolean;
  readonly settledSigns: readonly SignId[];
}
