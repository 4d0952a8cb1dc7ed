import type { Garden } from './gather-garden.ts';
import type { PlantingRecord } from './ground-records.ts';

/** What stood in a bed on a day, in the order of the records. */
export const standingIn = (garden: Garden, bedId: string, day: string): readonly PlantingRecord[] =>
  garden.plantings.filter(({ bedId: in_, sownOn, plantedOn, clearedOn }) => {
    const start = sownOn ?? plantedOn;
    return in_ === bedId && (!start || start <= day) && (!clearedOn || clearedOn >= day);
  });
