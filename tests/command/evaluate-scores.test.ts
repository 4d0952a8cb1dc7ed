import { describe, expect, it } from 'vitest';
import {
  brierScore,
  brierScoreOfClasses,
  calibrationError,
  type Forecast,
  logLoss,
  partsOfBrier,
  reliabilityTable,
} from '../../src/ranker/score-forecasts.ts';

const forecasts = (...pairs: readonly (readonly [number, number])[]): Forecast[] =>
  pairs.map(([probability, y]) => ({ probability, happened: y === 1 }));

describe('Brier score and log loss (L11: BRIER, STATSTEST)', () => {
  it('five forecasts give 0.128', () => {
    const five = forecasts([0.9, 1], [0.8, 1], [0.7, 0], [0.3, 0], [0.1, 0]);
    expect(brierScore(five)).toBeCloseTo(0.128, 12);
  });

  it('a constant one half gives 0.25', () => {
    expect(brierScore(forecasts([0.5, 1], [0.5, 0], [0.5, 1]))).toBe(0.25);
  });

  it('three classes, sum form: (0.7, 0.2, 0.1) with the first true gives 0.14, and a log loss of 0.356675', () => {
    expect(brierScoreOfClasses([0.7, 0.2, 0.1], 0)).toBeCloseTo(0.14, 12);
    expect(logLoss(0.7)).toBeCloseTo(0.356675, 6);
  });

  it('the sum form runs from 0 to 2 and a flat mistake costs a finite log loss', () => {
    expect(brierScoreOfClasses([1, 0], 0)).toBe(0);
    expect(brierScoreOfClasses([1, 0], 1)).toBe(2);
    expect(Number.isFinite(logLoss(0))).toBe(true);
  });
});

// L12: 10 cases in 10 equal bins (GUO-2017 for the error, MURPHY for the parts).
const TEN = forecasts(
  ...Array.from({ length: 4 }, (_, i) => [0.95, i < 3 ? 1 : 0] as const),
  ...Array.from({ length: 4 }, (_, i) => [0.65, i < 2 ? 1 : 0] as const),
  [0.25, 0],
  [0.25, 0],
);

describe('calibration (L12: GUO-2017, MURPHY)', () => {
  it('the expected calibration error is 0.19', () => {
    expect(calibrationError(TEN)).toBeCloseTo(0.19, 12);
  });

  it('Brier 0.2125 = reliability 0.0375 − resolution 0.075 + uncertainty 0.25', () => {
    const { reliability, resolution, uncertainty } = partsOfBrier(TEN);
    expect(brierScore(TEN)).toBeCloseTo(0.2125, 12);
    expect(reliability).toBeCloseTo(0.0375, 12);
    expect(resolution).toBeCloseTo(0.075, 12);
    expect(uncertainty).toBeCloseTo(0.25, 12);
    expect(reliability - resolution + uncertainty).toBeCloseTo(brierScore(TEN), 12);
  });

  it('the table lists the bins that hold something', () => {
    expect(reliabilityTable(TEN).map(({ count, cameTrue }) => [count, cameTrue])).toEqual([
      [2, 0],
      [4, 0.5],
      [4, 0.75],
    ]);
  });

  it('0 and 1 fall into the first and the last bin, 0.3 into the one that begins there', () => {
    const [first, third, last] = reliabilityTable(forecasts([0, 0], [0.3, 0], [1, 1]));
    expect([first?.from, third?.from, last?.from]).toEqual([0, 0.3, 0.9]);
  });
});
