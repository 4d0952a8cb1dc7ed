import { addLookToCase } from '../../garden/add-look-to-case.ts';
import { gatherGarden } from '../../garden/gather-garden.ts';
import type { PlantingRecord } from '../../garden/ground-records.ts';
import type { CaseRecord, GardenRecord } from '../../garden/records.ts';
import { settleCase, shownAtLooks } from '../../garden/settle-case.ts';
import { drawLeaf } from '../../leaf/draw-leaf.ts';
import type { LeafReading } from '../../leaf/types.ts';
import type { PhotoRole, Pixels } from '../../photo/types.ts';
import type { Hemisphere } from '../../season/season-of.ts';
import type { SeenAtLook } from '../../signs/seen-at-look.ts';
import { settingsFromRecords, withRecords } from '../../signs/settings-from-records.ts';
import type { CropId } from '../../signs/vocabulary.ts';
import { triage } from '../../triage.ts';
import { emptyDraft } from '../state/draft.ts';
import { chancesOf, recordLook } from '../state/keep-look.ts';
import type { KeptLook } from '../state/kept.ts';
import { INVENTED_CASES, type InventedCase } from './invent-cases.ts';
import { dayBefore, demoStamp, inventGround } from './invent-ground.ts';

/** Makes a picture of the pixels, keeps it under `id`, and reads the leaf off the picture as off any photo. */
export type SeeLeaf = (id: string, pixels: Pixels, role: PhotoRole) => Promise<LeafReading>;

/** The half of the earth where it is the growing season on a day: the demo is always in mid-season. */
export const growingHalf = (day: string): Hemisphere =>
  Number(day.slice(5, 7)) >= 5 && Number(day.slice(5, 7)) <= 10 ? 'north' : 'south';

/** Large enough for veins and spots to be read, small enough to be drawn in a moment, px. */
const SIZE = { width: 512, height: 384 } as const;

/**
 * The invented garden as of `today` (`YYYY-MM-DD`). Beds, weather and what the grower said are made up; what was read off
 * the drawn leaves is read by `readLeaf`, and every ranking is computed by `triage` from that, as for a real look.
 */
export async function buildDemo(today: string, see: SeeLeaf): Promise<GardenRecord[]> {
  const ground = inventGround(today);
  const records: GardenRecord[] = [...ground];
  for (const invented of INVENTED_CASES) records.push(...(await followCase(invented, today, ground, see)));
  return records;
}

async function followCase(
  invented: InventedCase,
  today: string,
  ground: ReturnType<typeof inventGround>,
  see: SeeLeaf,
): Promise<GardenRecord[]> {
  const garden = gatherGarden(ground);
  const planting = garden.plantings.find(
    ({ id }) => id === `demo-planting-${invented.planting}`,
  ) as PlantingRecord;
  const bed = garden.beds.find(({ id }) => id === planting.bedId);
  const caseId = `demo-case-${invented.id}`;
  const hemisphere = growingHalf(today);
  const looks: KeptLook[] = [];
  const earlier: SeenAtLook[] = [];
  let kept: CaseRecord | undefined;
  for (const [place, { daysAgo, photos, signs, note }] of invented.looks.entries()) {
    const date = dayBefore(today, daysAgo);
    const lookId = `demo-look-${invented.id}-${place + 1}`;
    const readings: LeafReading[] = [];
    const seen: KeptLook['photos'][number][] = [];
    for (const [number, { role, ...picture }] of photos.entries()) {
      const id = `demo-photo-${invented.id}-${place + 1}-${number + 1}`;
      const reading = await see(id, drawLeaf({ ...SIZE, ...picture }).pixels, role);
      readings.push(reading);
      seen.push({ id, role, taps: {}, reading });
    }
    const found = settingsFromRecords(garden, { plantingId: planting.id, date, hemisphere });
    const said = { crop: planting.crop as CropId, date, setting: {}, signs, ...optionalVariety(planting) };
    const answers = withRecords(said, found);
    const result = triage({
      photos: readings,
      answers,
      earlier,
      today: date,
      hemisphere,
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
