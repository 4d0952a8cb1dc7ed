import { CHECKS, type Check, type CheckId } from '../../causes/checks.ts';
import type { NextCheck, NextCheckTarget } from '../../ranker/types.ts';
import { askSetting } from '../../signs/ask-setting.ts';
import type { CauseId, CropId, VerdictId } from '../../signs/vocabulary.ts';
import { CAUSE_NAMES, capitalise, joinWords } from './causes.ts';
import { describeSign, GROUP_NAMES, PLACE_WORDS, SPREAD_ASKS, sayShortly } from './signs.ts';
import { inUnits } from './units.ts';

export const checkOf = (id: CheckId): Check | undefined =>
  (CHECKS as readonly Check[]).find((check) => check.id === id);

/** Where to look (small, above) and what is asked (large), with the numbers that hold for the crop. */
export function describeQuestion(
  target: NextCheckTarget,
  crop?: CropId,
): { readonly where: string; readonly asks: string } {
  if (target.kind === 'setting')
    return { where: 'Where and how it grows', asks: inUnits(askSetting(target.setting, crop)) };
  if (target.kind === 'check')
    return { where: 'A check to make', asks: inUnits(checkOf(target.check)?.says ?? target.check) };
  const sign = describeSign(target.sign);
  const where = sign.group === 'mark' ? PLACE_WORDS[sign.place ?? 'some'].lookAt : GROUP_NAMES[sign.group];
  const spread = (SPREAD_ASKS as Partial<Record<string, string>>)[target.sign];
  return { where, asks: spread ?? `${capitalise(sign.what)}?` };
}

/** In one line, for lists: what there is to find out. */
export function describeTarget(target: NextCheckTarget): string {
  if (target.kind === 'sign')
    return `Look ${describeSign(target.sign).place ? '' : 'for this: '}${sayShortly(target.sign)}`;
  return describeQuestion(target).asks;
}

/** "tells aphids from spider mite"; empty when it tells nothing in particular apart. */
export function describeTellsApart(causes: readonly CauseId[]): string {
  // "Something else" is what a cause is told from, never the other way round.
  const [one, other] = causes[0] === 'unlisted' ? [causes[1], causes[0]] : causes;
  if (!one) return causes[0] ? `speaks for or against ${CAUSE_NAMES[causes[0]]}` : '';
  if (other === 'unlisted') return `tells ${CAUSE_NAMES[one]} from something else`;
  if (!other) return `speaks for or against ${CAUSE_NAMES[one]}`;
  return `tells ${CAUSE_NAMES[one]} from ${CAUSE_NAMES[other]}`;
}

/** Where less is learnt about the causes, in bits, the answer matters by what it does to the verdict. */
const LITTLE_LEARNT = 0.03;
const TELLS_WHETHER: Readonly<Record<VerdictId, string>> = {
  leave: 'to leave it',
  watch: 'to look again later',
  check: 'to check first',
  act: 'to act now',
};

/** What an answer is good for: "tells aphids from spider mite", or "tells whether to leave it" where the cause is hardly in doubt. */
export function describeWhatItTells({
  tellsApart,
  turnsTo = [],
  bits,
}: Pick<NextCheck, 'tellsApart' | 'turnsTo' | 'bits'>): string {
  if (bits >= LITTLE_LEARNT || turnsTo.length === 0) return describeTellsApart(tellsApart);
  return `tells whether ${joinWords(
    turnsTo.map((verdict) => TELLS_WHETHER[verdict]),
    'or',
  )}`;
}

/** Answers to a yes-or-no sign, by what it asks about: one looks for a mark, but knows how a bed lies. */
export function answerWords(check: NextCheckTarget): {
  readonly seen: string;
  readonly absent: string;
} {
  if (check.kind === 'sign' && describeSign(check.sign).group !== 'spread')
    return { seen: 'Yes, I see this', absent: 'No, I looked' };
  return { seen: 'Yes', absent: 'No' };
}

/** The same, short, for lists. */
export const shortAnswers = (sign: string): { readonly seen: string; readonly absent: string } =>
  describeSign(sign).group === 'spread'
    ? { seen: 'yes', absent: 'no' }
    : { seen: 'seen', absent: 'not there' };
