import { describe, expect, it } from 'vitest';
import { growingYearOf, growingYearsOf, yearBefore } from '../../src/days/growing-year.ts';

describe('the growing year of a day', () => {
  it.each([
    ['2025-06-30', '2025', '2024–25'],
    ['2025-07-01', '2025', '2025–26'],
    ['2025-12-31', '2025', '2025–26'],
    ['2026-01-01', '2026', '2025–26'],
    ['2026-06-30', '2026', '2025–26'],
    ['2099-12-31', '2099', '2099–00'],
  ])('of %s is %s in the north and where no winter comes, %s in the south', (day, calendar, south) => {
    expect(growingYearOf(day, 'north')).toBe(calendar);
    expect(growingYearOf(day, 'tropics')).toBe(calendar);
    expect(growingYearOf(day, 'south')).toBe(south);
  });

  it('sorts by time and holds nothing that a path or an id is split by', () => {
    const years = ['2031-01-05', '2024-08-01', '2025-12-01'].map((day) => growingYearOf(day, 'south'));
    expect(years.sort()).toEqual(['2024–25', '2025–26', '2030–31']);
    for (const year of years) expect(year).not.toMatch(/[/.\- ]/);
  });
});

describe('days that belong to one growing year', () => {
  const parted = (zone: 'north' | 'south' | 'tropics', ...days: string[]) =>
    days.map(growingYearsOf(days, zone));

  it('are parted as the year is, where it has a winter', () => {
    expect(parted('north', '2025-12-20', '2026-01-05')).toEqual(['2025', '2026']);
    expect(parted('south', '2025-12-20', '2026-01-05', '2026-07-01')).toEqual([
      '2025–26',
      '2025–26',
      '2026–27',
    ]);
  });

  it('where none comes lie within a year of the first, in whatever order they are told', () => {
    const days = ['2026-01-05', '2025-12-20', '2026-12-19', '2026-12-20', '2028-02-29', '2029-02-28'];
    const years = parted('tropics', ...days);
    const [a, b, c] = ['2025-12-20', '2026-12-20', '2028-02-29'];
    expect(years).toEqual([a, a, a, b, c, c]);
    expect(parted('tropics', ...[...days].reverse())).toEqual([...years].reverse());
    expect(parted('tropics')).toEqual([]);
  });
});

describe('the growing year before', () => {
  it('is the calendar’s in the north, July to June in the south', () => {
    expect(yearBefore('2026-01-10', 'north')).toEqual({ from: '2025-01-01', to: '2025-12-31' });
    expect(yearBefore('2026-01-10', 'south')).toEqual({ from: '2024-07-01', to: '2025-06-30' });
    expect(yearBefore('2026-07-01', 'south')).toEqual({ from: '2025-07-01', to: '2026-06-30' });
  });

  it('ends half a year before the day where no winter comes, whatever the month', () => {
    expect(yearBefore('2026-01-10', 'tropics')).toEqual({ from: '2024-07-12', to: '2025-07-11' });
  });

  it('lies in the growing year that comes before, on every day', () => {
    for (const zone of ['north', 'south'] as const)
      for (let at = 0; at < 800; at += 1) {
        const day = new Date(Date.UTC(2025, 0, 1) + at * 86_400_000).toISOString().slice(0, 10);
        const { from, to } = yearBefore(day, zone);
        expect(growingYearOf(from, zone)).toBe(growingYearOf(to, zone));
        expect(growingYearOf(to, zone) < growingYearOf(day, zone)).toBe(true);
        expect(Number(growingYearOf(day, zone).slice(0, 4)) - Number(from.slice(0, 4))).toBe(1);
      }
  });
});
