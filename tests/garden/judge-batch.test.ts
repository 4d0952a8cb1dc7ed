import { describe, expect, it } from 'vitest';
import { doubtReading } from '../../src/garden/doubt-reading.ts';
import { heatCurve, judgeBatch, overheating, readingDue } from '../../src/garden/judge-batch.ts';
import { record } from './small-garden.ts';

const heap = (readings: readonly (readonly [string, number, object?])[], more: object = {}) =>
  record('batch', 'h', {
    what: 'own-compost',
    readings: readings.map(([date, celsius, rest], at) => ({
      id: `r${at}`,
      date,
      celsius,
      airCelsius: 15,
      ...rest,
    })),
    ...more,
  });
const judged = (...args: Parameters<typeof judgeBatch>): string => {
  const { state, why } = judgeBatch(...args);
  return `${state} ${why}`;
};
const ON = '2026-06-30';

// Rules: UCRRA and NRCS-317 (phases), CCQC-2001 (rise over the air), SOLVITA-NOTE (ammonia), CCQC-INTRO (looks prove nothing).
describe('finished or not', () => {
  it('a core of 50 °C is unfinished', () => {
    expect(judged(heap([['2026-06-20', 50]]), ON)).toBe('unfinished still-hot');
  });
  it('over 20 K above the air it is unfinished, between 10 and 20 K it ripens', () => {
    expect(judged(heap([['2026-06-20', 36]]), ON)).toBe('unfinished far-above-air');
    expect(judged(heap([['2026-06-20', 35]]), ON)).toBe('ripening somewhat-above-air');
    expect(judged(heap([['2026-06-20', 26]]), ON)).toBe('ripening somewhat-above-air');
  });
  it('within 10 K of the air after its heat it is a candidate, and finished when it stays so', () => {
    expect(
      judged(
        heap([
          ['2026-04-01', 60],
          ['2026-06-20', 25],
        ]),
        ON,
      ),
    ).toBe('nearly cool-once');
    expect(
      judged(
        heap([
          ['2026-04-01', 60],
          ['2026-06-20', 25],
          ['2026-06-26', 22],
        ]),
        ON,
      ),
    ).toBe('nearly cool-once');
    expect(
      judged(
        heap([
          ['2026-04-01', 60],
          ['2026-06-20', 25],
          ['2026-06-27', 22],
        ]),
        ON,
      ),
    ).toBe('finished cool-for-good');
  });
  it('a turned heap that heats again is not', () => {
    const again = heap([
      ['2026-04-01', 60],
      ['2026-06-10', 24],
      ['2026-06-18', 22, { turned: true }],
      ['2026-06-22', 48],
    ]);
    expect(judged(again, ON)).toBe('unfinished still-hot');
    expect(judged(again, '2026-06-20')).toBe('finished cool-for-good');
  });
  it('ammonia counts however cool it is', () => {
    expect(
      judged(
        heap([
          ['2026-04-01', 60],
          ['2026-06-20', 20, { smellsOfAmmonia: true }],
        ]),
        ON,
      ),
    ).toBe('unfinished smells-of-ammonia');
  });
  it('a heap that never heated may be raw', () => {
    expect(
      judged(
        heap([
          ['2026-06-01', 18],
          ['2026-06-20', 18],
        ]),
        ON,
      ),
    ).toBe('unknown never-heated');
    expect(
      judged(
        heap(
          [
            ['2026-06-01', 18],
            ['2026-06-20', 18],
          ],
          { hotOnArrival: true },
        ),
        ON,
      ),
    ).toBe('finished cool-for-good');
  });
  // After its heat a heap cures for weeks to months (UCRRA, NRCS-317).
  it('is not nearly finished three weeks after its heat, nor by one reading that no heap can have', () => {
    const young = heap([
      ['2026-06-01', 60],
      ['2026-06-21', 18],
    ]);
    expect(judged(young, ON)).toBe('ripening cooled-lately');
    expect(
      judged(
        heap([
          ['2026-05-31', 60],
          ['2026-06-28', 18],
        ]),
        ON,
      ),
    ).toBe('nearly cool-once');
    expect(
      judged(
        heap([
          ['2026-06-01', 60],
          ['2026-06-10', 18],
          ['2026-06-20', 18],
        ]),
        ON,
      ),
    ).toBe('ripening cooled-lately');
    const come = { hotOnArrival: true, arrivedOn: '2026-06-10' };
    expect(
      judged(
        heap(
          [
            ['2026-06-20', 18],
            ['2026-06-29', 18],
          ],
          come,
        ),
        ON,
      ),
    ).toBe('ripening cooled-lately');
    // 20 °F in the middle, the air 50 °F.
    const misread = heap([
      ['2026-04-01', 60],
      ['2026-06-20', -6.7, { airCelsius: 10 }],
    ]);
    expect(judged(misread, ON)).toBe('unknown colder-than-air');
    expect(judgeBatch(misread, ON).reading?.celsius).toBe(60);
    // One misread in between counts as no cool one, and holds nothing up.
    const between: [string, number, object?][] = [
      ['2026-04-01', 60],
      ['2026-06-10', 0],
      ['2026-06-20', 20],
    ];
    expect(judged(heap(between), ON)).toBe('nearly cool-once');
    expect(
      judged(
        heap([
          ['2026-04-01', 60],
          ['2026-06-20', 8],
        ]),
        ON,
      ),
    ).toBe('nearly cool-once');
  });
  it('takes the air from the weather where the reading has none', () => {
    const cold = heap([['2026-01-20', 26, { airCelsius: undefined }]]);
    expect(judged(cold, ON, () => 4)).toBe('unfinished far-above-air');
    expect(judged(cold, ON, () => 20)).toBe('unknown never-heated');
  });
  it('without a reading goes by what it is called, and never calls that finished', () => {
    expect(judged(heap([]), ON)).toBe('unknown nothing-known');
    expect(judged(heap([], { told: 'finished' }), ON)).toBe('nearly told-only');
    expect(judged(heap([], { told: 'hot' }), ON)).toBe('unfinished told-only');
    expect(judged(record('batch', 'w', { what: 'wood-chips', told: 'finished' }), ON)).toBe(
      'unknown does-not-ripen',
    );
  });
  it('gives the chances of the hidden state along', () => {
    const { chances } = judgeBatch(heap([['2026-06-20', 60]]), ON);
    expect(chances.hot).toBeGreaterThan(0.8);
  });
});

