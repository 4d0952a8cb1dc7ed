import type { CaseRecord } from '../../garden/records.ts';
import type { SettingId } from '../../signs/settings.ts';
import type { Answers } from '../../signs/types.ts';
import type { CropId } from '../../signs/vocabulary.ts';
import { type Draft, emptyDraft } from './draft.ts';

/** Circumstances that do not change from one look to the next; weather and signs are asked afresh. */
const LASTING: readonly SettingId[] = [
  'place',
  'variety-colour',
  'soil-ph',
  'soil-kind',
  'compost-kinds',
  'compost-state',
  'wood-in-root-zone',
  'wood-on-surface',
  'hay-source',
  'netted',
  'pests-about',
  'rotation-same-family',
];

/**
 * A fresh look at a plant that has a case: crop, variety, names, its place and lasting circumstances come along. What came from
 * records does not: they are read anew, but for what the grower said does not hold.
 */
export function laterLook(id: string, today: string, kept: CaseRecord, last: Answers | undefined): Draft {
  const setting = Object.fromEntries(
    Object.entries(last?.setting ?? {}).filter(
      ([key]) => LASTING.includes(key as SettingId) && !last?.recorded?.includes(key as SettingId),
    ),
  );
  const { notAsRecorded } = last ?? {};
  const { bedId, plantingId } = kept;
  const crop = last?.crop ?? (kept.crop as CropId | undefined);
  const variety = last?.variety ?? kept.variety;
  return {
    ...emptyDraft(id, today),
    caseId: kept.id,
    bed: kept.bed,
    plant: kept.plant,
    ...(bedId ? { where: { bedId, bed: kept.bed, ...(plantingId ? { plantingId } : {}) } } : {}),
    answers: {
      setting,
      signs: {},
      ...(crop ? { crop } : {}),
      ...(variety ? { variety } : {}),
      ...(notAsRecorded ? { notAsRecorded } : {}),
    },
  };
}
