import { dayAfter, daysBetween } from '../days/days.ts';
import {
  type AssumedAir,
  judgeCompost,
  SELF_HEATING,
  type SownTest,
  type StateChances,
} from './compost-state.ts';
import { isBelowAir } from './doubt-reading.ts';
import type { BatchRecord, HeapReading } from './ground-records.ts';
import { isSuspected } from './trace-batches.ts';

/** Kinds that heat up and ripen; the others are what they are. */
const RIPENS = new Set<string | undefined>([
  undefined,
  'own-compost',
  'green-waste',
  'cattle-manure',
  'horse-manure',
  'poultry-manure',
  'manure-unknown',
  'grass-clippings',
]);
/** Is it a kind that heats up and ripens, or not said to be of another? */
export const ripens = ({ what }: Pick<BatchRecord, 'what'>): boolean => RIPENS.has(what);
const MANURES = new Set<string | undefined>([
  'cattle-manure',
  'horse-manure',
  'poultry-manure',
  'manure-unknown',
]);

/** Why a batch is taken to be in its state; the faces own the sentences. */
export type BatchReason =
  | 'smells-of-ammonia'
  | 'still-hot'
  | 'far-above-air'
  | 'somewhat-above-air'
  | 'cool-once'
  | 'cooled-lately'
  | 'colder-than-air'
  | 'cool-for-good'
  | 'seeds-fared-badly'
  | 'never-heated'
  | 'told-only'
  | 'nothing-known'
  | 'does-not-ripen';

export interface BatchState {
  /** `ripening`: past its heat, not yet stable, or too soon after it. `nearly`: cool, but only seen so once. */
  readonly state: 'unfinished' | 'ripening' | 'nearly' | 'finished' | 'unknown';
  readonly why: BatchReason;
  readonly reading?: HeapReading;
  /** Last reading over the air of that time, K. */
  readonly rise?: number;
  /** Chances of its hidden state, for the ranking. */
  readonly chances: StateChances;
}

/** A heap at or above this is in its heat: active rotting ends below 38 to 41 °C (UCRRA). */
const HOT_FROM_CELSIUS = 40;
/** It had its heat when it once read this: start-up ends at 40 to 45 °C (UCRRA). */
const HEATED_FROM_CELSIUS = 45;
/** Two cool readings so far apart are taken for lasting: a turned heap heats again within days (common practice, no source). */
const LASTING_DAYS = 7;
/** After its heat a heap goes on curing for weeks to months (UCRRA, NRCS-317); four weeks at least (common practice, no source). */
const CURING_DAYS = 28;
/** Heaps are worked at 55 to 77 °C (NRCS-317); said two degrees before, because a thermometer misses the hottest spot. */
const TOO_HOT_CELSIUS = 75;
/** From here on it is to be acted upon at once (NRCS-317). */
const FIRE_CELSIUS = 85;

/** Is it hotter than a heap should be by its last reading, and what is to be done? */
export const overheating = (reading: HeapReading | undefined): 'turn' | 'take-apart' | undefined =>
  reading === undefined || reading.celsius < TOO_HOT_CELSIUS
    ? undefined
    : reading.celsius < FIRE_CELSIUS
      ? 'turn'
      : 'take-apart';
const WEEK_DAYS = 7;

/**
 * Is a batch finished on a day, by the published rules? Ammonia counts against it however cool it is (SOLVITA-NOTE); a core in
 * its heat, or over 20 K above the air, is unfinished (UCRRA, CCQC-2001); to 20 K it still ripens; within 10 K of the air
 * it is a candidate, and finished when it had its heat before, four weeks ago or more, and was cool twice. A heap that never
 * heated may be raw. A reading far below the air says nothing of the heap, only of the reading.
 * Seeds that fare badly in it hold it back, seeds that fare well free nothing (GERM-COMP). Colour and smell of earth prove nothing
 * (CCQC-INTRO) and are not asked.
 * @param airOn air temperature of a day where weather records give it, °C
 * @param sown how the last sowing test in it came out
 */
