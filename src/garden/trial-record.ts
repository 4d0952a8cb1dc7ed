import type { Stamp } from './records.ts';

/** One of the ways tried. The letter is its id and stands on the plan: renaming loses nothing. */
export interface TrialWay {
  /** `A` to `D`. */
  readonly id: string;
  readonly name: string;
}

export const TRIAL_UNITS = ['plant', 'plot', 'bed'] as const;
/** Is more or less of what is measured what the grower wants? */
export const TRIAL_BETTER = ['more', 'less'] as const;
export const HAND_MEASURES = ['height', 'weight', 'count', 'share', 'score'] as const;
export const TRIAL_LOOKS = ['last', 'mean', 'total', 'change'] as const;
export const TRIAL_SCALES = ['difference', 'ratio'] as const;
export const LAYOUT_WAYS = ['random', 'blocks', 'whole-beds'] as const;

/** What is measured: by hand, or a leaf measure by the camera, whose name travels through here unopened. */
export type TrialMeasured =
  | { readonly by: 'hand'; readonly kind: (typeof HAND_MEASURES)[number] }
  | { readonly by: 'photo'; readonly measure: string };

/** What the trial was planned with, before sowing. Everything may be unsaid. */
export interface TrialPlan {
  /** How uneven plants are: one of the words for it, unopened. */
  readonly spreadWord?: string;
  /** Or the grower's own smallest and largest of so many, in the unit of the measure. */
  readonly smallest?: number;
  readonly largest?: number;
  readonly outOf?: number;
  /** What one usually comes to, in the unit of the measure. */
  readonly typical?: number;
  /** Chance wanted to see the difference that matters, 0 to 1. */
  readonly chance?: number;
  readonly how?: (typeof LAYOUT_WAYS)[number];
  /** Plants, plots or beds of each way. */
  readonly each?: number;
  /** Plants measured in each bed, where whole beds are treated. */
  readonly perBed?: number;
}

/** A bed of a layout. Its name stays with it, should the bed be deleted. */
export interface TrialBedKept {
  readonly bedId: string;
  readonly bedName: string;
  readonly places: number;
}

/** A plant, plot or whole bed as it was laid out. */
export interface TrialUnitKept {
  readonly id: string;
  /** Letter of its way. */
  readonly way: string;
  /** Place of its bed in the layout's `beds`. */
  readonly at: number;
  /** Where in the bed, counted from 1. */
  readonly place: number;
  readonly block?: string;
}

/** One season's layout, drawn by lot. Kept and merged as one: two layouts of one season are a conflict. */
export interface TrialLayout {
  /** The season: a growing year, `2026` or `2026–27`, or its second sowing, `2026-2`. */
  readonly id: string;
  /** Day on which it was laid out. */
  readonly date: string;
  readonly how: (typeof LAYOUT_WAYS)[number];
  readonly seed: number;
  readonly beds: readonly TrialBedKept[];
  readonly units: readonly TrialUnitKept[];
}

/** One number of one unit on one day. Its id begins with `trialReadingId(date, unitId)`, so that two devices speak of one reading. */
export interface TrialNumber {
  readonly id: string;
  readonly date: string;
  readonly unitId: string;
  /** In the unit of the measure; absent while its photo has not been measured. */
  readonly value?: number;
  /** Standard error, where a photo states one. */
  readonly se?: number;
  /** Its picture in the pictures' store. */
  readonly photoId?: string;
  /** What was tapped on the photo to put its outline right; unopened here. */
  readonly taps?: unknown;
}

export const trialReadingId = (date: string, unitId: string): string => `${date} ${unitId}`;

/** A unit that is gone. Its id is the unit's. */
export interface TrialLoss {
  readonly id: string;
  readonly date: string;
  /** In the grower's words. */
  readonly why: string;
}

export interface TrialEnd {
  readonly date: string;
  readonly as: 'read' | 'given-up';
}

/**
 * Two to four ways side by side. Without layouts it is a plan, without readings it was laid out, without `ended` it runs. What came
 * out is never kept: it is worked out anew from the readings.
 */
export interface TrialRecord extends Stamp {
  readonly kind: 'trial';
  readonly name: string;
  readonly ways: readonly TrialWay[];
  readonly unit?: (typeof TRIAL_UNITS)[number];
  readonly measure?: TrialMeasured;
  /** What is counted, shared or scored, in the grower's words: "leaf with holes". */
  readonly ofWhat?: string;
  /** Which of it the grower wants. */
  readonly better?: (typeof TRIAL_BETTER)[number];
  readonly looks?: (typeof TRIAL_LOOKS)[number];
  readonly scale?: (typeof TRIAL_SCALES)[number];
  /** The smallest difference that matters: in the unit of the measure, or a factor above 1 on the scale of ratios. */
  readonly matters?: number;
  readonly plan?: TrialPlan;
  /** In order of date. */
  readonly layouts: readonly TrialLayout[];
  /** In order of date. */
  readonly readings: readonly TrialNumber[];
  readonly losses: readonly TrialLoss[];
  /** Day of the next measuring; absent while none is set. */
  readonly lookOn?: string;
  readonly ended?: TrialEnd;
  /** What the grower takes from it. */
  readonly note: string;
}
