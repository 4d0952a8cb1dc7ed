import { CAUTIONS } from '../../../src/causes/cautions.ts';
import { CHECKS } from '../../../src/causes/checks.ts';
import { COURSES } from '../../../src/causes/courses.ts';
import { SETTINGS } from '../../../src/signs/settings.ts';
import type { Rule } from './rule.ts';
import { textsIn } from './texts-in.ts';

const A_SEASON = /\b(mid|high )?(spring|summer|autumn|winter)s?\b|\bwinter(ed|ing)\b/i;
const A_MONTH = /\b(January|February|April|June|July|August|September|October|November|December)\b/;

/** A reason that is given only in this season may name it; one for places without winter may not. */
const isOfSeason = (part: unknown): boolean => {
  const when = (part as { when?: { season?: string } }).when;
  return when?.season !== undefined && when.season !== 'no-winter';
};

export const seasonsWhereTheyAre: Rule = {
  name: 'seasons where they are',
  says: 'a season is named only where it is the circumstance, and a month never: all else is also read where no winter comes',
  check: (causes) =>
    [
      ...causes.map(
        ({ leanings, tempered = [], ...rest }) =>
          [
            rest.id,
            [rest, leanings.filter((one) => !isOfSeason(one)), tempered.filter((one) => !isOfSeason(one))],
          ] as const,
      ),
      ['month', causes.map(({ leanings, tempered }) => [leanings, tempered])] as const,
      ['courses', COURSES] as const,
      ['checks', CHECKS] as const,
      ['cautions', CAUTIONS] as const,
      ['settings', SETTINGS] as const,
    ].flatMap(([where, value]) =>
      textsIn(value)
        .filter((text) => A_MONTH.test(text) || (where !== 'month' && A_SEASON.test(text)))
        .map((text) => `${where} names a season: ${text}`),
    ),
};