export function judgeBatch(
  batch: BatchRecord,
  on: string,
  airOn: (day: string) => number | undefined = () => undefined,
  assumed?: AssumedAir,
  sown?: SownTest,
): BatchState {
  const all = batch.readings.filter(({ date }) => date <= on);
  const readings = all.filter((one) => !isBelowAir(one, airOn(one.date)));
  const misread = all.length > 0 && readings.at(-1) !== all.at(-1);
  const reading = readings.at(-1);
  const smell = all
    .map(({ smellsOfAmmonia }) => smellsOfAmmonia)
    .filter((said) => said !== undefined)
    .at(-1);
  const air = reading && (reading.airCelsius ?? airOn(reading.date));
  const told = (['finished', 'fresh', 'still-warm', 'hot'] as const).find((word) => word === batch.told);
  const age = batch.startedOn === undefined ? undefined : daysBetween(batch.startedOn, on) / WEEK_DAYS;
  const chances = judgeCompost(
    {
      kind: MANURES.has(batch.what) ? 'manure' : 'compost',
      ...(reading ? { celsius: reading.celsius } : {}),
      ...(air === undefined ? {} : { airCelsius: air }),
      ...(age === undefined || age < 0 ? {} : { ageWeeks: age }),
      ...(smell === undefined ? {} : { smellsOfAmmonia: smell }),
      ...(told === undefined ? {} : { told }),
      ...(sown === undefined ? {} : { sown }),
    },
    assumed,
  );
  const riseOf = (one: HeapReading): number =>
    one.celsius - (one.airCelsius ?? airOn(one.date) ?? assumed?.celsius ?? USUAL_AIR);
  const judged = (state: BatchState['state'], why: BatchReason): BatchState => ({
    state,
    why,
    chances,
    ...(reading ? { reading, rise: riseOf(reading) } : {}),
  });
  if (!ripens(batch)) return judged('unknown', 'does-not-ripen');
  if (smell) return judged('unfinished', 'smells-of-ammonia');
  if (misread) return judged('unknown', 'colder-than-air');
  if (!reading) return told ? judged(WORDS[told], 'told-only') : judged('unknown', 'nothing-known');
  const rise = riseOf(reading);
  if (reading.celsius >= HOT_FROM_CELSIUS) return judged('unfinished', 'still-hot');
  if (rise > SELF_HEATING.matureBelow) return judged('unfinished', 'far-above-air');
  if (rise > SELF_HEATING.veryMatureBelow) return judged('ripening', 'somewhat-above-air');
  const heated =
    batch.hotOnArrival === true || readings.some(({ celsius }) => celsius >= HEATED_FROM_CELSIUS);
  if (sown === 'failed') return judged('ripening', 'seeds-fared-badly');
  if (!heated) return judged('unknown', 'never-heated');
  // The last day on which it was, or may still have been, in its heat.
  const lastHeat = [
    ...readings.filter(({ celsius }) => celsius >= HOT_FROM_CELSIUS).map(({ date }) => date),
    ...(batch.hotOnArrival === true && batch.arrivedOn !== undefined ? [batch.arrivedOn] : []),
    ...(batch.startedOn === undefined ? [] : [batch.startedOn]),
  ]
    .sort()
    .at(-1);
  if (lastHeat !== undefined && daysBetween(lastHeat, reading.date) < CURING_DAYS)
    return judged('ripening', 'cooled-lately');
  const firstCool =
    readings[readings.map((one) => riseOf(one) > SELF_HEATING.veryMatureBelow).lastIndexOf(true) + 1]!;
  return daysBetween(firstCool.date, reading.date) >= LASTING_DAYS
    ? judged('finished', 'cool-for-good')
    : judged('nearly', 'cool-once');
}

/** Air where neither the reading nor the weather says it (common practice, no source). */
const USUAL_AIR = 14;
const WORDS = {
  finished: 'nearly',
  fresh: 'unfinished',
  'still-warm': 'ripening',
  hot: 'unfinished',
} as const;

/** A heap is looked at every week, in its heat every three days, the next day where it is too hot (common practice, no source). */
const READ_EVERY_DAYS = { tooHot: 1, hot: 3, else: 7 } as const;

/**
 * The day on which a batch is due a reading: those that somebody has begun to follow, or that came hot, until they are
 * finished, used up or under suspicion: heat does not tell when such a load may be spread.
 */
export function readingDue(
  batch: BatchRecord,
  on: string,
  airOn?: (day: string) => number | undefined,
): string | undefined {
  if (isSuspected(batch) || batch.deletedAt || batch.usedUpOn !== undefined || !ripens(batch))
    return undefined;
  const judged = judgeBatch(batch, on, airOn);
  if (judged.state === 'finished') return undefined;
  const last = judged.reading;
  if (!last) return batch.hotOnArrival ? (batch.arrivedOn ?? on) : undefined;
  const every = overheating(last)
    ? READ_EVERY_DAYS.tooHot
    : last.celsius >= HOT_FROM_CELSIUS
      ? READ_EVERY_DAYS.hot
      : READ_EVERY_DAYS.else;
  return dayAfter(last.date, every);
}

/** The heap's readings beside the air of the same day, for a curve. */
export function heatCurve(
  batch: BatchRecord,
  airOn: (day: string) => number | undefined,
): {
  readonly date: string;
  readonly celsius: number;
  readonly airCelsius?: number;
  readonly turned: boolean;
}[] {
  return batch.readings.map(({ date, celsius, airCelsius, turned }) => {
    const air = airCelsius ?? airOn(date);
    return { date, celsius, turned: turned ?? false, ...(air === undefined ? {} : { airCelsius: air }) };
  });
}
