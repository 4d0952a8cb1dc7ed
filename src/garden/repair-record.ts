import { byDate, day, isObject, type Loose, list, number, once, optional, text, texts } from './loose.ts';
import { repairOwnHead } from './own-head-record.ts';
import type {
  CaseRecord,
  Edit,
  GardenRecord,
  LookPhoto,
  LookRecord,
  LookSummary,
  Outcome,
  Rival,
  ShownRanking,
  Stamp,
} from './records.ts';
import { RECORDS_SCHEMA } from './records.ts';
import { repairGround } from './repair-ground.ts';
import { repairSeenByNetwork } from './seen-by-network.ts';

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
  const stamp = repairStamp(found, id);
  if (found.kind === 'case') return repairCase(found, stamp);
  if (found.kind === 'look') return repairLook(found, stamp);
  if (found.kind === 'lessons')
    return { ...stamp, kind: 'lessons', ...optional('forgetUntil', text(found.forgetUntil)) };
  if (found.kind === 'draft' && isObject(found.body)) return { ...stamp, kind: 'draft', body: found.body };
  if (found.kind === 'own-head') return repairOwnHead(found, stamp);
  return repairGround(found, stamp);
}

const repairStamp = (found: Loose, id: string): Stamp => ({
  id,
  schema: RECORDS_SCHEMA,
  changedAt: text(found.changedAt) || '1970-01-01T00:00:00.000Z',
  ...optional('createdAt', text(found.createdAt)),
  ...optional('createdBy', text(found.createdBy)),
  ...optional('edited', repairEach(found.edited, repairEdit)),
  ...optional('rivals', repairEach(found.rivals, repairRivals)),
  ...optional('deletedAt', text(found.deletedAt)),
  ...(found.demo === true ? { demo: true } : {}),
  ...optional('revision', number(found.revision, 0, Number.MAX_SAFE_INTEGER)),
});

/** An object's values made whole one by one; `undefined` where nothing is left. */
function repairEach<Value>(
  found: unknown,
  repair: (value: unknown) => Value | undefined,
): Readonly<Record<string, Value>> | undefined {
  if (!isObject(found)) return undefined;
  const good = Object.entries(found).flatMap(([key, value]) => {
    const repaired = repair(value);
    return repaired === undefined ? [] : [[key, repaired] as const];
  });
  return good.length === 0 ? undefined : Object.fromEntries(good);
}

function repairEdit(found: unknown): Edit | undefined {
  if (!isObject(found) || text(found.at) === '') return undefined;
  const over = repairEach(found.over, (moment) => text(moment) || undefined);
  return { at: text(found.at), by: text(found.by), ...optional('over', over) };
}

function repairRivals(found: unknown): readonly Rival[] | undefined {
  const rivals = list(found).flatMap((one): Rival[] => {
    const edit = isObject(one) ? repairEdit(one.edit) : undefined;
    if (!edit || !isObject(one)) return [];
    return [{ edit, ...('value' in one && one.value !== undefined ? { value: one.value } : {}) }];
  });
  return rivals.length === 0 ? undefined : rivals;
}

function repairCase(found: Loose, stamp: Stamp): CaseRecord {
  const looks = byDate(once(list(found.looks).map(repairSummary)));
  const outcome = repairOutcome(found.outcome, stamp.changedAt);
  return {
    ...stamp,
    kind: 'case',
    bed: text(found.bed),
    plant: text(found.plant),
    openedOn: day(found.openedOn) || looks[0]?.date || stamp.changedAt.slice(0, 10),
    looks,
    ...optional('bedId', text(found.bedId)),
    ...optional('plantingId', text(found.plantingId)),
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

function repairLook(found: Loose, stamp: Stamp): LookRecord | undefined {
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
    ...optional('network', repairSeenByNetwork(found.network)),
  };
}
