import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { LeafReading, Taps } from '../../leaf/types.ts';
import type { PhotoRole, Spot } from '../../photo/types.ts';
import type { SettingId } from '../../signs/settings.ts';
import { settleWood } from '../../signs/settle-wood.ts';
import type { Answers } from '../../signs/types.ts';
import type { AskableId, CropId, SignId } from '../../signs/vocabulary.ts';
import { PHOTO_ROLES } from '../words/roles.ts';
import {
  type Draft,
  type DraftPhoto,
  isUsable,
  type Opening,
  type Said,
  type Step,
  type Where,
} from './draft.ts';

export const MOST_PHOTOS = 4;
/** Deep enough to take back a whole walk through the questions. */
const MOST_STEPS = 200;

export type SignAnswer = 'seen' | 'absent' | 'cannot-say' | 'not-looked';
export type TapMode = 'leaf' | 'add' | 'remove' | 'white';

export type DraftChange =
  | { readonly kind: 'choose-crop'; readonly crop: CropId | undefined }
  | { readonly kind: 'name-variety'; readonly variety: string }
  | {
      readonly kind: 'answer-signs';
      readonly signs: Readonly<Record<string, SignAnswer>>;
      readonly check?: string;
    }
  | {
      readonly kind: 'answer-setting';
      readonly setting: SettingId;
      readonly value: unknown;
      readonly check?: string;
    }
  | { readonly kind: 'note-opening'; readonly opening: Opening }
  | { readonly kind: 'cannot-say'; readonly id: string }
  | { readonly kind: 'overrule'; readonly sign: SignId; readonly overruled: boolean }
  | {
      readonly kind: 'stand-in';
      readonly where: Where | undefined;
      /** What the planting says of itself. */
      readonly crop?: CropId;
      readonly variety?: string;
    }
  | { readonly kind: 'overrule-record'; readonly setting: SettingId; readonly overruled: boolean }
  | { readonly kind: 'undo' }
  | {
      readonly kind: 'add-photos';
      readonly photos: readonly { readonly id: string; readonly file?: string }[];
      /** Role of the first one, when it was added for that. */
      readonly role?: PhotoRole;
    }
  | { readonly kind: 'set-role'; readonly photoId: string; readonly role: PhotoRole }
  | { readonly kind: 'tap'; readonly photoId: string; readonly mode: TapMode; readonly spot: Spot }
  | { readonly kind: 'untap'; readonly photoId: string }
  | { readonly kind: 'untap-last'; readonly photoId: string }
  | { readonly kind: 'remove-photo'; readonly photoId: string }
  | { readonly kind: 'put-photo-back'; readonly photo: DraftPhoto; readonly at: number }
  | {
      readonly kind: 'photo-read';
      readonly photoId: string;
      readonly taps: Taps;
      readonly reading: LeafReading;
      readonly network?: SeenByNetwork;
    }
  | {
      readonly kind: 'photo-failed';
      readonly photoId: string;
      readonly taps: Taps;
      readonly failed: NonNullable<DraftPhoto['failed']>;
    }
  | { readonly kind: 'read-again'; readonly photoId: string }
  | { readonly kind: 'set-date'; readonly day: string }
  | { readonly kind: 'set-words'; readonly words: Partial<Pick<Draft, 'bed' | 'plant' | 'note'>> };

