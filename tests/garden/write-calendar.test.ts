import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarEntry, writeCalendar } from '../../src/garden/write-calendar.ts';

const NOW = '2026-05-10T08:30:15.123Z';
const read = (file: string) => {
  const calendar = new ICAL.Component(ICAL.parse(file));
  return {
    calendar,
    events: calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event)),
  };
};

// Read back by ical.js, a parser that had no part in writing it.
describe('a calendar file', () => {
  it('is read by another parser as it was meant', () => {
    const { calendar, events } = read(
      writeCalendar(
        [
          {
            id: 'look-a',
            day: '2026-12-31',
            summary: 'Look at the kale; again, soon',
            description: 'a\nb\\c',
            location: 'Long bed',
          },
          { id: 'heap-b', day: '2028-02-29', summary: '<b>heap</b>' },
        ],
        'Walk',
        NOW,
      ),
    );
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBeTruthy();
    expect(
      events.map(({ uid, summary, description, location }) => ({ uid, summary, description, location })),
    ).toEqual([
      {
        uid: 'look-a@bedside',
        summary: 'Look at the kale; again, soon',
        description: 'a\nb\\c',
        location: 'Long bed',
      },
      { uid: 'heap-b@bedside', summary: '<b>heap</b>', description: null, location: null },
    ]);
    expect(
      events.map(({ startDate, endDate }) => [startDate.isDate, startDate.toString(), endDate.toString()]),
    ).toEqual([
      [true, '2026-12-31', '2027-01-01'],
      [true, '2028-02-29', '2028-03-01'],
    ]);
    expect(events[0]!.component.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-05-10T08:30:15Z');
  });

  it('may be empty of events only as a file that still has its frame', () => {
    expect(read(writeCalendar([], 'Walk', NOW)).events).toEqual([]);
  });

  it('keeps every text, in lines of at most 75 octets that end with CRLF (RFC 5545, 3.1)', () => {
    const words = fc.string({
      unit: fc.constantFrom('a', ',', ';', '\\', '\n', ':', '"', 'ü', '–', '🥬', ' '),
      maxLength: 200,
    });
    fc.assert(
      fc.property(words, words, (summary, description) => {
        const entry: CalendarEntry = { id: 'x', day: '2026-05-10', summary, description };
        const file = writeCalendar([entry], 'Walk', NOW);
        for (const line of file.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(file.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
        const [event] = read(file).events;
        expect(event?.summary).toBe(summary);
        expect(event?.description ?? '').toBe(description);
      }),
      { seed: 5545, numRuns: 300 },
    );
  });
});
