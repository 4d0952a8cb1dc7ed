import { signal } from '@preact/signals';
import {
  type CaseRecord,
  type DraftRecord,
  LESSONS_ID,
  type LookRecord,
  RECORDS_SCHEMA,
} from '../../garden/records.ts';
import { type SaidOutcome, settleCase, shownAtLooks } from '../../garden/settle-case.ts';
import { openGardenStore } from '../../garden/store/garden-store.ts';
import { StoreError, type StoreTrouble } from '../../garden/store/store-trouble.ts';
import type { LeafReading } from '../../leaf/types.ts';
import type { Answers } from '../../signs/types.ts';
import type { TriageResult } from '../../triage.ts';
import { gardenOnShow, inDemo } from './demo.ts';
import type { Draft } from './draft.ts';
import { chancesOf } from './keep-look.ts';
import { offerUndo } from './undo-bar.ts';

/** A ranking as it stood: without the readings (the look has them) and the questions that were still open. */
export type KeptRanking = Omit<TriageResult, 'photos' | 'openQuestions'> & {
  /** The day it was weighed, `YYYY-MM-DD`: later than the look's own where the photo was an old one. Its distances count from there. */
  readonly weighedOn?: string;
};
export type KeptLook = LookRecord<LeafReading, Answers, KeptRanking>;

export const store = openGardenStore(undefined, gardenOnShow);

/** Set while the browser's store does not take what it is given. Shown on every screen; nothing typed is lost. */
export const storeTrouble = signal<StoreTrouble | undefined>(undefined);
/** True once a look was changed in two tabs and the one here was kept as a look of its own. */
export const keptApart = signal<true | undefined>(undefined);
/** `undefined` until the store has been read. */
export const cases = signal<readonly CaseRecord[] | undefined>(undefined);
/** Outcomes said at or before this moment teach nothing: learning was reset then. */
export const forgetUntil = signal<string | undefined>(undefined);
export const drafts = signal<readonly DraftRecord<Draft>[]>([]);

/** What was to be stored and was not is told until something is stored; a reading that goes well takes nothing of it back. */
let isUnstored = false;

async function tried<T>(work: () => Promise<T>, stores: boolean): Promise<T | undefined> {
  try {
    const done = await work();
    if (stores || !isUnstored) {
      storeTrouble.value = undefined;
      isUnstored = false;
    }
    return done;
  } catch (cause) {
    storeTrouble.value = cause instanceof StoreError ? cause.code : 'refused';
    isUnstored ||= stores;
    return undefined;
  }
}

/** Stores something and shows its trouble instead of throwing. `undefined` when it failed. */
export const tryStore = <T>(work: () => Promise<T>): Promise<T | undefined> => tried(work, true);
/** The same for what only reads. */
export const tryRead = <T>(work: () => Promise<T>): Promise<T | undefined> => tried(work, false);

export async function refreshKept(): Promise<void> {
  const found = await tryRead(async () => ({
    cases: await store.listCases(),
    drafts: await store.listDrafts(),
    lessons: await store.readLessons(),
  }));
  if (found) forgetUntil.value = found.lessons?.forgetUntil;
  cases.value = found?.cases ?? cases.value ?? [];
  showDrafts(found?.drafts);
}

function showDrafts(found: readonly DraftRecord<unknown>[] | undefined): void {
  const open = found?.filter(({ deletedAt }) => !deletedAt);
  drafts.value = (open as DraftRecord<Draft>[] | undefined) ?? drafts.value;
}

/** Reads the looks that were begun again: the page that lists them is opened. */
export const refreshDrafts = async (): Promise<void> => showDrafts(await tryRead(() => store.listDrafts()));

/** Reads the lists again; other tabs hear of every write from the store. */
export const keptChanged = (): Promise<void> => refreshKept();

export function followKept(): void {
  store.watch((keys) => {
    // Drafts are written with every letter; the lists name them, but need not follow each.
    if (keys.some((key) => !key.startsWith('draft:'))) void refreshKept();
  });
  void refreshKept();
  if (!inDemo) void noticeClearing();
}