describe('a reading before it is kept', () => {
  const came = record('batch', 'h', { arrivedOn: '2026-06-01', readings: [] });
  const codes = (...[reading, air]: [Parameters<typeof doubtReading>[1], number?]) =>
    doubtReading(came, reading, ON, air).map(({ code }) => code);
  it('is doubted on a day to come, before the heap came, and far below the air of that day', () => {
    expect(codes({ date: '2026-07-01', celsius: 40 })).toEqual(['future']);
    expect(codes({ date: ON, celsius: 40 })).toEqual([]);
    expect(codes({ date: '2026-05-31', celsius: 40 })).toEqual(['before-it-came']);
    expect(codes({ date: '2026-06-01', celsius: 40 })).toEqual([]);
    expect(codes({ date: ON, celsius: 4 }, 15)).toEqual(['below-air']);
    expect(codes({ date: ON, celsius: 5 }, 15)).toEqual([]);
    expect(codes({ date: ON, celsius: 5, airCelsius: 20 }, 15)).toEqual(['below-air']);
    expect(codes({ date: ON, celsius: -6 })).toEqual([]);
  });
  it('asks nothing where the heap was begun before it was noted down', () => {
    const own = record('batch', 'h', { arrivedOn: ON, startedOn: '2026-04-01', readings: [] });
    expect(doubtReading(own, { date: '2026-05-01', celsius: 50 }, ON)).toEqual([]);
  });
});

// NRCS-317: worked at 131 to 170 °F, acted upon at 185 °F.
it('says from 75 °C that a heap is to be turned and from 85 °C that it is to be taken apart, and has it read the next day', () => {
  const of = (celsius: number) => overheating({ id: 'r', date: ON, celsius });
  expect([60, 74.9, 75, 76.7, 84.9, 85].map(of)).toEqual([
    undefined,
    undefined,
    'turn',
    'turn',
    'turn',
    'take-apart',
  ]);
  expect(overheating(undefined)).toBeUndefined();
  expect(readingDue(heap([['2026-06-20', 77]]), ON)).toBe('2026-06-21');
});

describe('when a heap is to be read again', () => {
  it('in its heat every three days, then every week, until it is finished or used up', () => {
    expect(readingDue(heap([['2026-06-20', 50]]), ON)).toBe('2026-06-23');
    expect(readingDue(heap([['2026-06-20', 30]]), ON)).toBe('2026-06-27');
    expect(
      readingDue(
        heap([
          ['2026-04-01', 60],
          ['2026-06-10', 25],
          ['2026-06-20', 22],
        ]),
        ON,
      ),
    ).toBeUndefined();
    expect(readingDue(heap([['2026-06-20', 50]], { usedUpOn: '2026-06-21' }), ON)).toBeUndefined();
  });
  it('a load that came hot at once; one that nobody follows never', () => {
    expect(readingDue(heap([], { hotOnArrival: true, arrivedOn: '2026-06-28' }), ON)).toBe('2026-06-28');
    expect(readingDue(heap([]), ON)).toBeUndefined();
    const suspicion = { state: 'suspected', on: '2026-06-21', why: '' };
    expect(readingDue(heap([['2026-06-20', 50]], { suspicion }), ON)).toBeUndefined();
    expect(
      readingDue(heap([['2026-06-20', 50]], { suspicion: { ...suspicion, state: 'released' } }), ON),
    ).toBe('2026-06-23');
  });
});

it('sets each reading beside the air of its day', () => {
  const curve = heatCurve(
    heap([
      ['2026-06-20', 50],
      ['2026-06-21', 51, { airCelsius: undefined }],
    ]),
    (day) => (day === '2026-06-21' ? 12 : undefined),
  );
  expect(curve.map(({ celsius, airCelsius }) => [celsius, airCelsius])).toEqual([
    [50, 15],
    [51, 12],
  ]);
});
