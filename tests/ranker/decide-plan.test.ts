import { describe, expect, it } from 'vitest';
import { bestPlan, type DecisionTable, lossOfPlan, valueOfAnswers } from '../../src/ranker/decide-plan.ts';

/**
 * The oil wildcatter (Raiffa 1968, tables from HUGIN-OIL and SAS-DTREE; trade fact L7): three exclusive states of the
 * ground, drill or not, a seismic test. Losses are payoffs with the sign turned.
 */
const PRIOR = Float64Array.of(0.5, 0.3, 0.2);
const DRILL: DecisionTable = {
  leave: new Float64Array(3),
  watch: Float64Array.of(1000, 1000, 1000),
  watchCost: 0,
  courses: [{ id: 'drill', needless: 0, remains: Float64Array.of(70, -50, -200) }],
};
const SEISMIC = { closed: [0.1, 0.3, 0.5], open: [0.3, 0.4, 0.4], diffuse: [0.6, 0.3, 0.1] };

const answers = Object.values(SEISMIC).map((given) => {
  const joint = PRIOR.map((p, state) => p * given[state]!);
  const chance = joint.reduce((a, b) => a + b, 0);
  return { chance, chances: joint.map((p) => p / chance), table: DRILL };
});

describe('value of information', () => {
  it('prices the seismic test of the published example', () => {
    const now = bestPlan(DRILL, PRIOR);
    expect(-now.loss).toBeCloseTo(20, 10);
    expect(answers.map(({ chance }) => chance)).toEqual([
      expect.closeTo(0.24, 10),
      expect.closeTo(0.35, 10),
      expect.closeTo(0.41, 10),
    ]);
    const drilling = answers.map(({ chances }) => -lossOfPlan(DRILL, { kind: 'act', courses: [0] }, chances));
    [87.5, 32.857, -30.488].forEach((value, i) => {
      expect(drilling[i]).toBeCloseTo(value, 3);
    });
    expect(valueOfAnswers(now.plan, answers)).toBeCloseTo(12.5, 10);
  });

  it('finds the value of knowing all: an answer for each state is worth 35', () => {
    const states = Array.from(PRIOR, (chance, state) => ({
      chance,
      chances: PRIOR.map((_, other) => (other === state ? 1 : 0)),
      table: DRILL,
    }));
    expect(valueOfAnswers(bestPlan(DRILL, PRIOR).plan, states)).toBeCloseTo(35, 10);
  });

  it('gives nothing for an answer that cannot change the plan', () => {
    const idle = [
      { chance: 0.5, chances: PRIOR, table: DRILL },
      { chance: 0.5, chances: PRIOR, table: DRILL },
    ];
    expect(valueOfAnswers(bestPlan(DRILL, PRIOR).plan, idle)).toBe(0);
  });
});

describe('plans', () => {
  const table: DecisionTable = {
    leave: Float64Array.of(40, 30, 0),
    watch: Float64Array.of(20, 25, 0),
    watchCost: 0.3,
    courses: [
      { id: 'net', needless: 3, remains: Float64Array.of(2, 30, 0) },
      { id: 'drain', needless: 5, remains: Float64Array.of(40, 6, 0) },
    ],
  };

  it('leave what is harmless, and of equals take the gentler', () => {
    expect(bestPlan(table, Float64Array.of(0, 0, 1)).plan).toEqual({ kind: 'leave' });
  });

  it('take two courses where two causes act', () => {
    const { plan, loss } = bestPlan(table, Float64Array.of(1, 1, 0));
    expect(plan).toEqual({ kind: 'act', courses: [0, 1] });
    expect(loss).toBeCloseTo(0.3 + 3 + 5 + 2 + 6, 10);
  });

  it('watch where acting costs more than waiting', () => {
    const costly = { ...table, courses: [{ id: 'clear', needless: 45, remains: Float64Array.of(0, 0, 0) }] };
    expect(bestPlan(costly, Float64Array.of(0.5, 0, 0.5)).plan).toEqual({ kind: 'watch' });
  });
});
