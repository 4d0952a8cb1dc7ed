import {
  BATCH_KINDS,
  type BatchRecord,
  type BedRecord,
  EVENTS,
  type EventRecord,
  type GroundRecord,
  type HeapReading,
  type NormalLeafRecord,
  type PlantingRecord,
  SPREADING_WAYS,
  type Spreading,
  type Suspicion,
  type WeatherRecord,
} from './ground-records.ts';
import {
  byDate,
  day,
  isObject,
  type Loose,
  list,
  number,
  once,
  oneOf,
  optional,
  text,
  yesNo,
} from './loose.ts';
import type { Stamp } from './records.ts';
import { repairPotTest } from './repair-pot-test.ts';
import { repairTrial } from './repair-trial.ts';
import { repairRipenessTest } from './ripeness-test.ts';
import { repairSeenByNetwork } from './seen-by-network.ts';

/** Lowest and highest temperatures that a garden or a heap can have, °C: beyond them it was a slip of the finger. */
export const CELSIUS_BOUNDS = { air: [-60, 60], soil: [-30, 50], heap: [-30, 95] } as const;

/** A record of the ground made whole, or `undefined` where what it is about is missing. */
export function repairGround(found: Loose, stamp: Stamp): GroundRecord | undefined {
  switch (found.kind) {
    case 'bed':
      return repairBed(found, stamp);
    case 'event':
      return repairEvent(found, stamp);
    case 'batch':
      return repairBatch(found, stamp);
    case 'planting':
      return repairPlanting(found, stamp);
    case 'weather':
      return repairWeather(found, stamp);
    case 'normal-leaf':
      return repairNormalLeaf(found, stamp);
    case 'pot-test':
      return repairPotTest(found, stamp);
    case 'trial':
      return repairTrial(found, stamp);
    default:
      return undefined;
  }
}

const repairBed = (found: Loose, stamp: Stamp): BedRecord => ({
  ...stamp,
  kind: 'bed',
  name: text(found.name),
  note: text(found.note),
  ...optional('order', number(found.order, -1e9, 1e9)),
  ...optional('place', text(found.place)),
  ...optional('soil', text(found.soil)),
  ...optional('soilReaction', text(found.soilReaction)),
});

function repairEvent(found: Loose, stamp: Stamp): EventRecord | undefined {
  const what = oneOf(EVENTS, found.what);
  if (what === undefined || text(found.bedId) === '' || day(found.date) === '') return undefined;
  return {
    ...stamp,
    kind: 'event',
    bedId: text(found.bedId),
    date: day(found.date),
    what,
    note: text(found.note),
    ...optional('amount', text(found.amount)),
  };
}

function repairBatch(found: Loose, stamp: Stamp): BatchRecord {
  const ripeness = byDate(once(list(found.ripeness).map(repairRipenessTest)));
  return {
    ...stamp,
    kind: 'batch',
    name: text(found.name),
    source: text(found.source),
    note: text(found.note),
    readings: byDate(once(list(found.readings).map(repairReading))),
    given: byDate(once(list(found.given).map(repairSpreading))),
    ...optional('what', oneOf(BATCH_KINDS, found.what)),
    ...optional('sprayedFields', text(found.sprayedFields)),
    ...optional('arrivedOn', day(found.arrivedOn)),
    ...optional('startedOn', day(found.startedOn)),
    ...optional('hotOnArrival', yesNo(found.hotOnArrival)),
    ...optional('told', text(found.told)),
    ...optional('woodShare', number(found.woodShare, 0, 1)),
    ...optional('suspicion', repairSuspicion(found.suspicion)),
    ...optional('usedUpOn', day(found.usedUpOn)),
    ...(ripeness.length > 0 ? { ripeness } : {}),
  };
}

function repairReading(found: unknown): HeapReading | undefined {
  if (!isObject(found)) return undefined;
  const celsius = number(found.celsius, ...CELSIUS_BOUNDS.heap);
  if (text(found.id) === '' || day(found.date) === '' || celsius === undefined) return undefined;
  return {
    id: text(found.id),
    date: day(found.date),
    celsius,
    ...optional('airCelsius', number(found.airCelsius, ...CELSIUS_BOUNDS.air)),
    ...(found.turned === true ? { turned: true } : {}),
    ...optional('smellsOfAmmonia', yesNo(found.smellsOfAmmonia)),
  };
}

function repairSpreading(found: unknown): Spreading | undefined {
  if (!isObject(found)) return undefined;
  if (text(found.id) === '' || day(found.date) === '' || text(found.bedId) === '') return undefined;
  return {
    id: text(found.id),
    date: day(found.date),
    bedId: text(found.bedId),
    ...optional('plantingId', text(found.plantingId)),
    ...optional('depthCm', number(found.depthCm, 0, 200)),
    ...optional('how', oneOf(SPREADING_WAYS, found.how)),
  };
}

function repairSuspicion(found: unknown): Suspicion | undefined {
  if (!isObject(found)) return undefined;
  // A suspicion whose state cannot be read holds: better a load that stays aside than one that is spread.
  return {
    state: found.state === 'released' ? 'released' : 'suspected',
    on: day(found.on),
    why: text(found.why),
    ...optional('caseId', text(found.caseId)),
    ...optional('potTestId', text(found.potTestId)),
    ...optional('potTestSays', text(found.potTestSays)),
  };
}

const repairPlanting = (found: Loose, stamp: Stamp): PlantingRecord => ({
  ...stamp,
  kind: 'planting',
  crop: text(found.crop),
  note: text(found.note),
  ...optional('variety', text(found.variety)),
  ...optional('colour', text(found.colour)),
  ...optional('bedId', text(found.bedId)),
  ...optional('sownOn', day(found.sownOn)),
  ...optional('plantedOn', day(found.plantedOn)),
  ...optional('hardenedOff', yesNo(found.hardenedOff)),
  ...optional('netted', yesNo(found.netted)),
  ...optional('clearedOn', day(found.clearedOn)),
});

function repairWeather(found: Loose, stamp: Stamp): WeatherRecord | undefined {
  const date = day(found.date);
  if (date === '') return undefined;
  const [min, max] = [
    number(found.minCelsius, ...CELSIUS_BOUNDS.air),
    number(found.maxCelsius, ...CELSIUS_BOUNDS.air),
  ];
  return {
    ...stamp,
    kind: 'weather',
    date,
    ...optional('minCelsius', min),
    ...optional('maxCelsius', max),
    ...optional('meanCelsius', number(found.meanCelsius, ...CELSIUS_BOUNDS.air)),
    ...optional('soilCelsius', number(found.soilCelsius, ...CELSIUS_BOUNDS.soil)),
    ...optional('rainMm', number(found.rainMm, 0, 2000)),
    ...(found.forecast === true ? { forecast: true } : {}),
  };
}

function repairNormalLeaf(found: Loose, stamp: Stamp): NormalLeafRecord | undefined {
  if (text(found.photoId) === '') return undefined;
  return {
    ...stamp,
    kind: 'normal-leaf',
    crop: text(found.crop),
    variety: text(found.variety),
    date: day(found.date) || stamp.changedAt.slice(0, 10),
    photoId: text(found.photoId),
    ...optional('stage', text(found.stage)),
    ...(isObject(found.reading) ? { reading: found.reading } : {}),
    ...optional('network', repairSeenByNetwork(found.network)),
  };
}
