import { dayAfter } from '../../days/days.ts';
import { MEASURES, type MeasureId } from '../../leaf/measures.ts';
import type { Trial, TrialMeasure, TrialReading } from './trial.ts';
import { TrialError } from './trial-error.ts';

export const FEWEST_TREATMENTS = 2;
export const MOST_TREATMENTS = 4;

/** @throws TrialError `treatments` */
export function checkTreatments(treatments: readonly string[]): void {
  const { length } = treatments;
  if (length < FEWEST_TREATMENTS || length > MOST_TREATMENTS) throw new TrialError('treatments');
  if (new Set(treatments).size < length || treatments.includes('')) throw new TrialError('treatments');
}

/** @throws TrialError `treatments`, `units` */
export function checkTrial({ treatments, units }: Trial): void {
  checkTreatments(treatments);
  if (units.length === 0) throw new TrialError('units');
  const seen = new Set<string>();
  for (const { id, treatment, season } of units) {
    if (id === '' || seen.has(id)) throw new TrialError('units', id);
    seen.add(id);
    if (!treatments.includes(treatment)) throw new TrialError('units', id);
    if ((season === undefined) !== (units[0]!.season === undefined)) throw new TrialError('units', id);
  }
}

const unitOf = (measure: MeasureId): string => MEASURES.find(({ id }) => id === measure)!.unit;

/** Whether a measure can have this value. */
export function canBe(measure: TrialMeasure, value: number): boolean {
  if (!Number.isFinite(value)) return false;
  if (measure.by === 'photo') {
    const unit = unitOf(measure.measure);
    if (unit.startsWith('0–1')) return value >= 0 && value <= 1;
    return value >= 0 || unit !== 'number';
  }
  if (value < 0) return false;
  if (measure.kind === 'count') return Number.isInteger(value);
  const most = { share: 1, score: 10, height: Number.POSITIVE_INFINITY, weight: Number.POSITIVE_INFINITY };
  return value <= most[measure.kind];
}

/** @throws TrialError `day` */
export function checkDay(date: string): void {
  const known = /^\d{4}-\d{2}-\d{2}$/.test(date) && !Number.isNaN(Date.parse(`${date}T00:00:00Z`));
  if (!known || dayAfter(date, 0) !== date) throw new TrialError('day', date);
}

/** @throws TrialError `unknown-unit`, `day`, `value` */
export function checkReadings({ units, measure }: Trial, readings: readonly TrialReading[]): void {
  const known = new Set(units.map(({ id }) => id));
  for (const { unit, date, value, se } of readings) {
    if (!known.has(unit)) throw new TrialError('unknown-unit', unit);
    checkDay(date);
    if (!canBe(measure, value) || (se !== undefined && !(se >= 0))) throw new TrialError('value', unit);
  }
}
