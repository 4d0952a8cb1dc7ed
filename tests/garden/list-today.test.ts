import { describe, expect, it } from 'vitest';
import { heapNow } from '../../src/garden/heap-now.ts';
import { listToday } from '../../src/garden/list-today.ts';
import { coldLimitsOf } from '../../src/season/crop-temperatures.ts';
import { garden, record, weather } from './small-garden.ts';

const TODAY = '2026-05-10';
const kept = (id: string, lookAgain: string, more: object = {}) =>
  record('case', id, {
    bed: 'Long bed',
    plant: id,
    openedOn: '2026-05-01',
    looks: [{ id: `${id}1`, date: '2026-05-01', verdict: 'watch', leading: [], photos: [], lookAgain }],
    ...more,
  });
const beds = [
  record('bed', 'wall', { name: 'Wall bed', order: 1 }),
  record('bed', 'long', { name: 'Long bed', order: 2 }),
  record('bed', 'tunnel', { name: 'Tunnel', order: 3, place: 'under-cover' }),
];
const planting = (id: string, crop: string, bedId: string, more: object = {}) =>
  record('planting', id, { crop, bedId, plantedOn: '2026-05-01', ...more });
const list = (...args: Parameters<typeof listToday>): string[] =>
  listToday(...args).map(({ id, due }) => `${id} ${due}`);

describe('what is due on a walk', () => {
  it('comes in the order of the beds, what is most overdue first, what has no bed last', () => {
    const plot = garden(
      ...beds,
      kept('a', '2026-05-10', { bedId: 'long' }),
      kept('b', '2026-05-03'),
      kept('c', '2026-05-09', { bedId: 'wall', bed: 'wall' }),
      kept('d', '2026-05-09', { bed: '' }),
      kept('later', '2026-05-11', { bedId: 'wall' }),
      kept('closed', '2026-05-09', { closedOn: '2026-05-05' }),
      record('batch', 'hot', { readings: [{ id: 'r', date: '2026-05-05', celsius: 60 }] }),
      record('batch', 'warm', { readings: [{ id: 'r', date: '2026-05-05', celsius: 30 }] }),
    );
    expect(list(plot, TODAY, coldLimitsOf)).toEqual([
      'look-c 2026-05-09',
      'look-b 2026-05-03',
      'look-a 2026-05-10',
      'heap-hot 2026-05-08',
      'look-d 2026-05-09',
    ]);
    expect(list(plot, TODAY, coldLimitsOf, 3)).toContain('look-later 2026-05-11');
    expect(list(plot, TODAY, coldLimitsOf, 3)).toContain('heap-warm 2026-05-12');
  });

  it('names frost and cold that are forecast, by what each crop bears', () => {
    const plot = garden(
      ...beds,
      planting('beans', 'french-bean', 'long'),
      planting('kale', 'kale', 'long'),
      planting('lettuce', 'lettuce', 'wall'),
      planting('tomato', 'tomato', 'tunnel'),
      planting('late', 'courgette', 'wall', { plantedOn: '2026-05-20' }),
      planting('gone', 'courgette', 'wall', { clearedOn: '2026-05-09' }),
      ...weather('2026-05-09', [[-5, 1]]),
      ...weather(
        '2026-05-11',
        [
          [2, 14],
          [-1, 9],
          [8, 22],
        ],
        { forecast: true },
      ),
      ...weather('2026-06-11', [[-5, 1]], { forecast: true }),
    );
    const found = listToday(plot, TODAY, coldLimitsOf).filter(
      ({ what }) => what === 'frost' || what === 'cold',
    );
    expect(found).toMatchObject([
      { id: 'frost-lettuce', due: '2026-05-12', expected: -1, limit: -1, days: ['2026-05-12'] },
      { id: 'cold-lettuce', due: '2026-05-12', expected: 4, days: ['2026-05-12'] },
      { id: 'frost-beans', due: '2026-05-11', expected: -1, limit: 2, days: ['2026-05-11', '2026-05-12'] },
      // 50 °F is the least mean for beans (UCSC-KNOTT): 8 and 4 °C lie below it.
      { id: 'cold-beans', due: '2026-05-11', expected: 4, limit: 10, days: ['2026-05-11', '2026-05-12'] },
      { id: 'cold-kale', due: '2026-05-12', expected: 4 },
    ]);
    expect(found.length).toBe(5);
  });

  it('measures a heap against the air of the weather on record', () => {
    const heap = record('batch', 'h', { readings: [{ id: 'r', date: '2026-05-09', celsius: 26 }] });
    const plot = garden(heap, ...weather('2026-05-09', [[0, 4]]));
    expect(heapNow(plot, heap, TODAY)).toMatchObject({ suspected: false, state: 'unfinished', rise: 24 });
  });
});
