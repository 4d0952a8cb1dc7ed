import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../src/causes/cautions.ts';
import { CHECKS } from '../../../src/causes/checks.ts';
import { COURSES } from '../../../src/causes/courses.ts';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';

const FORBIDDEN: readonly (readonly [string, RegExp])[] = [
  ['certainty', /\bcertain(ly|ty)?\b|\bdefinite(ly)?\b|\bwithout (a )?doubt\b|\bguarantee/i],
  // Active substances from memory, whatever they are sold as: the tool recommends none.
  [
    'a pesticide',
    /glyphosate|2,4-d|dicamba|aminopyralid|clopyralid|picloram|pyrethr|permethrin|deltamethrin|neem|spinosad|metaldehyde|ferric phosphate|bordeaux|mancozeb|neonicotinoid|imidacloprid|thuringiensis/i,
  ],
  ['a trade mark', /[™®]/],
  [
    'a dose',
    /\d\s*(g|kg|ml|millilitres?|litres?|grams?|oz|ounces?|tablespoons?|teaspoons?|ppm)\b|\d\s*%\s*solution/i,
  ],
  ['an invitation to eat', /\b(safe|fine|good) to eat\b/i],
];

/** Every text inside a value, keys and ids left out by their lack of a space. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return value.includes(' ') ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}

const spoken = [
  ...KNOWLEDGE.map((cause) => [cause.id, cause] as const),
  ['courses', COURSES] as const,
  ['checks', CHECKS] as const,
  ['cautions', CAUTIONS] as const,
];

describe.each(spoken)('%s', (_, value) => {
  it.each(FORBIDDEN)('never speaks of %s', (_name, pattern) => {
    for (const text of textsIn(value)) expect(text).not.toMatch(pattern);
  });
});

it.each(KNOWLEDGE)(
  '$id says what it is in one or two sentences, or three short ones',
  ({ what, recovery }) => {
    expect(what).toMatch(/^[A-Z].*[.]$/);
    expect(what.length).toBeLessThanOrEqual(240);
    expect(recovery.looksLike).toMatch(/^[A-Z].*[.]$/);
    expect(recovery.lookAgainDays).toBeGreaterThanOrEqual(1);
    expect(recovery.lookAgainDays).toBeLessThanOrEqual(90);
  },
);
