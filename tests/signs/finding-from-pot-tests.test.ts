import { describe, expect, it } from 'vitest';
import { findingFromPotTests, POT_TEST_BOUNDS } from '../../src/signs/finding-from-pot-tests.ts';
import { findingFromEye } from '../../src/signs/findings-from-answers.ts';
import { triage } from '../../src/triage.ts';

const ratioOf = (ratios: readonly number[]): number | undefined => {
  const finding = findingFromPotTests(ratios);
  return finding && finding.ifPresent / finding.ifAbsent;
};

describe('what pot tests say to the ranking', () => {
  it('is the Bayes factor of their injury, within what samples and labels are worth', () => {
    expect(findingFromPotTests([20])).toMatchObject({ sign: 'pot-test-injury', from: 'records' });
    expect(ratioOf([20])).toBeCloseTo(20, 10);
    expect(ratioOf([0.1])).toBeCloseTo(0.1, 10);
    expect(ratioOf([1e9])).toBeCloseTo(POT_TEST_BOUNDS.most, 10);
    expect(ratioOf([1e-9])).toBeCloseTo(POT_TEST_BOUNDS.least, 10);
    // Never more than the grower's own word for it.
    const eye = findingFromEye('pot-test-injury', 'seen');
    expect(POT_TEST_BOUNDS.most).toBeLessThanOrEqual(eye.ifPresent / eye.ifAbsent);
  });
  it('is silent where nothing was tested, nothing is clear, or the grower has answered', () => {
    expect(findingFromPotTests([])).toBeUndefined();
    expect(findingFromPotTests([1.05])).toBeUndefined();
    expect(findingFromPotTests([50], [findingFromEye('pot-test-injury', 'absent')])).toBeUndefined();
  });
  it('takes the worst load of several', () => {
    expect(ratioOf([0.01, 40])).toBeCloseTo(40, 10);
    expect(ratioOf([0.2, 0.1])).toBeCloseTo(0.2, 10);
  });

  it('moves residue in the ranking as far as a check by eye does, and no other record is needed', () => {
    const ask = (potTests?: readonly number[]) =>
      triage({
        photos: [],
        answers: {
          crop: 'tomato',
          date: '2026-06-18',
          setting: { 'compost-kinds': ['horse-manure'] },
          signs: { 'cupped-up@new': 'seen', aphids: 'absent' },
        },
        today: '2026-06-18',
        zone: 'north',
        draws: 8,
        ...(potTests ? { potTests } : {}),
      });
    const chance = (potTests?: readonly number[]): number =>
      ask(potTests).causes.find(({ id }) => id === 'residue-in-compost')!.probability;
    const offers = (potTests?: readonly number[]): boolean =>
      ask(potTests).openQuestions.some(({ id }) => id === 'pot-test');
    const odds = (p: number): number => p / (1 - p);
    const before = odds(chance());
    expect(odds(chance([150]))).toBeGreaterThan(5 * before);
    expect(odds(chance([0.03]))).toBeLessThan(before / 5);
    expect(chance([1])).toBe(chance());
    // Who has the answer is not asked to sow again; who has half an answer is.
    expect([offers(), offers([3]), offers([150]), offers([0.03])]).toEqual([true, true, false, false]);
  });
});
