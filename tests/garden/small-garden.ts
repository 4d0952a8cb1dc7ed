import { type Garden, gatherGarden } from '../../src/garden/gather-garden.ts';
import type { GardenRecord } from '../../src/garden/records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';

/** A record from its parts, made whole. */
export function record<Kind extends GardenRecord['kind']>(
  kind: Kind,
  id: string,
  more: object = {},
): Extract<GardenRecord, { kind: Kind }> {
  const made = repairRecord({ kind, id, changedAt: '2026-01-01T00:00:00.000Z', ...more });
  if (made?.kind !== kind) throw new Error(`no ${kind} can be made of ${JSON.stringify(more)}`);
  return made as Extract<GardenRecord, { kind: Kind }>;
}

export const garden = (...records: readonly GardenRecord[]): Garden => gatherGarden(records);

/** Days of weather from a first day on, each as lowest and highest. */
export const weather = (first: string, days: readonly (readonly [number, number])[], more: object = {}) =>
  days.map(([minCelsius, maxCelsius], at) => {
    const date = new Date(Date.parse(`${first}T00:00:00Z`) + at * 86_400_000).toISOString().slice(0, 10);
    return record('weather', `weather-${date}`, { date, minCelsius, maxCelsius, ...more });
  });
