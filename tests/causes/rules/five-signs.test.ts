import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { CREATURE_SIGNS, SPREAD_SIGNS } from '../../../src/signs/vocabulary.ts';

const listed = KNOWLEDGE.filter(({ id }) => id !== 'unlisted');

it.each(listed)('$id can be known by five signs or more', ({ signs }) => {
  expect(signs.length).toBeGreaterThanOrEqual(5);
});

it.each(listed)('$id has at least one sign that it often shows', ({ signs }) => {
  const strong = new Set(['often', 'usually', 'always']);
  expect(
    signs.some((entry) =>
      'sign' in entry
        ? strong.has(entry.frequency)
        : strong.has(entry.old ?? '') || strong.has(entry.new ?? ''),
    ),
  ).toBe(true);
});

it('something else lists only how any trouble lies and comes, and creatures that are a cause by themselves', () => {
  const kinds = new Set<string>([...SPREAD_SIGNS, ...CREATURE_SIGNS].map(({ id }) => id));
  for (const entry of KNOWLEDGE.find(({ id }) => id === 'unlisted')!.signs) {
    const sign = 'sign' in entry ? entry.sign : entry.mark;
    if (sign !== 'stunted') expect(kinds).toContain(sign);
  }
});
