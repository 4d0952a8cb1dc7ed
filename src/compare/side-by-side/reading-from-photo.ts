import type { MeasureId, Measures } from '../../leaf/measures.ts';
import type { TrialReading } from './trial.ts';

/**
 * A photo's measure as a reading of the unit whose leaf it shows.
 * @returns nothing where the photo could not be measured so: it is no reading of nought
 */
export function readingFromPhoto(
  unit: string,
  date: string,
  measures: Measures,
  measure: MeasureId,
): TrialReading | undefined {
  const taken = measures[measure];
  return taken && { unit, date, value: taken.value, se: taken.se };
}
