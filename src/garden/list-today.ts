import { dayAfter } from '../days/days.ts';
import { dueCases } from './due-cases.ts';
import type { Garden } from './gather-garden.ts';
import type { BatchRecord, PlantingRecord, PotTestRecord, WeatherRecord } from './ground-records.ts';
import { bedKey } from './group-by-bed.ts';
import { readingDue } from './judge-batch.ts';
import { compareWords } from './loose.ts';
import type { CaseRecord } from './records.ts';
import type { TrialRecord } from './trial-record.ts';

interface Due {
  /** The same for the same thing on every device: of a calendar entry, or of a list. */
  readonly id: string;
  /** Day on which it is due, `YYYY-MM-DD`; before the day asked for it is overdue. */
  readonly due: string;
  /** Where to go; absent where it belongs to no bed on record. */
  readonly bedId?: string;
}
export interface LookDue extends Due {
  readonly what: 'look';
  readonly kept: CaseRecord;
}
export interface ReadingDue extends Due {
  readonly what: 'read-heap';
  readonly batch: BatchRecord;
}
export interface PotsDue extends Due {
  readonly what: 'pot-test';
  readonly test: PotTestRecord;
  /** Absent where the batch was deleted. */
  readonly batch?: BatchRecord;
}
export interface TrialDue extends Due {
  readonly what: 'trial';
  readonly trial: TrialRecord;
}
export interface ColdDue extends Due {
  /** `frost`: a night at which the crop comes to harm; `cold`: a day too cold for it to grow. */
  readonly what: 'frost' | 'cold';
  readonly planting: PlantingRecord;
  /** The coldest of what is expected, and the crop's limit, °C. */
  readonly expected: number;
  readonly limit: number;
  /** All days of this kind that are expected. */
  readonly days: readonly string[];
}
export type TodayItem = LookDue | ReadingDue | PotsDue | TrialDue | ColdDue;

/** What cold a crop bears, °C (`coldLimitsOf` of the season). */
export type LimitsOf = (
  crop: string,
) => { readonly frostAt?: number; readonly coldBelow: number } | undefined;

/** A forecast reaches so far that it is worth acting on (common practice, no source). */
const FORECAST_DAYS = 10;
/** What will not wait comes first where two things are due in one bed on one day. */
const URGENCY: Readonly<Record<TodayItem['what'], number>> = {
  frost: 0,
  cold: 1,
  look: 2,
  'pot-test': 3,
  trial: 4,
  'read-heap': 5,
};
const SHELTERED = new Set<string | undefined>(['under-cover', 'windowsill']);

/**
 * What to look at on a day's walk, in the order of the beds: cases due a look, heaps due a reading, pot tests due a look, trials due a measuring, frost and cold that the
 * entered forecasts expect for what stands outside. Heaps and what has no bed come last. Within a bed what is most overdue first.
 * @param ahead so many days beyond the day are listed as well (for a calendar); 0: only what is due
 */
export function listToday(garden: Garden, date: string, limitsOf: LimitsOf, ahead = 0): TodayItem[] {
  const until = dayAfter(date, ahead);
  const items = [
    ...looksDue(garden, date),
    ...readingsDue(garden, date),
    ...potsDue(garden),
    ...trialsDue(garden),
    ...garden.plantings.flatMap((planting) => coldExpected(garden, planting, date, limitsOf)),
  ].filter((item) => item.due <= until || item.what === 'frost' || item.what === 'cold');
  const place = new Map(garden.beds.map(({ id }, at) => [id, at]));
  const at = ({ bedId }: TodayItem): number => place.get(bedId ?? '') ?? garden.beds.length;
  return items.sort(
    (a, b) =>
      at(a) - at(b) ||
      compareWords(a.due, b.due) ||
      URGENCY[a.what] - URGENCY[b.what] ||
      compareWords(a.id, b.id),
  );
}

function looksDue(garden: Garden, date: string): LookDue[] {
  return dueCases(garden.cases, date).map(({ kept, lookAgain }) => {
    const bedId = kept.bedId ?? garden.beds.find(({ name }) => bedKey(name) === bedKey(kept.bed))?.id;
    return { what: 'look', id: `look-${kept.id}`, due: lookAgain, kept, ...(bedId ? { bedId } : {}) };
  });
}