/** The draft after one change. Pure: the same draft and change always give the same result. */
export function changeDraft(draft: Draft, change: DraftChange): Draft {
  switch (change.kind) {
    case 'choose-crop':
      return say(draft, ['crop'], chooseCrop(draft, change.crop));
    case 'name-variety':
      return { ...draft, ...withAnswers(draft, { variety: change.variety || undefined }) };
    case 'answer-signs':
      return say(
        draft,
        aboutOf(Object.keys(change.signs), change.check),
        answerSigns(draft, change.signs, change.check),
      );
    case 'answer-setting':
      return say(
        draft,
        aboutOf([change.setting], change.check),
        answerSetting(draft, change.setting, change.value),
      );
    case 'note-opening':
      return { ...draft, opening: change.opening };
    case 'cannot-say':
      return say(draft, [change.id], {
        ...saidOf(draft),
        cannotSay: union(draft.cannotSay, [change.id]),
      });
    case 'overrule':
      return say(draft, [change.sign], overrule(draft, change.sign, change.overruled));
    case 'stand-in':
      return withBedOf(draft, say(draft, ['where'], standIn(draft, change)));
    case 'overrule-record':
      return say(draft, [change.setting], overruleRecord(draft, change.setting, change.overruled));
    case 'undo':
      return withBedOf(draft, undo(draft));
    case 'set-date':
      return { ...draft, dateSaid: change.day };
    case 'set-words':
      return { ...draft, ...change.words };
    default: {
      const photos = changePhotos(draft.photos, change);
      return { ...draft, photos, removed: removedAfter(draft, change) };
    }
  }
}

function removedAfter({ removed }: Draft, change: PhotoChange): readonly string[] {
  if (change.kind === 'remove-photo') return [...removed, change.photoId];
  if (change.kind === 'put-photo-back') return removed.filter((id) => id !== change.photo.id);
  return removed;
}

const aboutOf = (ids: readonly string[], check: string | undefined): string[] =>
  check === undefined ? [...ids] : [...ids, check];

const union = (some: readonly string[], more: readonly string[]): string[] => [
  ...new Set([...some, ...more]),
];

/** Records a step, so that it can be taken back. */
function say(draft: Draft, about: readonly string[], after: Said): Draft {
  const step: Step = { about, before: saidOf(draft) };
  const { where: _where, ...rest } = draft;
  return { ...rest, ...after, steps: [...draft.steps, step].slice(-MOST_STEPS) };
}

const saidOf = ({ answers, cannotSay, where }: Said): Said => ({
  answers,
  cannotSay,
  ...(where ? { where } : {}),
});

/** Another crop than the planting's is another plant, in the same bed. */
function chooseCrop(draft: Said, crop: CropId | undefined): Said {
  const said = withAnswers(draft, { crop });
  if (!said.where || crop === draft.answers.crop) return said;
  const { plantingId: _planting, ...where } = said.where;
  return { ...said, where };
}

/** Crop and variety follow the planting; what was overruled was said of another place. */
function standIn(
  draft: Said,
  { where, crop, variety }: Extract<DraftChange, { readonly kind: 'stand-in' }>,
): Said {
  const { where: before, answers, cannotSay } = draft;
  const isOther = before?.plantingId !== undefined || (crop !== undefined && crop !== answers.crop);
  const named = where?.plantingId && (variety ?? (isOther ? undefined : answers.variety));
  return {
    answers: tidy({
      ...answers,
      ...(where?.plantingId ? { crop: crop ?? answers.crop, variety: named } : {}),
      notAsRecorded: undefined,
    }),
    cannotSay,
    ...(where ? { where } : {}),
  };
}

/** The bed's name for the case follows the bed, unless the grower has put it in other words. */
function withBedOf(before: Draft, after: Draft): Draft {
  const own = before.bed.trim() !== '' && before.bed !== before.where?.bed;
  return own || before.where === after.where ? after : { ...after, bed: after.where?.bed ?? '' };
}

function overruleRecord(draft: Said, setting: SettingId, overruled: boolean): Said {
  const others = (draft.answers.notAsRecorded ?? []).filter((id) => id !== setting);
  const all = overruled ? [...others, setting] : others;
  // An answer of one's own gives way to the records with it.
  const said = answerSetting(draft, setting, undefined);
  return withAnswers(said, { notAsRecorded: all.length > 0 ? all : undefined });
}

function undo(draft: Draft): Draft {
  const last = draft.steps.at(-1);
  if (!last) return draft;
  // The variety is typed, not answered: taking back an answer must not take it along.
  const variety = last.about.includes('where') ? last.before.answers.variety : draft.answers.variety;
  const { where: _where, ...rest } = draft;
  return {
    ...rest,
    ...last.before,
    answers: tidy({ ...last.before.answers, variety }),
    steps: draft.steps.slice(0, -1),
  };
}

