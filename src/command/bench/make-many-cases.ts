import type { CaseRecord, LookRecord } from '../../garden/records.ts';
import { repairRecord } from '../../garden/repair-record.ts';

export const CASES = 5000;
export const LOOKS = 2;
export const PHOTOS_A_LOOK = 2;
export const BEDS = 12;
const PLANTS = [
  'kale by the gate',
  'third tomato',
  'Café chilli',
  'beans along the fence',
  'pot on the step',
];
const CROPS = ['kale', 'tomato', 'chilli', 'runner-bean', 'lettuce'];
const ENDS = ['aphids', 'clubroot', 'rust', 'slugs-snails', 'nitrogen-short', 'blight', 'drought'];

const dayOf = (at: number, look: number): string =>
  new Date(Date.UTC(2016, 2, 1) + (at * 0.7 + look * 10) * 86_400_000).toISOString().slice(0, 10);

const photosOf = (at: number, look: number): string[] =>
  Array.from({ length: PHOTOS_A_LOOK }, (_, photo) => `photo-${at}-${look}-${photo}`);

/** A garden of many years: 5,000 cases with two looks each, which name 20,000 photos and hold none. Nine in ten are closed. */
export function makeManyCases(): CaseRecord[] {
  return Array.from({ length: CASES }, (_, at) => {
    const closedOn = dayOf(at, LOOKS);
    const outcome = {
      settledOn: closedOn,
      settledAt: `${closedOn}T08:00:00.000Z`,
      causes: [ENDS[at % ENDS.length]],
      sureness: 'seen',
      lost: 'tenth',
      done: 'picked off by hand',
    };
    return repairRecord({
      kind: 'case',
      id: `case-${at}`,
      changedAt: `${dayOf(at, 0)}T08:00:00.000Z`,
      bed: `Bed ${at % BEDS}`,
      bedId: `bed-${at % BEDS}`,
      plant: `${PLANTS[at % PLANTS.length]} ${at}`,
      crop: CROPS[at % CROPS.length],
      openedOn: dayOf(at, 0),
      looks: Array.from({ length: LOOKS }, (_, look) => ({
        id: `look-${at}-${look}`,
        date: dayOf(at, look),
        verdict: 'watch',
        leading: ['aphids', 'nitrogen-short'],
        lookAgain: dayOf(at, look + 1),
        photos: photosOf(at, look),
      })),
      ...(at % 10 === 0 ? {} : { closedOn, ...(at % 3 === 0 ? { outcome } : {}) }),
    }) as CaseRecord;
  });
}

/** The looks of these cases, each with its photos and a note. */
export const makeLooks = (): LookRecord[] =>
  Array.from({ length: CASES * LOOKS }, (_, all) => {
    const [at, look] = [Math.floor(all / LOOKS), all % LOOKS];
    return repairRecord({
      kind: 'look',
      id: `look-${at}-${look}`,
      caseId: `case-${at}`,
      changedAt: `${dayOf(at, look)}T08:00:00.000Z`,
      date: dayOf(at, look),
      photos: photosOf(at, look).map((id) => ({ id, role: 'old', taps: {} })),
      note: 'The heart is green.',
    }) as LookRecord;
  });
