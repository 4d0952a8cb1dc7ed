/** Photos of test pots: read by the same worker as those of a look. */
import type { LeafReading } from '../../leaf/types.ts';
import type { PHOTO_WORKER_WORDS } from '../words/photo-troubles.ts';
import { readStoredPhoto } from './read-photo.ts';

/** Reads a photo of a pot as one of young leaves: its reading, or what went wrong; nothing where a newer one took over. */
export async function readPotPhoto(
  photoId: string,
): Promise<LeafReading | keyof typeof PHOTO_WORKER_WORDS | undefined> {
  const read = await readStoredPhoto(photoId, 'new', {});
  if (read === 'superseded') return undefined;
  if ('failed' in read) return read.failed;
  return read.reading;
}
