import type {
  CaseRecord,
  DraftRecord,
  GardenRecord,
  LookPhoto,
  LookRecord,
  LookSummary,
  Outcome,
  ShownRanking,
} from './records.ts';
import { RECORDS_SCHEMA } from './records.ts';

/**
 * A record as it came out of the store, made whole: missing parts get their empty value, junk inside lists is dropped.
 * Whatever can be told from it is kept, because a damaged case is worth more than none.
 *
 * @returns `undefined` when it is no record of ours at all (no id, or of an unknown kind), or when a newer version of
 *   the tool wrote it: such a record is left alone instead of being cut down to what we know.
 */
export function repairRecord(found: unknown): GardenRecord | undefined {
  if (!isObject(found)) return undefined;
  const id = text(found.id);
  if (id === '') return undefined;
  if (typeof found.schema === 'number' && found.schema > RECORDS_SCHEMA) return undefined;
  const stamp = {
    id,
    schema: RECORDS_SCHEMA,
    changedAt: text(found.changedAt) || '1970-01-01T00:00:00.000Z',
    ...optional('deletedAt', text(found.deletedAt)),
  };
  if (found.kind === 'case') return repairCase(found, stamp);
  if (found.kind === 'look') return repairLook(found, stamp);
  if (found.kind === 'lessons')
    return { ...stamp, kind: 'lessons', ...optional('forgetUntil', text(found.forgetUntil)) };
  if (found.kind === 'draft' && isObject(found.body)) return { ...stamp, kind: 'draft', body: found.body };
  return undefined;
}

type Loose = Record<string, unknown>;
type Stamped = Pick<DraftRecord, 'id' | 'schema' | 'changedAt' | 'deletedAt'>;

const isObject = (value: unknown): value is Loose =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const text = (value: unknown): string => (typeof value === 'string' ? value : '');
const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const texts = (value: unknown): string[] => list(value).filter((item) => typeof item === 'string');
const day = (value: unknown): string =>
  /^\d{4}-\d{2}-\d{2}/.test(text(value)) ? text(value).slice(0, 10) : '';

/** `{key: value}` unless the value is empty: optional parts are left out, not set to nothing. */
const optional = <Key extends string>(key: Key, value: string): { [K in Key]?: string } =>
  (value === '' ? {} : { [key]: value }) as { [K in Key]?: string };

function repairCase(found: Loose, stamp: Stamped): CaseRecord {
  const looks = list(found.looks)
    .map(repairSummary)
    .filter((look) => look !== undefined)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const outcome = repairOutcome(found.outcome, stamp.changedAt);
  return {
    ...stamp,
    kind: 'case',
    bed: text(found.bed),
    plant: text(found.plant),
    openedOn: day(found.openedOn) || looks[0]?.date || stamp.changedAt.slice(0, 10),
    looks,
    ...optional('crop', text(found.crop)),
    ...optional('variety', text(found.variety)),
    ...optional('closedOn', day(found.closedOn)),
    ...(outcome ? { outcome } : {}),
  };
}

function repairOutcome(found: unknown, changedAt: string): Outcome | undefined {
  if (!isObject(found)) return undefined;
  const first = repairShown(found.first);
  const last = repairShown(found.last);
  return {
    settledOn: day(found.settledOn) || changedAt.slice(0, 10),
    settledAt: text(found.settledAt) || changedAt,
    causes: texts(found.causes),
    sureness: text(found.sureness),
    lost: text(found.lost),
    done: text(found.done),
    ...(first ? { first } : {}),
    ...(last ? { last } : {}),
  };
}

function repairShown(found: unknown): ShownRanking | undefined {
  if (!isObject(found) || day(found.date) === '' || !isObject(found.chances)) return undefined;
  const chances = Object.entries(found.chances).filter(
    (entry): entry is [string, number] => typeof entry[1] === 'number' && entry[1] >= 0 && entry[1] <= 1,
  );
  return {
    date: day(found.date),
    chances: Object.fromEntries(chances),
    ...optional('knowledge', text(found.knowledge)),
  };
}

function repairSummary(found: unknown): LookSummary | undefined {
  if (!isObject(found) || text(found.id) === '' || day(found.date) === '') return undefined;
  return {
    id: text(found.id),
    date: day(found.date),
    verdict: text(found.verdict),
    leading: texts(found.leading),
    photos: texts(found.photos),
    ...optional('lookAgain', day(found.lookAgain)),
  };
}

function repairLook(found: Loose, stamp: Stamped): LookRecord | undefined {
  if (text(found.caseId) === '') return undefined;
  return {
    ...stamp,
    kind: 'look',
    caseId: text(found.caseId),
    date: day(found.date) || stamp.changedAt.slice(0, 10),
    photos: list(found.photos)
      .map(repairPhoto)
      .filter((photo) => photo !== undefined),
    answers: isObject(found.answers) ? found.answers : { setting: {}, signs: {} },
    cannotSay: texts(found.cannotSay),
    note: text(found.note),
    ...(isObject(found.ranking) ? { ranking: found.ranking } : {}),
    ...optional('knowledge', text(found.knowledge)),
  };
}

function repairPhoto(found: unknown): LookPhoto | undefined {
  if (!isObject(found) || text(found.id) === '') return undefined;
  return {
    id: text(found.id),
    role: text(found.role) || 'whole',
    taps: isObject(found.taps) ? found.taps : {},
    ...optional('file', text(found.file)),
    ...(isObject(found.reading) ? { reading: found.reading } : {}),
  };
}
