import { byDate, day, isObject, type Loose, list, number, once, oneOf, optional, text } from './loose.ts';
import type { Stamp } from './records.ts';
import {
  HAND_MEASURES,
  LAYOUT_WAYS,
  TRIAL_BETTER,
  TRIAL_LOOKS,
  TRIAL_SCALES,
  TRIAL_UNITS,
  type TrialBedKept,
  type TrialEnd,
  type TrialLayout,
  type TrialLoss,
  type TrialMeasured,
  type TrialNumber,
  type TrialPlan,
  type TrialRecord,
  type TrialUnitKept,
  type TrialWay,
} from './trial-record.ts';

/** Beyond these it was a slip of the finger. */
const MOST = { value: 1e9, places: 1000, ways: 4, outOf: 25 } as const;

/** A trial made whole. Units, readings and losses that cannot be read are left out one by one, the rest is kept. */
export function repairTrial(found: Loose, stamp: Stamp): TrialRecord {
  return {
    ...stamp,
    kind: 'trial',
    name: text(found.name),
    ways: once(list(found.ways).map(repairWay)).slice(0, MOST.ways),
    layouts: byDate(once(list(found.layouts).map(repairLayout))),
    readings: byDate(once(list(found.readings).map(repairNumber))),
    losses: byDate(once(list(found.losses).map(repairLoss))),
    note: text(found.note),
    ...optional('unit', oneOf(TRIAL_UNITS, found.unit)),
    ...optional('measure', repairMeasure(found.measure)),
    ...optional('ofWhat', text(found.ofWhat)),
    ...optional('better', oneOf(TRIAL_BETTER, found.better)),
    ...optional('looks', oneOf(TRIAL_LOOKS, found.looks)),
    ...optional('scale', oneOf(TRIAL_SCALES, found.scale)),
    ...optional('matters', number(found.matters, Number.MIN_VALUE, MOST.value)),
    ...optional('plan', repairPlan(found.plan)),
    ...optional('lookOn', day(found.lookOn)),
    ...optional('ended', repairEnd(found.ended)),
  };
}

const repairWay = (found: unknown): TrialWay | undefined =>
  isObject(found) && text(found.id) !== '' ? { id: text(found.id), name: text(found.name) } : undefined;

function repairMeasure(found: unknown): TrialMeasured | undefined {
  if (!isObject(found)) return undefined;
  if (found.by === 'photo' && text(found.measure) !== '')
    return { by: 'photo', measure: text(found.measure) };
  const kind = found.by === 'hand' ? oneOf(HAND_MEASURES, found.kind) : undefined;
  return kind && { by: 'hand', kind };
}

function repairPlan(found: unknown): TrialPlan | undefined {
  if (!isObject(found)) return undefined;
  const value = (key: string): number | undefined => number(found[key], 0, MOST.value);
  const plan: TrialPlan = {
    ...optional('spreadWord', text(found.spreadWord)),
    ...optional('smallest', value('smallest')),
    ...optional('largest', value('largest')),
    ...optional('outOf', number(found.outOf, 2, MOST.outOf)),
    ...optional('typical', value('typical')),
    ...optional('chance', number(found.chance, 0, 1)),
    ...optional('how', oneOf(LAYOUT_WAYS, found.how)),
    ...optional('each', number(found.each, 1, MOST.places)),
    ...optional('perBed', number(found.perBed, 1, MOST.places)),
  };
  return Object.keys(plan).length > 0 ? plan : undefined;
}

function repairBed(found: unknown): TrialBedKept {
  const bed = isObject(found) ? found : {};
  return {
    bedId: text(bed.bedId),
    bedName: text(bed.bedName),
    places: number(bed.places, 1, MOST.places) ?? 1,
  };
}

function repairLayout(found: unknown): TrialLayout | undefined {
  if (!isObject(found) || text(found.id) === '' || day(found.date) === '') return undefined;
  // Units point at beds by their place in this list: a bed that cannot be read keeps its place.
  const beds = list(found.beds).map(repairBed);
  return {
    id: text(found.id),
    date: day(found.date),
    how: oneOf(LAYOUT_WAYS, found.how) ?? 'random',
    seed: number(found.seed, 0, Number.MAX_SAFE_INTEGER) ?? 0,
    beds,
    units: once(list(found.units).map((unit) => repairUnit(unit, beds.length))),
  };
}

function repairUnit(found: unknown, beds: number): TrialUnitKept | undefined {
  if (!isObject(found) || text(found.id) === '' || text(found.way) === '') return undefined;
  const at = number(found.at, 0, beds - 1);
  const place = number(found.place, 1, MOST.places);
  if (at === undefined || !Number.isInteger(at) || place === undefined) return undefined;
  return { id: text(found.id), way: text(found.way), at, place, ...optional('block', text(found.block)) };
}

function repairNumber(found: unknown): TrialNumber | undefined {
  if (!isObject(found) || text(found.id) === '' || day(found.date) === '') return undefined;
  const value = number(found.value, -MOST.value, MOST.value);
  if (text(found.unitId) === '' || (value === undefined && text(found.photoId) === '')) return undefined;
  return {
    id: text(found.id),
    date: day(found.date),
    unitId: text(found.unitId),
    ...optional('value', value),
    ...optional('se', number(found.se, 0, MOST.value)),
    ...optional('photoId', text(found.photoId)),
    ...(isObject(found.taps) ? { taps: found.taps } : {}),
  };
}

const repairLoss = (found: unknown): TrialLoss | undefined =>
  isObject(found) && text(found.id) !== '' && day(found.date) !== ''
    ? { id: text(found.id), date: day(found.date), why: text(found.why) }
    : undefined;

function repairEnd(found: unknown): TrialEnd | undefined {
  if (!isObject(found) || day(found.date) === '') return undefined;
  return { date: day(found.date), as: found.as === 'given-up' ? 'given-up' : 'read' };
}
