import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { penPath, scaleOver } from '../../src/app/places/Ground/plot-scale.ts';
import {
  editBatch,
  editBed,
  editEvent,
  editPlanting,
  moveBed,
  newBatch,
  newEvent,
  newPlanting,
  putReading,
  putSpreading,
  readNumber,
  sayShare,
  spreadingFrom,
} from '../../src/app/state/edit-ground.ts';
import {
  deleteGround,
  garden,
  keepRecords,
  keepWithUndo,
  latest,
  refreshGarden,
} from '../../src/app/state/garden.ts';
import { cases, store } from '../../src/app/state/kept.ts';
import { hashOf, readRoute } from '../../src/app/state/route.ts';
import { lookAt } from '../../src/app/state/start-look-at.ts';
import { undoable } from '../../src/app/state/undo-bar.ts';
import { readGrid, recordsOfFile } from '../../src/app/state/weather-days.ts';
import { historyOf, inYear, yearsOf } from '../../src/app/state/year-of-bed.ts';
import { BATCH_WORDS } from '../../src/app/words/ground-batches.ts';
import { WEATHER_WORDS } from '../../src/app/words/ground-weather.ts';
import { namePlantingAmong, numberPlanting } from '../../src/app/words/name-planting.ts';
import { sheetFileName } from '../../src/app/words/sheet.ts';
import { SHEET_PARTS } from '../../src/app/words/sheet-parts.ts';
import type { Zone } from '../../src/days/growing-year.ts';
import { gatherGarden } from '../../src/garden/gather-garden.ts';
import { BATCH_KINDS, type BedRecord, type WeatherRecord } from '../../src/garden/ground-records.ts';
import { newBed } from '../../src/garden/name-beds.ts';
import { RECORDS_SCHEMA } from '../../src/garden/records.ts';
import { record } from '../garden/small-garden.ts';

const NOW = '2026-06-18T10:00:00.000Z';
const TODAY = '2026-06-18';
const weather = (date: string, rest: Partial<WeatherRecord> = {}): WeatherRecord => ({
  kind: 'weather',
  id: `weather-${date}`,
  schema: RECORDS_SCHEMA,
  changedAt: NOW,
  date,
  ...rest,
});

