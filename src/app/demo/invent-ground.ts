import type {
  BatchRecord,
  BedRecord,
  EventRecord,
  GroundRecord,
  HeapReading,
  PlantingRecord,
  WeatherRecord,
} from '../../garden/ground-records.ts';
import { weatherId } from '../../garden/ground-records.ts';
import { dayBefore, demoStamp } from './invent-days.ts';
import { inventPotTests } from './invent-pot-tests.ts';

type BedRow = readonly [id: string, name: string, place: string, soil: string, reaction?: string];

const BEDS: readonly BedRow[] = [
  ['gate', 'Gate bed', 'open-ground', 'loam', 'about-neutral'],
  ['long', 'Long bed', 'open-ground', 'loam', 'about-neutral'],
  ['hedge', 'Hedge bed', 'open-ground', 'clay'],
  ['stone', 'Stone bed', 'open-ground', 'sandy', 'chalky-or-limed'],
  ['low', 'Low bed', 'open-ground', 'clay', 'acid'],
  ['pear', 'Pear tree bed', 'open-ground', 'loam'],
  ['corn', 'Corn square', 'open-ground', 'sandy'],
  ['far', 'Far bed', 'open-ground', 'clay'],
  ['tunnel-left', 'Tunnel, left side', 'under-cover', 'loam', 'about-neutral'],
  ['tunnel-right', 'Tunnel, right side', 'under-cover', 'loam', 'about-neutral'],
  ['tub', 'Black tub', 'container', 'potting-mix'],
  ['sill', 'Kitchen sill', 'windowsill', 'potting-mix'],
];

/** Sown and planted so many days ago; `undefined`: not so. */
interface PlantingRow {
  readonly id: string;
  readonly crop: string;
  readonly variety: string;
  readonly bed: string;
  readonly sown?: number;
  readonly planted?: number;
  readonly colour?: string;
  readonly hardenedOff?: boolean;
  readonly netted?: boolean;
}

const PLANTINGS: readonly PlantingRow[] = [
  {
    id: 'kale',
    crop: 'kale',
    variety: 'a curly green one',
    bed: 'gate',
    sown: 75,
    planted: 33,
    hardenedOff: true,
    netted: true,
  },
  { id: 'bean', crop: 'french-bean', variety: 'a dwarf one with flat pods', bed: 'long', sown: 44 },
  { id: 'pea', crop: 'pea', variety: 'a tall one for pods', bed: 'hedge', sown: 68 },
  { id: 'rocket', crop: 'rocket', variety: 'the broad-leaved kind', bed: 'stone', sown: 40, netted: false },
  {
    id: 'lettuce',
    crop: 'lettuce',
    variety: 'a soft butterhead',
    bed: 'low',
    sown: 62,
    planted: 36,
    hardenedOff: true,
  },
  {
    id: 'chard',
    crop: 'chard',
    variety: 'one with golden leaves',
    bed: 'pear',
    sown: 66,
    colour: 'yellow-or-golden',
  },
  {
    id: 'corn',
    crop: 'sweetcorn',
    variety: 'an early sweet one',
    bed: 'corn',
    sown: 55,
    planted: 34,
    hardenedOff: true,
  },
  {
    id: 'leek',
    crop: 'leek',
    variety: 'a long blanching one',
    bed: 'far',
    sown: 98,
    planted: 38,
    hardenedOff: true,
  },
  { id: 'potato', crop: 'potato', variety: 'a floury maincrop', bed: 'far', planted: 70 },
  {
    id: 'tomato',
    crop: 'tomato',
    variety: 'a red cherry',
    bed: 'tunnel-left',
    sown: 100,
    planted: 45,
    hardenedOff: true,
  },
  {
    id: 'cucumber',
    crop: 'cucumber',
    variety: 'a small ridged one',
    bed: 'tunnel-right',
    sown: 60,
    planted: 30,
  },
  {
    id: 'courgette',
    crop: 'courgette',
    variety: 'a striped bush one',
    bed: 'tub',
    sown: 58,
    planted: 35,
    hardenedOff: true,
  },
  { id: 'basil', crop: 'basil', variety: 'the large-leaved kind', bed: 'sill', sown: 50 },
];

/** Readings of a heap as [days ago, °C in the middle, °C of the air]. */
const readHeap = (
  id: string,
  today: string,
  rows: readonly (readonly [ago: number, celsius: number, air: number, turned?: boolean])[],
): HeapReading[] =>
  rows.map(([ago, celsius, airCelsius, turned]) => ({
    id: `${id}-${ago}`,
    date: dayBefore(today, ago),
    celsius,
    airCelsius,
    ...(turned ? { turned: true as const } : {}),
  }));

