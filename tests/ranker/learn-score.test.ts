import { describe, expect, it } from 'vitest';
import { type JudgedLook, scoreLooks } from '../../src/ranker/learn-score.ts';
import { CAUSES } from '../../src/signs/vocabulary.ts';

const only = (shown: JudgedLook['shown'], causes: JudgedLook['causes']): JudgedLook => ({
  causes,
  shown,
  tableAlone: Object.fromEntries(CAUSES.map(({ id }) => [id, 0.02])),
});
/** What the causes that are not kept with a case add: each is scored as 0.0005. */
const restSquares = (count: number): number => count * 0.0005 ** 2;
const restNats = (count: number): number => -count * Math.log(1 - 0.0005);

describe('the tool’s own score in a garden', () => {
  const two = [
    only({ aphids: 0.8, virus: 0.2 }, ['aphids']),
    only({ aphids: 0.6, drought: 0.3, virus: 0.1 }, ['drought']),
  ];
  const score = scoreLooks(two)!;

  it('is nothing without a case', () => {
    expect(scoreLooks([])).toBeUndefined();
  });

  it('counts how often what came true led', () => {
    expect(score).toMatchObject({ cases: 2, first: 1, inFirstThree: 2 });
    // A cause that was not shown at all is behind every other.
    expect(scoreLooks([only({ aphids: 0.5, virus: 0.3, rust: 0.2 }, ['frost'])])).toMatchObject({
      first: 0,
      inFirstThree: 0,
    });
    // One of two that acted together is enough; a tie is not.
    expect(scoreLooks([only({ aphids: 0.5, virus: 0.3 }, ['virus', 'aphids'])])!.first).toBe(1);
    expect(scoreLooks([only({ aphids: 0.5, virus: 0.5 }, ['virus'])])!.first).toBe(0);
  });

  it('gives Brier score and log loss as worked out by hand', () => {
    // 0.2² + 0.2² and 0.6² + 0.7² + 0.1², and the causes that were not shown.
    const squares = 0.04 + 0.04 + restSquares(51) + 0.36 + 0.49 + 0.01 + restSquares(50);
    expect(score.shown.brier).toBeCloseTo(squares / 2, 10);
    const nats =
      -Math.log(0.8) -
      Math.log(0.8) +
      restNats(51) -
      Math.log(0.4) -
      Math.log(0.3) -
      Math.log(0.9) +
      restNats(50);
    expect(score.shown.logLoss).toBeCloseTo(nats / 2, 10);
    expect(score.tableAlone.brier).toBeCloseTo(0.98 ** 2 + 52 * 0.02 ** 2, 10);
    expect(score.tableAlone.logLoss).toBeCloseTo(-Math.log(0.02) - 52 * Math.log(0.98), 10);
  });

  it('sets beside each chance how often it came true', () => {
    expect(score.reliability.map(({ from, count, cameTrue }) => [from, count, cameTrue])).toEqual([
      [0, 1, 0],
      [0.2, 2, 0.5],
      [0.6, 1, 0],
      [0.8, 1, 1],
    ]);
    expect(score.reliability[1]!.meanProbability).toBeCloseTo(0.25, 12);
  });

  it('calls a chance that was not shown small, not impossible', () => {
    expect(Number.isFinite(scoreLooks([only({ aphids: 1 }, ['frost'])])!.shown.logLoss)).toBe(true);
  });
});
