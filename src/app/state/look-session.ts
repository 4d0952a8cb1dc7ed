/**
 * The look in progress: its draft, the autosave, and what the two workers make of it. One look is open at a time; it is
 * read from the store when its address is opened.
 */
import { batch, computed, effect, signal } from '@preact/signals';
import { type DraftRecord, RECORDS_SCHEMA } from '../../garden/records.ts';
import type { PhotoRole } from '../../photo/types.ts';
import type { PlantOfRecords } from '../../signs/settings-from-records.ts';
import type { Answers } from '../../signs/types.ts';
import type { TriageInput, TriageResult } from '../../triage.ts';
import { dayOf } from '../words/dates.ts';
import type { LayerMap } from '../workers/lay-layers.ts';
import { afterPaint } from './after-paint.ts';
import { changeDraft, type DraftChange, MOST_PHOTOS, roomFor } from './change-draft.ts';
import { findShifts, type Shift } from './describe-effect.ts';
import { type Draft, type DraftPhoto, dateOfLook, emptyDraft, hasContent, isBusy } from './draft.ts';
import { earlierLooks, followEarlierLooks } from './earlier-looks.ts';
import { keptApart, keptChanged, nowStamp, store, storeTrouble, tryRead, tryStore } from './kept.ts';
import { lessons } from './learning.ts';
import { besideNormal, normalReadingsFor } from './normal-leaves.ts';
import { reportsHere } from './own-reports.ts';
import { keepPicture } from './pictures.ts';
import { readStoredPhoto } from './read-photo.ts';
import { fillFromRecords, readRecords } from './read-records.ts';
import { goTo, route } from './route.ts';
import { countWaiting, sharedPhotos, takesThemHome } from './shared-photos.ts';
import { offerUndo } from './undo-bar.ts';
import { rankingBridge, restarted } from './workers.ts';
import { zone } from './zone.ts';

export const draft = signal<Draft>(emptyDraft(crypto.randomUUID(), dayOf(new Date())));
export const draftOpened = signal(false);

export interface RankingState {
  /** The last ranking that arrived; it stays while a newer one is made. */
  readonly result?: TriageResult;
  /** What had been said when it was weighed. */
  readonly answers?: Answers;
  /** Ids that the answer before it was about. */
  readonly about?: readonly string[];
  readonly pending: boolean;
  readonly failed: boolean;
}
export const ranking = signal<RankingState>({ pending: true, failed: false });
/** What the last answer moved, once the new ranking has come. */
export const lastEffect = signal<
  { readonly about: readonly string[]; readonly shifts: readonly Shift[] } | undefined
>(undefined);
/** What was measured where, by photo id; shown, not kept. */
export const overlays = signal<ReadonlyMap<string, LayerMap>>(new Map());

const ANSWERS: readonly DraftChange['kind'][] = [
  'choose-crop',
  'answer-signs',
  'answer-setting',
  'cannot-say',
  'overrule',
  'overrule-record',
  'stand-in',
  'undo',
];

/** True from an answer until its ranking has come: the next question is not known before. */
export const weighingAnswer = signal(false);
let beforeAnswer: { about: readonly string[]; result: TriageResult | undefined } | undefined;

/** The one way to change the look in progress. */
export function change(changed: DraftChange): void {
  const next = changeDraft(draft.value, changed);
  if (next === draft.value) return;
  batch(() => {
    if (ANSWERS.includes(changed.kind)) {
      lastEffect.value = undefined;
      const about = changed.kind === 'undo' ? [] : (next.steps.at(-1)?.about ?? []);
      beforeAnswer = { about, result: ranking.value.result };
      weighingAnswer.value = true;
    }
    draft.value = next;
  });
  void autosave();
}

/* Autosave: one write at a time, always of the newest state. */
let unsaved = false;
let saving: Promise<void> | undefined;
/** The look that is being kept as a case: stored once more as unfinished it would be a second copy. */
let beingKept: string | undefined;

function autosave(): Promise<void> {
  unsaved = true;
  saving ??= saveNewest().finally(() => {
    saving = undefined;
    // Changed between its last look at what is unsaved and now.
    if (unsaved) void autosave();
  });
  return saving;
}

async function saveNewest(): Promise<void> {
  while (unsaved) {
    unsaved = false;
    const body = draft.value;
    if (!hasContent(body) || body.id === beingKept) continue;
    await tryStore(() =>
      store.saveDraft({ kind: 'draft', id: body.id, schema: RECORDS_SCHEMA, changedAt: nowStamp(), body }),
    );
    if (storeTrouble.value === 'conflict' && draft.value.id === body.id) keepApart();
  }
}

/**
 * Runs what makes a case of the look in progress, once what is being stored of it is through; until it is left nothing more of it is
 * stored as unfinished. Where it gives nothing the look goes on as it was.
 */
export async function whileKept<Kept>(keep: () => Promise<Kept | undefined>): Promise<Kept | undefined> {
  await saving;
  const { id } = draft.value;
  beingKept = id;
  const kept = await keep().catch((reason: unknown) => {
    beingKept = undefined;
    throw reason;
  });
  if (kept === undefined) {
    beingKept = undefined;
    void autosave();
  }
  return kept;
}

