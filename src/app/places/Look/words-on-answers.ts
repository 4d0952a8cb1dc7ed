import type { NextCheckTarget } from '../../../ranker/types.ts';
import { SETTINGS, type Setting } from '../../../signs/settings.ts';
import { answerWords, checkOf } from '../../words/checks.ts';

/** What stands on the buttons that answer a question; of a check that settles several signs nothing, they stand as words beside theirs. */
export function wordsOnAnswers(target: NextCheckTarget): readonly string[] {
  if (target.kind === 'sign') return Object.values(answerWords(target));
  const settles = target.kind === 'check' ? checkOf(target.check)?.settles : target;
  return settles && 'setting' in settles ? wordsOfOptions(SETTINGS[settles.setting]) : [];
}

/** The options of a setting as they are said. */
export const wordsOfOptions = (setting: Setting): readonly string[] =>
  'options' in setting ? setting.options.map(({ says }) => says) : [];
