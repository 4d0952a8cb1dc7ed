/**
 * What a garden keeps. Plain data with stable ids and a change time, so that two devices' records can be brought
 * together later. Readings, answers and rankings travel through here unopened (type parameters): this folder knows
 * nothing of leaves, signs or causes.
 */

/** Raised when the shape of a kept record changes; `repairRecord` brings older ones up to it. */
export const RECORDS_SCHEMA = 1;

export interface Stamp {
  /** Random (UUID), never reused. */
  readonly id: string;
  readonly schema: number;
  /** ISO 8601 with milliseconds, UTC: the newest wins where two devices changed one record. */
  readonly changedAt: string;
  /** Deleted, but still there to be brought back. */
  readonly deletedAt?: string;
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

/** One plant in trouble, and every look that was taken at it. */
export interface CaseRecord extends Stamp {
  readonly kind: 'case';
  /** Bed and plant in the grower's words. */
  readonly bed: string;
  readonly plant: string;
  readonly crop?: string;
  readonly variety?: string;
  readonly openedOn: string;
  /** Day on which the grower closed it. */
  readonly closedOn?: string;
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

export type GardenRecord = CaseRecord | LookRecord | DraftRecord;
