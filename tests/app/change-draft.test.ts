import { describe, expect, it } from 'vitest';
import { changeDraft, type DraftChange, isAnswered, MOST_PHOTOS } from '../../src/app/state/change-draft.ts';
import { type Draft, dateOfLook, emptyDraft, hasContent } from '../../src/app/state/draft.ts';
import type { LeafReading } from '../../src/leaf/types.ts';
import type { PhotoRole } from '../../src/photo/types.ts';

const fresh = emptyDraft('draft', '2026-06-18');
const changed = (draft: Draft, ...changes: DraftChange[]): Draft => changes.reduce(changeDraft, draft);
const photos = (...ids: string[]): DraftChange => ({ kind: 'add-photos', photos: ids.map((id) => ({ id })) });
const reading = (more: Partial<LeafReading> = {}): LeafReading => ({
  role: 'old',
  trouble: [],
  leaf: { found: true },
  measures: {},
  ...more,
});
const rolesOf = (draft: Draft): string => draft.photos.map(({ id, role }) => `${id}:${role}`).join(' ');

describe('answers of a look in progress', () => {
  it('keeps seen and absent, and leaves what was not looked at out', () => {
    const draft = changed(fresh, {
      kind: 'answer-signs',
      signs: { aphids: 'seen', slime: 'absent', ants: 'not-looked' },
    });
    expect(draft.answers.signs).toEqual({ aphids: 'seen', slime: 'absent' });
  });

  it('can’t say is not absent, and is not asked again until it is answered after all', () => {
    const unsure = changed(fresh, { kind: 'answer-signs', signs: { 'mottled@new': 'cannot-say' } });
    expect(unsure.answers.signs).toEqual({});
    expect(isAnswered(unsure, 'mottled@new')).toBe(true);
    const sure = changed(unsure, { kind: 'answer-signs', signs: { 'mottled@new': 'seen' } });
    expect(sure.cannotSay).toEqual([]);
    expect(sure.answers.signs).toEqual({ 'mottled@new': 'seen' });
  });

  it('takes "nothing went on the bed" back when wood is found, and gives it again on undo', () => {
    const nothing = changed(fresh, { kind: 'answer-setting', setting: 'compost-kinds', value: ['none'] });
    const wood = changed(nothing, { kind: 'answer-setting', setting: 'wood-in-root-zone', value: true });
    expect(wood.answers.setting).toEqual({ 'wood-in-root-zone': true });
    expect(changed(wood, { kind: 'undo' }).answers.setting).toEqual({ 'compost-kinds': ['none'] });
  });

  it('notes a check that settled several signs in one step', () => {
    const draft = changed(fresh, {
      kind: 'answer-signs',
      signs: { slime: 'seen', 'bird-droppings': 'absent' },
      check: 'look-for-tracks',
    });
    expect(isAnswered(draft, 'look-for-tracks')).toBe(true);
    expect(changed(draft, { kind: 'undo' })).toEqual(fresh);
  });

  it('keeps what was pressed of the first questions until they are through, and beyond, so that it can be changed', () => {
    const opening = { seen: ['yellowing@some'], lying: {} } as const;
    const begun = changed(fresh, { kind: 'note-opening', opening });
    expect(begun.opening).toEqual(opening);
    expect(begun.answers).toEqual(fresh.answers);
    expect(hasContent(begun)).toBe(true);
    expect(hasContent(changed(begun, { kind: 'note-opening', opening: { seen: [] } }))).toBe(false);
    const through = changed(begun, { kind: 'answer-signs', signs: { 'yellowing@old': 'seen' } });
    expect(changed(through, { kind: 'undo' })).toEqual(begun);
  });

  it('takes a setting back when it is left open again', () => {
    const wet = changed(fresh, { kind: 'answer-setting', setting: 'soil-water', value: 'waterlogged' });
    expect(wet.answers.setting).toEqual({ 'soil-water': 'waterlogged' });
    const open = changed(wet, { kind: 'answer-setting', setting: 'soil-water', value: undefined });
    expect(open.answers.setting).toEqual({});
  });

  it('undoes step by step, back to the beginning, and no further', () => {
    const steps: DraftChange[] = [
      { kind: 'choose-crop', crop: 'tomato' },
      { kind: 'answer-signs', signs: { aphids: 'seen' } },
      { kind: 'cannot-say', id: 'soil-ph' },
      { kind: 'answer-setting', setting: 'netted', value: false },
      { kind: 'overrule', sign: 'mottled@new', overruled: true },
    ];
    const states: Draft[] = [fresh];
    for (const step of steps) states.push(changeDraft(states.at(-1) ?? fresh, step));
    let draft = states.at(-1) ?? fresh;
    for (const before of states.slice(0, -1).reverse()) {
      draft = changed(draft, { kind: 'undo' });
      expect(draft).toEqual(before);
    }
    expect(changed(draft, { kind: 'undo' })).toBe(draft);
  });

  it('undo does not take the typed variety along', () => {
    const draft = changed(
      fresh,
      { kind: 'choose-crop', crop: 'tomato' },
      { kind: 'name-variety', variety: 'small yellow, plum-shaped' },
      { kind: 'undo' },
    );
    expect(draft.answers).toEqual({ setting: {}, signs: {}, variety: 'small yellow, plum-shaped' });
  });

  it('overrules the camera once a sign, and lets its word stand again', () => {
    const overruled: DraftChange = { kind: 'overrule', sign: 'mottled@new', overruled: true };
    const twice = changed(fresh, overruled, overruled);
    expect(twice.answers.overruled).toEqual(['mottled@new']);
    expect(changed(twice, { ...overruled, overruled: false }).answers).not.toHaveProperty('overruled');
  });
});

