/** Pictures by id: from memory while they are fresh, else from the store; and their addresses for `<img>`. */
import { useEffect, useState } from 'preact/hooks';
import type { Draft } from './draft.ts';
import { store, tryRead, tryStore } from './kept.ts';

const fresh = new Map<string, Blob>();
/** Of the fresh ones, those that the store took. */
const stored = new Set<string>();

/** Under this id lies the small copy of a picture. */
export const thumbnailOf = (photoId: string): string => `${photoId}:small`;

/** Keeps a picture; if the store refuses it, it still works until the page is closed. */
export async function keepPicture(id: string, picture: Blob): Promise<void> {
  fresh.set(id, picture);
  await storePicture(id, picture);
}

async function storePicture(id: string, picture: Blob): Promise<boolean> {
  const done = await tryStore(async () => {
    await store.savePicture(id, picture);
    return true;
  });
  if (done) stored.add(id);
  return done ?? false;
}

/** Stores again what the store refused before. True when everything is stored. */
export async function keepPicturesAgain(ids: readonly string[]): Promise<boolean> {
  for (const id of ids) {
    const picture = fresh.get(id);
    if (picture && !stored.has(id) && !(await storePicture(id, picture))) return false;
  }
  return true;
}

/**
 * Keeps a picture that a record is to name. Its id; nothing where the store did not take it: a record must never name a picture
 * that was not stored. Why not, the bar says.
 */
export async function keepNewPicture(picture: Blob): Promise<string | undefined> {
  const id = crypto.randomUUID();
  await keepPicture(id, picture);
  return (await keepPicturesAgain([id])) ? id : undefined;
}

export async function findPicture(id: string): Promise<Blob | undefined> {
  const known = fresh.get(id);
  if (known) return known;
  try {
    return await store.readPicture(id);
  } catch {
    return undefined;
  }
}

export async function dropPhotos(photoIds: readonly string[]): Promise<void> {
  const ids = photoIds.flatMap((id) => [id, thumbnailOf(id)]);
  for (const id of ids) fresh.delete(id);
  await tryStore(() => store.dropPictures(ids));
}

const DAY_MS = 86_400_000;

/** Clears away looks that were thrown away more than a day ago, with their pictures. */
export async function dropOldDrafts(): Promise<void> {
  const before = new Date(Date.now() - DAY_MS).toISOString();
  const all = (await tryRead(() => store.listDrafts())) ?? [];
  for (const { id, deletedAt, body } of all) {
    if (!deletedAt || deletedAt > before) continue;
    const { photos = [], removed = [] } = body as Partial<Draft>;
    // The draft first: the store keeps pictures that a draft still names.
    await tryStore(() => store.dropDraft(id));
    await dropPhotos([...photos.map((photo) => photo.id), ...removed]);
  }
}

/** Address of a picture for `<img>`: `undefined` while it is looked for, `null` when there is none. */
export function usePicture(...ids: readonly string[]): string | null | undefined {
  const [address, setAddress] = useState<string | null | undefined>(undefined);
  const wanted = ids.join(' ');
  useEffect(() => {
    let made: string | undefined;
    let left = false;
    void (async () => {
      for (const id of wanted.split(' ')) {
        const picture = id ? await findPicture(id) : undefined;
        if (left) return;
        if (!picture) continue;
        made = URL.createObjectURL(picture);
        setAddress(made);
        return;
      }
      setAddress(null);
    })();
    return () => {
      left = true;
      if (made) URL.revokeObjectURL(made);
      setAddress(undefined);
    };
  }, [wanted]);
  return address;
}
