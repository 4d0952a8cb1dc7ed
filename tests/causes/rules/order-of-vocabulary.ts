import { CAUSES } from '../../../src/signs/vocabulary.ts';
import type { Rule } from './rule.ts';

export const orderOfVocabulary: Rule = {
  name: 'order of the vocabulary',
  says: 'the knowledge base holds every cause of the vocabulary once, in its order',
  check: (causes) =>
    Array.from({ length: Math.max(causes.length, CAUSES.length) }, (_, at) => [
      causes[at]?.id,
      CAUSES[at]?.id,
    ])
      .filter(([held, wanted]) => held !== wanted)
      .map(([held, wanted]) => `expected ${wanted}, got ${held}`),
};
