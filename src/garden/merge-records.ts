import { canonical } from './canonical.ts';
import { compareEdits, sameEdit, supersedes } from './edits.ts';
import { compareWords, later } from './loose.ts';
import { firstEdit, recordOf, type Version, versionsOf } from './record-paths.ts';
import type { Edit, GardenRecord, RecordReference } from './records.ts';
import { repairRecord } from './repair-record.ts';

const saidIn = ({ value }: Version): string => canonical(value ?? null);

/** Two versions of one edit can only differ where a file was tampered with or damaged; then the same one wins everywhere. */
const isOutdone = (version: Version, by: Version): boolean =>
  sameEdit(version.edit, by.edit)
    ? saidIn(version) < saidIn(by)
    : supersedes(by.edit, version.edit) && !supersedes(version.edit, by.edit);

const isSame = (a: Version, b: Version): boolean => sameEdit(a.edit, b.edit) && saidIn(a) === saidIn(b);

/** Of all versions of a path, those that none was made in knowledge of; the one that shows first. */
function newestOf(all: readonly Version[]): readonly Version[] {
  const distinct = all.filter((version, at) => all.findIndex((other) => isSame(version, other)) === at);
  return distinct
    .filter((version) => !distinct.some((other) => other !== version && isOutdone(version, other)))
    .sort((a, b) => compareEdits(b.edit, a.edit) || compareWords(saidIn(b), saidIn(a)));
}

/** Rivals that say the same as what shows are no conflict; their edits are kept all the same, they may be outdone later. */
export const isRealConflict = (shown: unknown, rival: { readonly value?: unknown }): boolean =>
  canonical(shown ?? null) !== canonical(rival.value ?? null);

/** Weights of two fits make no third one: what was learnt, or forgotten, last holds whole. The same one on every device. */
const newerOf = (a: GardenRecord, b: GardenRecord): GardenRecord =>
  (compareWords(a.changedAt, b.changedAt) || compareWords(canonical(a), canonical(b))) < 0 ? b : a;

/**
 * Two devices' versions of one record as one. Of each field (and each element of a list) the edit holds that knew of the
 * other; where neither did, the later shows and the other stays beside it in `rivals`. Idempotent, commutative and
 * associative, because the versions kept are the greatest ones of a set union under "was made in knowledge of".
 * Both must have the same id and kind.
 */
export function mergeRecords(a: GardenRecord, b: GardenRecord): GardenRecord {
  if (a.kind === 'own-head') return newerOf(a, b);
  const [one, other] = [versionsOf(a), versionsOf(b)];
  const made = [firstEdit(a), firstEdit(b)].sort(compareEdits)[0]!;
  const merged = new Map<string, readonly Version[]>();
  for (const path of new Set([...one.keys(), ...other.keys()]))
    merged.set(path, newestOf([...(one.get(path) ?? []), ...(other.get(path) ?? [])]));
  const loose = recordOf(
    {
      id: a.id,
      kind: a.kind,
      schema: Math.max(a.schema, b.schema),
      changedAt: later(a.changedAt, b.changedAt),
      createdAt: made.at,
      createdBy: made.by,
      ...(a.demo && b.demo ? { demo: true } : {}),
    },
    merged,
  );
  return repairRecord(loose) ?? a;
}

/** A field in which two devices said different things, neither knowing of the other. */
export interface Conflict {
  readonly record: RecordReference;
  readonly path: string;
  /** What shows now, and what was said elsewhere; `undefined`: nothing. */
  readonly shown: unknown;
  readonly others: readonly { readonly edit: Edit; readonly value?: unknown }[];
}

/** The real conflicts that a record still holds. */
export function conflictsIn(record: GardenRecord): Conflict[] {
  if (!record.rivals) return [];
  const versions = versionsOf(record);
  return Object.keys(record.rivals).flatMap((path) => {
    const [shown, ...rivals] = versions.get(path) ?? [];
    const others = rivals.filter((rival) => isRealConflict(shown?.value, rival));
    if (others.length === 0) return [];
    return [{ record: { kind: record.kind, id: record.id }, path, shown: shown?.value, others }];
  });
}
