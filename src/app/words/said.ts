import type { SettingId } from '../../signs/settings.ts';
import type { Answers } from '../../signs/types.ts';
import { BOOK_WORDS } from './book.ts';
import { capitalise } from './causes.ts';
import { describeQuestion, shortAnswers } from './checks.ts';
import { describeSettingValue } from './settings.ts';
import { sayShortly } from './signs.ts';

/** All that was said in a look, as what was asked and what was answered. */
export const saidIn = ({ signs, setting, crop, recorded }: Answers): (readonly [string, string])[] => [
  ...Object.entries(signs).map(
    ([id, answer]) => [capitalise(sayShortly(id)), shortAnswers(id)[answer]] as const,
  ),
  ...Object.entries(setting).map(
    ([id, value]) =>
      [
        describeQuestion({ kind: 'setting', setting: id as SettingId }, crop).asks,
        describeSettingValue(id as SettingId, value) +
          (recorded?.includes(id as SettingId) ? `, ${BOOK_WORDS.look.recorded}` : ''),
      ] as const,
  ),
];
