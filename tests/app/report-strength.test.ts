import { describe, expect, it } from 'vitest';
import { strengthOf, strengthSeenBy } from '../../src/app/places/Look/report-strength.ts';

describe('how strongly the camera is said to see', () => {
  it('has three words for a likelihood ratio, the same both ways', () => {
    expect([12, 10, 9, 3, 2, 1 / 2, 1 / 3, 1 / 10].map(strengthOf)).toEqual([
      'strong',
      'strong',
      'some',
      'some',
      'faint',
      'faint',
      'some',
      'strong',
    ]);
  });

  it('is never "clearly" where what was measured lies within two of its errors', () => {
    expect(strengthSeenBy(12, { value: 0.03, se: 0.015 })).toBe('some');
    expect(strengthSeenBy(12, { value: 0.03, se: 0.014 })).toBe('strong');
    expect(strengthSeenBy(2, { value: 0.03, se: 0.015 })).toBe('faint');
    // Where less of the measure speaks for the sign nothing is held against it.
    expect(strengthSeenBy(12, undefined)).toBe('strong');
  });
});