describe('what is typed about the ground', () => {
  it.each([
    ['', undefined],
    ['12,5', 12.5],
    [' −3 ', -3],
    ['.5', 0.5],
  ])('reads %o as %o', (typed, number) => expect(readNumber(typed)).toBe(number));
  it.each(['1,000.5', 'ten', '5 cm', '--2'])('takes %o for no number', (typed) =>
    expect(readNumber(typed)).toBeNaN(),
  );

  it('leaves out of a bed what is not said, and keeps its name where the field was emptied', () => {
    const bed = editBed(newBed('Long bed', NOW), { name: ' ', place: 'under-cover', soil: '' });
    expect(bed).toMatchObject({ name: 'Long bed', place: 'under-cover' });
    expect('soil' in bed).toBe(false);
  });

  it('moves a bed one step in the walk, and writes only what changed', () => {
    const beds = ['a', 'b', 'c'].map((name, at) => ({ ...newBed(name, NOW), order: at + 1 }));
    expect(moveBed(beds, 'bed-c', -1).map(({ name, order }) => [name, order])).toEqual([
      ['c', 2],
      ['b', 3],
    ]);
    expect(moveBed(beds, 'bed-a', -1)).toEqual([]);
  });

  it('keeps an amount only of what was fed', () => {
    const event = newEvent('bed-a', NOW);
    expect(editEvent(event, { what: 'fed', date: TODAY, amount: 'heavy' }).amount).toBe('heavy');
    expect('amount' in editEvent(event, { what: 'limed', date: TODAY, amount: 'heavy' })).toBe(false);
  });

  it('tells "no" from "not said" of a planting', () => {
    const planting = newPlanting('bed-a', NOW);
    expect(editPlanting(planting, { crop: 'tomato', hardenedOff: 'no' }).hardenedOff).toBe(false);
    expect('hardenedOff' in editPlanting(planting, { crop: 'tomato', hardenedOff: '' })).toBe(false);
  });

  it('takes the share of wood in parts of a hundred, and leaves out what is none', () => {
    const batch = editBatch(newBatch('heap', 'own-compost', TODAY, NOW), { name: 'heap', woodShare: '12,5' });
    expect(batch.woodShare).toBe(0.125);
    expect(sayShare(batch.woodShare)).toBe('12.5');
    expect(sayShare(0.07)).toBe('7');
    for (const woodShare of ['', 'some', '-1', '101'])
      expect('woodShare' in editBatch(batch, { name: 'heap', woodShare })).toBe(false);
  });

  it('puts what was done, and a planting, on another bed where that is said', () => {
    expect(editEvent(newEvent('bed-a', NOW), { what: 'limed', bedId: 'bed-b' }).bedId).toBe('bed-b');
    expect(editEvent(newEvent('bed-a', NOW), { what: 'limed' }).bedId).toBe('bed-a');
    expect(editPlanting(newPlanting('bed-a', NOW), { crop: 'kale', bedId: 'bed-b' }).bedId).toBe('bed-b');
  });

  it('puts a changed reading in the place of the old one', () => {
    const batch = putReading(newBatch('heap', undefined, TODAY, NOW), { date: TODAY, celsius: 60 }, 'r1');
    const changed = putReading(batch, { date: '2026-06-01', celsius: 55.5, turned: true }, 'r1');
    expect(changed.readings).toEqual([{ id: 'r1', date: '2026-06-01', celsius: 55.5, turned: true }]);
  });

  it('puts readings in order of date, and a changed spreading in the place of the old one', () => {
    const batch = newBatch('heap', 'own-compost', TODAY, NOW);
    const read = putReading(putReading(batch, { date: '2026-06-10', celsius: 60 }), {
      date: '2026-06-03',
      celsius: 40,
    });
    expect(read.readings.map(({ celsius }) => celsius)).toEqual([40, 60]);
    const first = spreadingFrom({ bedId: 'bed-a', date: TODAY, depthCm: '5' }, 's1')!;
    const changed = spreadingFrom({ bedId: 'bed-a', date: TODAY, depthCm: '3,5', how: 'on-top' }, 's1')!;
    expect(putSpreading(putSpreading(batch, first), changed).given).toEqual([
      { id: 's1', bedId: 'bed-a', date: TODAY, depthCm: 3.5, how: 'on-top' },
    ]);
    expect(spreadingFrom({ bedId: 'bed-a', date: TODAY, depthCm: 'deep' }, 's2')).toBeUndefined();
    expect(spreadingFrom({ bedId: '', date: TODAY }, 's3')).toBeUndefined();
  });
});

describe('the grid of weather', () => {
  it('keeps only days that differ, and marks those to come', () => {
    const kept = [weather('2026-06-17', { minCelsius: 9 })];
    const { records, faults } = readGrid(
      { '2026-06-17': { min: '9' }, [TODAY]: { min: '8', max: '19,5' }, '2026-06-19': { min: '2' } },
      kept,
      TODAY,
      NOW,
    );
    expect(faults).toEqual([]);
    expect(
      records.map(({ date, minCelsius, maxCelsius, forecast }) => [date, minCelsius, maxCelsius, forecast]),
    ).toEqual([
      [TODAY, 8, 19.5, undefined],
      ['2026-06-19', 2, undefined, true],
    ]);
  });

  it('names bad lines and keeps the good ones', () => {
    const { records, faults } = readGrid(
      {
        '2026-06-14': { min: 'cold' },
        '2026-06-15': { min: '20', max: '10' },
        '2026-06-16': { max: '99' },
        '2026-06-17': { rain: '4' },
      },
      [],
      TODAY,
      NOW,
    );
    expect(faults.map(({ code }) => code)).toEqual(['no-number', 'crossed', 'beyond']);
    expect(records.map(({ date }) => date)).toEqual(['2026-06-17']);
  });

  it('takes a day away when its line is emptied, but not a mean that a file brought', () => {
    const kept = [
      weather('2026-06-16', { minCelsius: 9 }),
      weather('2026-06-17', { minCelsius: 9, meanCelsius: 12 }),
    ];
    const { records } = readGrid({ '2026-06-16': { min: '' }, '2026-06-17': { min: '' } }, kept, TODAY, NOW);
    expect(records.map(({ deletedAt }) => deletedAt)).toEqual([NOW, undefined]);
    expect(records[1]?.meanCelsius).toBe(12);
    expect('minCelsius' in records[1]!).toBe(false);
  });

  it('keeps of a stored day what a file does not say', () => {
    const kept = [weather('2026-06-17', { soilCelsius: 14, forecast: true, revision: 3 })];
    const [day] = recordsOfFile([{ date: '2026-06-17', minCelsius: 7 }], kept, NOW);
    expect(day).toMatchObject({ soilCelsius: 14, minCelsius: 7, revision: 3 });
    expect(day && 'forecast' in day).toBe(false);
  });
});

