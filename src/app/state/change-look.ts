/** The one way to change the look in hand, and its autosave. */
import { batch } from '@preact/signals';
import { RECORDS_SCHEMA } from '../../garden/records.ts';
import { changeDraft, type DraftChange } from './change-draft.ts';
import { hasContent } from './draft.ts';
import { keptApart, nowStamp, store, storeTrouble, tryStore } from './kept.ts';
import { draft } from './look-in-hand.ts';
import { goTo } from './route.ts';
import { answerGiven } from './weigh-look.ts';

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

export function change(changed: DraftChange): void {
  const next = changeDraft(draft.value, changed);
  if (next === draft.value) return;
  batch(() => {
    if (ANSWERS.includes(changed.kind)) {
      answerGiven(changed.kind === 'undo' ? [] : (next.steps.at(-1)?.about ?? []));
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

/** Stores the look as it stands; called again it tries again what the store refused. */
export function autosave(): Promise<void> {
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
