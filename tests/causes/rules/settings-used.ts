import { SETTINGS, type Setting } from '../../../src/signs/settings.ts';
import { outcomesOf } from './circumstances-exist.ts';
import type { Rule } from './rule.ts';

export const settingsUsed: Rule = {
  name: 'settings used',
  says: 'every question about the setting moves some cause, and every thing that can be named in a list does',
  check(causes) {
    const used = new Set(
      causes.flatMap(({ leanings }) =>
        leanings.flatMap(({ when }) => ('setting' in when ? [`${when.setting}=${when.is}`] : [])),
      ),
    );
    return Object.entries<Setting>(SETTINGS).flatMap(([id, setting]) => {
      const idle = outcomesOf(setting).filter((outcome) => !used.has(`${id}=${outcome}`));
      // The ordinary answer of a single choice needs no leaning: the others say how far it departs from them.
      if (setting.kind === 'any-of') return idle.map((outcome) => `${id}: naming ${outcome} tells nothing`);
      return idle.length === outcomesOf(setting).length ? [`${id}: tells nothing`] : [];
    });
  },
};
