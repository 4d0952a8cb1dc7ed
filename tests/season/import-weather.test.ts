import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doubtWeather, spanOf } from '../../src/season/doubt-weather.ts';
import {
  guessReading,
  type UsualReading,
  type WeatherReading,
  weatherFromTable,
} from '../../src/season/import-weather.ts';
import { readTable } from '../../src/season/read-table.ts';

const TODAY = '2026-05-31';
const READING: WeatherReading = {
  columns: { date: 0, min: 1, max: 2 },
  dates: 'year-first',
  temperature: 'celsius',
  rain: 'mm',
};

const USUAL: UsualReading = { dates: 'day-first', temperature: 'celsius', rain: 'mm' };
const AMERICAN: UsualReading = { dates: 'month-first', temperature: 'fahrenheit', rain: 'inch' };

describe('a table of comma-separated values', () => {
  // The rules of RFC 4180, section 2, one by one.
  it.each([
    [
      'lines end with CRLF; the last one may lack it (1, 2)',
      'a,b\r\n1,2\r\n3,4',
      [
        ['1', '2'],
        ['3', '4'],
      ],
    ],
    ['quoted fields (5)', 'a,b\r\n"1","2"\r\n', [['1', '2']]],
    [
      'separators and line breaks inside quotes (6)',
      'a,b\r\n"1,\r\n5",2\r\n3,4',
      [
        ['1,\r\n5', '2'],
        ['3', '4'],
      ],
    ],
    ['doubled quotes (7)', 'a,b\r\n"say ""so""",2', [['say "so"', '2']]],
  ])('%s', async (_rule, file, rows) => {
    const table = await readTable(file);
    expect(table.columns).toEqual(['a', 'b']);
    expect(table.rows.map(({ cells }) => cells)).toEqual(rows);
    expect(table.brokenLines).toEqual([]);
  });

  it('counts lines as an editor does, over line breaks inside quotes and empty lines', async () => {
    const { rows } = await readTable('a,b\n"x\ny",1\n\nz,2\n');
    expect(rows.map(({ line }) => line)).toEqual([2, 5]);
  });

  it.each([';', '\t', '|'])(
    'takes %j for a separator too, and a byte order mark for nothing',
    async (mark) => {
      const { columns, rows } = await readTable(`\uFEFFday${mark}low\n2026-05-01${mark}3,5\n`);
      expect(columns).toEqual(['day', 'low']);
      expect(rows[0]?.cells).toEqual(['2026-05-01', '3,5']);
    },
  );

  it('loses one line, not the rest, to a quote that never closes', async () => {
    const { rows, brokenLines } = await readTable('a,b\n1,2\n"3,4\n5,6\n7,8\n');
    expect(brokenLines).toEqual([3]);
    expect(rows.map(({ cells }) => cells.join())).toEqual(['1,2', '5,6', '7,8']);
  });

  it('makes nothing of an empty file', async () => {
    expect(await readTable('')).toMatchObject({ columns: [], rows: [] });
    expect(await readTable('\n\n')).toMatchObject({ columns: [], rows: [] });
  });
});

