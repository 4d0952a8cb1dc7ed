import { nodesOf } from './nodes-of.ts';
import type { Rule } from './rule.ts';

export const placesGiven: Rule = {
  name: 'places given',
  says: 'every sign of a cause stands once, and every leaf mark has a place',
  check: (causes) =>
    causes.flatMap(({ id, signs }) => {
      const names = signs.map((entry) => ('mark' in entry ? entry.mark : entry.sign));
      return [
        ...names.filter((name, at) => names.indexOf(name) !== at).map((name) => `${id}: ${name} twice`),
        ...names.filter((_, at) => nodesOf(signs[at]!).length === 0).map((name) => `${id}: ${name} nowhere`),
      ];
    }),
};