describe('the year of a bed', () => {
  const bed: BedRecord = newBed('Long bed', NOW);
  const batch = putSpreading(newBatch('heap', undefined, TODAY, NOW), {
    id: 's',
    bedId: bed.id,
    date: '2026-04-02',
  });
  const all = gatherGarden([
    bed,
    batch,
    editEvent(newEvent(bed.id, NOW), { what: 'limed', date: '2025-11-03' }),
    editPlanting(newPlanting(bed.id, NOW), { crop: 'pea', sownOn: '2026-03-20', clearedOn: '2026-07-30' }),
    editEvent(newEvent('bed-other', NOW), { what: 'limed', date: '2026-01-01' }),
  ]);
  it('tells everything that happened there, newest first, and nothing of other beds', () => {
    expect(historyOf(all, bed).map(({ what, date }) => `${date} ${what}`)).toEqual([
      '2026-07-30 cleared',
      '2026-04-02 spread',
      '2026-03-20 sown',
      '2025-11-03 event',
    ]);
    expect(yearsOf(historyOf(all, bed), '2027-01-05', 'north')).toEqual(['2027', '2026', '2025']);
  });

  it('runs from July to June in the south, and is named by both years', () => {
    const history = historyOf(all, bed);
    const datesIn = (year: string, zone: Zone): string[] =>
      inYear(history, year, zone).map(({ date }) => date);
    expect(yearsOf(history, '2027-01-05', 'south')).toEqual(['2026–27', '2025–26']);
    expect(datesIn('2025–26', 'south')).toEqual(['2026-04-02', '2026-03-20', '2025-11-03']);
    expect(datesIn('2026–27', 'south')).toEqual(['2026-07-30']);
    expect(datesIn('2026', 'north')).toEqual(['2026-07-30', '2026-04-02', '2026-03-20']);
    const sheet = { place: 'book', sheet: 'bed', of: bed.id, year: '2025–26' } as const;
    expect(readRoute(hashOf(sheet))).toEqual(sheet);
    expect(sheetFileName(SHEET_PARTS.bed.title('Long bed', '2025–26'))).toBe('long-bed-2025-26.html');
  });
});

describe('the records of the ground in the store', () => {
  it('are kept, undone, deleted, brought back, and refused where another tab was quicker', async () => {
    cases.value = [];
    await refreshGarden();
    expect(await keepWithUndo([newBed('Pots', NOW)], 'added')).toBe('stored');
    const bed = garden.value!.beds[0]!;
    expect(await keepWithUndo([{ ...bed, soil: 'loam' }], 'kept')).toBe('stored');
    await undoable.value?.undo();
    expect(garden.value!.beds[0]).not.toHaveProperty('soil');
    // Another tab writes behind this one's back.
    await store.changeRecord('bed', bed.id, (found) => ({ ...found, place: 'windowsill' }));
    const mine = { ...latest(bed), soil: 'clay' };
    expect(await keepRecords([mine])).toBe('conflict');
    // The newer state has been read meanwhile; what was typed goes over it and loses nothing of it.
    expect(await keepRecords([{ ...latest(bed), soil: 'clay' }])).toBe('stored');
    expect(garden.value!.beds[0]).toMatchObject({ soil: 'clay', place: 'windowsill' });
    expect(await deleteGround(garden.value!.beds[0]!, 'gone')).toBe(true);
    expect(garden.value!.beds).toEqual([]);
    await undoable.value?.undo();
    expect(garden.value!.beds).toHaveLength(1);
  });
});

