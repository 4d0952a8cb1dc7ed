import { describe, expect, it } from 'vitest';
import {
  COMPOST_STATES,
  type HeapKnown,
  judgeCompost,
  maturityOfFigures,
  maturityOfRise,
  metHotCompostRule,
} from '../../src/garden/compost-state.ts';

const likeliest = (known: HeapKnown): string => {
  const chances = judgeCompost(known);
  return [...COMPOST_STATES].sort((a, b) => chances[b] - chances[a])[0]!;
};

describe('C1 hot long enough (CFR-205203)', () => {
  const log = (celsius: number, days: number, more: object = {}) =>
    metHotCompostRule({
      method: 'vessel-or-aerated',
      dailyCelsius: Array.from({ length: days }, () => celsius),
      turns: 0,
      startRatio: 30,
      ...more,
    });

  it('three days at 55–77 °C in a vessel or aerated pile', () => {
    expect(log(55, 3)).toBe(true);
    expect(log(77, 3)).toBe(true);
    expect(log(60, 2)).toBe(false);
    expect(log(54.9, 10)).toBe(false);
    expect(log(78, 10)).toBe(false);
  });

  it('fifteen days and five turns in a windrow', () => {
    expect(log(60, 15, { method: 'windrow', turns: 5 })).toBe(true);
    expect(log(60, 15, { method: 'windrow', turns: 4 })).toBe(false);
    expect(log(60, 14, { method: 'windrow', turns: 5 })).toBe(false);
  });

  it('started at a carbon to nitrogen of 25–40', () => {
    expect(log(60, 3, { startRatio: 24 })).toBe(false);
    expect(log(60, 3, { startRatio: 40 })).toBe(true);
    expect(log(60, 3, { startRatio: 41 })).toBe(false);
  });
});

describe('C2, C3 warmth over the air', () => {
  it('C2 a core of 50 °C is unfinished, one within 10 K of the air may be finished (UCRRA, NRCS-317)', () => {
    const hot = judgeCompost({ celsius: 50, airCelsius: 15 });
    expect(hot.finished).toBeLessThan(0.02);
    expect(hot.hot + hot.fresh).toBeGreaterThan(0.9);
    expect(judgeCompost({ celsius: 20, airCelsius: 15 }).finished).toBeGreaterThan(0.8);
  });

  it.each([
    [10, 'very-mature'],
    [10.1, 'mature'],
    [20, 'mature'],
    [20.1, 'immature'],
  ] as const)('C3 a rise of %f K is %s (CCQC-2001, from memory)', (rise, maturity) => {
    expect(maturityOfRise(rise)).toBe(maturity);
  });

  it('C3 the same reading says more of a cold day than of a hot one, and less where the air is guessed', () => {
    const on = (airCelsius: number) => judgeCompost({ celsius: 33, airCelsius }).finished;
    expect(on(28)).toBeGreaterThan(5 * on(5));
    const measured = judgeCompost({ celsius: 17, airCelsius: 14 }).finished;
    expect(judgeCompost({ celsius: 17 }).finished).toBeLessThan(measured);
  });

  it('a delivered heap at 60 °C is unfinished, at 30 °C after six or seven weeks nearly ready (common practice, no source)', () => {
    expect(judgeCompost({ celsius: 60 }).finished).toBeLessThan(0.02);
    for (const ageWeeks of [6, 7]) expect(likeliest({ celsius: 30, ageWeeks })).toBe('curing');
  });

  it('C2 age: heat in the first weeks, then weeks to months of curing (UCRRA)', () => {
    const [young, middle, old] = [3, 11, 52].map((ageWeeks) => judgeCompost({ ageWeeks }));
    expect(young!.hot + young!.fresh).toBeGreaterThan(0.8);
    expect(middle!.curing).toBeGreaterThan(young!.curing);
    expect(middle!.curing).toBeGreaterThan(old!.curing);
    expect(old!.finished).toBeGreaterThan(0.9);
  });
});

describe('C4, C5 classes of the Californian index (CCQC-2001, bands from memory)', () => {
  it.each([
    [{ ammoniumToNitrate: 0.49 }, 'very-mature'],
    [{ ammoniumToNitrate: 0.5 }, 'mature'],
    [{ ammoniumToNitrate: 3.1 }, 'immature'],
    [{ ammoniaMgPerKg: 74 }, 'very-mature'],
    [{ ammoniaMgPerKg: 75 }, 'mature'],
    [{ ammoniaMgPerKg: 501 }, 'immature'],
    [{ growthPercent: 91 }, 'very-mature'],
    [{ growthPercent: 90 }, 'mature'],
    [{ growthPercent: 80 }, 'mature'],
    [{ growthPercent: 79 }, 'immature'],
    [{ carbonDioxide: 1.9 }, 'very-mature'],
    [{ carbonDioxide: 8 }, 'mature'],
    [{ carbonDioxide: 8.1 }, 'immature'],
    [{ carbonDioxide: 1, ammoniaMgPerKg: 600 }, 'immature'],
    [{}, undefined],
  ])('%o is %s', (figures, maturity) => {
    expect(maturityOfFigures(figures)).toBe(maturity);
  });

  it('C4 the less mature the state, the less finished', () => {
    const finished = ['finished', 'still-warm', 'hot'].map(
      (told) => judgeCompost({ told: told as 'hot' }).finished,
    );
    expect(finished).toEqual([...finished].sort((a, b) => b - a));
  });
});

describe('C6 ammonia and C15 looks', () => {
  it('C6 a smell of ammonia counts although the heap is cool (SOLVITA-NOTE)', () => {
    const cool: HeapKnown = { celsius: 18, airCelsius: 14 };
    const smelly = judgeCompost({ ...cool, smellsOfAmmonia: true });
    expect(smelly.finished).toBeLessThan(0.4);
    expect(judgeCompost({ ...cool, smellsOfAmmonia: false }).finished).toBeGreaterThan(0.85);
  });

  it('C15 that it looks finished leaves some doubt, and a hot thermometer overrules it (CCQC-INTRO)', () => {
    expect(judgeCompost({ told: 'finished' }).finished).toBeLessThan(0.97);
    expect(judgeCompost({ told: 'finished', celsius: 58 }).finished).toBeLessThan(0.1);
  });

  it('what is told and what is read speak of one state: never more than sure, and they sum to one', () => {
    const both = judgeCompost({ told: 'hot', celsius: 58, ageWeeks: 2, smellsOfAmmonia: true });
    expect(COMPOST_STATES.reduce((sum, state) => sum + both[state], 0)).toBeCloseTo(1, 9);
    expect(both.hot).toBeGreaterThan(judgeCompost({ told: 'hot' }).hot);
  });
});
