import { describe, expect, it } from 'vitest';
import { seasonOf } from '../../src/season/season-of.ts';

describe('season (meteorological quarters, common practice)', () => {
  it.each([
    ['2026-03-01', 'spring', 'autumn'],
    ['2026-05-31', 'spring', 'autumn'],
    ['2026-06-01', 'summer', 'winter'],
    ['2026-09-01', 'autumn', 'spring'],
    ['2026-12-01', 'winter', 'summer'],
    ['2026-02-28', 'winter', 'summer'],
  ])('of %s is %s in the north and %s in the south', (date, north, south) => {
    expect(seasonOf(date, 'north')).toBe(north);
    expect(seasonOf(date, 'south')).toBe(south);
    // Where no winter comes no date has a season.
    expect(seasonOf(date, 'tropics')).toBe('no-winter');
  });
});