function readingsDue(garden: Garden, date: string): ReadingDue[] {
  const airOn = airOf(garden.weather);
  return garden.batches.flatMap((batch): ReadingDue[] => {
    const due = readingDue(batch, date, airOn);
    return due === undefined ? [] : [{ what: 'read-heap', id: `heap-${batch.id}`, due, batch }];
  });
}

/** Pot tests that have not ended, at the day for which their sowing or next look is set. */
const potsDue = ({ potTests, batches }: Garden): PotsDue[] =>
  potTests.flatMap((test): PotsDue[] => {
    const due = test.toSow ? test.sownOn : test.lookOn;
    if (due === undefined || test.endedOn !== undefined) return [];
    const batch = batches.find(({ id }) => id === test.batchId);
    return [{ what: 'pot-test', id: `pots-${test.id}`, due, test, ...(batch ? { batch } : {}) }];
  });

/** Trials that run, at the day set for their next measuring, in the first bed of the walk that the newest layout lies in. */
const trialsDue = ({ trials, beds }: Garden): TrialDue[] =>
  trials.flatMap((trial): TrialDue[] => {
    const { lookOn, ended, layouts } = trial;
    if (lookOn === undefined || ended !== undefined) return [];
    const laid = new Set(layouts.at(-1)?.beds.map(({ bedId }) => bedId));
    const bedId = beds.find(({ id }) => laid.has(id))?.id;
    return [{ what: 'trial', id: `trial-${trial.id}`, due: lookOn, trial, ...(bedId ? { bedId } : {}) }];
  });

/** Air of a day from the weather on record, for `judgeBatch`. */
export function airOf(weather: readonly WeatherRecord[]): (day: string) => number | undefined {
  const byDay = new Map(weather.filter(({ forecast }) => !forecast).map((day) => [day.date, day]));
  return (date) => {
    const day = byDay.get(date);
    if (day?.meanCelsius !== undefined) return day.meanCelsius;
    return day?.minCelsius === undefined || day.maxCelsius === undefined
      ? undefined
      : (day.minCelsius + day.maxCelsius) / 2;
  };
}

/** Is it out in the open on that day? Sown or planted there, not under a roof, not cleared. */
function standsOut(garden: Garden, planting: PlantingRecord, date: string): boolean {
  const bed = garden.beds.find(({ id }) => id === planting.bedId);
  const since = planting.plantedOn ?? planting.sownOn;
  if (!bed || SHELTERED.has(bed.place) || (since !== undefined && since > date)) return false;
  return planting.clearedOn === undefined || planting.clearedOn >= date;
}

function coldExpected(garden: Garden, planting: PlantingRecord, date: string, limitsOf: LimitsOf): ColdDue[] {
  const limits = limitsOf(planting.crop);
  if (!limits || planting.bedId === undefined) return [];
  const coming = garden.weather.filter(
    (day) =>
      day.forecast &&
      day.date >= date &&
      day.date <= dayAfter(date, FORECAST_DAYS) &&
      standsOut(garden, planting, day.date),
  );
  const mean = ({ meanCelsius, minCelsius, maxCelsius }: WeatherRecord): number | undefined =>
    meanCelsius ??
    (minCelsius === undefined || maxCelsius === undefined ? undefined : (minCelsius + maxCelsius) / 2);
  const kinds = [
    { what: 'frost', limit: limits.frostAt, value: (day: WeatherRecord) => day.minCelsius, at: true },
    { what: 'cold', limit: limits.coldBelow, value: mean, at: false },
  ] as const;
  return kinds.flatMap(({ what, limit, value, at }): ColdDue[] => {
    if (limit === undefined) return [];
    const days = coming.flatMap((day) => {
      const expected = value(day);
      return expected !== undefined && (expected < limit || (at && expected === limit))
        ? [{ date: day.date, expected }]
        : [];
    });
    const [first] = days;
    if (!first || planting.bedId === undefined) return [];
    return [
      {
        what,
        id: `${what}-${planting.id}`,
        due: first.date,
        bedId: planting.bedId,
        planting,
        limit,
        expected: Math.min(...days.map(({ expected }) => expected)),
        days: days.map((day) => day.date),
      },
    ];
  });
}
