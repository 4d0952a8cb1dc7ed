import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guessReading, type WeatherReading, weatherFromTable } from '../../src/season/import-weather.ts';
import { readTable } from '../../src/season/read-table.ts';

const TODAY = '2026-05-31';
const READING: WeatherReading = {
  columns: { date: 0, min: 1, max: 2 },
  dates: 'year-first',
  temperature: 'celsius',
  rain: 'mm',
};

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
    const reading = guessReading(table);
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
    expect(weatherFromTable(dayFirst, guessReading(dayFirst), TODAY).days).toEqual([
      { date: '2026-05-31', meanCelsius: 12 },
    ]);
  });

  it('guesses columns by their names and leaves the others to the grower', async () => {
    const guess = guessReading(
      await readTable('timestamp,soil min 10cm,lowest,highest,avg temp,x\n2026-05-31T00:00,9,3,12,7,1\n'),
    );
    expect(guess).toMatchObject({
      columns: { date: 0, soil: 1, min: 2, max: 3, mean: 4 },
      dates: 'year-first',
    });
    expect(guessReading(await readTable('p,q\n1,2\n')).columns).toEqual({});
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
          const { days, faults } = weatherFromTable(table, guessReading(table), TODAY);
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
