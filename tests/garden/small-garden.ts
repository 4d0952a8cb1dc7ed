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

/** What a network has learnt of a garden: one mark with a head of two features, one without. */
export const ownHeadOf = (weight: number): object => ({
  network: '0123456789abcdef',
  learntAt: '2026-06-01T08:00:00.000Z',
  photos: 40,
  plantings: 9,
  marks: [
    {
      mark: 'white-powder',
      end: 'used',
      present: 12,
      absent: 28,
      presentPlantings: 4,
      absentPlantings: 5,
      tested: {
        own: 0.3,
        shipped: 0.5,
        camera: 0.6,
        gain: 0.2,
        gainSe: 0.05,
        before: 'shipped',
        right: 36,
        rightBefore: 30,
      },
      head: { level: -0.25, logit: 0.5, weights: [weight, 0], mean: [1, 2], spread: [0.5, 1], most: 5 },
    },
    { mark: 'holes', end: 'too-few', present: 0, absent: 3, presentPlantings: 0, absentPlantings: 1 },
  ],
});
