import type { Span, WeatherDoubt } from '../../season/doubt-weather.ts';
import type { LineFault, WeatherColumn, WeatherReading } from '../../season/import-weather.ts';
import { describeDays } from './dates.ts';
import { GROUND_PLACES } from './ground-places.ts';
import { sayCelsius, sayLength, shownUnit, unitInSentence } from './units.ts';

const wrote = (fault: LineFault): string =>
  `${fault.got ? `“${fault.got}”` : 'nothing'}${fault.column ? ` under “${fault.column}”` : ''}`;

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);

const sayDoubt = (doubt: WeatherDoubt): string => {
  const day = (date: string): string => describeDays(date, date);
  switch (doubt.code) {
    case 'far-apart':
      return `These days lie far apart: ${doubt.days} days from ${day(doubt.from)} to ${day(doubt.to)}. Are the day and the month read the right way round?`;
    case 'far-ahead':
      return `${day(doubt.date)} is ${doubt.days} days from now, further than anyone can forecast. Are the day and the month read the right way round?`;
    case 'too-hot':
      return `${sayCelsius(doubt.celsius)} on ${day(doubt.date)}: air is hardly ever above ${sayCelsius(doubt.bound)} where vegetables grow. Is the file in the other unit?`;
    case 'night-too-hot':
      return `Lowest ${sayCelsius(doubt.celsius)} on ${day(doubt.date)}: a night hardly ever stays above ${sayCelsius(doubt.bound)}. Is the file in the other unit?`;
    case 'too-cold':
      return `${sayCelsius(doubt.celsius)} on ${day(doubt.date)}: air is hardly ever below ${sayCelsius(doubt.bound)} where vegetables grow. Is the file in the other unit?`;
  }
};

/** Weather: typed, read from a file, drawn. */
export const WEATHER_WORDS = {
  title: GROUND_PLACES.weather,
  none: 'No weather yet. A lowest and a highest temperature a day is enough; soil and rain help.',
  typed: 'Type days',
  typedHow: (): string =>
    `Temperatures in ${shownUnit('°C')}, rain in ${unitInSentence('mm')}. Leave empty what you do not know. Days to come are kept as a forecast.`,
  day: 'Day',
  columns: {
    min: 'Lowest',
    max: 'Highest',
    soil: 'Soil',
    rain: 'Rain',
  },
  cell: (day: string, column: string): string => `${day}: ${column}`,
  expected: 'expected',
  today: 'today',
  until: 'Days up to',
  save: 'Keep these days',
  kept: (count: number): string => (count === 1 ? '1 day kept.' : `${count} days kept.`),
  nothingNew: 'Nothing here differs from what is kept.',
  wrong: (day: string): string => `${day}: write numbers, like 12 or 12.5.`,
  crossed: (day: string): string => `${day}: the lowest is above the highest.`,
  beyond: (day: string): string => `${day}: no garden has such weather. Check the numbers.`,
  file: 'From a file',
  fileHow:
    'A table with one day a line, as weather stations save it (CSV). You say once which column is which.',
  choose: 'Choose a file',
  unreadable: 'This file could not be read as a table. Save it as CSV and choose it again.',
  match: 'Which column is which?',
  remembered: 'Columns as you matched them last time.',
  column: {
    date: 'Day',
    min: 'Lowest temperature',
    max: 'Highest temperature',
    mean: 'Mean temperature',
    soil: 'Soil at 10 cm',
    rain: 'Rain',
  } satisfies Record<WeatherColumn, string>,
  notThere: 'Not in the file',
  dates: 'How are days written?',
  dateWords: {
    'year-first': 'Year first (2026-06-18)',
    'day-first': 'Day first (18/06/2026)',
    'month-first': 'Month first (06/18/2026)',
  } satisfies Record<WeatherReading['dates'], string>,
  temperature: 'Temperature in',
  temperatureWords: { celsius: '°C', fahrenheit: '°F' } satisfies Record<
    WeatherReading['temperature'],
    string
  >,
  rain: 'Rain in',
  rainWords: { mm: 'mm', inch: 'inches' } satisfies Record<WeatherReading['rain'], string>,
  good: (count: number): string => `${days(count)} can be kept.`,
  /** Which days, and between what: read back before they are kept. */
  span: ({ from, to, count, lowest, highest }: Span): string =>
    [
      days(count),
      describeDays(from, to),
      ...(lowest === undefined || highest === undefined
        ? []
        : [`lowest ${sayCelsius(lowest)}`, `highest ${sayCelsius(highest)}`]),
    ].join(', '),
  doubt: sayDoubt,
  doubts: 'Look again before you keep them:',
  keptSpan: (count: number, from: string, to: string): string =>
    `${days(count)} kept: ${describeDays(from, to)}.`,
  bad: (count: number): string =>
    count === 1 ? '1 line cannot, and is left out:' : `${count} lines cannot, and are left out:`,
  more: (count: number): string => `and ${count} more.`,
  fault: (fault: LineFault): string =>
    `Line ${fault.line}: ${
      {
        'broken-quotes': 'a quotation mark is never closed.',
        'bad-date': `${wrote(fault)} is no day.`,
        'bad-number': `${wrote(fault)} is no number.`,
        'out-of-bounds': `${wrote(fault)} is beyond what weather can be. Wrong column or unit?`,
        'lowest-above-highest': 'the lowest is above the highest.',
        'nothing-to-keep': 'no temperature and no rain.',
        'day-twice': `${fault.got ?? 'this day'} stands in the file twice; the first is taken.`,
      }[fault.code]
    }`,
  keep: (count: number): string => (count === 1 ? 'Keep this day' : `Keep these ${count} days`),
  leave: 'Leave the file',
  plot: 'Temperatures',
  plotHow: (from: string, to: string): string => `${from} to ${to}, ${shownUnit('°C')}`,
  earlier: 'Earlier',
  later: 'Later',
  crop: 'Hold against a crop',
  noCrop: 'No crop',
  limit: (crop: string, degrees: string): string => `${crop} stands still below ${degrees} (mean of a day)`,
  noLimit: (crop: string): string => `No limit is known for ${crop}.`,
  coldDays: (count: number, crop: string): string =>
    count === 0
      ? `No day too cold for ${crop} here.`
      : count === 1
        ? `1 day too cold for ${crop}, marked below the line.`
        : `${count} days too cold for ${crop}, marked below the line.`,
  cold: 'too cold',
  inWords: 'The same in words',
  says: {
    min: (celsius: number): string => `lowest ${sayCelsius(celsius, 1)}`,
    max: (celsius: number): string => `highest ${sayCelsius(celsius, 1)}`,
    mean: (celsius: number): string => `mean ${sayCelsius(celsius, 1)}`,
    soil: (celsius: number): string => `soil ${sayCelsius(celsius, 1)}`,
    rain: (mm: number): string => `rain ${sayLength('mm', mm)}`,
  },
} as const;