const DEVICE_KEY = 'bedside-device';
/** Set where the browser has cleared the garden that was kept here, until the grower has read it. */
export const wasCleared = signal<true | undefined>(undefined);

/** Another device's word in the store than the one that was here last: the browser has thrown the old store away. */
async function noticeClearing(): Promise<void> {
  try {
    const device = await store.device();
    const before = localStorage.getItem(DEVICE_KEY);
    if (before !== null && before !== device) wasCleared.value = true;
    localStorage.setItem(DEVICE_KEY, device);
  } catch {
    // A browser that keeps nothing says so with the first thing that is to be kept.
  }
}

export const nowStamp = (): string => new Date().toISOString();

async function markCase(id: string, mark: (kept: CaseRecord) => CaseRecord): Promise<void> {
  await tryStore(() => store.changeCase(id, (kept) => ({ ...mark(kept), changedAt: nowStamp() })));
  await keptChanged();
}

/** Deletes a case in a way that can be taken back, from the bar or from the Book. */
export async function deleteCase(kept: CaseRecord, says: string): Promise<void> {
  await markCase(kept.id, (found) => ({ ...found, deletedAt: nowStamp() }));
  offerUndo({ says, undo: () => bringBackCase(kept.id) });
}

export const bringBackCase = (id: string): Promise<void> =>
  markCase(id, ({ deletedAt: _deletedAt, ...found }) => found);

export const closeCase = (id: string, day: string): Promise<void> =>
  markCase(id, (found) => ({ ...found, closedOn: day }));

export const reopenCase = (id: string): Promise<void> =>
  markCase(id, ({ closedOn: _closedOn, ...found }) => found);

/** Closes a case with how it ended; can be taken back, and said again differently. True when it was stored. */
export async function endCase(
  kept: CaseRecord,
  said: SaidOutcome,
  today: string,
  says: string,
): Promise<boolean> {
  const done = await tryStore(async () => {
    const shown = shownAtLooks(await store.listLooks(kept.id), chancesOf);
    return store.changeCase(kept.id, (found) => settleCase(found, said, shown, nowStamp(), today));
  });
  await keptChanged();
  if (!done) return false;
  const { closedOn, outcome } = kept;
  offerUndo({
    says,
    undo: () =>
      markCase(kept.id, ({ closedOn: _closedOn, outcome: _outcome, ...found }) => ({
        ...found,
        ...(closedOn ? { closedOn } : {}),
        ...(outcome ? { outcome } : {}),
      })),
  });
  return true;
}

/** From now on nothing said before `moment` teaches; `undefined` lets everything count again. */
export async function forgetLessons(moment: string | undefined): Promise<void> {
  await tryStore(() =>
    store.saveLessons({
      kind: 'lessons',
      id: LESSONS_ID,
      schema: RECORDS_SCHEMA,
      changedAt: nowStamp(),
      ...(moment ? { forgetUntil: moment } : {}),
    }),
  );
  await keptChanged();
}

export async function eraseCase(id: string): Promise<void> {
  await tryStore(() => store.eraseCase(id, nowStamp()));
  await keptChanged();
}

export interface StorageSpace {
  readonly persisted: boolean | undefined;
  readonly usedBytes: number | undefined;
  readonly roomBytes: number | undefined;
}

/** What the browser says about its store; parts it does not tell stay undefined. */
export async function readStorageSpace(): Promise<StorageSpace> {
  try {
    const { usage, quota } = await navigator.storage.estimate();
    return { persisted: await navigator.storage.persisted(), usedBytes: usage, roomBytes: quota };
  } catch {
    return { persisted: undefined, usedBytes: undefined, roomBytes: undefined };
  }
}

/** Asks the browser, once, not to clear the store by itself: when the first case is kept, when it makes sense. */
export const askToPersist = async (): Promise<void> => void (await tryStore(() => store.askToLast()));
