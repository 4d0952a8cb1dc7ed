import type { TodayItem } from '../../garden/list-today.ts';
import type { CalendarEntry } from '../../garden/write-calendar.ts';
import { capitalise } from './causes.ts';
import { cropName } from './crops.ts';
import { describeDay, describeDistance } from './dates.ts';
import { sayCelsius } from './units.ts';
import { verdictWord } from './verdicts.ts';

export interface TodayInWords {
  /** "was due Monday 3 June, 2 days ago" */
  readonly when: string;
  readonly what: string;
  readonly more: string;
}

export const TODAY_WORDS = {
  title: 'On today’s path',
  nothing: 'Nothing is due today.',
  next: (day: string, distance: string): string => `Nothing is due today. Next: ${day}, ${distance}.`,
  lookNow: 'Look again now',
  lookNowAt: (plant: string): string => `Look again now: ${plant}`,
  calendar: 'The next two weeks as a calendar file',
  calendarName: 'Garden walk',
  calendarFile: 'garden-walk.ics',
  noBed: 'no bed named',
} as const;

/** When it is due, as the walk says it. */
export const whenOf = (due: string, today: string): string => {
  if (due === today) return 'due today';
  return `${due < today ? 'was due ' : ''}${describeDay(due, today)}, ${describeDistance(due, today)}`;
};

/** With its tenths: a mean just below the limit would else read like the limit itself. */
const tenths = (celsius: number): string => sayCelsius(celsius, 1);

/** One thing to do on the walk, in words. `bed`: name of its bed, empty when there is none. */
export function describeToday(item: TodayItem, bed: string, today: string): TodayInWords {
  const place = bed || TODAY_WORDS.noBed;
  switch (item.what) {
    case 'look': {
      const { kept, due } = item;
      const word = verdictWord(kept.looks.at(-1)?.verdict ?? '');
      return {
        when: whenOf(due, today),
        what: kept.plant,
        more: `${kept.bed || place} · last time: ${word.toLocaleLowerCase('en-GB')}`,
      };
    }
    case 'read-heap':
      return {
        when: whenOf(item.due, today),
        what: `Take the temperature of ${item.batch.name || 'the heap'}`,
        more: 'A reading every few days tells when it is fit to spread.',
      };
    case 'pot-test': {
      const load = item.batch?.name || 'the load';
      return {
        when: whenOf(item.due, today),
        what: item.test.toSow ? `Sow the test pots of ${load}` : `Look at the test pots of ${load}`,
        more: item.test.toSow
          ? 'The sowing card says how.'
          : 'Score each pot before you look up what is in it.',
      };
    }
    case 'trial':
      return {
        when: whenOf(item.due, today),
        what: item.trial.name ? `Measure the trial “${item.trial.name}”` : 'Measure the trial side by side',
        more: `${place} · plant by plant, in the order of the walk.`,
      };
    case 'frost':
    case 'cold': {
      const crop = cropName(item.planting.crop) || item.planting.crop;
      const many = item.days.length;
      const frost = item.what === 'frost';
      const expects = frost
        ? `${sayCelsius(item.expected)} forecast${many > 1 ? ` at the least, ${many} nights` : ''}; it comes to harm at about ${sayCelsius(item.limit)}`
        : `${tenths(item.expected)} forecast as the mean of ${many > 1 ? `the coldest of ${many} days` : 'the day'}; it stands still below about ${tenths(item.limit)}`;
      return {
        when: capitalise(`${describeDay(item.due, today)}, ${describeDistance(item.due, today)}`),
        what: frost ? `Cover the ${crop.toLowerCase()}` : `Cold for the ${crop.toLowerCase()}`,
        more: `${place} · ${expects}.`,
      };
    }
  }
}

/** The same as an entry for a calendar. What is overdue stands on today. */
export function entryOfToday(item: TodayItem, bed: string, today: string): CalendarEntry {
  const { what, more } = describeToday(item, bed, today);
  return {
    id: item.id,
    day: item.due < today ? today : item.due,
    summary: item.what === 'look' ? `Look at ${what} again` : what,
    description: more,
    ...(bed ? { location: bed } : {}),
  };
}
