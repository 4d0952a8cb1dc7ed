/**
 * Why a trial cannot be laid out, planned or read.
 * `treatments`: not two to four different ones; `units`: none, two of one id, one of an unknown treatment, or one season named where others have none;
 * `places`: a bed without a whole number of places, or too few places or beds for the treatments; `unknown-unit`: a reading of a plant or plot that
 * is not in the trial; `value`: a value its measure cannot have; `day`: not a day `YYYY-MM-DD`; `ratio-needs-positive`: a ratio of values of which
 * one is not above nought; `no-readings`: nothing was measured of at least two treatments; `no-common-season`: beds that share no season; `plan`: a
 * difference, spread, chance or number that is none; `too-many-units`: more than the exact count of orders goes to (`MOST_UNITS`).
 */
export type TrialTrouble =
  | 'treatments'
  | 'units'
  | 'places'
  | 'unknown-unit'
  | 'value'
  | 'day'
  | 'ratio-needs-positive'
  | 'no-readings'
  | 'no-common-season'
  | 'plan'
  | 'too-many-units';

export class TrialError extends Error {
  override readonly name = 'TrialError';
  constructor(
    readonly code: TrialTrouble,
    /** What it is about: the id of a unit, a treatment or a bed. */
    readonly about?: string,
  ) {
    super(`trial: ${code}${about === undefined ? '' : ` (${about})`}`);
  }
}