describe('what the network saw of a photo', () => {
  const network = { network: 'n', reports: [], logits: [1], features: [2], strangeness: 1 };
  const read = (draft: Draft, role: PhotoRole, more: object = {}): DraftChange => ({
    kind: 'photo-read',
    photoId: 'a',
    taps: draft.photos[0]!.taps,
    reading: reading({ role }),
    ...more,
  });
  const added = changed(fresh, photos('a'));
  const seen = changed(added, read(added, 'old', { network }));

  it('stays with it when it is only read again to be shown', () => {
    expect(seen.photos[0]!.network).toEqual(network);
    expect(changed(seen, read(seen, 'old')).photos[0]!.network).toEqual(network);
  });

  it('goes when the photo is read with other taps or in another role, without the network', () => {
    const tapped = changed(seen, { kind: 'tap', photoId: 'a', mode: 'leaf', spot: { x: 0.5, y: 0.5 } });
    expect(changed(tapped, read(tapped, 'old')).photos[0]).not.toHaveProperty('network');
    const other = changed(seen, { kind: 'set-role', photoId: 'a', role: 'new' });
    expect(changed(other, read(other, 'new')).photos[0]).not.toHaveProperty('network');
  });
});

describe('photos of a look in progress', () => {
  it('fills the free roles in order when several come at once, and leaves out what is beyond four', () => {
    const draft = changed(fresh, photos('a', 'b', 'c', 'd', 'e'));
    expect(rolesOf(draft)).toBe('a:old b:new c:whole d:normal');
    expect(draft.photos).toHaveLength(MOST_PHOTOS);
  });

  it('gives the wanted role where it is free', () => {
    const draft = changed(fresh, { kind: 'add-photos', photos: [{ id: 'a' }, { id: 'b' }], role: 'normal' });
    expect(rolesOf(draft)).toBe('a:normal b:old');
  });

  const openIn = (draft: Draft): string =>
    draft.photos.flatMap(({ id, roleOpen }) => (roleOpen ? [id] : [])).join('');

  it('takes no role for granted that nobody said', () => {
    const chosen = changed(fresh, photos('a', 'b'));
    expect(openIn(chosen)).toBe('ab');
    const forSlot = changed(fresh, { kind: 'add-photos', photos: [{ id: 'a' }, { id: 'b' }], role: 'new' });
    expect(openIn(forSlot)).toBe('b');
    // The wanted role was taken: what the photo shows is open again.
    const taken = changed(forSlot, { kind: 'add-photos', photos: [{ id: 'c' }], role: 'new' });
    expect(openIn(taken)).toBe('bc');
  });

  it('knows what a photo shows once it is said, and reads it again only where the guess was wrong', () => {
    const chosen = changed(fresh, photos('a', 'b'));
    const read = chosen.photos.reduce(
      (draft, { id, taps }) =>
        changeDraft(draft, { kind: 'photo-read', photoId: id, taps, reading: reading() }),
      chosen,
    );
    const right = changed(read, { kind: 'set-role', photoId: 'a', role: 'old' });
    expect(openIn(right)).toBe('b');
    expect(right.photos[0]).not.toHaveProperty('stale');
    const wrong = changed(right, { kind: 'set-role', photoId: 'b', role: 'whole' });
    expect(openIn(wrong)).toBe('');
    expect(wrong.photos[1]).toMatchObject({ role: 'whole', stale: true });
  });

  it('asks anew about a photo whose role another one turns out to have', () => {
    const said = changed(fresh, photos('a', 'b'), { kind: 'set-role', photoId: 'a', role: 'old' });
    const other = changed(said, { kind: 'set-role', photoId: 'b', role: 'old' });
    expect(rolesOf(other)).toBe('a:new b:old');
    expect(openIn(other)).toBe('a');
  });

  it('swaps roles instead of holding one twice, and reads both photos again', () => {
    const read = changed(
      fresh,
      photos('a', 'b'),
      ...['a', 'b'].map(
        (photoId): DraftChange => ({ kind: 'photo-read', photoId, taps: {}, reading: reading() }),
      ),
    );
    // Readings count only for the taps they were made with, compared by identity.
    expect(read.photos.some((photo) => photo.reading)).toBe(false);
    const kept = read.photos.reduce(
      (draft, { id, taps }) =>
        changeDraft(draft, { kind: 'photo-read', photoId: id, taps, reading: reading() }),
      read,
    );
    expect(kept.photos.every((photo) => photo.reading)).toBe(true);
    const swapped = changed(kept, { kind: 'set-role', photoId: 'a', role: 'new' });
    expect(rolesOf(swapped)).toBe('a:new b:old');
    // The last reading stands until the new one has come.
    expect(swapped.photos.every((photo) => photo.reading && photo.stale)).toBe(true);
  });

  it('drops a reading that comes after a newer tap', () => {
    const before = changed(fresh, photos('a'));
    const taps = before.photos[0]?.taps ?? {};
    const tapped = changed(before, { kind: 'tap', photoId: 'a', mode: 'leaf', spot: { x: 0.2, y: 0.3 } });
    const late = changed(tapped, { kind: 'photo-read', photoId: 'a', taps, reading: reading() });
    expect(late.photos[0]).not.toHaveProperty('reading');
  });

  it('a new place for the outline drops the corrections of the old one but keeps the white', () => {
    const spot = { x: 0.5, y: 0.5 };
    const tap = (mode: 'leaf' | 'add' | 'remove' | 'white'): DraftChange => ({
      kind: 'tap',
      photoId: 'a',
      mode,
      spot,
    });
    const corrected = changed(fresh, photos('a'), tap('leaf'), tap('add'), tap('remove'), tap('white'));
    expect(corrected.photos[0]?.taps).toEqual({ leaf: spot, add: [spot], remove: [spot], white: spot });
    expect(changed(corrected, tap('leaf')).photos[0]?.taps).toEqual({ leaf: spot, white: spot });
    const untap: DraftChange = { kind: 'untap', photoId: 'a' };
    expect(changed(corrected, untap).photos[0]?.taps).toEqual({});
  });

  it('puts a photo back in its place, in another role when its own is taken', () => {
    const both = changed(fresh, photos('a', 'b'));
    const [first] = both.photos;
    if (!first) throw new Error('expected a photo');
    const without = changed(both, { kind: 'remove-photo', photoId: 'a' });
    expect(without.removed).toEqual(['a']);
    expect(changed(without, { kind: 'put-photo-back', photo: first, at: 0 })).toEqual(both);
    const taken = changed(without, photos('c'), { kind: 'put-photo-back', photo: first, at: 0 });
    expect(rolesOf(taken)).toBe('a:whole b:new c:old');
    expect(taken.photos[0]?.roleOpen).toBe(true);
  });

  it('a failed photo keeps everything else that was entered', () => {
    const draft = changed(fresh, photos('a'), { kind: 'answer-signs', signs: { aphids: 'seen' } });
    const failed = changed(draft, {
      kind: 'photo-failed',
      photoId: 'a',
      taps: draft.photos[0]?.taps ?? {},
      failed: 'worker-crashed',
    });
    expect(failed.photos[0]?.failed).toBe('worker-crashed');
    expect(failed.answers).toEqual(draft.answers);
    expect(changed(failed, { kind: 'read-again', photoId: 'a' }).photos).toEqual(draft.photos);
  });
});

