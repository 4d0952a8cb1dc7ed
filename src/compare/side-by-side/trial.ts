import type { MeasureId } from '../../leaf/measures.ts';

/** What is measured on every plant or plot. Height in cm, weight in g, count a whole number, share 0 to 1, score 0 to 10. */
export type TrialMeasure =
  | { readonly by: 'photo'; readonly measure: MeasureId }
  | { readonly by: 'hand'; readonly kind: 'height' | 'weight' | 'count' | 'share' | 'score' };

/** A plant or plot of the trial. In another season it is another unit. */
export interface TrialUnit {
  readonly id: string;
  readonly treatment: string;
  /** The bed or pot it stands in. */
  readonly bed: string;
  /** Where in the bed, counted from 1 along the row. */
  readonly place?: number;
  /** Pair or block: units that were alike before the trial began and lie side by side. Counted within a season. */
  readonly block?: string;
  /** Year or name of the season; all units of a trial name one, or none does. */
  readonly season?: string;
}

/** A trial as it was laid out. */
export interface Trial {
  /** Two to four. The first is what the others are compared with first. */
  readonly treatments: readonly string[];
  readonly unit: 'plant' | 'plot';
  readonly measure: TrialMeasure;
  readonly units: readonly TrialUnit[];
}

/** One value of one unit on one day. Several on one day (leaves of a plant, plants of a plot) are averaged. */
export interface TrialReading {
  readonly unit: string;
  /** `YYYY-MM-DD` */
  readonly date: string;
  /** In the unit of the measure. */
  readonly value: number;
  /** Standard error of the value, where a photo states one. */
  readonly se?: number;
}
