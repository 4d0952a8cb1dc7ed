import type { Rule } from './rule.ts';

export const baseRates: Rule = {
  name: 'base rates',
  says: 'every cause is rare but not impossible, and all together explain a little more than one trouble a plant, since some act together',
  check(causes) {
    const sum = causes.reduce((total, { baseRate }) => total + baseRate.rate, 0);
    return [
      ...causes
        .filter(({ baseRate }) => !(baseRate.rate >= 0.002 && baseRate.rate <= 0.08))
        .map(({ id, baseRate }) => `${id}: expected a rate from 0.002 to 0.08, got ${baseRate.rate}`),
      ...(sum >= 1 && sum <= 1.35 ? [] : [`expected a sum from 1 to 1.35, got ${sum}`]),
    ];
  },
};
