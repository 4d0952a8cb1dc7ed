import type { Trial, TrialReading, TrialUnit } from '../../../src/compare/side-by-side/trial.ts';

/** A unit in short: treatment, bed, and what else is known. */
export type ShortUnit = Partial<TrialUnit> & {
  readonly treatment: string;
  readonly bed: string;
  readonly values: readonly number[];
};

/** A trial of heights and its readings; the n-th value of a unit is read n weeks on. */
export function makeTrial(
  units: readonly ShortUnit[],
  measure: Trial['measure'] = { by: 'hand', kind: 'height' },
): { readonly trial: Trial; readonly readings: TrialReading[] } {
  const named = units.map((unit, i) => ({ id: `u${i}`, ...unit }));
  return {
    trial: {
      treatments: [...new Set(units.map(({ treatment }) => treatment))],
      unit: 'plant',
      measure,
      units: named.map(({ values: _, ...unit }) => unit),
    },
    readings: named.flatMap(({ id, values }) =>
      values.map((value, week) => ({
        unit: id,
        date: `2026-06-${String(1 + 7 * week).padStart(2, '0')}`,
        value,
      })),
    ),
  };
}

/** Units of one treatment in one bed, one value each. */
export const row = (
  treatment: string,
  bed: string,
  values: readonly number[],
  more: Partial<TrialUnit> = {},
): ShortUnit[] => values.map((value) => ({ treatment, bed, values: [value], ...more }));
