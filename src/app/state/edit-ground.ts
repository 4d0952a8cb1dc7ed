/** What is typed into the forms of the ground, as records. Pure: forms hand in text, records come out whole. */
import {
  BATCH_KINDS,
  type BatchKind,
  type BatchRecord,
  type BedRecord,
  EVENTS,
  type EventRecord,
  type EventWhat,
  type HeapReading,
  type PlantingRecord,
  SPREADING_WAYS,
  type Spreading,
  type SpreadingWay,
} from '../../garden/ground-records.ts';
import { byDate } from '../../garden/loose.ts';
import { RECORDS_SCHEMA } from '../../garden/records.ts';

/** Fields of a form by name, as typed; empty is not said. */
export type Typed = Readonly<Record<string, string>>;

const text = (typed: Typed, key: string): string | undefined => typed[key]?.trim() || undefined;
const yesNo = (typed: Typed, key: string): boolean | undefined =>
  typed[key] === 'yes' ? true : typed[key] === 'no' ? false : undefined;
const among = <Word extends string>(words: readonly Word[], said: string | undefined): Word | undefined =>
  words.find((word) => word === said);

/** A number with point or comma; `undefined` for nothing, NaN for what is no number. */
export function readNumber(typed: string | undefined): number | undefined {
  const said = (typed ?? '').trim().replace(',', '.').replace('−', '-');
  if (said === '') return undefined;
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(said) ? Number(said) : Number.NaN;
}

/** The record with these fields set; a field that is `undefined` is taken out. */
export function withFields<R extends object>(
  record: R,
  fields: { readonly [Key in keyof R]?: R[Key] | undefined },
): R {
  const all: Record<string, unknown> = { ...record, ...fields };
  for (const key of Object.keys(fields)) if (all[key] === undefined) delete all[key];
  return all as R;
}

const stamp = (now: string) => ({ id: crypto.randomUUID(), schema: RECORDS_SCHEMA, changedAt: now });

export const editBed = (bed: BedRecord, typed: Typed): BedRecord =>
  withFields(bed, {
    name: text(typed, 'name') ?? bed.name,
    place: text(typed, 'place'),
    soil: text(typed, 'soil'),
    soilReaction: text(typed, 'soilReaction'),
    note: text(typed, 'note') ?? '',
  });

/** The beds whose place in the walk changes when one of them goes a step earlier (−1) or later (1). */
export function moveBed(beds: readonly BedRecord[], id: string, step: -1 | 1): BedRecord[] {
  const from = beds.findIndex((bed) => bed.id === id);
  const to = from + step;
  if (from < 0 || to < 0 || to >= beds.length) return [];
  const moved = [...beds];
  moved.splice(to, 0, ...moved.splice(from, 1));
  return moved.flatMap((bed, at) => (bed.order === at + 1 ? [] : [{ ...bed, order: at + 1 }]));
}

export const newEvent = (bedId: string, now: string): EventRecord => ({
  kind: 'event',
  ...stamp(now),
  bedId,
  date: '',
  what: 'disturbed',
  note: '',
});

export const editEvent = (event: EventRecord, typed: Typed): EventRecord => {
  const what: EventWhat = among(EVENTS, typed.what) ?? event.what;
  return withFields(event, {
    bedId: text(typed, 'bedId') ?? event.bedId,
    date: text(typed, 'date') ?? event.date,
    what,
    amount: what === 'fed' ? text(typed, 'amount') : undefined,
    note: text(typed, 'note') ?? '',
  });
};

export const newPlanting = (bedId: string, now: string): PlantingRecord => ({
  kind: 'planting',
  ...stamp(now),
  bedId,
  crop: '',
  note: '',
});

export const editPlanting = (planting: PlantingRecord, typed: Typed): PlantingRecord =>
  withFields(planting, {
    bedId: text(typed, 'bedId') ?? planting.bedId,
    crop: text(typed, 'crop') ?? '',
    variety: text(typed, 'variety'),
    colour: text(typed, 'colour'),
    sownOn: text(typed, 'sownOn'),
    plantedOn: text(typed, 'plantedOn'),
    hardenedOff: yesNo(typed, 'hardenedOff'),
    netted: yesNo(typed, 'netted'),
    clearedOn: text(typed, 'clearedOn'),
    note: text(typed, 'note') ?? '',
  });

