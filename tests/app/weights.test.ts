import { describe, expect, it } from 'vitest';
import { describeMinutes } from '../../src/app/words/minutes.ts';
import { describeWeight } from '../../src/app/words/weights.ts';

describe('a weight in words', () => {
  // 10 log10 of the factor: 3.01 dB = 2, 4.77 dB = 3, 10 dB = 10 (Good 1950; arithmetic).
  it.each([
    [0.2, 'hardly any weight'],
    [1, 'a little more likely'],
    [-1, 'a little less likely'],
    [1.76, 'about one and a half times as likely'],
    [3.01, 'about twice as likely'],
    [-3.01, 'about half as likely'],
    [4.77, 'about 3 times as likely'],
    [-4.77, 'about 3 times less likely'],
    [10, 'about 10 times as likely'],
    [13.98, 'about 25 times as likely'],
    [25, 'a hundred times as likely or more'],
  ])('says %d decibans as "%s"', (decibans, says) => {
    expect(describeWeight(decibans)).toBe(says);
  });
});

describe('minutes in words', () => {
  it.each([
    [0.1, 0, 'a moment'],
    [0.5, 0, 'half a minute'],
    [1, 0, '1 minute'],
    [10, 1, '10 minutes, and a wait until tomorrow'],
    [30, 21, '30 minutes, and a wait of 3 weeks'],
    [3, 7, '3 minutes, and a wait of a week'],
    [2, 3, '2 minutes, and a wait of 3 days'],
  ])('%d minutes and %d days: %s', (minutes, days, says) => {
    expect(describeMinutes(minutes, days)).toBe(says);
  });
});
