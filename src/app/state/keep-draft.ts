import { recordLook } from './keep-look.ts';
import { askToPersist, cases, keptChanged, nowStamp, store, tryStore } from './kept.ts';
import { draft, ranking } from './look-session.ts';
import { dropPhotos, keepPicturesAgain } from './pictures.ts';

/** Keeps the look in progress in its case; the caller then leaves it. Gives the id of the case, or `undefined` when the store refused. */
export async function keepLook(): Promise<string | undefined> {
  const body = draft.value;
  const found = cases.value?.find(({ id }) => id === body.caseId);
  const { kept, look, summary } = recordLook(
    body,
    ranking.value.result,
    nowStamp(),
    { caseId: body.caseId ?? crypto.randomUUID(), lookId: crypto.randomUUID() },
    found,
  );
  // Pictures first: a case must never name a picture that was not stored.
  if (!(await keepPicturesAgain(body.photos.map(({ id }) => id)))) return undefined;
  const saved = await tryStore(() => store.saveLook(kept, look, summary, body.id));
  if (!saved) return undefined;
  await Promise.all([keptChanged(), askToPersist(), dropPhotos(body.removed)]);
  return saved.id;
}
