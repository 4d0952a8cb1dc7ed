import type { PlantingRecord } from '../../garden/ground-records.ts';
import { cropName } from './crops.ts';
import { describeDays } from './dates.ts';
import { GROUND_WORDS } from './ground.ts';

/** "Tomato, a red cherry". */
export const namePlanting = ({ crop, variety }: PlantingRecord): string =>
  [cropName(crop) || GROUND_WORDS.someCrop, variety].filter(Boolean).join(', ');

const dayOf = ({ plantedOn, sownOn }: PlantingRecord): string | undefined => plantedOn ?? sownOn;

/** Those of one bed whose names nobody could tell apart by reading them, in an order that does not change. */
function namedAlike(planting: PlantingRecord, all: readonly PlantingRecord[]): readonly PlantingRecord[] {
  const nameOf = (one: PlantingRecord): string =>
    namePlanting(one).toLocaleLowerCase('en-GB').replace(/\s+/g, ' ').trim();
  return all
    .filter((one) => one.bedId === planting.bedId && nameOf(one) === nameOf(planting))
    .sort((a, b) => `${dayOf(a) ?? ''} ${a.id}`.localeCompare(`${dayOf(b) ?? ''} ${b.id}`, 'en-GB'));
}

/** "1 of 2" where plantings of one bed are called the same and no day of their own tells them apart. */
export function numberPlanting(planting: PlantingRecord, all: readonly PlantingRecord[]): string | undefined {
  const alike = namedAlike(planting, all);
  if (alike.length < 2) return undefined;
  const day = dayOf(planting);
  if (day !== undefined && alike.filter((one) => dayOf(one) === day).length === 1) return undefined;
  return GROUND_WORDS.ofSo(alike.findIndex(({ id }) => id === planting.id) + 1, alike.length);
}

/** Its name among others, with its day or a number where another one in the bed is called the same. */
export function namePlantingAmong(planting: PlantingRecord, all: readonly PlantingRecord[]): string {
  const name = namePlanting(planting);
  if (namedAlike(planting, all).length < 2) return name;
  const number = numberPlanting(planting, all);
  if (number !== undefined) return `${name}, ${number}`;
  const day = dayOf(planting)!;
  const what = planting.plantedOn ? GROUND_WORDS.plantedOn : GROUND_WORDS.sownOn;
  return `${name}, ${what.toLocaleLowerCase('en-GB')} ${describeDays(day, day)}`;
}