describe('a file that nothing can be read from', () => {
  /** The reading answers to the taps of the photo as it stands. */
  const read = (draft: Draft, photoId: string, ...trouble: LeafReading['trouble']): Draft => {
    const { taps } = draft.photos.find(({ id }) => id === photoId)!;
    const found = reading({ trouble, leaf: { found: false } });
    return changed(draft, { kind: 'photo-read', photoId, taps, reading: found });
  };

  it('takes no photo’s role and no photo’s place', () => {
    const words = read(changed(fresh, photos('words')), 'words', 'not-a-picture');
    const full = changed(words, photos('a', 'b', 'c', 'd', 'e'));
    expect(rolesOf(full)).toBe('words:old a:old b:new c:whole d:normal');
    // A photo that is only too dark keeps its own.
    const dark = read(changed(fresh, photos('dark')), 'dark', 'too-dark');
    expect(rolesOf(changed(dark, photos('a')))).toBe('dark:old a:new');
  });

  it('comes back where it was taken out, and is not read again when another photo takes its role', () => {
    const words = read(changed(fresh, photos('words')), 'words', 'not-a-picture');
    const [file] = words.photos;
    const full = changed(words, photos('a', 'b', 'c', 'd'));
    const without = changed(full, { kind: 'remove-photo', photoId: 'words' });
    expect(changed(without, { kind: 'put-photo-back', photo: file!, at: 0 }).photos).toEqual(full.photos);
    const said = changed(full, { kind: 'set-role', photoId: 'b', role: 'old' });
    expect(said.photos[0]).toBe(full.photos[0]);
  });
});

