import { dayAfter } from '../days/days.ts';

/** An entry that takes a whole day. The words are the face's. */
export interface CalendarEntry {
  /** The same whenever the same thing is written again, so that a calendar renews it instead of adding another. */
  readonly id: string;
  /** `YYYY-MM-DD` */
  readonly day: string;
  readonly summary: string;
  readonly description?: string;
  readonly location?: string;
}

/** Text of a property (RFC 5545, 3.3.11): backslash, semicolon, comma and line breaks are escaped; no other control characters. */
const escaped = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that the standard forbids in a text
    .replace(/[\u0000-\u0008\u000B-\u001F\u007F]/g, '')
    .replace(/[\\;,]/g, (mark) => `\\${mark}`)
    .replace(/\n/g, '\\n');

const MOST_OCTETS = 75;

const octetsOf = (character: string): number => {
  const code = character.codePointAt(0)!;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
};

/** A line folded so that no piece is longer than 75 octets in UTF-8, never within a character (RFC 5545, 3.1). */
function folded(line: string): string {
  let written = '';
  let octets = 0;
  for (const character of line) {
    const more = octetsOf(character);
    if (octets + more > MOST_OCTETS) {
      written += '\r\n ';
      octets = 1;
    }
    written += character;
    octets += more;
  }
  return written;
}

const plainDay = (day: string): string => day.replace(/-/g, '');
const plainMoment = (moment: string): string => moment.replace(/[-:]|\.\d+/g, '');

/**
 * Entries as an iCalendar file (RFC 5545), each a whole day.
 * @param name of the calendar, as a person reads it
 * @param now ISO 8601, UTC
 */
export function writeCalendar(entries: readonly CalendarEntry[], name: string, now: string): string {
  const events = entries.flatMap(({ id, day, summary, description, location }) => [
    'BEGIN:VEVENT',
    `UID:${escaped(id)}@bedside`,
    `DTSTAMP:${plainMoment(now)}`,
    `DTSTART;VALUE=DATE:${plainDay(day)}`,
    `DTEND;VALUE=DATE:${plainDay(dayAfter(day, 1))}`,
    `SUMMARY:${escaped(summary)}`,
    ...(description ? [`DESCRIPTION:${escaped(description)}`] : []),
    ...(location ? [`LOCATION:${escaped(location)}`] : []),
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ]);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Bedside//Walk//EN',
    'CALSCALE:GREGORIAN',
    `X-WR-CALNAME:${escaped(name)}`,
    ...events,
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}