type LooseAnswers = { [Key in keyof Answers]?: Answers[Key] | undefined };

/** Leaves out what is undefined, because an absent answer and an undefined one are not the same to the store. */
function tidy(answers: LooseAnswers): Answers {
  const kept = Object.entries(answers).filter(([, value]) => value !== undefined);
  return { setting: {}, signs: {}, ...Object.fromEntries(kept) } as Answers;
}

const withAnswers = (draft: Said, more: LooseAnswers): Said => ({
  ...saidOf(draft),
  answers: tidy({ ...draft.answers, ...more }),
});

function answerSigns(
  draft: Said,
  given: Readonly<Record<string, SignAnswer>>,
  check: string | undefined,
): Said {
  const signs: Partial<Record<string, 'seen' | 'absent'>> = { ...draft.answers.signs };
  const cannotSay = new Set(draft.cannotSay);
  for (const [id, answer] of Object.entries(given)) {
    delete signs[id];
    cannotSay.delete(id);
    if (answer === 'cannot-say') cannotSay.add(id);
    if (answer === 'seen' || answer === 'absent') signs[id] = answer;
  }
  if (check !== undefined) cannotSay.add(check);
  return { ...withAnswers(draft, { signs: signs as Answers['signs'] }), cannotSay: [...cannotSay] };
}

function answerSetting(draft: Said, setting: SettingId, value: unknown): Said {
  const settings: Partial<Record<string, unknown>> = { ...draft.answers.setting };
  if (value === undefined) delete settings[setting];
  else settings[setting] = value;
  return {
    ...withAnswers(draft, { setting: settleWood(settings, setting) as Answers['setting'] }),
    cannotSay: draft.cannotSay.filter((id) => id !== setting),
  };
}

function overrule(draft: Said, sign: SignId, overruled: boolean): Said {
  const others = (draft.answers.overruled ?? []).filter((id) => id !== sign);
  const all = overruled ? [...others, sign] : others;
  return withAnswers(draft, { overruled: all.length > 0 ? all : undefined });
}

type PhotoChange = Extract<
  DraftChange,
  { readonly photoId: string } | { readonly kind: 'add-photos' | 'put-photo-back' }
>;

function changePhotos(photos: readonly DraftPhoto[], change: PhotoChange): readonly DraftPhoto[] {
  if (change.kind === 'add-photos') return addPhotos(photos, change.photos, change.role);
  if (change.kind === 'remove-photo') return photos.filter(({ id }) => id !== change.photoId);
  if (change.kind === 'put-photo-back') return putBack(photos, change.photo, change.at);
  if (change.kind === 'set-role') return setRole(photos, change.photoId, change.role);
  return photos.map((photo) => (photo.id === change.photoId ? changePhoto(photo, change) : photo));
}

/** How many more photos a look takes: files that cannot be read take no place. */
export const roomFor = (photos: readonly DraftPhoto[]): number =>
  Math.max(0, MOST_PHOTOS - photos.filter(isUsable).length);

/**
 * The wanted role goes to the first one. The others hold free roles in order, but only as a guess: what they show is
 * still to be said. What is beyond four photos is left out (the caller says so).
 */
function addPhotos(
  photos: readonly DraftPhoto[],
  added: readonly { readonly id: string; readonly file?: string }[],
  wanted: PhotoRole | undefined,
): DraftPhoto[] {
  const all = [...photos];
  const isFree = (role: PhotoRole): boolean => !all.some((photo) => isUsable(photo) && photo.role === role);
  for (const { id, file } of added.slice(0, roomFor(photos))) {
    const role = [...(wanted ? [wanted] : []), ...PHOTO_ROLES].find(isFree) ?? 'whole';
    const isSaid = role === wanted && id === added[0]?.id;
    all.push({
      id,
      role,
      taps: {},
      ...(isSaid ? {} : { roleOpen: true }),
      ...(file === undefined ? {} : { file }),
    });
  }
  return all;
}