export const newBatch = (
  name: string,
  what: string | undefined,
  arrivedOn: string,
  now: string,
): BatchRecord => {
  const kind: BatchKind | undefined = among(BATCH_KINDS, what);
  return {
    kind: 'batch',
    ...stamp(now),
    name: name.trim(),
    ...(kind ? { what: kind } : {}),
    source: '',
    arrivedOn,
    readings: [],
    given: [],
    note: '',
  };
};

export const editBatch = (batch: BatchRecord, typed: Typed): BatchRecord =>
  withFields(batch, {
    name: text(typed, 'name') ?? batch.name,
    what: among(BATCH_KINDS, typed.what),
    source: text(typed, 'source') ?? '',
    sprayedFields: text(typed, 'sprayedFields'),
    arrivedOn: text(typed, 'arrivedOn'),
    startedOn: text(typed, 'startedOn'),
    hotOnArrival: yesNo(typed, 'hotOnArrival'),
    told: text(typed, 'told'),
    woodShare: shareFrom(typed.woodShare),
    usedUpOn: text(typed, 'usedUpOn'),
    note: text(typed, 'note') ?? '',
  });

/** Parts of a hundred as a share of one; `undefined` for nothing, for no number, and beyond 0 to 100. */
function shareFrom(typed: string | undefined): number | undefined {
  const parts = readNumber(typed);
  return parts !== undefined && parts >= 0 && parts <= 100 ? parts / 100 : undefined;
}

/** A share of one as parts of a hundred, to be typed over. */
export const sayShare = (share: number | undefined): string =>
  share === undefined ? '' : String(Math.round(share * 1000) / 10);

/**
 * A batch with a reading put in, or put in the place of the one with its id. In order of date; readings of one day stay in
 * the order they came.
 */
export function putReading(
  batch: BatchRecord,
  reading: Omit<HeapReading, 'id'>,
  id: string = crypto.randomUUID(),
): BatchRecord {
  const put: HeapReading = { id, ...reading };
  const readings = batch.readings.some((one) => one.id === id)
    ? batch.readings.map((one) => (one.id === id ? put : one))
    : [...batch.readings, put];
  return { ...batch, readings: byDate(readings) };
}

/** A reading as typed; `undefined` where there is no temperature in it. */
export function readingFrom(typed: Typed, today: string): Omit<HeapReading, 'id'> | undefined {
  const celsius = readNumber(typed.celsius);
  const air = readNumber(typed.airCelsius);
  if (celsius === undefined || Number.isNaN(celsius) || Number.isNaN(air)) return undefined;
  const smells = yesNo(typed, 'smells');
  return {
    date: text(typed, 'date') ?? today,
    celsius,
    ...(air === undefined ? {} : { airCelsius: air }),
    ...(typed.turned === 'yes' ? { turned: true as const } : {}),
    ...(smells === undefined ? {} : { smellsOfAmmonia: smells }),
  };
}

/** What was given, as typed; `undefined` where no bed is said, or a depth that is no number. */
export function spreadingFrom(typed: Typed, id: string): Spreading | undefined {
  const depth = readNumber(typed.depthCm);
  const bedId = text(typed, 'bedId');
  const date = text(typed, 'date');
  if (!bedId || !date || Number.isNaN(depth)) return undefined;
  const how: SpreadingWay | undefined = among(SPREADING_WAYS, typed.how);
  const plantingId = text(typed, 'plantingId');
  return {
    id,
    date,
    bedId,
    ...(plantingId ? { plantingId } : {}),
    ...(depth === undefined ? {} : { depthCm: depth }),
    ...(how ? { how } : {}),
  };
}

/** A batch with a spreading put in, or put in the place of the one with its id. In order of date. */
export const putSpreading = (batch: BatchRecord, spreading: Spreading): BatchRecord => ({
  ...batch,
  given: [...batch.given.filter(({ id }) => id !== spreading.id), spreading].sort((a, b) =>
    a.date < b.date ? -1 : a.date > b.date ? 1 : 0,
  ),
});
