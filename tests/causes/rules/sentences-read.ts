import { CAUTIONS } from '../../../src/causes/cautions.ts';
import { CHECKS } from '../../../src/causes/checks.ts';
import { COURSES } from '../../../src/causes/courses.ts';
import type { Cause } from '../../../src/causes/schema.ts';
import type { Rule } from './rule.ts';

const SENTENCES = /^[A-Z].{15,}[.?]$/;
/** Half a sentence that can follow "because": it begins small (or with a name), has three words or more, and no full stop. */
const AFTER_BECAUSE = /^(?:[a-z]|French|[A-Z][a-z]+s )\S*(?: \S+){2,}[^.;,:]$/;

function reasonsOf({ leanings, losses, tempered, remedies }: Cause): string[] {
  return [...leanings, losses, ...(tempered ?? []), ...remedies].map(({ because }) => because);
}

export const sentencesRead: Rule = {
  name: 'sentences read',
  says: 'what a cause is and how recovery looks are sentences, every reason can follow "because", and every instruction ends',
  check: (causes) => [
    ...causes.flatMap((cause) => {
      const { id, what, recovery } = cause;
      return [
        ...(SENTENCES.test(what) && what.length <= 240 ? [] : [`${id}: is not said in a sentence or two`]),
        ...(SENTENCES.test(recovery.looksLike) ? [] : [`${id}: does not say what recovery looks like`]),
        ...(recovery.lookAgainDays >= 1 && recovery.lookAgainDays <= 90 ? [] : [`${id}: has no day to look`]),
        ...reasonsOf(cause)
          .filter((because) => !AFTER_BECAUSE.test(because))
          .map((because) => `${id}: "because ${because}" does not read`),
      ];
    }),
    ...[...COURSES, ...CHECKS, ...Object.values(CAUTIONS).map((says) => ({ id: 'caution', says }))]
      .filter(({ says }) => !SENTENCES.test(says))
      .map(({ id, says }) => `${id}: "${says}" is no sentence`),
    ...COURSES.filter(({ because }) => !AFTER_BECAUSE.test(because)).map(
      ({ id, because }) => `${id}: "because ${because}" does not read`,
    ),
  ],
};
