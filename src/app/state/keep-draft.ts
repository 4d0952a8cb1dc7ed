import { whileKept } from './change-look.ts';
import { isBusy } from './draft.ts';
import { recordLook } from './keep-look.ts';
import { askToPersist, cases, keptChanged, nowStamp, store, tryStore } from './kept.ts';
import { draft } from './look-in-hand.ts';
import { dropPhotos, keepPicturesAgain } from './pictures.ts';
import { answersInHand, ranking } from './weigh-look.ts';

/** Longest wait for a photo that is being read again, ms; then the look is kept with what there is. */
const LONGEST_WAIT = 20_000;

/** A photo whose role was said a moment ago is read once more; a look kept before that would hold it in its old role. */
function photosRead(): Promise<void> {
  return new Promise((done) => {
    let stop = (): void => {};
    const finish = (): void => {
      clearTimeout(over);
      stop();
      done();
    };
    const over = setTimeout(finish, LONGEST_WAIT);
    stop = draft.subscribe((now) => {
      if (!now.photos.some(isBusy)) queueMicrotask(finish);
    });
  });
}

/** Keeps the look in progress in its case; the caller then leaves it. Gives the id of the case, or `undefined` when the store refused. */
export async function keepLook(): Promise<string | undefined> {
  await photosRead();
  return whileKept(keepNow);
}

async function keepNow(): Promise<string | undefined> {
  const body = draft.value;
  const found = cases.value?.find(({ id }) => id === body.caseId);
  const { kept, look, summary } = recordLook(
    body,
    ranking.value.result,
    nowStamp(),
    { caseId: body.caseId ?? crypto.randomUUID(), lookId: crypto.randomUUID() },
    found,
    answersInHand.value,
  );
  // Pictures first: a case must never name a picture that was not stored.
  if (!(await keepPicturesAgain(body.photos.map(({ id }) => id)))) return undefined;
  const saved = await tryStore(() => store.saveLook(kept, look, summary, body.id));
  if (!saved) return undefined;
  await Promise.all([keptChanged(), askToPersist(), dropPhotos(body.removed)]);
  return saved.id;
}
