import type { BedRecord, PlantingRecord } from '../../garden/ground-records.ts';
import { CROPS } from '../../signs/vocabulary.ts';
import { changeDraft } from './change-draft.ts';
import { type Draft, emptyDraft } from './draft.ts';
import { startLook } from './look-session.ts';
import { goTo } from './route.ts';

/** A fresh look at a planting that is on record: where it stands and what it is are said already. Pure. */
export function lookAt(
  id: string,
  today: string,
  { id: plantingId, bedId, crop, variety }: PlantingRecord,
  bed: Pick<BedRecord, 'name'> | undefined,
): Draft {
  const known = CROPS.find((one) => one === crop);
  const fresh = emptyDraft(id, today);
  if (bedId === undefined) return known ? changeDraft(fresh, { kind: 'choose-crop', crop: known }) : fresh;
  return changeDraft(fresh, {
    kind: 'stand-in',
    where: { bedId, bed: bed?.name ?? '', plantingId },
    ...(known ? { crop: known } : {}),
    ...(variety ? { variety } : {}),
  });
}

/** Begins it and goes there. */
export async function startLookAt(
  planting: PlantingRecord,
  bed: BedRecord | undefined,
  today: string,
): Promise<void> {
  const next = lookAt(crypto.randomUUID(), today, planting, bed);
  await startLook(next);
  goTo({ place: 'look', draft: next.id });
}
