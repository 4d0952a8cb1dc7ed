import { CAUSES, type CauseId, type FamilyId } from './vocabulary.ts';

const FAMILY = new Map<CauseId, FamilyId>(CAUSES.map(({ id, family }) => [id, family]));

/** The family that a cause is grouped under. */
export function familyOf(cause: CauseId): FamilyId {
  return FAMILY.get(cause)!;
}
