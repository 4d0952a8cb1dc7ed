import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  germinationIndex,
  judgeExtract,
  judgeRadish,
  MATURITY_TESTS,
} from '../../../src/compare/pot-test/judge-maturity.ts';
import { PotTestError } from '../../../src/compare/pot-test/types.ts';
import { judgeCompost, maturityOfRise } from '../../../src/garden/compost-state.ts';

describe('tests of ripeness', () => {
  it('radish: fifteen of twenty pass, fourteen do not (UF-SARASOTA), and the count is only so sure', () => {
    expect(judgeRadish({ sown: 20, grown: 15 }).ready).toBe(true);
    expect(judgeRadish({ sown: 20, grown: 14 }).ready).toBe(false);
    // The exact chance by jStat's Beta: even at fifteen it is near evens.
    for (const grown of [10, 14, 15, 18, 20])
      expect(judgeRadish({ sown: 20, grown }).chance).toBeCloseTo(
        1 - jstat.jStat.beta.cdf(0.75, grown + 1, 21 - grown),
        7,
      );
    expect(judgeRadish({ sown: 20, grown: 15 }).chance).toBeLessThan(0.6);
    expect(() => judgeRadish({ sown: 20, grown: 21 })).toThrow(PotTestError);
  });

  it('extract: beside water, with the index of Zucconi where roots were measured', () => {
    // 80 % × 60 % gives 48: below 50, strongly poisonous (ZUCCONI).
    expect(germinationIndex(80, 60)).toBe(48);
    const bad = judgeExtract({
      extract: { sown: 15, grown: 12 },
      water: { sown: 15, grown: 15 },
      rootMm: { extract: 18, water: 30 },
    });
    expect(bad).toMatchObject({ grade: 'poisonous' });
    const good = judgeExtract({ extract: { sown: 15, grown: 14 }, water: { sown: 15, grown: 14 } });
    if (good === 'invalid' || bad === 'invalid') throw new Error('void');
    expect(bad.index).toBeCloseTo(48, 10);
    expect(good.index).toBeUndefined();
    expect(good.harmed).toBeLessThan(0.15);
    const none = judgeExtract({ extract: { sown: 15, grown: 3 }, water: { sown: 15, grown: 14 } });
    expect(none !== 'invalid' && none.harmed > 0.95).toBe(true);
    expect(judgeExtract({ extract: { sown: 15, grown: 9 }, water: { sown: 15, grown: 9 } })).toBe('invalid');
  });

  it('self-heating: to 10 K very mature, to 20 mature, above immature (CCQC-2001)', () => {
    expect([8, 10, 15, 20, 21].map(maturityOfRise)).toEqual([
      'very-mature',
      'very-mature',
      'mature',
      'mature',
      'immature',
    ]);
    expect(MATURITY_TESTS.map(({ id }) => id)).toContain('self-heating');
  });

  it('a sowing that is passed frees hardly anything (GERM-COMP); one that fails says more', () => {
    const unripe = (sown?: 'passed' | 'failed'): number => {
      const { fresh, hot } = judgeCompost({ kind: 'manure', ...(sown ? { sown } : {}) });
      return fresh + hot;
    };
    const odds = (chance: number): number => chance / (1 - chance);
    const passed = odds(unripe('passed')) / odds(unripe());
    const failed = odds(unripe('failed')) / odds(unripe());
    expect(passed).toBeLessThan(1);
    expect(passed).toBeGreaterThan(0.5);
    expect(failed).toBeGreaterThan(2);
  });
});
