/** Photos of test pots: kept in the pictures' store, read by the same worker as those of a look. */
import type { LeafReading } from '../../leaf/types.ts';
import type { PHOTO_WORKER_WORDS } from '../words/photo-troubles.ts';
import { keepPicture, keepPicturesAgain, thumbnailOf } from './pictures.ts';
import { readStoredPhoto } from './read-photo.ts';

/** Keeps a photo. The id under which it lies; nothing where the store did not take it, and why not the bar says. */
export async function addPotPhoto(file: File): Promise<string | undefined> {
  const id = crypto.randomUUID();
  await keepPicture(id, file);
  return (await keepPicturesAgain([id])) ? id : undefined;
}

/** Reads a photo of a pot as one of young leaves: its reading, or what went wrong; nothing where a newer one took over. */
export async function readPotPhoto(
  photoId: string,
): Promise<LeafReading | keyof typeof PHOTO_WORKER_WORDS | undefined> {
  const read = await readStoredPhoto(photoId, 'new', {});
  if (read === 'superseded') return undefined;
  if ('failed' in read) return read.failed;
  if (read.thumbnail) await keepPicture(thumbnailOf(photoId), read.thumbnail);
  return read.reading;
}
