import type { Rule } from './rule.ts';

const SENTENCE = /^[A-Z].{15,}[.]$/;

export const mistakenForOthers: Rule = {
  name: 'mistaken for others',
  says: 'every cause names two to five others that it is mistaken for and says in a sentence what tells them apart',
  check(causes) {
    const ids = new Set(causes.map(({ id }) => id));
    return causes.flatMap(({ id, mistakenFor }) => {
      const others = mistakenFor.map(({ cause }) => cause);
      return [
        ...(others.length >= 2 && others.length <= 5 ? [] : [`${id}: names ${others.length} others`]),
        ...others
          .filter((other, at) => other === id || !ids.has(other) || others.indexOf(other) !== at)
          .map((other) => `${id}: ${other} is itself, unknown or named twice`),
        ...mistakenFor
          .filter(({ tellsApart }) => !SENTENCE.test(tellsApart))
          .map(({ cause }) => `${id}: does not say what tells it from ${cause}`),
      ];
    });
  },
};
