import { expect, it } from 'vitest';
import { leakOf, SPECIAL_LEAKS, UNLISTED_Q } from '../../../src/causes/leaks.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import { FREQUENCY_WORDS, SPREAD_SIGNS } from '../../../src/signs/vocabulary.ts';

const spread: ReadonlySet<string> = new Set(SPREAD_SIGNS.map(({ id }) => id));

it.each(ALL_SIGNS.map((sign) => [sign]))('%s has a small background rate', (sign) => {
  const leak = leakOf(sign);
  expect(leak).toBeGreaterThanOrEqual(0.005);
  expect(leak).toBeLessThanOrEqual(0.2);
  // How trouble lies and came is true of something by chance; a mark or creature seldom is.
  if (!spread.has(sign) && sign !== 'new-growth-clean') expect(leak).toBeLessThanOrEqual(0.08);
});

it('every rate that departs from its kind says why', () => {
  for (const [sign, special] of Object.entries(SPECIAL_LEAKS)) {
    expect(ALL_SIGNS).toContain(sign);
    expect(special?.because).toMatch(/\w+ \w+ \w+/);
  }
});

it('something else beats the background on marks and creatures, and no cause that shows them sometimes', () => {
  const marks = ALL_SIGNS.filter((sign) => !spread.has(sign) && sign !== 'new-growth-clean');
  for (const sign of marks) expect(UNLISTED_Q, sign).toBeGreaterThan(leakOf(sign));
  expect(UNLISTED_Q).toBeLessThan(FREQUENCY_WORDS.sometimes);
});

// A grower who names every mark would otherwise name several that mean nothing on each plant.
it('by chance a plant carries about one mark', () => {
  const marks = ALL_SIGNS.filter((sign) => sign.includes('@'));
  expect(marks.length).toBe(74);
  expect(marks.reduce((sum, sign) => sum + leakOf(sign), 0)).toBeLessThan(1.1);
});
