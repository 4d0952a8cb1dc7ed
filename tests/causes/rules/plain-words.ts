import { CAUTIONS } from '../../../src/causes/cautions.ts';
import { CHECKS } from '../../../src/causes/checks.ts';
import { COURSES } from '../../../src/causes/courses.ts';
import type { Rule } from './rule.ts';
import { textsIn } from './texts-in.ts';

/** What is never said, whatever the cause. Active substances from memory, whatever they are sold as: the tool recommends none. */
const FORBIDDEN: readonly (readonly [string, RegExp])[] = [
  ['certainty', /\bcertain(ly|ty)?\b|\bdefinite(ly)?\b|\bwithout (a )?doubt\b|\bguarantee/i],
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

export const plainWords: Rule = {
  name: 'plain words',
  says: 'nothing the knowledge base says claims certainty, names a pesticide, a mark or a dose, or invites to eat',
  check: (causes) =>
    [
      ...causes.map((cause) => [cause.id, cause] as const),
      ['courses', COURSES] as const,
      ['checks', CHECKS] as const,
      ['cautions', CAUTIONS] as const,
    ].flatMap(([where, value]) =>
      textsIn(value).flatMap((text) =>
        FORBIDDEN.filter(([, pattern]) => pattern.test(text)).map(
          ([what]) => `${where} speaks of ${what}: ${text}`,
        ),
      ),
    ),
};
