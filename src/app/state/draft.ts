import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { LeafReading, Taps } from '../../leaf/types.ts';
import type { PhotoRole, PhotoTrouble } from '../../photo/types.ts';
import type { Answers } from '../../signs/types.ts';
import type { AskableId } from '../../signs/vocabulary.ts';
import type { PHOTO_WORKER_WORDS } from '../words/photo-troubles.ts';

/** One photo of a look in progress. Its picture lies in the store under `id`. */
export interface DraftPhoto {
  readonly id: string;
  readonly role: PhotoRole;
  /** True until the person has said what the photo shows: until then the role is a guess that nothing is built on. */
  readonly roleOpen?: true;
  readonly file?: string;
  readonly taps: Taps;
  /** The taps as they were before each of the last ones, so that one can be taken back. */
  readonly tapsBefore?: readonly Taps[];
  /** What was read from it last; absent until it has been read once. */
  readonly reading?: LeafReading;
  /** What the network of signs made of it at that reading, where it was at hand. */
  readonly network?: SeenByNetwork;
  /** True while it is being read again with other taps or in another role: the last reading stands until then. */
  readonly stale?: true;
  /** Set when the reading failed for a reason that lies not in the photo. */
  readonly failed?: keyof typeof PHOTO_WORKER_WORDS;
}

/** Troubles of the file itself: whatever it was meant to show, nothing can be read from it. */
const UNUSABLE: readonly PhotoTrouble[] = [
  'empty-file',
  'not-a-picture',
  'broken-picture',
  'format-unreadable',
  'too-large',
  'too-small',
];

/** Until a file proves to be no photo that can be read it counts as one. One that cannot has no role, and takes no other photo's place. */
export const isUsable = ({ reading }: DraftPhoto): boolean =>
  !reading?.trouble.some((code) => UNUSABLE.includes(code));

/** Not even the browser could show it. */
export const isNoPicture = ({ reading }: DraftPhoto): boolean =>
  reading?.trouble.some((code) => code === 'empty-file' || code === 'not-a-picture') ?? false;

/** Still to be read, or to be read again in the role or with the taps that were said since. */
export const isBusy = ({ reading, stale, failed }: DraftPhoto): boolean =>
  (!reading || stale === true) && !failed;

/** The bed that a plant stands in, and the planting it belongs to, as chosen from the records. */
export interface Where {
  readonly bedId: string;
  /** The bed's name when it was chosen. */
  readonly bed: string;
  readonly plantingId?: string;
}

/** Which leaves a mark lies on, as the first questions ask it; `open` when nobody can say. */
export type LyingOn = 'only-old' | 'most-old' | 'most-new' | 'both' | 'open';

/** What was pressed of the first questions while they are not through: kept, so that a page loaded again goes on there. */
export interface Opening {
  readonly seen: readonly AskableId[];
  /** Where each mark lies that was asked so far; absent while it is still being said what strikes. */
  readonly lying?: Partial<Record<AskableId, LyingOn>>;
}

/** What a person says; undo takes back one step of it. */
export interface Said {
  readonly answers: Answers;
  readonly cannotSay: readonly string[];
  readonly where?: Where;
}

export interface Step {
  /** Ids that the step answered: signs, settings, checks, `crop` or `where`. */
  readonly about: readonly string[];
  readonly before: Said;
}

/** A look in progress: everything typed, tapped and chosen. Plain data; kept in the store after every change. */
export interface Draft extends Said {
  readonly id: string;
  /** Set when the look belongs to a case that is there already. */
  readonly caseId?: string;
  /** Day it was begun, `YYYY-MM-DD`. */
  readonly begunOn: string;
  /** Day of the look where the person corrected it. */
  readonly dateSaid?: string;
  readonly photos: readonly DraftPhoto[];
  /** Photos taken out again: their pictures stay until the look is kept, so that this can be taken back. */
  readonly removed: readonly string[];
  readonly steps: readonly Step[];
  readonly opening?: Opening;
  readonly bed: string;
  readonly plant: string;
  readonly note: string;
}

export function emptyDraft(id: string, begunOn: string): Draft {
  return {
    id,
    begunOn,
    photos: [],
    removed: [],
    answers: { setting: {}, signs: {} },
    cannotSay: [],
    steps: [],
    bed: '',
    plant: '',
    note: '',
  };
}

/** Day of the look: as corrected, else as the newest photo says, else the day it was begun. */
export function dateOfLook(draft: Draft): {
  readonly day: string;
  readonly from: 'said' | 'photo' | 'begun';
} {
  if (draft.dateSaid) return { day: draft.dateSaid, from: 'said' };
  const taken = draft.photos
    .flatMap(({ role, roleOpen, reading }) =>
      reading?.takenAt && (roleOpen || role !== 'normal') ? [reading.takenAt.slice(0, 10)] : [],
    )
    .sort()
    .at(-1);
  return taken ? { day: taken, from: 'photo' } : { day: draft.begunOn, from: 'begun' };
}

/** Has anything been entered that would be a loss? */
export const hasContent = (draft: Draft): boolean =>
  draft.photos.length > 0 ||
  draft.steps.length > 0 ||
  (draft.opening?.seen.length ?? 0) > 0 ||
  [draft.bed, draft.plant, draft.note].some((words) => words.trim() !== '') ||
  draft.answers.crop !== undefined;
