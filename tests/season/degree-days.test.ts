import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  averageDegreeDays,
  chillingDose,
  countColdDays,
  fourCaseDegreeDays,
  sineDegreeDays,
} from '../../src/season/degree-days.ts';

describe('degree-days', () => {
  it('E15 average method: mean 64, base 53 °F makes 11 (UC-DD); a 20 °C day over 10 °C makes 10 (WFPU)', () => {
    expect(averageDegreeDays({ max: 74, min: 54 }, 53)).toBe(11);
    expect(averageDegreeDays({ max: 25, min: 15 }, 10)).toBe(10);
  });

  it.each([
    [20, 4, 10, 3.6265, 2],
    [12, 2, 10, 0.3877, 0],
    [18, 8, 10, 3.3877, 3],
    [25, 15, 10, 10, 10],
    [9, 1, 10, 0, 0],
    [70, 40, 50, 7.5424, 5],
  ])(
    'E16 single sine of %d/%d over %d is %f, average %d (Baskerville and Emin 1969; OSU-CALC)',
    (max, min, base, sine, average) => {
      expect(sineDegreeDays({ max, min }, base)).toBeCloseTo(sine, 4);
      expect(averageDegreeDays({ max, min }, base)).toBeCloseTo(average, 6);
    },
  );

  it('E16 agrees with the numeric integral of the sine', () => {
    const numeric = (max: number, min: number, base: number): number => {
      const steps = 200_000;
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const at = (max + min) / 2 + ((max - min) / 2) * Math.sin((2 * Math.PI * (i + 0.5)) / steps);
        sum += Math.max(0, at - base) / steps;
      }
      return sum;
    };
    expect(sineDegreeDays({ max: 20, min: 4 }, 10)).toBeCloseTo(numeric(20, 4, 10), 6);
    expect(sineDegreeDays({ max: 12, min: 2 }, 10)).toBeCloseTo(numeric(12, 2, 10), 6);
  });

  it('E17 the four cases of a weather service (METIE)', () => {
    expect(fourCaseDegreeDays({ max: 20, min: 4 }, 10)).toBe(3.5);
    expect(fourCaseDegreeDays({ max: 12, min: 2 }, 10)).toBe(0.5);
    expect(fourCaseDegreeDays({ max: 9, min: 1 }, 10)).toBe(0);
    // Both cases agree where the mean is the base.
    expect(fourCaseDegreeDays({ max: 14, min: 6 }, 10)).toBe(1);
    expect(fourCaseDegreeDays({ max: 14, min: 6.000001 }, 10)).toBeCloseTo(1, 5);
  });

  it('E18 the average method never counts more than the sine (ACTA-2014)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 25, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (min, rise, base) => {
          const day = { min, max: min + rise };
          expect(sineDegreeDays(day, base)).toBeGreaterThanOrEqual(averageDegreeDays(day, base) - 1e-9);
        },
      ),
      { seed: 18 },
    );
  });
});

describe('cold', () => {
  it('counts days by their mean: those of a French bean below 10 °C (UCSC-KNOTT)', () => {
    const days = [
      { min: 4, max: 14 },
      { min: 5, max: 16 },
      { min: 6, max: 14 },
      { min: 9, max: 11 },
    ];
    expect(countColdDays(days, 10)).toBe(1);
    expect(countColdDays(days, 11)).toBe(4);
  });

  it('E7 three days at 8 °C do more harm to cucumber leaves than a week at 10 °C, 12 °C does none (CUC-CHILL)', () => {
    expect(chillingDose(8, 3)).toBeGreaterThanOrEqual(3);
    expect(chillingDose(10, 7)).toBeLessThan(3);
    expect(chillingDose(5, 1)).toBeGreaterThan(2 * chillingDose(8, 1));
    expect(chillingDose(12, 30)).toBe(0);
  });
});
