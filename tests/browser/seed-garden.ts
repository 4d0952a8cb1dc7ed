import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { buildDemo } from '../../src/app/demo/build-demo.ts';
import { inventGround } from '../../src/app/demo/invent-ground.ts';
import { inventTrials } from '../../src/app/demo/invent-trials.ts';
import type { SeenPhoto } from '../../src/app/demo/seen-photo.ts';
import { ensureDemoPhotos } from '../../src/command/setup/ensure-ready.mjs';
import type { BedRecord } from '../../src/garden/ground-records.ts';
import type { CaseRecord, GardenRecord } from '../../src/garden/records.ts';
import { keyOf } from '../../src/garden/store/record-keys.ts';

/** The day that these gardens are seen on: all that they hold hangs on it. */
export const SEEN_ON = '2026-06-18';
/** The same as a moment, for a browser's clock that stands still. */
export const SEEN_AT = new Date(`${SEEN_ON}T08:30:00.000Z`);

export interface SeedGarden {
  readonly records: readonly GardenRecord[];
  readonly photos: readonly SeenPhoto[];
}

/** The invented garden as a grower's own: beds, loads, weather, cases with looks and photos, pot tests, trials. */
export function usualGarden(): SeedGarden {
  const photos: SeenPhoto[] = JSON.parse(readFileSync(ensureDemoPhotos(), 'utf8'));
  const readings = new Map(photos.map(({ id, reading }) => [id, reading]));
  const cases = [...buildDemo(SEEN_ON, (id) => readings.get(id)!)].flat();
  const records = [...inventGround(SEEN_ON), ...inventTrials(SEEN_ON), ...cases];
  return { records: records.map(({ demo: _demo, ...record }) => record as GardenRecord), photos };
}

export const LONG_WORD = 'Upsidedowngreenhouseshelfbehindthepotatocellarnexttothebarrow';
const LONG = 'behind the old wall, third row from the water butt, the end that floods when it rains';
export const LONG_NOTE = `${`Seen again at dusk and by the lamp; nothing on the undersides, some soil splashed up, and ${LONG}. `.repeat(12)}\n\n${LONG_WORD}\nA line of its own.`;
const BEDS = 60;
const COPIES = 25;

/** Far too much of it: 60 beds, 200 cases, long names, a word of 60 letters, long notes, numbers at their limits. */
export function overfullGarden(): SeedGarden {
  const { records, photos } = usualGarden();
  const stretched = records.map(stretch);
  const [bed] = stretched.filter((record): record is BedRecord => record.kind === 'bed');
  const beds = Array.from({ length: BEDS - 12 }, (_, at) => ({
    ...bed!,
    id: `bed-more-${at}`,
    name: at % 3 === 0 ? `${LONG_WORD} ${at}` : `Bed ${at} ${LONG}`,
    order: 100 + at,
  }));
  const cases = stretched.filter((record): record is CaseRecord => record.kind === 'case');
  const more = Array.from({ length: COPIES - 1 }, (_, copy) =>
    cases.map((kept) => ({ ...kept, id: `${kept.id}-${copy}`, plant: `${kept.plant} ${copy}` })),
  ).flat();
  return { records: [...stretched, ...beds, ...more], photos };
}

/** The same record with every word that a person wrote grown long, and every number as far out as it may be. */
function stretch(record: GardenRecord, at: number): GardenRecord {
  const long = at % 2 === 0 ? LONG_WORD : LONG;
  switch (record.kind) {
    case 'bed':
      return { ...record, name: `${record.name} ${long}`, note: LONG_NOTE };
    case 'case':
      return {
        ...record,
        bed: `${record.bed} ${long}`,
        plant: `${record.plant} ${long}`,
        variety: `${record.variety ?? ''} ${long}`,
        ...(record.outcome ? { outcome: { ...record.outcome, done: LONG_NOTE } } : {}),
      };
    case 'look':
      return { ...record, note: LONG_NOTE };
    case 'batch':
      return {
        ...record,
        name: `${record.name} ${long}`,
        source: LONG,
        woodShare: 1,
        note: LONG_NOTE,
        readings: record.readings.map((one, place) => ({ ...one, celsius: place % 2 === 0 ? 95 : -30 })),
        ...(record.suspicion ? { suspicion: { ...record.suspicion, why: LONG_NOTE } } : {}),
      };
    case 'planting':
      return { ...record, variety: `${record.variety ?? ''} ${long}`, note: LONG_NOTE };
    case 'event':
    case 'pot-test':
      return { ...record, note: LONG_NOTE };
    case 'weather':
      return { ...record, minCelsius: -60, maxCelsius: at % 2 === 0 ? 60 : -12.5, rainMm: 2000 };
    case 'trial':
      return {
        ...record,
        name: `${record.name} ${long}`,
        ways: record.ways.map((way) => ({ ...way, name: `${way.name} ${long}` })),
        readings: record.readings.map((one) => ({ ...one, value: (one.value ?? 1) * 1234.5678 })),
        note: LONG_NOTE,
      };
    default:
      return record;
  }
}

/** Puts a garden into the stores of a page that has opened the app, as years of use would have, and loads the page anew. */
export async function plantGarden(page: Page, { records, photos }: SeedGarden): Promise<void> {
  await page.evaluate(
    async ([rows, jpegs]) => {
      const pictures = jpegs.flatMap(([id, jpeg]) => {
        const blob = new Blob([Uint8Array.from(atob(jpeg), (letter) => letter.charCodeAt(0))], {
          type: 'image/jpeg',
        });
        return [[id, blob] as const, [`${id}:small`, blob] as const];
      });
      for (const [store, entries] of [['records', rows] as const, ['pictures', pictures] as const])
        await new Promise<void>((done, failed) => {
          const opening = indexedDB.open(`bedside-${store}`);
          // The app makes a database when it first needs it, with one store, as here.
          opening.onupgradeneeded = () => opening.result.createObjectStore(store);
          opening.onerror = () => failed(opening.error);
          opening.onsuccess = () => {
            const database = opening.result;
            const writing = database.transaction(store, 'readwrite');
            for (const [key, value] of entries) writing.objectStore(store).put(value, key);
            writing.oncomplete = () => {
              database.close();
              done();
            };
            writing.onabort = () => failed(writing.error);
          };
        });
    },
    [
      records.map((record) => [keyOf(record), record] as const),
      photos.map(({ id, jpeg }) => [id, jpeg] as const),
    ] as const,
  );
  await page.reload();
  await page.locator('h1').first().waitFor();
}
