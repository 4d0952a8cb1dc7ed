import { CHECKS } from '../../../src/causes/checks.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import { SETTINGS } from '../../../src/signs/settings.ts';
import type { Rule } from './rule.ts';

const CHECK_IDS: readonly string[] = CHECKS.map(({ id }) => id);
const SENTENCE = /^[A-Z].{10,}[.?]$/;
const MOST_SIGNS = 5;

/** A check settles signs of the vocabulary, few enough that every joint result can be enumerated, or one setting. */
function complaintsOfChecks(): string[] {
  return CHECKS.flatMap(({ id, minutes, waitDays, says, settles }) => {
    const settled = 'setting' in settles ? [settles.setting] : settles.signs;
    const known = 'setting' in settles ? Object.keys(SETTINGS) : (ALL_SIGNS as readonly string[]);
    return [
      ...(minutes > 0 && waitDays >= 0 && SENTENCE.test(says)
        ? []
        : [`${id}: takes no time or says nothing`]),
      ...(settled.length <= MOST_SIGNS ? [] : [`${id}: settles more than ${MOST_SIGNS} signs`]),
      ...settled.filter((one) => !known.includes(one)).map((one) => `${id}: cannot settle ${one}`),
    ];
  });
}

export const checksExist: Rule = {
  name: 'checks exist',
  says: 'every cause has two to four checks that can be done, each once, with a sentence for either result; every check serves some cause',
  check(causes) {
    const used = new Set(causes.flatMap(({ checks }) => checks.map(({ check }): string => check)));
    return [
      ...complaintsOfChecks(),
      ...CHECK_IDS.filter((id) => !used.has(id)).map((id) => `${id}: of use to no cause`),
      ...causes.flatMap(({ id, checks }) => {
        const named = checks.map(({ check }): string => check);
        return [
          ...(named.length >= 2 && named.length <= 4 ? [] : [`${id}: has ${named.length} checks`]),
          ...named.filter((name, at) => named.indexOf(name) !== at).map((name) => `${id}: ${name} twice`),
          ...named.filter((name) => !CHECK_IDS.includes(name)).map((name) => `${id}: no check ${name}`),
          ...checks
            .filter(({ ifFound, ifNotFound }) => !SENTENCE.test(ifFound) || !SENTENCE.test(ifNotFound))
            .map(({ check }) => `${id}: ${check} does not say what either result means`),
        ];
      }),
    ];
  },
};
