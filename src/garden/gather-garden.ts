import type {
  BatchRecord,
  BedRecord,
  EventRecord,
  NormalLeafRecord,
  PlantingRecord,
  PotTestRecord,
  WeatherRecord,
} from './ground-records.ts';
import { byDate, compareWords } from './loose.ts';
import type { CaseRecord, GardenRecord } from './records.ts';
import type { TrialRecord } from './trial-record.ts';

/** The garden as it stands: what is not deleted, by kind. Everything that works on records takes this. */
export interface Garden {
  /** In the order of the walk. */
  readonly beds: readonly BedRecord[];
  readonly events: readonly EventRecord[];
  readonly batches: readonly BatchRecord[];
  readonly plantings: readonly PlantingRecord[];
  /** In order of date. */
  readonly weather: readonly WeatherRecord[];
  readonly normalLeaves: readonly NormalLeafRecord[];
  /** By day of sowing. */
  readonly potTests: readonly PotTestRecord[];
  /** In the order in which they were begun. */
  readonly trials: readonly TrialRecord[];
  readonly cases: readonly CaseRecord[];
}

/** Gathers records into a garden. Drafts and looks are not part of it; deleted records neither. */
export function gatherGarden(records: readonly GardenRecord[]): Garden {
  const kept = <Kind extends GardenRecord['kind']>(kind: Kind): Extract<GardenRecord, { kind: Kind }>[] =>
    records.filter(
      (record): record is Extract<GardenRecord, { kind: Kind }> => record.kind === kind && !record.deletedAt,
    );
  return {
    beds: kept('bed').sort(compareBeds),
    events: byDate(kept('event')),
    batches: kept('batch'),
    plantings: kept('planting'),
    weather: byDate(kept('weather')),
    normalLeaves: byDate(kept('normal-leaf')),
    potTests: kept('pot-test').sort((a, b) => compareWords(a.sownOn, b.sownOn) || compareWords(a.id, b.id)),
    trials: kept('trial').sort(
      (a, b) =>
        compareWords(a.createdAt ?? a.changedAt, b.createdAt ?? b.changedAt) || compareWords(a.id, b.id),
    ),
    cases: kept('case'),
  };
}

/** Order of the walk: as the grower put them, the others after it by name; "Bed 2" before "Bed 10". */
export function compareBeds(a: BedRecord, b: BedRecord): number {
  const [one, other] = [a.order ?? Number.POSITIVE_INFINITY, b.order ?? Number.POSITIVE_INFINITY];
  if (one !== other) return one < other ? -1 : 1;
  return a.name.localeCompare(b.name, 'en-GB', { numeric: true }) || compareWords(a.id, b.id);
}