describe('weather from a table', () => {
  it('keeps the good lines of a half-bad file and names each bad one by line', async () => {
    const table = await readTable(
      [
        'day,low,high',
        '2026-05-01,3.5,14',
        '2026-02-30,3,14',
        '2026-05-03,three,14',
        '2026-05-04,15,4',
        '2026-05-05,3,640',
        '"2026-05-06,3,6',
        '2026-05-07,,',
        '2026-05-01,9,9',
        '2026-05-09,,12',
        'some words',
        '2026-06-01,5,15',
      ].join('\n'),
    );
    const { days, faults } = weatherFromTable(table, READING, TODAY);
    expect(days).toEqual([
      { date: '2026-05-01', minCelsius: 3.5, maxCelsius: 14 },
      { date: '2026-05-09', maxCelsius: 12 },
      { date: '2026-06-01', minCelsius: 5, maxCelsius: 15, forecast: true },
    ]);
    expect(faults).toEqual([
      { line: 3, code: 'bad-date', column: 'day', got: '2026-02-30' },
      { line: 4, code: 'bad-number', column: 'low', got: 'three' },
      { line: 5, code: 'lowest-above-highest' },
      { line: 6, code: 'out-of-bounds', column: 'high', got: '640' },
      { line: 7, code: 'broken-quotes' },
      { line: 8, code: 'nothing-to-keep' },
      { line: 9, code: 'day-twice', got: '2026-05-01' },
      { line: 11, code: 'bad-date', column: 'day', got: 'some words' },
    ]);
  });

  it('reads Fahrenheit and inches, commas for points, and days in any order', async () => {
    const table = await readTable('Datum;Min °F;Max °F;Soil °F;Rain inch\n05.31.2026;41;59,9;50;0,5\n');
    const reading = guessReading(table, USUAL);
    expect(reading).toEqual({
      columns: { date: 0, min: 1, max: 2, soil: 3, rain: 4 },
      dates: 'month-first',
      temperature: 'fahrenheit',
      rain: 'inch',
    });
    expect(weatherFromTable(table, reading, TODAY).days).toEqual([
      { date: '2026-05-31', minCelsius: 5, maxCelsius: 15.5, soilCelsius: 10, rainMm: 12.7 },
    ]);
    const dayFirst = await readTable('day,mean\n31/5/2026,12\n');
    expect(weatherFromTable(dayFirst, guessReading(dayFirst, USUAL), TODAY).days).toEqual([
      { date: '2026-05-31', meanCelsius: 12 },
    ]);
  });

  it('guesses columns by their names and leaves the others to the grower', async () => {
    const guess = guessReading(
      await readTable('timestamp,soil min 10cm,lowest,highest,avg temp,x\n2026-05-31T00:00,9,3,12,7,1\n'),
      USUAL,
    );
    expect(guess).toMatchObject({
      columns: { date: 0, soil: 1, min: 2, max: 3, mean: 4 },
      dates: 'year-first',
    });
    expect(guessReading(await readTable('p,q\n1,2\n'), USUAL).columns).toEqual({});
  });
});

describe('the order of days and the unit of a file', () => {
  const order = async (days: readonly string[], usual = USUAL): Promise<string> =>
    guessReading(await readTable(`date,low,high\n${days.map((day) => `${day},1,2`).join('\n')}`), usual)
      .dates;
  const dotted = Array.from({ length: 12 }, (_, at) => `${String(at + 1).padStart(2, '0')}.11.2026`);

  it.each([
    [
      'slashed days that read both ways as the grower writes them',
      ['11/01/2026', '11/02/2026'],
      AMERICAN,
      'month-first',
    ],
    ['the same for a grower who puts the day first', ['11/01/2026', '11/02/2026'], USUAL, 'day-first'],
    [
      'dotted days as day first, whatever the grower does',
      ['01.11.2026', '02.11.2026'],
      AMERICAN,
      'day-first',
    ],
    ['dotted days as day first beside one stray line', [...dotted, '06/13/2026'], AMERICAN, 'day-first'],
    [
      'by most of the days that read one way only',
      ['13/06/2026', '14/06/2026', '06/13/2026'],
      AMERICAN,
      'day-first',
    ],
    ['by those days against the grower’s own way', ['11/01/2026', '11/13/2026'], USUAL, 'month-first'],
    ['by the grower where they disagree evenly', ['13/06/2026', '06/13/2026'], AMERICAN, 'month-first'],
    [
      'dotted days month first where they can be nothing else',
      ['05.01.2026', '05.31.2026'],
      USUAL,
      'month-first',
    ],
    ['the year first beside one stray line', ['2026-05-01', '2026-05-02', '06/13/2026'], USUAL, 'year-first'],
    [
      'the day first beside one line with the year first',
      ['01/05/2026', '02/05/2026', '2026/05/03', '13/05/2026', '14/05/2026'],
      USUAL,
      'day-first',
    ],
  ])('reads %s', async (_says, days, usual, found) => {
    expect(await order(days, usual)).toBe(found);
  });

  it('takes the unit from the head of the file, else from the grower', async () => {
    const guess = async (head: string, usual: UsualReading) =>
      guessReading(await readTable(`date,${head}\n2026-05-01,1,2\n`), usual);
    expect(await guess('low,rain', AMERICAN)).toMatchObject({ temperature: 'fahrenheit', rain: 'inch' });
    expect(await guess('low,rain', USUAL)).toMatchObject({ temperature: 'celsius', rain: 'mm' });
    expect(await guess('low °C,rain mm', AMERICAN)).toMatchObject({ temperature: 'celsius', rain: 'mm' });
    expect(await guess('low °F,rain in', USUAL)).toMatchObject({ temperature: 'fahrenheit', rain: 'inch' });
  });

  const COLD_DAYS = 'date,low,high\n11/01/2026,40,55\n11/02/2026,38,52\n11/03/2026,30,49\n';

  it('keeps three days of an American November where and as warm as they were', async () => {
    const table = await readTable(COLD_DAYS);
    const { days } = weatherFromTable(table, guessReading(table, AMERICAN), '2026-11-29');
    expect(days.map(({ date }) => date)).toEqual(['2026-11-01', '2026-11-02', '2026-11-03']);
    expect(spanOf(days)).toEqual({
      from: '2026-11-01',
      to: '2026-11-03',
      count: 3,
      lowest: -1.11,
      highest: 12.78,
    });
    expect(doubtWeather(days, '2026-11-29')).toEqual([]);
  });

  it('doubts the same days read day first and in °C', async () => {
    const table = await readTable(COLD_DAYS);
    const { days } = weatherFromTable(table, guessReading(table, USUAL), '2026-11-29');
    expect(doubtWeather(days, '2026-11-29')).toEqual([
      { code: 'far-apart', from: '2026-01-11', to: '2026-02-11', days: 31 },
      { code: 'too-hot', date: '2026-01-11', celsius: 55, bound: 46 },
    ]);
  });

  it('doubts a night too hot, air too cold and a day further ahead than forecasts, and no ordinary year', () => {
    const code = (days: Parameters<typeof doubtWeather>[0]) =>
      doubtWeather(days, '2026-05-31').map((doubt) => doubt.code);
    expect(code([{ date: '2026-05-30', minCelsius: 38, maxCelsius: 45 }])).toEqual(['night-too-hot']);
    expect(code([{ date: '2026-05-30', minCelsius: -41 }])).toEqual(['too-cold']);
    expect(code([{ date: '2026-06-30', minCelsius: 8 }])).toEqual(['far-ahead']);
    const year = Array.from({ length: 151 }, (_, at) => ({
      date: new Date(Date.UTC(2026, 0, 1 + at)).toISOString().slice(0, 10),
      minCelsius: -12 + at / 5,
      maxCelsius: at / 4,
    }));
    expect(code(year)).toEqual([]);
    expect(spanOf([])).toBeUndefined();
  });
});

