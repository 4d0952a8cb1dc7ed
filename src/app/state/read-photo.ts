import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { LeafReading, Taps } from '../../leaf/types.ts';
import type { PhotoRole } from '../../photo/types.ts';
import type { PHOTO_WORKER_WORDS } from '../words/photo-troubles.ts';
import type { PhotoReply } from '../workers/protocol.ts';
import { isNetworkAtHand, showNetwork } from './network.ts';
import { findPicture, keepPicture, thumbnailOf } from './pictures.ts';
import { photoBridge, restarted } from './workers.ts';

/** What came of reading a stored photo: a reading, what stood in the way, or a newer request for the same photo. */
export type PhotoRead =
  | 'superseded'
  | { readonly failed: keyof typeof PHOTO_WORKER_WORDS }
  | ({
      readonly reading: LeafReading;
      /** What the network of signs made of it, where it was asked and is at hand. */
      readonly network?: SeenByNetwork;
    } & Pick<Extract<PhotoReply, { readonly ok: true }>, 'layers'>);

interface ReadOptions {
  /** Name of the file. */
  readonly file?: string | undefined;
  /** Whether the network of signs is asked too, where it is switched on. */
  readonly withNetwork?: boolean;
}

/** Has the worker read a stored photo, and keeps the small copy that it makes. What is wrong with the photo itself stands in the reading. */
export async function readStoredPhoto(
  photoId: string,
  role: PhotoRole,
  taps: Taps,
  { file, withNetwork = false }: ReadOptions = {},
): Promise<PhotoRead> {
  const picture = await findPicture(photoId);
  if (!picture) return { failed: 'failed' };
  const named = file === undefined ? {} : { file };
  const wantCrop = withNetwork && (await isNetworkAtHand());
  const outcome = await photoBridge.ask(
    { kind: 'read-photo', photoId, picture, role, taps, wantThumbnail: true, wantCrop, ...named },
    photoId,
  );
  if (outcome.state === 'superseded') return 'superseded';
  if (outcome.state === 'failed') return { failed: outcome.code };
  if (restarted.value === 'photo') restarted.value = undefined;
  const { reply } = outcome;
  if (reply.ok) {
    const { thumbnail, crop, ...read } = reply;
    if (thumbnail) void keepPicture(thumbnailOf(photoId), thumbnail);
    const network = crop && (await showNetwork(photoId, crop, role));
    return { ...read, ...(network ? { network } : {}) };
  }
  if (reply.code === 'failed') return { failed: 'failed' };
  return { reading: { role, trouble: [reply.code], leaf: { found: false }, measures: {}, ...named } };
}
