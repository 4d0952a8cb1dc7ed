import { describe, expect, it } from 'vitest';
import { dayAfter } from '../../src/days/days.ts';
import {
  coldDaysBefore,
  meanSoilBetween,
  soilBetween,
  sumDegreeDays,
  type WeatherDay,
} from '../../src/season/daily-weather.ts';
import { typicalSoilCelsius } from '../../src/season/soil-temperature.ts';

const run = (first: string, days: readonly Omit<WeatherDay, 'date'>[]): WeatherDay[] =>
  days.map((day, at) => ({ date: dayAfter(first, at), ...day }));
const air = (means: readonly number[]) => means.map((meanCelsius) => ({ meanCelsius }));

describe('soil temperature day by day', () => {
  it('follows the recursion from a reading (worked from 8.0 °C by hand; the coefficients are from memory)', () => {
    const days = [...run('2026-04-01', [{ soilCelsius: 8 }]), ...run('2026-04-02', air([10, 11, 12, 9]))];
    const soil = soilBetween(days, '2026-04-01', '2026-04-05', 'north');
    [8, 8.5, 9.125, 9.8438, 9.6328].forEach((celsius, at) => {
      expect(soil[at]?.celsius).toBeCloseTo(celsius, 4);
    });
    const covered = soilBetween(days, '2026-04-01', '2026-04-05', 'north', 2);
    [8, 8.1839, 8.4429, 8.7701, 8.7912].forEach((celsius, at) => {
      expect(covered[at]?.celsius).toBeCloseTo(celsius, 4);
    });
    expect(soil.map(({ from }) => from)).toEqual(['reading', 'air', 'air', 'air', 'air']);
  });

  it('is replaced by a reading, and surest there; from air alone it is good to what is published, 1.5 to 2.9 °C', () => {
    const days = run('2026-04-01', [
      ...air(Array(20).fill(9)),
      { meanCelsius: 9, soilCelsius: 6.5 },
      { meanCelsius: 9 },
    ]);
    const soil = soilBetween(days, '2026-04-15', '2026-04-22', 'north');
    expect(soil[0]!.sd).toBeCloseTo(2.2, 6);
    expect(soil.at(-2)).toMatchObject({ celsius: 6.5, sd: 1 });
    expect(soil.at(-1)!.sd).toBeGreaterThan(1);
    expect(soil.at(-1)!.sd).toBeLessThan(2.2);
    for (const { sd } of soil) expect(sd).toBeLessThanOrEqual(3);
  });

  it('is the season’s where nothing is known, and leaves forecasts out', () => {
    const days = run('2026-04-10', [{ meanCelsius: 30, forecast: true as const }]);
    const [day] = soilBetween(days, '2026-04-10', '2026-04-10', 'north');
    expect(day).toMatchObject({ from: 'season', ...typicalSoilCelsius('2026-04-10', 'north') });
  });

  it('has a mean only where half of the days are known', () => {
    const days = run('2026-04-01', air(Array(10).fill(10)));
    expect(meanSoilBetween(days, '2026-04-01', '2026-04-20', 'north')).toMatchObject({
      daysKnown: 10,
      days: 20,
    });
    expect(meanSoilBetween(days, '2026-04-01', '2026-04-21', 'north')).toBeUndefined();
  });
});

describe('cold days', () => {
  it('are counted over the last three weeks, forecasts and unknown days left out', () => {
    const days = [
      ...run('2026-05-01', [
        { minCelsius: 4, maxCelsius: 14 },
        { minCelsius: 8, maxCelsius: 18 },
        { meanCelsius: 9 },
        {},
      ]),
      ...run('2026-05-05', [{ meanCelsius: 2, forecast: true as const }]),
    ];
    expect(coldDaysBefore(days, '2026-05-21', 10)).toEqual({ cold: 2, known: 3 });
    expect(coldDaysBefore(days, '2026-05-22', 10)).toEqual({ cold: 1, known: 2 });
    expect(coldDaysBefore(days, '2026-04-30', 10)).toEqual({ cold: 0, known: 0 });
  });
});

describe('degree-days over a time', () => {
  // Single days as worked from the published formulas (UC-DD, OSU-CALC): (20, 4) and (12, 2) over base 10.
  const days = run('2026-05-01', [
    { minCelsius: 4, maxCelsius: 20 },
    { minCelsius: 2, maxCelsius: 12 },
    { meanCelsius: 15 },
  ]);
  it('add up single days and say how many are missing', () => {
    const sine = sumDegreeDays(days, '2026-05-01', '2026-05-03', 10);
    expect(sine.degreeDays).toBeCloseTo(3.6265 + 0.3877, 3);
    expect(sine.daysMissing).toBe(1);
    expect(sumDegreeDays(days, '2026-05-01', '2026-05-03', 10, 'average')).toEqual({
      degreeDays: 2,
      daysMissing: 1,
    });
  });
});
