import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';

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

it('something else lists no sign: the ranker gives it a flat rate on all', () => {
  expect(KNOWLEDGE.find(({ id }) => id === 'unlisted')?.signs).toEqual([]);
});
