import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeChance, describeChanceShortly } from '../../src/app/words/chances.ts';

describe('a chance in words', () => {
  it.each([
    [{ probability: 0.6, low: 0.4, high: 0.8 }, 'about 6 in 10 gardens with these signs (4 to 8)'],
    [{ probability: 0.62, low: 0.58, high: 0.64 }, 'about 6 in 10 gardens with these signs'],
    [{ probability: 0.0005, low: 0, high: 0.002 }, 'fewer than 1 in 100 gardens with these signs'],
    [{ probability: 0.03, low: 0.004, high: 0.09 }, 'about 3 in 100 gardens with these signs (up to 9)'],
    [
      { probability: 0.5, low: 0.01, high: 0.97 },
      'about 5 in 10 gardens with these signs (anything from fewer than 1 to more than 9)',
    ],
    [{ probability: 0.96, low: 0.9, high: 0.999 }, 'about 96 in 100 gardens with these signs (90 or more)'],
    [{ probability: 0.1, low: 0.02, high: 0.14 }, 'about 1 in 10 gardens with these signs (or fewer)'],
    [{ probability: 0.9, low: 0.86, high: 0.99 }, 'about 9 in 10 gardens with these signs (or more)'],
    [{ probability: 1, low: 1, high: 1 }, 'more than 99 in 100 gardens with these signs'],
  ])('says %o as "%s"', (chance, says) => {
    expect(describeChance(chance)).toBe(says);
  });

  it('names another whole when asked, and leaves out a range it was not given', () => {
    expect(describeChance({ probability: 0.3 }, 'gardens where a plant looks wrong')).toBe(
      'about 3 in 10 gardens where a plant looks wrong',
    );
  });

  it('never says none, all, certain or percent, whatever the chance', () => {
    const chance = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(chance, chance, chance, (a, b, c) => {
        const [low, probability, high] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        const says = describeChance({ probability, low, high });
        expect(says).not.toMatch(/%|certain|\bnone\b|\ball\b|10 in 10\b|100 in 100\b|\b0 /);
        expect(describeChanceShortly(probability)).toMatch(
          /^(about \d+|fewer than 1|more than 99) in (10|100)$/,
        );
      }),
    );
  });

  it('is off by no more than half a tenth between the ends', () => {
    for (let probability = 0.01; probability < 0.99; probability += 0.001) {
      const said = /about (\d+) in (\d+)/.exec(describeChanceShortly(probability));
      const share = Number(said?.[1]) / Number(said?.[2]);
      expect(Math.abs(share - probability)).toBeLessThanOrEqual(0.0501);
    }
  });
});