describe('the day of a look', () => {
  const dated = (role: LeafReading['role'], takenAt: string) => (draft: Draft, id: string) => ({
    ...draft,
    photos: [...draft.photos, { id, role, taps: {}, reading: reading({ role, takenAt }) }],
  });

  it('is the day it was begun, unless a photo or the person says otherwise', () => {
    expect(dateOfLook(fresh)).toEqual({ day: '2026-06-18', from: 'begun' });
    const older = dated('old', '2026-06-10T08:15:00')(fresh, 'a');
    const both = dated('new', '2026-06-11T19:00:00')(older, 'b');
    expect(dateOfLook(both)).toEqual({ day: '2026-06-11', from: 'photo' });
    expect(dateOfLook(changed(both, { kind: 'set-date', day: '2026-06-01' }))).toEqual({
      day: '2026-06-01',
      from: 'said',
    });
  });

  it('is not taken from the normal leaf, which may have been photographed at any time', () => {
    expect(dateOfLook(dated('normal', '2025-06-10T08:15:00')(fresh, 'a')).from).toBe('begun');
  });
});

it('knows an untouched look from one that would be a loss', () => {
  expect(hasContent(fresh)).toBe(false);
  expect(hasContent(changed(fresh, { kind: 'set-words', words: { note: '  ' } }))).toBe(false);
  expect(hasContent(changed(fresh, { kind: 'set-words', words: { note: 'by the gate' } }))).toBe(true);
  expect(hasContent(changed(fresh, photos('a')))).toBe(true);
});

describe('where the plant of a look stands', () => {
  const kale: DraftChange = {
    kind: 'stand-in',
    where: { bedId: 'long', bed: 'Long bed', plantingId: 'kale' },
    crop: 'kale',
    variety: 'a blue one',
  };
  const tomato: DraftChange = {
    kind: 'stand-in',
    where: { bedId: 'short', bed: 'Short bed', plantingId: 'tomato' },
    crop: 'tomato',
  };

  it('brings crop, variety and the bed’s name along, and takes all of them back in one step', () => {
    const chosen = changed(fresh, kale);
    expect(chosen).toMatchObject({ bed: 'Long bed', answers: { crop: 'kale', variety: 'a blue one' } });
    const undone = changed(chosen, { kind: 'undo' });
    expect(undone).toEqual(fresh);
    const other = changed(chosen, tomato);
    expect(other).toMatchObject({ bed: 'Short bed', answers: { crop: 'tomato' } });
    expect(other.answers).not.toHaveProperty('variety');
    expect(changed(other, { kind: 'undo' })).toEqual(chosen);
  });

  it('leaves the grower’s own words for the bed alone, and a crop said before a bed alone was chosen', () => {
    const typed = changed(
      fresh,
      { kind: 'choose-crop', crop: 'leek' },
      { kind: 'set-words', words: { bed: 'by the wall' } },
      { kind: 'stand-in', where: { bedId: 'long', bed: 'Long bed' } },
    );
    expect(typed).toMatchObject({ bed: 'by the wall', answers: { crop: 'leek' }, where: { bedId: 'long' } });
    expect(changed(typed, { kind: 'stand-in', where: undefined })).not.toHaveProperty('where');
  });

  it('is another plant of the same bed once another crop is chosen', () => {
    const leek = changed(fresh, kale, { kind: 'choose-crop', crop: 'leek' });
    expect(leek.where).toEqual({ bedId: 'long', bed: 'Long bed' });
    expect(changed(leek, { kind: 'undo' }).where).toMatchObject({ plantingId: 'kale' });
  });

  it('sets a record aside, and lets it stand again whatever was answered in between', () => {
    const aside = changed(fresh, kale, { kind: 'overrule-record', setting: 'netted', overruled: true });
    expect(aside.answers.notAsRecorded).toEqual(['netted']);
    expect(isAnswered(aside, 'netted')).toBe(false);
    const answered = changed(aside, { kind: 'answer-setting', setting: 'netted', value: false });
    const restored = changed(answered, { kind: 'overrule-record', setting: 'netted', overruled: false });
    expect(restored.answers).toEqual(changed(fresh, kale).answers);
  });
});
