import { signal } from '@preact/signals';
import type { FromRecords, PlantOfRecords } from '../../signs/settings-from-records.ts';
import type { Answers } from '../../signs/types.ts';
import { garden } from './garden.ts';
import { sayIfOlder } from './workers.ts';

type Reader = typeof import('../../signs/settings-from-records.ts');

/** Fetched when a look first has records to read; `failed` where a part of the app is missing. */
const reader = signal<Reader | 'failed' | undefined>(undefined);
let asked = false;

function fetchReader(): void {
  if (asked) return;
  asked = true;
  import('../../signs/settings-from-records.ts').then(
    (found) => {
      reader.value = found;
    },
    () => {
      reader.value = 'failed';
      sayIfOlder();
    },
  );
}

/**
 * What the garden's records say of a plant; `undefined` where they say nothing, `reading` until they and their reader have
 * come: until then nothing is concluded or asked.
 */
export function readRecords(plant: PlantOfRecords): FromRecords | 'reading' | undefined {
  const all = garden.value;
  if (plant.bedId === undefined && !all?.weather.length) return undefined;
  const using = reader.value;
  if (!using) fetchReader();
  if (using === 'failed') return undefined;
  return all && using ? using.settingsFromRecords(all, plant) : 'reading';
}

/** The answers with what records supply, and what need not be asked because of them. */
export function fillFromRecords(answers: Answers, found: FromRecords | 'reading' | undefined) {
  const using = reader.value;
  if (!found || found === 'reading' || !using || using === 'failed') return { answers, covered: [] };
  const { covered, soil, potTests } = using.withoutOverruled(found, using.overruledIn(answers, found));
  return {
    answers: using.withRecords(answers, found),
    covered,
    ...(soil ? { soilCelsius: soil.celsius } : {}),
    ...(potTests ? { potTests } : {}),
  };
}
