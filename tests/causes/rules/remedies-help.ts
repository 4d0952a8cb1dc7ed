import { COURSES } from '../../../src/causes/courses.ts';
import type { Rule } from './rule.ts';

/** What no course helps against: nobody knows what it is, or nothing takes back what the plant has taken up. */
const BEYOND_HELP: readonly string[] = ['unlisted', 'spray-drift'];
const COURSE_IDS: readonly string[] = COURSES.map(({ id }) => id);

export const remediesHelp: Rule = {
  name: 'remedies help',
  says: 'waiting and then treating never loses more than doing nothing; a remedy exists, stands once, and leaves less than doing nothing; what loses nothing needs none; every course serves some cause',
  check(causes) {
    const used = new Set(causes.flatMap(({ remedies }) => remedies.map(({ course }): string => course)));
    return [
      ...COURSE_IDS.filter((id) => !used.has(id)).map((id) => `${id}: helps against nothing`),
      ...causes.flatMap(({ id, losses, tempered, remedies }) => {
        const courses = remedies.map(({ course }): string => course);
        return [
          ...[losses, ...(tempered ?? [])]
            .filter(({ leave, watch }) => !(watch >= 0 && watch <= leave))
            .map(({ leave, watch }) => `${id}: watching loses ${watch}, leaving ${leave}`),
          ...courses
            .filter((course, at) => courses.indexOf(course) !== at)
            .map((one) => `${id}: ${one} twice`),
          ...courses.filter((course) => !COURSE_IDS.includes(course)).map((one) => `${id}: no course ${one}`),
          ...remedies
            .filter(({ remains }) => !(remains >= 0 && remains < losses.leave))
            .map(({ course }) => `${id}: ${course} does not help`),
          ...(losses.leave > 0 && remedies.length === 0 && !BEYOND_HELP.includes(id)
            ? [`${id}: loses, yet nothing helps`]
            : []),
        ];
      }),
    ];
  },
};
