/** Healthy leaves of a variety: their photos kept, and read by the same worker as those of a look. */
import type { NormalLeafRecord } from '../../garden/ground-records.ts';
import { RECORDS_SCHEMA } from '../../garden/records.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { LeafReading, Taps } from '../../leaf/types.ts';
import { NORMAL_WORDS as WORDS } from '../words/normal-leaves.ts';
import type { PHOTO_WORKER_WORDS } from '../words/photo-troubles.ts';
import { changeGround, keepWithUndo, type Saved } from './garden.ts';
import { nowStamp } from './kept.ts';
import { keepNewPicture } from './pictures.ts';
import { readStoredPhoto } from './read-photo.ts';

export const newNormalLeaf = (
  crop: string,
  variety: string,
  date: string,
  photoId: string,
): NormalLeafRecord => ({
  kind: 'normal-leaf',
  id: crypto.randomUUID(),
  schema: RECORDS_SCHEMA,
  changedAt: nowStamp(),
  crop,
  variety: variety.trim(),
  date,
  photoId,
});

/** Keeps photos as healthy leaves of a variety, unread as yet; their sheets read them. Pictures go first. */
export async function addNormalLeaves(
  files: readonly File[],
  crop: string,
  variety: string,
  today: string,
): Promise<Saved> {
  const records: NormalLeafRecord[] = [];
  for (const file of files) {
    const photoId = await keepNewPicture(file);
    if (photoId) records.push(newNormalLeaf(crop, variety, today, photoId));
  }
  return records.length === 0 ? 'refused' : keepWithUndo(records, WORDS.added);
}

/** A healthy leaf that was read off its photo already, while a look was taken. */
export const keepAsNormalLeaf = (
  leaf: { readonly crop: string; readonly variety: string; readonly date: string; readonly stage?: string },
  photoId: string,
  reading: LeafReading,
  network?: SeenByNetwork,
): Promise<Saved> =>
  keepWithUndo(
    [
      {
        ...newNormalLeaf(leaf.crop, leaf.variety, leaf.date, photoId),
        ...(leaf.stage ? { stage: leaf.stage } : {}),
        reading: { ...reading, role: 'normal' },
        // A healthy leaf reports no marks.
        ...(network ? { network: { ...network, reports: [] } } : {}),
      },
    ],
    WORDS.added,
  );

/**
 * Reads a healthy leaf, with what was tapped on it, and stores what was found. The first reading also gives the day on
 * which the photo says it was taken.
 * @returns what went wrong beyond the photo itself; nothing where all went well or a newer tap took over
 */
export async function readNormalLeaf(
  record: NormalLeafRecord,
  taps: Taps,
): Promise<keyof typeof PHOTO_WORKER_WORDS | undefined> {
  const { photoId } = record;
  const read = await readStoredPhoto(photoId, 'normal', taps, { withNetwork: true });
  if (read === 'superseded') return undefined;
  if ('failed' in read) return read.failed;
  const { reading, network } = read;
  await changeGround(record, ({ network: _before, ...found }) => ({
    ...found,
    ...(!found.reading && reading.takenAt ? { date: reading.takenAt.slice(0, 10) } : {}),
    reading,
    ...(network ? { network } : {}),
  }));
  return undefined;
}
