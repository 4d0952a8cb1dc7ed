import { CAUTIONS } from '../../../src/causes/cautions.ts';
import { COURSES } from '../../../src/causes/courses.ts';
import type { Rule } from './rule.ts';

export const cautionsListed: Rule = {
  name: 'cautions listed',
  says: 'every cause names cautions of the list, each once, and every caution is given somewhere',
  check(causes) {
    const given = new Set<string>([...causes, ...COURSES].flatMap(({ cautions }) => cautions));
    return [
      ...Object.keys(CAUTIONS)
        .filter((id) => !given.has(id))
        .map((id) => `${id}: never given`),
      ...causes.flatMap(({ id, cautions }) =>
        cautions
          .filter((caution, at) => !(caution in CAUTIONS) || cautions.indexOf(caution) !== at)
          .map((caution) => `${id}: ${caution} is unknown or given twice`),
      ),
    ];
  },
};
