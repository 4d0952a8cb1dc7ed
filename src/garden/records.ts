/**
 * What a garden keeps. Plain data with stable ids and a change time, so that two devices' records can be brought
 * together later. Readings, answers and rankings travel through here unopened (type parameters): this folder knows
 * nothing of leaves, signs or causes.
 */
import type { GroundRecord } from './ground-records.ts';
import type { OwnHeadRecord } from './own-head-record.ts';
import type { SeenByNetwork } from './seen-by-network.ts';

/**
 * Raised when the shape of a kept record changes; `repairRecord` and `upgradeRecords` bring older ones up to it. 2: a case
 * may hold how it ended, and there is a record of what learning leaves out. 3: beds, batches, plantings, weather, normal
 * leaves and events are records; every record says when it was made and when each of its fields was edited last. 4: pot tests are
 * records, and a suspicion may name the pot test that it rests on. 5: trials side by side are
 * records; a batch may hold home tests of ripeness, a pot test may be laid out before it is sown and hold what was read from its photos. 6: a
 * photo of a look and a normal leaf may hold what the network of signs made of it, and what that has learnt of the garden's look is a record.
 */
export const RECORDS_SCHEMA = 6;

/** Who edited a field last and when; enough to tell whether one edit was made in knowledge of another. */
export interface Edit {
  /** ISO 8601 with milliseconds, UTC. */
  readonly at: string;
  /** The device, a random word. Empty: before devices were told apart. */
  readonly by: string;
  /** Edits of other devices that this one replaced, the newest of each: device to moment. */
  readonly over?: Readonly<Record<string, string>>;
}

/** A value that lost against another one made on another device at the same time. Kept until the grower has chosen. */
export interface Rival {
  readonly edit: Edit;
  /** Absent: the field was emptied, or the element taken away. */
  readonly value?: unknown;
}

export interface Stamp {
  /** Never reused. Random (UUID), but for records of which there can be only one: a day's weather, a bed named in words. */
  readonly id: string;
  readonly schema: number;
  /** ISO 8601 with milliseconds, UTC: when anything in it changed last. */
  readonly changedAt: string;
  /** When and on which device it was made. Set by the store at the first save. */
  readonly createdAt?: string;
  readonly createdBy?: string;
  /** Last edit by path (`name`, or `readings/ID` for an element of a list); what is not named was never edited. Set by the store. */
  readonly edited?: Readonly<Record<string, Edit>>;
  /** Real conflicts after a merge, by path. */
  readonly rivals?: Readonly<Record<string, readonly Rival[]>>;
  /** Deleted, but still there to be brought back. */
  readonly deletedAt?: string;
  /** Belongs to the demo garden: never backed up, never learnt from, gone when the demo is left. */
  readonly demo?: true;
  /**
   * Counts the saves on this device. Hand a record back with the number it was read with: the store refuses to write over
   * a newer one. Never leaves the device.
   */
  readonly revision?: number;
}

/** What a list shows of a look, so that lists hold neither photos nor rankings. */
export interface LookSummary {
  readonly id: string;
  /** Day of the look, `YYYY-MM-DD`. */
  readonly date: string;
  readonly verdict: string;
  /** Day to look again, `YYYY-MM-DD`. */
  readonly lookAgain?: string;
  /** Leading causes, most probable first. */
  readonly leading: readonly string[];
  readonly photos: readonly string[];
}

/** The chances of a ranking as they stood at one look. */
export interface ShownRanking {
  /** Day of the look, `YYYY-MM-DD`. */
  readonly date: string;
  /** By cause, 0–1; tiny ones are left out. */
  readonly chances: Readonly<Record<string, number>>;
  /** Version of the knowledge that they were made with. */
  readonly knowledge?: string;
}

/** How a case ended, as the grower says. */
export interface Outcome {
  /** Day on which it was said first, `YYYY-MM-DD`, and the moment it was said last, ISO 8601, UTC. */
  readonly settledOn: string;
  readonly settledAt: string;
  /** What it turned out to be; empty when that was never found out. */
  readonly causes: readonly string[];
  /** How sure that is, one of the ranker's words for it; empty when nothing was found out. */
  readonly sureness: string;
  /** Share of the crop that was lost, a word; empty when not said. */
  readonly lost: string;
  /** What was done, in the grower's words. */
  readonly done: string;
  /** What was shown at the first look, and at the last where that is another one. */
  readonly first?: ShownRanking;
  readonly last?: ShownRanking;
}

/** One plant in trouble, and every look that was taken at it. */
export interface CaseRecord extends Stamp {
  readonly kind: 'case';
  /** Bed and plant in the grower's words. */
  readonly bed: string;
  readonly plant: string;
  /** The bed's and the planting's record, where there is one. */
  readonly bedId?: string;
  readonly plantingId?: string;
  readonly crop?: string;
  readonly variety?: string;
  readonly openedOn: string;
  /** Day on which the grower closed it. */
  readonly closedOn?: string;
  /** Stays when the case is opened again, but counts only while it is closed. */
  readonly outcome?: Outcome;
  /** In order of date, oldest first. */
  readonly looks: readonly LookSummary[];
}

/** A photo as it belongs to a look; its picture lies in a store of its own under `id`. */
export interface LookPhoto<Reading = unknown> {
  readonly id: string;
  readonly role: string;
  readonly file?: string;
  readonly taps: unknown;
  /** What was read from it; absent while it has not been read. */
  readonly reading?: Reading;
  /** What the network of signs made of it, where that was switched on. */
  readonly network?: SeenByNetwork;
}

/** One look: what was seen and said, and the ranking as it stood on that day. */
export interface LookRecord<Reading = unknown, Said = unknown, Kept = unknown> extends Stamp {
  readonly kind: 'look';
  readonly caseId: string;
  readonly date: string;
  readonly photos: readonly LookPhoto<Reading>[];
  readonly answers: Said;
  readonly cannotSay: readonly string[];
  readonly note: string;
  readonly ranking?: Kept;
  /** Version of the knowledge that the ranking was made with. */
  readonly knowledge?: string;
}

/** A look that has not been kept yet. `body` is the screen's own state; it is stored as it is. */
export interface DraftRecord<Body = unknown> extends Stamp {
  readonly kind: 'draft';
  readonly body: Body;
}

/** Id of the one record of its kind. */
export const LESSONS_ID = 'lessons';

/** What learning leaves out at the grower's word. */
export interface LessonsRecord extends Stamp {
  readonly kind: 'lessons';
  /** Outcomes said at or before this moment (ISO 8601, UTC) teach nothing any more. */
  readonly forgetUntil?: string;
}

export type GardenRecord =
  | CaseRecord
  | LookRecord
  | DraftRecord
  | LessonsRecord
  | OwnHeadRecord
  | GroundRecord;
export type RecordKind = GardenRecord['kind'];
export type RecordOf<Kind extends RecordKind> = Extract<GardenRecord, { readonly kind: Kind }>;

/** What a record is named by. */
export interface RecordReference {
  readonly kind: RecordKind;
  readonly id: string;
}
