/** A trial from the store as the reading takes it, and what its screens list. Pure. */
import { canBe } from '../../compare/side-by-side/check-trial.ts';
import { readTrial, type TrialResult } from '../../compare/side-by-side/read-trial.ts';
import type { TrialMeasure, TrialReading, TrialUnit } from '../../compare/side-by-side/trial.ts';
import { TrialError, type TrialTrouble } from '../../compare/side-by-side/trial-error.ts';
import type { BedRecord } from '../../garden/ground-records.ts';
import type { TrialLayout, TrialNumber, TrialRecord, TrialUnitKept } from '../../garden/trial-record.ts';
import { MEASURES } from '../../leaf/measures.ts';

/** What is measured; nothing while it was not said, or where this version knows no such measure. */
export function measureOf({ measure }: Pick<TrialRecord, 'measure'>): TrialMeasure | undefined {
  if (measure?.by !== 'photo') return measure;
  const known = MEASURES.find(({ id }) => id === measure.measure);
  return known && { by: 'photo', measure: known.id };
}

/** All units of all seasons that belong to a way of the trial. */
export function coreUnits({ layouts, ways }: TrialRecord): TrialUnit[] {
  const known = new Set(ways.map(({ id }) => id));
  return layouts.flatMap(({ id: season, beds, units }) =>
    units
      .filter(({ way }) => known.has(way))
      .map(({ id, way, at, place, block }) => ({
        id,
        treatment: way,
        bed: beds[at]?.bedId || (beds[at]?.bedName ?? ''),
        place,
        season,
        ...(block === undefined ? {} : { block }),
      })),
  );
}

/** The readings that count: of units that are in the trial and were not struck out, with a value that the measure can have. */
export function countedReadings(record: TrialRecord): TrialReading[] {
  const measure = measureOf(record);
  if (!measure) return [];
  const lost = new Set(record.losses.map(({ id }) => id));
  const known = new Set(coreUnits(record).map(({ id }) => id));
  return record.readings.flatMap(({ unitId, date, value, se }) =>
    value === undefined || lost.has(unitId) || !known.has(unitId) || !canBe(measure, value)
      ? []
      : [{ unit: unitId, date, value, ...(se === undefined ? {} : { se }) }],
  );
}

/** What came out, or why nothing can be said. */
export type TrialReadOut =
  | { readonly result: TrialResult }
  | { readonly trouble: TrialTrouble | 'no-measure' };

export function readKeptTrial(record: TrialRecord): TrialReadOut {
  const measure = measureOf(record);
  if (!measure) return { trouble: 'no-measure' };
  const { looks, scale, matters, unit, ways } = record;
  try {
    const result = readTrial(
      {
        treatments: ways.map(({ id }) => id),
        unit: unit === 'plot' ? 'plot' : 'plant',
        measure,
        units: coreUnits(record),
      },
      countedReadings(record),
      {
        ...(looks ? { looks } : {}),
        ...(scale ? { scale } : {}),
        ...(matters !== undefined && (scale !== 'ratio' || matters > 1) ? { matters } : {}),
      },
    );
    return { result };
  } catch (cause) {
    if (cause instanceof TrialError) return { trouble: cause.code };
    throw cause;
  }
}

/** Some values were typed and some measured by the camera. */
export function mixesEyeAndCamera(record: TrialRecord): boolean {
  if (record.measure?.by !== 'photo') return false;
  const counted = record.readings.filter(({ value }) => value !== undefined);
  return counted.some(({ photoId }) => photoId) && counted.some(({ photoId }) => !photoId);
}

/** A bed of a layout with its units in the order of the row. */
export interface BedToWalk {
  readonly at: number;
  readonly bedId: string;
  readonly name: string;
  readonly places: number;
  readonly units: readonly TrialUnitKept[];
}

/** The beds of a layout in the order of the walk; those that are on record no more come last. Names as they are now. */
export function bedsToWalk({ beds, units }: TrialLayout, walk: readonly BedRecord[]): BedToWalk[] {
  const order = new Map(walk.map(({ id }, at) => [id, at]));
  const place = (bedId: string): number => order.get(bedId) ?? walk.length;
  return beds
    .map(({ bedId, bedName, places }, at) => ({
      at,
      bedId,
      name: walk.find(({ id }) => id === bedId)?.name ?? bedName,
      places,
      units: units.filter((unit) => unit.at === at).sort((a, b) => a.place - b.place),
    }))
    .sort((a, b) => place(a.bedId) - place(b.bedId) || a.at - b.at);
}

/** What was read of a unit on a day, in the order in which it came. */
export const readingsOn = (record: TrialRecord, unitId: string, date: string): TrialNumber[] =>
  record.readings.filter((one) => one.unitId === unitId && one.date === date);

/** How far a day's measuring has come: units that stand, and those of them with a value on that day. */
export function measuredOn(
  record: TrialRecord,
  layout: TrialLayout,
  date: string,
): readonly [number, number] {
  const lost = new Set(record.losses.map(({ id }) => id));
  const standing = layout.units.filter(({ id }) => !lost.has(id));
  const done = standing.filter(({ id }) =>
    readingsOn(record, id, date).some(({ value }) => value !== undefined),
  );
  return [done.length, standing.length];
}

/** Where a trial stands. */
export type TrialState = 'planned' | 'laid-out' | 'measured' | 'ended';
export const stateOf = ({ ended, layouts, readings }: TrialRecord): TrialState =>
  ended ? 'ended' : layouts.length === 0 ? 'planned' : readings.length === 0 ? 'laid-out' : 'measured';
