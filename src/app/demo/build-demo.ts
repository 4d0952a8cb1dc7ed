import { addLookToCase } from '../../garden/add-look-to-case.ts';
import { gatherGarden } from '../../garden/gather-garden.ts';
import type { PlantingRecord } from '../../garden/ground-records.ts';
import type { CaseRecord, GardenRecord } from '../../garden/records.ts';
import { settleCase, shownAtLooks } from '../../garden/settle-case.ts';
import type { LeafReading } from '../../leaf/types.ts';
import type { SeenAtLook } from '../../signs/seen-at-look.ts';
import { settingsFromRecords, withRecords } from '../../signs/settings-from-records.ts';
import type { CropId } from '../../signs/vocabulary.ts';
import { triage } from '../../triage.ts';
import { emptyDraft } from '../state/draft.ts';
import { chancesOf, recordLook } from '../state/keep-look.ts';
import type { KeptLook } from '../state/kept.ts';
import { growingHalf } from './growing-half.ts';
import { INVENTED_CASES, type InventedCase } from './invent-cases.ts';
import { dayBefore, demoStamp } from './invent-days.ts';
import { inventGround } from './invent-ground.ts';
import { photosOfLook } from './list-photos.ts';

/** What was read off the photo of this id. */
export type ReadingOf = (photoId: string) => LeafReading;

/**
 * The invented garden as of `today` (`YYYY-MM-DD`), or some of its cases. Beds, weather and what the grower said are made up;
 * what was read off the drawn leaves was read by `readLeaf`, and every ranking is computed by `triage` from that, as for a
 * real look. Case by case, for it takes a while.
 */
export function* buildDemo(
  today: string,
  readingOf: ReadingOf,
  cases: readonly InventedCase[] = INVENTED_CASES,
): Generator<GardenRecord[]> {
  const ground = inventGround(today);
  for (const invented of cases) yield followCase(invented, today, ground, readingOf);
}

function followCase(
  invented: InventedCase,
  today: string,
  ground: ReturnType<typeof inventGround>,
  readingOf: ReadingOf,
): GardenRecord[] {
  const garden = gatherGarden(ground);
  const planting = garden.plantings.find(
    ({ id }) => id === `demo-planting-${invented.planting}`,
  ) as PlantingRecord;
  const bed = garden.beds.find(({ id }) => id === planting.bedId);
  const caseId = `demo-case-${invented.id}`;
  const zone = growingHalf(today);
  const looks: KeptLook[] = [];
  const earlier: SeenAtLook[] = [];
  let kept: CaseRecord | undefined;
  for (const [place, invention] of invented.looks.entries()) {
    const { daysAgo, signs, note } = invention;
    const date = dayBefore(today, daysAgo);
    const lookId = `demo-look-${invented.id}-${place + 1}`;
    const seen = photosOfLook(invented.id, place, invention).map(
      ({ id, role }): KeptLook['photos'][number] => ({ id, role, taps: {}, reading: readingOf(id) }),
    );
    const readings = seen.flatMap(({ reading }) => reading ?? []);
    const found = settingsFromRecords(garden, { plantingId: planting.id, date, zone });
    const said = { crop: planting.crop as CropId, date, setting: {}, signs, ...optionalVariety(planting) };
    const answers = withRecords(said, found);
    const result = triage({
      photos: readings,
      answers,
      earlier,
      today: date,
      zone,
      cannotSay: found.covered,
      ...(found.soil ? { soilCelsius: found.soil.celsius } : {}),
    });
    const { id: _id, ...stamp } = demoStamp('', date);
    const draft = {
      ...emptyDraft(lookId, date),
      dateSaid: date,
      photos: seen as ReturnType<typeof emptyDraft>['photos'],
      answers,
      bed: bed?.name ?? '',
      plant: invented.plant,
      note,
    };
    const made = recordLook(draft, result, stamp.changedAt, { caseId, lookId }, kept);
    looks.push({ ...made.look, ...stamp });
    earlier.push({ date, photos: readings, answers });
    kept = {
      ...addLookToCase(made.kept, made.summary, stamp.changedAt),
      ...stamp,
      plantingId: planting.id,
      ...(bed ? { bedId: bed.id } : {}),
    };
  }
  if (!kept) return [];
  return [endAsTold(kept, looks, invented, today), ...looks];
}

const optionalVariety = ({ variety }: PlantingRecord) => (variety ? { variety } : {});

function endAsTold(
  kept: CaseRecord,
  looks: readonly KeptLook[],
  { ended }: InventedCase,
  today: string,
): CaseRecord {
  if (!ended) return kept;
  const { daysAgo, ...said } = ended;
  const day = dayBefore(today, daysAgo);
  return settleCase(kept, said, shownAtLooks(looks, chancesOf), `${day}T18:00:00.000Z`, day);
}
