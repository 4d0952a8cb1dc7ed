/** The photos of the look in hand, and what the photo worker makes of them. */
import { effect, signal } from '@preact/signals';
import type { PhotoRole } from '../../photo/types.ts';
import type { LayerMap } from '../workers/lay-layers.ts';
import { roomFor } from './change-draft.ts';
import { change } from './change-look.ts';
import { type DraftPhoto, isBusy } from './draft.ts';
import { draft, draftOpened } from './look-in-hand.ts';
import { keepPicture } from './pictures.ts';
import { readStoredPhoto } from './read-photo.ts';
import { offerUndo } from './undo-bar.ts';

/** What was measured where, by photo id; shown, not kept. */
export const overlays = signal<ReadonlyMap<string, LayerMap>>(new Map());

/** Adds photos in the order chosen. Gives how many found no place. */
export async function addPhotos(files: readonly File[], role?: PhotoRole): Promise<number> {
  const added = files
    .slice(0, roomFor(draft.value.photos))
    .map((file) => ({ id: crypto.randomUUID(), file }));
  // The picture goes first: a draft that names a photo must find it after a crash.
  for (const { id, file } of added) await keepPicture(id, file);
  change({
    kind: 'add-photos',
    photos: added.map(({ id, file }) => ({ id, ...(file.name ? { file: file.name } : {}) })),
    ...(role ? { role } : {}),
  });
  return files.length - added.length;
}

export function removePhoto(photo: DraftPhoto, says: string): void {
  const at = draft.value.photos.indexOf(photo);
  change({ kind: 'remove-photo', photoId: photo.id });
  // The picture stays in the store until the look is kept or thrown away, so that this can be taken back.
  offerUndo({ says, undo: () => change({ kind: 'put-photo-back', photo, at }) });
}

/** What was asked for each photo last: asked again only when its taps or role changed. */
const asked = new Map<string, DraftPhoto>();

async function readPhoto(photo: DraftPhoto): Promise<void> {
  const { id, role, taps, file } = photo;
  const read = await readStoredPhoto(id, role, taps, { file, withNetwork: true });
  if (read === 'superseded') return;
  if ('failed' in read) {
    const { failed } = read;
    // Crashed or too slow: not asked again by itself.
    if (failed === 'failed') asked.delete(id);
    return change({ kind: 'photo-failed', photoId: id, taps, failed });
  }
  const { reading, layers, network } = read;
  showOverlay(id, layers);
  change({ kind: 'photo-read', photoId: id, taps, reading, ...(network ? { network } : {}) });
}

function showOverlay(id: string, overlay: LayerMap | undefined): void {
  const next = new Map(overlays.value);
  if (overlay) next.set(id, overlay);
  else next.delete(id);
  overlays.value = next;
}

/** The hatching is not kept: after a reload the photo is read once more to show it. */
export function wantOverlay(photo: DraftPhoto): void {
  if (!photo.reading?.leaf.found || overlays.value.has(photo.id) || asked.has(photo.id)) return;
  asked.set(photo.id, photo);
  void readPhoto(photo);
}

/** Another look is opened. */
export function forgetPhotos(): void {
  overlays.value = new Map();
  asked.clear();
}

/** Reads each photo of the look in hand that has not been read as it stands. Called once, when the app starts. */
export function followPhotos(): void {
  effect(() => {
    if (!draftOpened.value) return;
    for (const photo of draft.value.photos) {
      if (!isBusy(photo)) continue;
      const before = asked.get(photo.id);
      if (before && before.taps === photo.taps && before.role === photo.role) continue;
      asked.set(photo.id, photo);
      void readPhoto(photo);
    }
  });
}
