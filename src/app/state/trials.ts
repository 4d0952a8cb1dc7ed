/** Trials side by side in the store: every touch is kept at once, whatever another tab or device did meanwhile. */
import { readingFromPhoto } from '../../compare/side-by-side/reading-from-photo.ts';
import { byDate } from '../../garden/loose.ts';
import { RECORDS_SCHEMA } from '../../garden/records.ts';
import {
  type TrialLayout,
  type TrialNumber,
  type TrialRecord,
  trialReadingId,
} from '../../garden/trial-record.ts';
import type { LeafReading, Taps } from '../../leaf/types.ts';
import type { PHOTO_WORKER_WORDS } from '../words/photo-troubles.ts';
import { withFields } from './edit-ground.ts';
import { groundRecords, onRecord, refreshGarden } from './garden.ts';
import { nowStamp, store, tryStore } from './kept.ts';
import { keepNewPicture } from './pictures.ts';
import { measureOf } from './read-kept-trial.ts';
import { readStoredPhoto } from './read-photo.ts';

/** A trial of which nothing is said yet. */
export const newTrial = (id: string, now: string): TrialRecord => ({
  kind: 'trial',
  id,
  schema: RECORDS_SCHEMA,
  changedAt: now,
  name: '',
  ways: [
    { id: 'A', name: '' },
    { id: 'B', name: '' },
  ],
  unit: 'plant',
  measure: { by: 'hand', kind: 'height' },
  layouts: [],
  readings: [],
  losses: [],
  note: '',
});

/** The trial as it is stored, or a fresh one under that id. */
export const trialOn = (id: string): TrialRecord => onRecord('trial', id) ?? newTrial(id, nowStamp());

/** Saves go one after the other: a fast thumb must not overtake itself. */
let line: Promise<unknown> = Promise.resolve();
let waiting = 0;

/** Shows a change at once; the store follows. */
function show(trial: TrialRecord): void {
  const others = (groundRecords.value ?? []).filter(({ kind, id }) => kind !== 'trial' || id !== trial.id);
  groundRecords.value = [...others, trial];
}

/**
 * Changes a trial, and makes the record at the first touch. It shows at once; once nothing waits to be stored any more, what shows is read
 * from the store again.
 * @returns true when it is stored; the bar says why not
 */
export function touchTrial(id: string, change: (trial: TrialRecord) => TrialRecord): Promise<boolean> {
  show(change(trialOn(id)));
  waiting += 1;
  const done = line.then(async () => {
    const stamped = (trial: TrialRecord): TrialRecord => ({ ...change(trial), changedAt: nowStamp() });
    const stored = await tryStore(async () => {
      const found = await store.changeRecord('trial', id, stamped);
      if (!found) await store.saveRecords([stamped(newTrial(id, nowStamp()))]);
      return true;
    });
    waiting -= 1;
    if (waiting === 0) await refreshGarden();
    return stored ?? false;
  });
  line = done.catch(() => {});
  return done;
}

export const setFields = (
  id: string,
  fields: { readonly [Key in keyof TrialRecord]?: TrialRecord[Key] | undefined },
): Promise<boolean> => touchTrial(id, (trial) => withFields(trial, fields));

export const setPlan = (
  id: string,
  fields: {
    readonly [Key in keyof NonNullable<TrialRecord['plan']>]?:
      | NonNullable<TrialRecord['plan']>[Key]
      | undefined;
  },
): Promise<boolean> => touchTrial(id, (trial) => ({ ...trial, plan: withFields(trial.plan ?? {}, fields) }));

/** A day's numbers of a unit, in the place of what was typed for it on that day; photos stay. */
export function putNumbers(
  trial: TrialRecord,
  unitId: string,
  date: string,
  values: readonly number[],
): TrialRecord {
  const isTyped = (one: TrialNumber): boolean =>
    one.unitId === unitId && one.date === date && one.photoId === undefined;
  const typed = values.map((value, at) => ({
    id: trialReadingId(date, unitId) + (at === 0 ? '' : ` ${at + 1}`),
    date,
    unitId,
    value,
  }));
  return { ...trial, readings: byDate([...trial.readings.filter((one) => !isTyped(one)), ...typed]) };
}

/** A unit struck out, with why; or brought back. */
export const strikeOut = (trial: TrialRecord, id: string, date: string, why: string): TrialRecord => ({
  ...trial,
  losses: byDate([...trial.losses.filter((one) => one.id !== id), { id, date, why }]),
});
export const bringBack = (trial: TrialRecord, id: string): TrialRecord => ({
  ...trial,
  losses: trial.losses.filter((one) => one.id !== id),
});

export const putLayout = (trial: TrialRecord, layout: TrialLayout): TrialRecord => ({
  ...trial,
  layouts: byDate([...trial.layouts.filter(({ id }) => id !== layout.id), layout]),
});

export const dropReading = (trial: TrialRecord, readingId: string): TrialRecord => ({
  ...trial,
  readings: trial.readings.filter(({ id }) => id !== readingId),
});

/**
 * Keeps a photo of a unit, not measured yet: whatever happens next, it is there.
 * @returns the id of its reading; nothing where the picture could not be stored
 */
export async function addTrialPhoto(
  id: string,
  unitId: string,
  date: string,
  file: File,
): Promise<string | undefined> {
  const photoId = await keepNewPicture(file);
  if (!photoId) return undefined;
  const reading: TrialNumber = { id: `${trialReadingId(date, unitId)} ${photoId}`, date, unitId, photoId };
  const done = await touchTrial(id, (trial) => ({
    ...trial,
    readings: byDate([...trial.readings, reading]),
  }));
  return done ? reading.id : undefined;
}

/** What came of measuring a photo: what was read, or why nothing. */
export type TrialPhotoRead =
  | 'superseded'
  | { readonly failed: keyof typeof PHOTO_WORKER_WORDS }
  | { readonly reading: LeafReading };

/** Measures the photo of a reading, by the same worker as a look's, and keeps the value. A photo that cannot be measured keeps none. */
export async function measureTrialPhoto(
  trialId: string,
  reading: TrialNumber,
  taps: Taps,
): Promise<TrialPhotoRead> {
  const read = await readStoredPhoto(reading.photoId ?? '', 'old', taps);
  if (read === 'superseded' || 'failed' in read) return read;
  const { reading: seen } = read;
  await touchTrial(trialId, (trial) => {
    const measure = measureOf(trial);
    const taken =
      measure?.by === 'photo' && seen.leaf.found
        ? readingFromPhoto(reading.unitId, reading.date, seen.measures, measure.measure)
        : undefined;
    return {
      ...trial,
      readings: trial.readings.map((one) =>
        one.id === reading.id ? withFields(one, { value: taken?.value, se: taken?.se, taps }) : one,
      ),
    };
  });
  return { reading: seen };
}
