import { centreOf } from './estimate-shift.ts';
import {
  bedBlocks,
  blockOf,
  findIndependent,
  groupUnits,
  type Independent,
  seasonOf,
} from './find-independent.ts';
import type { UnitValue } from './sum-up-looks.ts';
import type { TrialUnit } from './trial.ts';
import { TrialError } from './trial-error.ts';

/** One dot of the plot, and one piece of evidence: a plant, a plot or a whole bed. */
export interface TrialPoint {
  readonly treatment: string;
  /** In the unit of the measure. */
  readonly value: number;
  /** The units in it: one, or all of a bed. */
  readonly units: readonly string[];
  readonly bed: string;
  /** Absent for beds taken over several seasons. */
  readonly season?: string;
  /** Points of one block are compared with each other; an opaque key. */
  readonly block: string;
}

/** A unit with its one number. */
export type ValuedUnit = TrialUnit & Pick<UnitValue, 'value' | 'se' | 'days'>;

const withSeason = (season: string | undefined): { season?: string } =>
  season === undefined ? {} : { season };

/** Every unit as a point. @param blockFor the block it is compared in */
export const unitPoints = (
  units: readonly ValuedUnit[],
  blockFor: (unit: TrialUnit) => string,
): TrialPoint[] =>
  units.map((unit) => ({
    treatment: unit.treatment,
    value: unit.value,
    units: [unit.id],
    bed: unit.bed,
    block: blockFor(unit),
    ...withSeason(unit.season),
  }));

/** The centre of each bed in each season. */
function bedSeasonPoints(units: readonly ValuedUnit[]): TrialPoint[] {
  return [...groupUnits(units, (unit) => `${unit.bed}\u0000${seasonOf(unit)}`).values()].map((group) => ({
    treatment: group[0]!.treatment,
    value: centreOf(group.map(({ value }) => value)),
    units: group.map(({ id }) => id),
    bed: group[0]!.bed,
    block: seasonOf(group[0]!),
    ...withSeason(group[0]!.season),
  }));
}

/** The centre of each bed; over several seasons the mean of those that all beds have, so that no bed gets the better years. */
function bedPoints(units: readonly ValuedUnit[], blocks: ReadonlyMap<string, string>): TrialPoint[] {
  const beds = [...groupUnits(bedSeasonPoints(units), ({ bed }) => bed).values()];
  const shared = [...new Set(units.map(seasonOf))].filter((season) =>
    beds.every((bed) => bed.some((point) => (point.season ?? '') === season)),
  );
  if (shared.length === 0) throw new TrialError('no-common-season');
  return beds.map((bed) => {
    const counted = bed.filter((point) => shared.includes(point.season ?? ''));
    return {
      treatment: bed[0]!.treatment,
      value: counted.reduce((sum, { value }) => sum + value, 0) / counted.length,
      units: counted.flatMap((point) => point.units),
      bed: bed[0]!.bed,
      block: blocks.get(bed[0]!.bed) ?? '',
      ...(shared.length === 1 ? withSeason(counted[0]!.season) : {}),
    };
  });
}

/**
 * The points that count by themselves. What counts is settled by the whole layout, also where units were lost.
 * The centre of a bed is that of Hodges and Lehmann, so that one bad plant in it moves it little.
 * @throws TrialError `no-common-season`
 */
export function gatherPoints(
  layout: readonly TrialUnit[],
  units: readonly ValuedUnit[],
): { readonly independent: Independent; readonly points: TrialPoint[] } {
  const independent = findIndependent(layout);
  if (independent === 'unit') return { independent, points: unitPoints(units, blockOf) };
  if (independent === 'bed-season') return { independent, points: bedSeasonPoints(units) };
  return { independent, points: bedPoints(units, bedBlocks(layout)) };
}
