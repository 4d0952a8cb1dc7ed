import { describe, expect, it } from 'vitest';
import { dayOf, daysUntil, describeDay, describeDistance } from '../../src/app/words/dates.ts';

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
