import { type CaseRecord, type LookSummary, RECORDS_SCHEMA } from '../../garden/records.ts';
import { LEAST_KEPT } from '../../ranker/learn-score.ts';
import type { Answers } from '../../signs/types.ts';
import type { TriageResult } from '../../triage.ts';
import { dayOf } from '../words/dates.ts';
import { ROLE_UNSAID } from '../words/roles.ts';
import { type Draft, dateOfLook, isNoPicture, isUsable } from './draft.ts';
import type { KeptLook, KeptRanking } from './kept.ts';

/** How many causes a list names for a look, and from what chance on one that does not lead is named. */
const LEADING = 3;
const NAMED_FROM = 0.2;

export interface LookToKeep {
  readonly kept: CaseRecord;
  readonly look: KeptLook;
  readonly summary: LookSummary;
}

/**
 * The records that keep a look: the look itself with its ranking as it stood, its summary for lists, and the case it
 * belongs to (a new one unless `found` is given). `now`: ISO 8601, UTC. Pure.
 * @param answers what was said, with what the records supplied: kept as the ranking had it
 */
export function recordLook(
  draft: Draft,
  result: TriageResult | undefined,
  now: string,
  ids: { readonly caseId: string; readonly lookId: string },
  found?: CaseRecord,
  answers: Answers = draft.answers,
): LookToKeep {
  const date = dateOfLook(draft).day;
  const stamp = { schema: RECORDS_SCHEMA, changedAt: now };
  const photos = draft.photos
    .filter((photo) => !isNoPicture(photo))
    .map((photo) => {
      const { failed: _failed, stale: _stale, roleOpen, ...kept } = photo;
      return roleOpen || !isUsable(photo) ? { ...kept, role: ROLE_UNSAID } : kept;
    });
  const look: KeptLook = {
    ...stamp,
    kind: 'look',
    id: ids.lookId,
    caseId: ids.caseId,
    date,
    photos,
    answers: { ...answers, date },
    cannotSay: draft.cannotSay,
    note: draft.note.trim(),
    ...(result ? { ranking: rankingToKeep(result, dayOf(new Date(now))), knowledge: result.knowledge } : {}),
  };
  const summary: LookSummary = {
    id: ids.lookId,
    date,
    verdict: result?.verdict.id ?? '',
    leading:
      result?.causes
        .filter(({ probability }, place) => place === 0 || probability >= NAMED_FROM)
        .slice(0, LEADING)
        .map(({ id }) => id) ?? [],
    photos: photos.map(({ id }) => id),
    ...(result ? { lookAgain: result.verdict.lookAgain } : {}),
  };
  const { crop, variety } = answers;
  const { where } = draft;
  const { bedId: _bed, plantingId: _planting, ...before } = found ?? {};
  const kept: CaseRecord = {
    openedOn: date,
    looks: [],
    ...(where ? before : found),
    ...stamp,
    kind: 'case',
    id: ids.caseId,
    bed: draft.bed.trim(),
    plant: draft.plant.trim(),
    ...(crop ? { crop } : {}),
    ...(variety?.trim() ? { variety: variety.trim() } : {}),
    ...(where ? { bedId: where.bedId } : {}),
    ...(where?.plantingId ? { plantingId: where.plantingId } : {}),
  };
  return { kept, look, summary };
}

const rankingToKeep = (
  { photos: _photos, openQuestions: _open, ...ranking }: TriageResult,
  weighedOn: string,
): KeptRanking => ({ ...ranking, weighedOn });

/** The chances that a kept ranking shows, by cause, 0–1, to four places; tiny ones are left out. */
export const chancesOf = (ranking: unknown): Record<string, number> =>
  Object.fromEntries(
    (ranking as KeptRanking).causes.flatMap(({ id, probability }) =>
      probability >= LEAST_KEPT ? [[id, Math.round(probability * 1e4) / 1e4]] : [],
    ),
  );