describe('plots', () => {
  it('rule round lines that hold every value, and put a single day in the middle', () => {
    const box = { left: 0, right: 100, top: 0, bottom: 50 };
    const { x, y, lines } = scaleOver(['2026-06-01', '2026-06-11'], [-3, 22], box);
    expect(lines.map(({ figure }) => figure)).toEqual([-10, 0, 10, 20, 30]);
    for (const { figure, at } of lines) expect(at).toBe(y(figure));
    expect([x('2026-06-01'), x('2026-06-06'), x('2026-06-11')]).toEqual([0, 50, 100]);
    expect([y(-10), y(30)]).toEqual([50, 0]);
    expect(scaleOver(['2026-06-01'], [5], box).x('2026-06-01')).toBe(50);
  });
  it('lift the pen at a gap', () => {
    expect(penPath([[0, 1], [2, 3], undefined, [4, 5]])).toBe('M0.0 1.0L2.0 3.0M4.0 5.0');
  });
});

describe('the words of the ground', () => {
  it('name every kind of batch, no two alike', () => {
    expect(new Set(BATCH_KINDS.map((kind) => BATCH_WORDS.kinds[kind])).size).toBe(BATCH_KINDS.length);
  });
  it('name the line, the column and what stands there', () => {
    const says = WEATHER_WORDS.fault({ line: 4, code: 'bad-number', column: 'Tmin', got: 'x' });
    expect(says).toBe('Line 4: “x” under “Tmin” is no number.');
  });
});

describe('plantings of one bed that are called the same', () => {
  const tomato = (id: string, more: object = {}) =>
    record('planting', id, { bedId: 'long', crop: 'tomato', variety: 'golden trial', ...more });

  it('are told apart by their days, else by a number that does not change', () => {
    const [early, late] = [tomato('b', { sownOn: '2026-03-01' }), tomato('a', { plantedOn: '2026-05-03' })];
    const names = (...all: (typeof early)[]) => all.map((one) => namePlantingAmong(one, all));
    expect(names(early, late)).toEqual([
      'Tomato, golden trial, sown on 1 March 2026',
      'Tomato, golden trial, planted out on 3 May 2026',
    ]);
    expect(names(tomato('y'), tomato('x', { variety: 'Golden  trial' }))).toEqual([
      'Tomato, golden trial, 2 of 2',
      'Tomato, Golden  trial, 1 of 2',
    ]);
    const sameDay = { sownOn: '2026-03-01' };
    expect(names(tomato('x', sameDay), tomato('y', sameDay))).toEqual([
      'Tomato, golden trial, 1 of 2',
      'Tomato, golden trial, 2 of 2',
    ]);
    expect(numberPlanting(early, [early, late])).toBeUndefined();
  });

  it('are left alone where another stands in another bed, or is of another variety', () => {
    const all = [tomato('x'), tomato('y', { bedId: 'gate' }), tomato('z', { variety: 'red' })];
    expect(namePlantingAmong(all[0]!, all)).toBe('Tomato, golden trial');
  });
});

it('begins a look where a planting stands, with what it is', () => {
  const planting = record('planting', 'p', { bedId: 'long', crop: 'tomato', variety: 'golden trial' });
  const draft = lookAt('d', '2026-05-01', planting, { name: 'Long bed' });
  expect(draft).toMatchObject({
    id: 'd',
    begunOn: '2026-05-01',
    bed: 'Long bed',
    where: { bedId: 'long', bed: 'Long bed', plantingId: 'p' },
    answers: { crop: 'tomato', variety: 'golden trial' },
  });
  const nowhere = record('planting', 'q', { crop: 'tomato' });
  expect(lookAt('d', '2026-05-01', nowhere, undefined)).toMatchObject({ answers: { crop: 'tomato' } });
});
