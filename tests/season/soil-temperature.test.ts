import { describe, expect, it } from 'vitest';
import {
  dampingDepthCm,
  nextSoilCelsius,
  typicalSoilCelsius,
  warmthSince,
  waveAtDepth,
} from '../../src/season/soil-temperature.ts';

describe('soil temperature', () => {
  it('without records follows the year, turned by half a year in the south, and says how little it knows', () => {
    const [january, july] = [
      typicalSoilCelsius('2026-01-20', 'north'),
      typicalSoilCelsius('2026-07-25', 'north'),
    ];
    expect(january.celsius).toBeLessThan(5);
    expect(july.celsius).toBeGreaterThan(16);
    expect(typicalSoilCelsius('2026-01-20', 'south').celsius).toBeGreaterThan(16);
    for (const date of [undefined, '2026-01-20', '2026-07-20']) {
      const { celsius, sd } = typicalSoilCelsius(date, 'tropics');
      expect(celsius).toBeGreaterThan(22);
      expect(celsius).toBeLessThan(28);
      expect(sd).toBeGreaterThanOrEqual(4);
    }
    expect(warmthSince(40, '2026-02-01', 'tropics').degreeDays).toBeGreaterThan(40 * 7 * 24);
    expect(july.sd).toBeGreaterThanOrEqual(3);
    expect(typicalSoilCelsius(undefined, 'north').sd).toBeGreaterThan(july.sd);
  });

  it('E20 goes a quarter of the way to the air each day, slower under leaves (ZHENG-1993; our coefficients)', () => {
    const run = (leafArea: number): number[] => {
      let soil = 8;
      return [10, 11, 12, 9].map((air) => {
        soil = nextSoilCelsius(soil, air, leafArea);
        return soil;
      });
    };
    const expectRun = (got: number[], want: number[]) =>
      got.forEach((celsius, day) => {
        expect(celsius).toBeCloseTo(want[day]!, 4);
      });
    expectRun(run(0), [8.5, 9.125, 9.8438, 9.6328]);
    expectRun(run(2), [8.1839, 8.4429, 8.7701, 8.7912]);
  });

  it('E21 with 0.5 mm² a second the daily wave is damped at 11.7 cm, the yearly at 2.24 m (OKSTATE-ST)', () => {
    const daily = dampingDepthCm(0.5, 1);
    expect(daily).toBeCloseTo(11.7, 1);
    expect(dampingDepthCm(0.5, 365.25) / 100).toBeCloseTo(2.24, 2);
    const { share, hoursLate } = waveAtDepth(10, daily);
    expect(share).toBeCloseTo(0.426, 3);
    expect(hoursLate).toBeCloseTo(3.26, 2);
  });

  it('B7 700 degree-days take 70 days at 10 °C, 47 at 15 °C, 35 at 20 °C (KUSON-2005)', () => {
    for (const [celsius, days] of [
      [10, 70],
      [15, 700 / 15],
      [20, 35],
    ] as const)
      expect(warmthSince(days / 7, undefined, 'north', celsius).degreeDays).toBeCloseTo(700, 6);
  });

  it('sums the typical year: more warmth since June than since December, about 4,000 degree-days a year', () => {
    expect(warmthSince(8, '2026-08-01', 'north').degreeDays).toBeGreaterThan(
      3 * warmthSince(8, '2026-02-10', 'north').degreeDays,
    );
    expect(warmthSince(52.18, '2026-08-01', 'north').degreeDays).toBeCloseTo(11 * 365.25, -1);
    expect(warmthSince(8, '2026-08-01', 'south').degreeDays).toBeCloseTo(
      warmthSince(8, '2026-01-30', 'north').degreeDays,
      -1,
    );
  });

  it('E19 an estimate from records is surer than one from the season: two to three degrees (ZHENG-1993)', () => {
    const record = warmthSince(6, '2026-06-01', 'north', 12);
    expect(record.relativeSd * 12).toBeGreaterThanOrEqual(2);
    expect(record.relativeSd * 12).toBeLessThanOrEqual(3);
    expect(record.relativeSd).toBeLessThan(warmthSince(6, '2026-06-01', 'north').relativeSd);
  });
});
