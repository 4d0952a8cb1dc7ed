/** Opening and leaving looks: which one is in hand. */
import { batch, computed } from '@preact/signals';
import { type DraftRecord, RECORDS_SCHEMA } from '../../garden/records.ts';
import { dayOf } from '../words/dates.ts';
import { MOST_PHOTOS } from './change-draft.ts';
import { autosave } from './change-look.ts';
import { type Draft, emptyDraft, hasContent } from './draft.ts';
import { followEarlierLooks } from './earlier-looks.ts';
import { keptChanged, nowStamp, store, storeTrouble, tryRead, tryStore } from './kept.ts';
import { draft, draftOpened } from './look-in-hand.ts';
import { addPhotos, followPhotos, forgetPhotos } from './look-photos.ts';
import { goTo, route } from './route.ts';
import { countWaiting, sharedPhotos, takesThemHome } from './shared-photos.ts';
import { offerUndo } from './undo-bar.ts';
import { followWeighing, forgetWeighing } from './weigh-look.ts';

function open(next: Draft): void {
  batch(() => {
    draft.value = next;
    draftOpened.value = true;
    forgetPhotos();
    forgetWeighing();
  });
}

/** Opens a fresh look, unless the one on the desk is still empty. Gives its id. */
function openFresh(): string {
  if (!draftOpened.value || hasContent(draft.value)) open(emptyDraft(crypto.randomUUID(), dayOf(new Date())));
  return draft.value.id;
}

/** Where the app starts with a fresh look, it is there before anything is drawn: else an empty page would be drawn first. */
export function openAtStart(): void {
  const at = route.value;
  if (at.place === 'look' && at.draft === 'new') goTo({ place: 'look', draft: openFresh() }, 'replace');
}

/** Opens a look by id, the newest unfinished one, or a fresh one. Gives its id. */
export async function openDraft(id: string | undefined): Promise<string> {
  if (draftOpened.value && (id === undefined || id === draft.value.id)) return draft.value.id;
  if (id === 'shared') return takeShared();
  if (id === 'new') return openFresh();
  const found = await tryRead(async () => {
    if (id !== undefined) return store.readDraft(id);
    const all = (await store.listDrafts()).filter(({ deletedAt }) => !deletedAt);
    const newest = all.sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1))[0];
    return newest && store.readDraft(newest.id);
  });
  if (found && !found.deletedAt) open(wholeDraft(found.body as Partial<Draft>, found.id));
  else open(emptyDraft(crypto.randomUUID(), dayOf(new Date())));
  return draft.value.id;
}

/** A fresh look with the photos that another app handed over; those that find no place wait for the next look. */
async function takeShared(): Promise<string> {
  if (takesThemHome()) return draft.value.id;
  openFresh();
  const photos = (await sharedPhotos()).slice(0, MOST_PHOTOS);
  await addPhotos(photos.map(({ file }) => file));
  // What the store did not take stays where it is.
  if (storeTrouble.value === undefined) for (const { taken } of photos) await taken();
  await countWaiting();
  return draft.value.id;
}

/** A stored draft with every part in place. */
const wholeDraft = (body: Partial<Draft>, id: string): Draft => ({
  ...emptyDraft(id, dayOf(new Date())),
  ...body,
  id,
});

export async function startLook(next: Draft): Promise<void> {
  open(next);
  await autosave();
}

/** Puts a fresh, empty look in place of the one that was just kept or thrown away. */
export function leaveLook(): void {
  open(emptyDraft(crypto.randomUUID(), dayOf(new Date())));
}

/** Throws away a look that was begun and not kept; can be taken back for a day. */
export async function discardDraft({ id, body, revision }: DraftRecord<Draft>, says: string): Promise<void> {
  // What lies on the desk may be newer than the list that was tapped.
  const newest = id === draft.value.id ? draft.value : body;
  const save = (more: { readonly deletedAt?: string }): Promise<unknown> =>
    tryStore(() =>
      store.saveDraft({
        kind: 'draft',
        id,
        schema: RECORDS_SCHEMA,
        changedAt: nowStamp(),
        ...more,
        ...(revision === undefined ? {} : { revision }),
        body: newest,
      }),
    );
  await save({ deletedAt: nowStamp() });
  // The look on the desk would be stored again with its next change.
  if (id === draft.value.id) leaveLook();
  await keptChanged();
  offerUndo({
    says,
    undo: async () => {
      await save({});
      await keptChanged();
    },
  });
}

export async function discardLook(says: string): Promise<void> {
  const thrown = draft.value;
  const now = nowStamp();
  leaveLook();
  goTo({ place: 'look', draft: draft.value.id }, 'replace');
  // Marked, not dropped: `dropOldDrafts` clears it away with its pictures a day later.
  await tryStore(() =>
    store.saveDraft({
      kind: 'draft',
      id: thrown.id,
      schema: RECORDS_SCHEMA,
      changedAt: now,
      deletedAt: now,
      body: thrown,
    }),
  );
  await keptChanged();
  offerUndo({
    says,
    undo: async () => {
      // Look and address change in one go: in between, the page would open the look its address still names.
      const stored = startLook(thrown);
      goTo({ place: 'look', draft: thrown.id });
      await stored;
      await keptChanged();
    },
  });
}

/** Ties the workers to the look in hand. Called once, when the app starts. */
export function followLook(): void {
  followEarlierLooks(computed(() => (draftOpened.value ? draft.value.caseId : undefined)));
  followPhotos();
  followWeighing();
}
