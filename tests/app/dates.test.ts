import { describe, expect, it } from 'vitest';
import { dayOf, daysUntil, describeDay, describeDays, describeDistance } from '../../src/app/words/dates.ts';
import { METRIC, units } from '../../src/app/words/units.ts';

describe('a day in words', () => {
  it.each([
    // Weekdays from memory of well-known dates: moon landing a Sunday, 29 February 2024 a Thursday.
    ['1969-07-20', '1969-01-01', 'Sunday 20 July'],
    ['2024-02-29', '2024-06-01', 'Thursday 29 February'],
    ['2026-06-18', '2026-06-04', 'Thursday 18 June'],
    ['2026-01-02', '2025-12-30', 'Friday 2 January 2026'],
  ])('says %s on %s as "%s"', (day, today, says) => {
    expect(describeDay(day, today)).toBe(says);
  });

  it.each([
    ['2026-11-01', '2026-11-03', '1 to 3 November 2026', 'November 1 to 3, 2026'],
    ['2026-10-28', '2026-11-03', '28 October to 3 November 2026', 'October 28 to November 3, 2026'],
    [
      '2026-12-30',
      '2027-01-02',
      '30 December 2026 to 2 January 2027',
      'December 30, 2026 to January 2, 2027',
    ],
    ['2026-11-01', '2026-11-01', '1 November 2026', 'November 1, 2026'],
  ])(
    'says the days from %s to %s once with the day and once with the month first',
    (from, to, says, american) => {
      expect(describeDays(from, to)).toBe(says);
      units.value = { ...METRIC, days: 'month-first' };
      expect(describeDays(from, to)).toBe(american);
      units.value = METRIC;
    },
  );

  it('reads the day of a moment in local time as it stands in the file', () => {
    expect(describeDay('2026-06-18T23:59:00', '2026-06-18')).toBe('Thursday 18 June');
  });

  it('does not invent a day out of junk', () => {
    expect(describeDay('yesterday', '2026-06-18')).toBe('a day that cannot be read');
  });

  it.each([
    ['2026-06-18', 'today'],
    ['2026-06-19', 'tomorrow'],
    ['2026-06-17', 'yesterday'],
    ['2026-07-02', 'in 14 days'],
    ['2026-06-04', '14 days ago'],
    ['2026-07-16', 'in 4 weeks'],
    ['2027-06-18', 'in 12 months'],
  ])('says how far %s is from 18 June 2026: %s', (day, says) => {
    expect(describeDistance(day, '2026-06-18')).toBe(says);
  });

  it('counts days across the change of the clocks', () => {
    expect(daysUntil('2026-03-30', '2026-03-28')).toBe(2);
    expect(daysUntil('2026-10-26', '2026-10-24')).toBe(2);
  });

  it('takes the day from the clock of the device, not from UTC', () => {
    expect(dayOf(new Date(2026, 5, 8, 0, 5))).toBe('2026-06-08');
    expect(dayOf(new Date(2026, 5, 8, 23, 55))).toBe('2026-06-08');
  });
});