function inventBatches(today: string): BatchRecord[] {
  const day = (ago: number): string => dayBefore(today, ago);
  const given = (id: string, ago: number, bed: string, how: 'mixed-in' | 'on-top', depthCm: number) => ({
    id,
    date: day(ago),
    bedId: `demo-${bed}`,
    depthCm,
    how,
  });
  return [
    {
      ...demoStamp('batch-manure', day(11)),
      kind: 'batch',
      name: 'Horse manure from the stable',
      what: 'horse-manure',
      source: 'a stable that buys in its hay',
      sprayedFields: 'unknown',
      arrivedOn: day(90),
      hotOnArrival: false,
      told: 'finished',
      readings: readHeap('manure', today, [
        [88, 24, 9],
        [62, 17, 12],
      ]),
      given: [given('far', 71, 'far', 'on-top', 5), given('long', 58, 'long', 'mixed-in', 4)],
      suspicion: {
        state: 'suspected',
        on: day(11),
        why: 'The beans cup where it went, and only there.',
        caseId: 'demo-case-bean',
      },
      note: '',
    },
    {
      ...demoStamp('batch-heap', day(2)),
      kind: 'batch',
      name: 'New heap by the shed',
      what: 'own-compost',
      source: 'own beds and kitchen',
      sprayedFields: 'no',
      startedOn: day(34),
      woodShare: 0.1,
      readings: readHeap('heap', today, [
        [30, 44, 14],
        [23, 58, 13, true],
        [16, 61, 11],
        [9, 55, 17, true],
        [2, 52, 18],
      ]),
      given: [],
      note: '',
    },
    {
      ...demoStamp('batch-old', day(48)),
      kind: 'batch',
      name: 'Last year’s heap',
      what: 'own-compost',
      source: 'own beds and kitchen',
      sprayedFields: 'no',
      startedOn: day(400),
      readings: readHeap('old', today, [
        [380, 57, 12, true],
        [340, 33, 8],
        [66, 14, 11],
        [50, 16, 13],
      ]),
      given: [
        given('gate', 48, 'gate', 'mixed-in', 3),
        given('tunnel-left', 47, 'tunnel-left', 'mixed-in', 3),
      ],
      note: '',
    },
    {
      ...demoStamp('batch-chips', day(40)),
      kind: 'batch',
      name: 'Wood chips of the old pear',
      what: 'wood-chips',
      source: 'own tree',
      arrivedOn: day(120),
      woodShare: 1,
      readings: [],
      given: [given('corn', 40, 'corn', 'mixed-in', 4)],
      usedUpOn: day(40),
      note: 'Forked in to lighten the sand.',
    },
    {
      ...demoStamp('batch-sacks', day(32)),
      kind: 'batch',
      name: 'Sacks from the roadside stall',
      what: 'bagged-compost',
      source: 'a stall by the road, maker not named',
      sprayedFields: 'unknown',
      arrivedOn: day(36),
      readings: [],
      given: [],
      note: 'Bought cheap, so tried in pots first.',
    },
  ];
}

/** Days ago between which it was cold, the last one left out. */
const COLD_SPELL = { from: 32, to: 21 } as const;
const WEEKS_OF_WEATHER = 10;
const FORECAST_DAYS = 6;

/** Ten weeks warming up by a third of a degree a day's pair, one cold spell, rain every few days, and what is expected. */
function inventWeather(today: string): WeatherRecord[] {
  const days: WeatherRecord[] = [];
  for (let ago = WEEKS_OF_WEATHER * 7; ago >= -FORECAST_DAYS; ago--) {
    const date = dayBefore(today, ago);
    const season = 14 + (70 - ago) * 0.12;
    const sway = 2.4 * Math.sin(ago * 1.7) + 1.3 * Math.sin(ago * 0.61);
    const drop = ago <= COLD_SPELL.from && ago > COLD_SPELL.to ? 8.5 : 0;
    const max = Math.round((season + 3 + sway - drop) * 10) / 10;
    const min = Math.round((season - 7.5 + sway * 0.6 - drop * 0.75) * 10) / 10;
    days.push({
      ...demoStamp('', ago < 0 ? today : date),
      id: weatherId(date),
      kind: 'weather',
      date,
      minCelsius: min,
      maxCelsius: max,
      rainMm: ago % 5 === 0 ? 6 : ago % 7 === 3 ? 2.5 : 0,
      ...(ago < 0 ? { forecast: true as const } : {}),
    });
  }
  return days;
}

function inventEvents(today: string): EventRecord[] {
  const event = (
    id: string,
    ago: number,
    bed: string,
    what: EventRecord['what'],
    note = '',
  ): EventRecord => ({
    ...demoStamp(`event-${id}`, dayBefore(today, ago)),
    kind: 'event',
    bedId: `demo-${bed}`,
    date: dayBefore(today, ago),
    what,
    note,
  });
  return [
    event('dug', 40, 'corn', 'disturbed', 'Forked over with the chips.'),
    event('net', 33, 'gate', 'netted'),
    { ...event('fed', 20, 'tunnel-right', 'fed'), amount: 'light' },
    event('lime', 200, 'stone', 'limed'),
  ];
}

/** The invented ground in mid-season as of `today`: beds, batches, pot tests, plantings, what was done, weather. Pure. */
export function inventGround(today: string): GroundRecord[] {
  const beds = BEDS.map(
    ([id, name, place, soil, soilReaction], order): BedRecord => ({
      ...demoStamp(id, dayBefore(today, 120)),
      kind: 'bed',
      name,
      order,
      place,
      soil,
      note: '',
      ...(soilReaction ? { soilReaction } : {}),
    }),
  );
  const plantings = PLANTINGS.map(({ id, bed, sown, planted, ...said }): PlantingRecord => {
    const last = dayBefore(today, planted ?? sown ?? 0);
    return {
      ...demoStamp(`planting-${id}`, last),
      kind: 'planting',
      ...said,
      bedId: `demo-${bed}`,
      note: '',
      ...(sown === undefined ? {} : { sownOn: dayBefore(today, sown) }),
      ...(planted === undefined ? {} : { plantedOn: dayBefore(today, planted) }),
    };
  });
  const batches = inventBatches(today);
  const [manure, sacks] = ['demo-batch-manure', 'demo-batch-sacks'].map(
    (id) => batches.find((batch) => batch.id === id)!,
  );
  const { tests, stopped } = inventPotTests(manure!, sacks!, today);
  const loads = batches.map((batch) => (batch.id === stopped.id ? stopped : batch));
  return [...beds, ...loads, ...tests, ...plantings, ...inventEvents(today), ...inventWeather(today)];
}