describe('tables spoilt in every way', () => {
  const whole = [
    'day;lowest;highest;rain mm',
    ...Array.from(
      { length: 30 },
      (_, at) => `2026-05-${String(at + 1).padStart(2, '0')};${at / 2};${at + 3},5;${at % 4}`,
    ),
  ].join('\r\n');
  const pieces = fc.constantFrom(
    '"',
    '""',
    ';',
    ',',
    '\n',
    '\r',
    '\u0000',
    '\uFEFF',
    '=1+1',
    '<b>',
    '1e999',
    '-',
    '٣',
    'NaN',
  );

  it('never stop the reading: every line is kept or named, and no day is beyond what weather can be', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(whole.length), fc.nat(12), fc.oneof(pieces, fc.string({ maxLength: 8 }))), {
          maxLength: 12,
        }),
        async (changes) => {
          let file = whole;
          for (const [at, cut, put] of changes) file = file.slice(0, at) + put + file.slice(at + cut);
          const table = await readTable(file);
          const { days, faults } = weatherFromTable(table, guessReading(table, USUAL), TODAY);
          for (const { date, minCelsius, maxCelsius, rainMm } of days) {
            expect(date).toMatch(/^\d{4}-\d\d-\d\d$/);
            expect(Math.abs(minCelsius ?? 0)).toBeLessThanOrEqual(60);
            expect(Math.abs(maxCelsius ?? 0)).toBeLessThanOrEqual(60);
            expect(minCelsius ?? -99).toBeLessThanOrEqual(maxCelsius ?? 99);
            expect(rainMm ?? 0).toBeGreaterThanOrEqual(0);
          }
          const named = new Set(faults.map(({ line }) => line));
          expect(new Set(days.map(({ date }) => date)).size).toBe(days.length);
          expect(days.length + named.size).toBeGreaterThanOrEqual(table.rows.length);
        },
      ),
      { seed: 8, numRuns: 1000 },
    );
  });
});
