import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../../src/causes/checks.ts';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import { SETTINGS } from '../../../src/signs/settings.ts';

const checkIds: readonly string[] = CHECKS.map(({ id }) => id);

describe.each(KNOWLEDGE)('$id', ({ checks }) => {
  it('has a check or more that can be done, each once, with a sentence for either result', () => {
    const named = checks.map(({ check }) => check);
    expect(named.length).toBeGreaterThanOrEqual(1);
    expect(new Set(named).size).toBe(named.length);
    for (const { check, ifFound, ifNotFound } of checks) {
      expect(checkIds).toContain(check);
      for (const sentence of [ifFound, ifNotFound]) expect(sentence).toMatch(/^[A-Z].{10,}[.]$/);
    }
  });
});

it('every check is of use to some cause', () => {
  const used = new Set(KNOWLEDGE.flatMap(({ checks }) => checks.map(({ check }) => check)));
  expect(checkIds.filter((id) => !used.has(id as (typeof CHECKS)[number]['id']))).toEqual([]);
});

it('a check settles at most five signs of the vocabulary, or one setting', () => {
  for (const { id, settles } of CHECKS) {
    if ('setting' in settles) expect(SETTINGS, id).toHaveProperty([settles.setting]);
    else {
      expect(settles.signs.length, id).toBeLessThanOrEqual(5);
      for (const sign of settles.signs) expect(ALL_SIGNS, id).toContain(sign);
    }
  }
});
