import { CREATURE_SIGNS, SPREAD_SIGNS } from '../../../src/signs/vocabulary.ts';
import { nodesOf } from './nodes-of.ts';
import type { Rule } from './rule.ts';

const STRONG: ReadonlySet<string> = new Set(['often', 'usually', 'always']);
const OF_ANY_TROUBLE: ReadonlySet<string> = new Set([
  'stunted',
  ...[...SPREAD_SIGNS, ...CREATURE_SIGNS].map(({ id }) => id),
]);

export const fiveSigns: Rule = {
  name: 'five signs',
  says: 'every listed cause has five signs or more, one of them often seen; something else has only what any trouble shows',
  check: (causes) =>
    causes.flatMap(({ id, signs }) => {
      if (id === 'unlisted')
        return signs
          .flatMap(nodesOf)
          .filter(({ sign }) => !OF_ANY_TROUBLE.has(sign))
          .map(({ sign }) => `unlisted: ${sign} is a sign of its own`);
      return [
        ...(signs.length >= 5 ? [] : [`${id}: has ${signs.length} signs`]),
        ...(signs.flatMap(nodesOf).some(({ word }) => STRONG.has(word))
          ? []
          : [`${id}: shows nothing often`]),
      ];
    }),
};