/** Back in its place, and in its role unless another photo has taken that meanwhile: then it is asked for anew. */
function putBack(photos: readonly DraftPhoto[], photo: DraftPhoto, at: number): readonly DraftPhoto[] {
  if (!isUsable(photo)) return [...photos.slice(0, at), photo, ...photos.slice(at)];
  if (roomFor(photos) === 0) return photos;
  const isFree = (role: PhotoRole): boolean =>
    !photos.some((other) => isUsable(other) && other.role === role);
  const role = [photo.role, ...PHOTO_ROLES].find(isFree) ?? photo.role;
  const whole = role === photo.role ? photo : unread({ ...photo, role, roleOpen: true });
  return [...photos.slice(0, at), whole, ...photos.slice(at)];
}

/**
 * Two photos never hold one role: the other takes the role that was given up. Where that was only a guess, what the
 * other one shows has to be said anew.
 */
function setRole(photos: readonly DraftPhoto[], photoId: string, role: PhotoRole): DraftPhoto[] {
  const before = photos.find(({ id }) => id === photoId);
  return photos.map((photo) => {
    if (photo.id === photoId) {
      const { roleOpen: _roleOpen, ...said } = photo;
      return said.role === role ? said : unread({ ...said, role });
    }
    if (photo.role !== role || !before || !isUsable(photo)) return photo;
    return unread({ ...photo, role: before.role, ...(before.roleOpen ? { roleOpen: true } : {}) });
  });
}

function changePhoto(
  photo: DraftPhoto,
  change: Exclude<PhotoChange, { kind: 'add-photos' | 'put-photo-back' | 'remove-photo' | 'set-role' }>,
): DraftPhoto {
  switch (change.kind) {
    case 'tap':
      return withTaps(photo, addTap(photo.taps, change.mode, change.spot));
    case 'untap':
      return withTaps(photo, {});
    case 'untap-last':
      return untapLast(photo);
    case 'read-again':
      return unread(photo);
    case 'photo-read':
      // A reading made with older taps came too late.
      return change.taps === photo.taps ? withReading(photo, change) : photo;
    case 'photo-failed':
      return change.taps === photo.taps ? { ...settled(photo), failed: change.failed } : photo;
  }
}

/** Read once more as it stands (to show its hatching), a photo keeps what the network saw of it before. */
function withReading(
  { network: before, ...photo }: DraftPhoto,
  { reading, network }: Extract<PhotoChange, { readonly kind: 'photo-read' }>,
): DraftPhoto {
  const isSame = !photo.stale && photo.reading?.role === reading.role;
  const seen = network ?? (isSame ? before : undefined);
  return { ...settled(photo), reading, ...(seen ? { network: seen } : {}) };
}

const withTaps = (photo: DraftPhoto, taps: Taps): DraftPhoto =>
  unread({ ...photo, taps, tapsBefore: [...(photo.tapsBefore ?? []), photo.taps].slice(-MOST_STEPS) });

function untapLast(photo: DraftPhoto): DraftPhoto {
  const before = photo.tapsBefore ?? [];
  const last = before.at(-1);
  return last === undefined ? photo : unread({ ...photo, taps: last, tapsBefore: before.slice(0, -1) });
}

function unread({ failed: _failed, ...photo }: DraftPhoto): DraftPhoto {
  return photo.reading ? { ...photo, stale: true } : photo;
}

function settled({ failed: _failed, stale: _stale, ...photo }: DraftPhoto): DraftPhoto {
  return photo;
}

/** The taps of a photo with one more. Pure. */
export function addTap(taps: Taps, mode: TapMode, spot: Spot): Taps {
  if (mode === 'white') return { ...taps, white: spot };
  // A new place for the outline makes the corrections of the old one meaningless.
  if (mode === 'leaf') return { leaf: spot, ...(taps.white ? { white: taps.white } : {}) };
  return { ...taps, [mode]: [...(taps[mode] ?? []), spot] };
}

/** Is this id settled one way or another? Used to keep an answered question from being shown again. */
export function isAnswered({ answers, cannotSay }: Said, id: string): boolean {
  return (
    cannotSay.includes(id) ||
    answers.signs[id as AskableId] !== undefined ||
    answers.setting[id as SettingId] !== undefined
  );
}
