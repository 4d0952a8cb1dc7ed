import { type Circumstances, SEASONS } from '../../../src/causes/schema.ts';
import { CROP_GROUPS } from '../../../src/signs/crops.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import { SETTINGS, type Setting } from '../../../src/signs/settings.ts';
import { CROPS } from '../../../src/signs/vocabulary.ts';
import type { Rule } from './rule.ts';

const CROP_NAMES: ReadonlySet<string> = new Set([...CROPS, ...Object.keys(CROP_GROUPS)]);
const SIGNS: ReadonlySet<string> = new Set(ALL_SIGNS);

/** Every answer that a setting can have. */
export function outcomesOf(setting: Setting): readonly string[] {
  switch (setting.kind) {
    case 'yes-no':
      return ['yes', 'no'];
    case 'number':
      return setting.bands.map(({ id }) => id);
    default:
      return setting.options.map(({ id }) => id);
  }
}

function exists(when: Circumstances | { readonly sign: string }): boolean {
  if ('sign' in when) return SIGNS.has(when.sign);
  if ('crop' in when) return CROP_NAMES.has(when.crop);
  if ('season' in when) return SEASONS.includes(when.season);
  return outcomesOf(SETTINGS[when.setting] ?? { kind: 'one-of', options: [] }).includes(when.is);
}

export const circumstancesExist: Rule = {
  name: 'circumstances exist',
  says: 'a cause leans, once each, and tempers its losses on circumstances that can be answered',
  check: (causes) =>
    causes.flatMap(({ id, leanings, tempered, onlyCrops }) => {
      const keys = leanings.map(({ when }) => JSON.stringify(when));
      const twice = keys.filter((key, at) => keys.indexOf(key) !== at);
      const all = [...leanings, ...(tempered ?? [])].map(({ when }) => when);
      return [
        ...all
          .filter((when) => !exists(when))
          .map((when) => `${id}: nobody can answer ${JSON.stringify(when)}`),
        ...(onlyCrops ?? []).filter((crop) => !CROP_NAMES.has(crop)).map((crop) => `${id}: no crop ${crop}`),
        ...twice.map((key) => `${id}: leans twice on ${key}`),
      ];
    }),
};