/** Another tab has gone on with the same look: what was entered here becomes a look of its own, so that neither is lost. */
function keepApart(): void {
  const id = crypto.randomUUID();
  draft.value = { ...draft.value, id };
  keptApart.value = true;
  unsaved = true;
  goTo({ place: 'look', draft: id }, 'replace');
}

/** Tries again what the store refused. */
export const saveAgain = (): Promise<void> => autosave();

/* Opening and leaving looks. */

function open(next: Draft): void {
  batch(() => {
    draft.value = next;
    draftOpened.value = true;
    overlays.value = new Map();
    asked.clear();
    lastEffect.value = undefined;
    beforeAnswer = undefined;
    weighingAnswer.value = false;
    ranking.value = { pending: true, failed: false };
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

/* Photos. */

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

/* Records. */

/** As text, so that typing a note does not read the records again. */
const plantOfLook = computed(() => {
  const { where, answers } = draft.value;
  const plant: PlantOfRecords = {
    bedId: where?.bedId,
    plantingId: where?.plantingId,
    date: dateOfLook(draft.value).day,
    zone: zone.value,
    crop: answers.crop,
    place: answers.setting.place,
  };
  return JSON.stringify(plant);
});

/** What the garden's records say of the plant in hand. */
export const recordsOfLook = computed(() =>
  draftOpened.value ? readRecords(JSON.parse(plantOfLook.value) as PlantOfRecords) : undefined,
);

const filled = computed(() => fillFromRecords(draft.value.answers, recordsOfLook.value));
/** What was said, and what the records supply, each marked. */
export const answersInHand = computed(() => filled.value.answers);

/* Ranking. */

/** Only what bears on the ranking, so that typing a bed's name does not weigh everything again. */
const triageInput = computed<TriageInput>(() => {
  const { photos, cannotSay } = draft.value;
  const { answers, covered, ...soil } = filled.value;
  // What a photo shows must be said, and it must have been read as that, before anything is concluded from it.
  const said = photos.filter(({ reading, role, roleOpen }) => !roleOpen && reading?.role === role);
  return {
    photos: [...said.flatMap(({ reading }) => reading ?? []), ...normalReadingsFor(answers)],
    network: said.flatMap(({ network, role }) => reportsHere(network, role)),
    answers: { ...answers, date: dateOfLook(draft.value).day },
    today: dayOf(new Date()),
    zone: zone.value,
    cannotSay: [...cannotSay, ...covered],
    ...soil,
    ...(earlierLooks.value.length > 0 ? { earlier: earlierLooks.value.map(besideNormal) } : {}),
    ...(lessons.value ? { garden: lessons.value.counts } : {}),
  };
});

let lastInput = '';
/** Counts what was sent to be weighed: only the newest is shown. */
let sent = 0;

async function rank(input: TriageInput): Promise<void> {
  ranking.value = { ...ranking.value, pending: true };
  const { answers } = draft.value;
  sent += 1;
  const own = sent;
  // An untouched look has its first question already, and comes before its weighing.
  if (!hasContent(draft.value)) {
    await afterPaint();
    if (own !== sent) return;
  }
  const [outcome] = await Promise.all([rankingBridge.ask({ kind: 'rank', input }, 'rank'), afterPaint()]);
  if (outcome.state === 'superseded' || own !== sent) return;
  if (outcome.state === 'failed' || !outcome.reply.ok || outcome.reply.kind !== 'rank') {
    batch(() => {
      ranking.value = { ...ranking.value, pending: false, failed: true };
      weighingAnswer.value = false;
    });
    return;
  }
  const { result } = outcome.reply;
  batch(() => {
    if (restarted.value === 'ranking') restarted.value = undefined;
    const about = beforeAnswer?.about ?? [];
    if (beforeAnswer) {
      const before = beforeAnswer.result;
      // Said before anything had been weighed: there is nothing it could have moved.
      lastEffect.value = before && { about, shifts: findShifts(before.causes, result.causes) };
      beforeAnswer = undefined;
    }
    ranking.value = { result, answers, about, pending: false, failed: false };
    weighingAnswer.value = false;
  });
}

export function rankAgain(): void {
  void rank(triageInput.value);
}

/** Ties the workers to the draft. Called once, when the app starts. */
export function followLook(): void {
  // What weighs may not have been fetched before the signal went.
  addEventListener('online', () => {
    if (draftOpened.peek() && ranking.peek().failed) rankAgain();
  });
  followEarlierLooks(computed(() => (draftOpened.value ? draft.value.caseId : undefined)));
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
  effect(() => {
    if (!draftOpened.value || recordsOfLook.value === 'reading') return;
    const input = triageInput.value;
    const written = `${draft.value.id} ${JSON.stringify(input)}`;
    if (written === lastInput) {
      // An answer that changes nothing has nothing to wait for, unless the one before is still being weighed.
      if (!ranking.peek().pending) weighingAnswer.value = false;
      return;
    }
    lastInput = written;
    void rank(input);
  });
}
