import type { Assumption } from '../../ranker/types.ts';
import { SETTINGS, type Setting } from '../../signs/settings.ts';
import { causeName, joinWords } from './causes.ts';
import { describeChance, describeChanceShortly, GARDENS, GARDENS_SHORT } from './chances.ts';

export const WEIGHING_WORDS = {
  title: 'The weighing',
  nothingSaid:
    'Nothing has been seen or said yet: the beams lie level, and the ranking is only how often each thing happens. A photo or one answer will move them.',
  onlySetting:
    'Nothing has been seen on the plant yet: the ranking is only how often each thing happens on such a crop, in this season and garden.',
  scale: 'this long: ten times as likely',
  key: 'On the right what speaks for it, on the left what speaks against. Touch a block to read it.',
  keyEye: 'you saw it',
  keyCamera: 'the camera saw it',
  keyCameraOrNetwork: 'the camera or the network saw it',
  keyCircumstance: 'crop, season, place, garden',
  forIt: 'For it',
  againstIt: 'Against it',
  nothingFor: 'Nothing speaks for it yet.',
  nothingAgainst: 'Nothing speaks against it yet.',
  reasons: 'All reasons in words',
  smallOnes: (count: number): string =>
    count === 1 ? 'one small reason' : `${count} small reasons together`,
  noReasons: 'No reason for or against it yet.',
  more: 'More about it',
  moreTrouble: 'This page could not be opened just now.',
  mistaken: 'Easily taken for',
  together: 'Acting together',
  rest: (count: number): string => `${count} others, each less likely`,
  ruledOut: (count: number): string =>
    count === 1 ? 'One cause is ruled out' : `${count} causes are ruled out`,
  assumed: 'Taken for granted, because nobody said',
  assumedNothing: 'Nothing had to be taken for granted.',
  reckoned: 'Weighing again …',
  noVerdict: 'No verdict yet, because no sign has been seen. Take a photo, or say what you see.',
  /** Something strikes, and the first questions are not through. */
  noVerdictYet: 'No verdict yet. What you saw is weighed once the question in hand is answered.',
  failed: 'The weighing did not come through this time.',
  failedAgain: 'Weigh again',
  startsAt: (chance: string): string => `Before anything was said: ${chance}.`,
} as const;

export const WITHOUT_SIGNS = 'gardens where a plant looks wrong';

/** "about 6 in 10 gardens with these signs (4 to 8)" */
export const sayChance = (
  chance: { readonly probability: number; readonly low: number; readonly high: number },
  nothingSaid: boolean,
  isFirst = true,
): string => describeChance(chance, !isFirst ? GARDENS_SHORT : nothingSaid ? WITHOUT_SIGNS : GARDENS);

/** Where the beam starts from, in words; `priorDecibans` are decibans of odds. */
export function sayStart(priorDecibans: number): string {
  const odds = 10 ** (priorDecibans / 10);
  return WEIGHING_WORDS.startsAt(
    `${describeChanceShortly(odds / (1 + odds))} gardens where a plant looks wrong`,
  );
}

/** "short of magnesium and aphids: just these two at work in about 3 in 10 gardens"; with a third cause beside them it is another set. */
export const sayTogether = (causes: readonly string[], probability: number): string =>
  `${joinWords(causes.map(causeName))}: just these ${causes.length > 2 ? 'three' : 'two'} at work in ${describeChanceShortly(probability)} gardens`;

/** What was taken for granted, each as half a sentence. */
export function describeAssumption({ setting }: Assumption): string {
  if (setting === 'crop') return 'the crop: reckoned as any vegetable';
  if (setting === 'date') return 'the day: reckoned as today';
  return `${(SETTINGS[setting] as Setting).says}: reckoned as usual`;
}

/** "virus: from about 2 to about 5 in 100", "aphids: from about 6 in 100 to about 3 in 10", "frost: a little less, still about 9 in 10" */
export function sayShift(shift: {
  readonly cause: string;
  readonly before: number;
  readonly after: number;
}): string {
  const [before, after] = [describeChanceShortly(shift.before), describeChanceShortly(shift.after)];
  if (before === after) {
    const way = shift.after > shift.before ? 'more' : 'less';
    return `${causeName(shift.cause)}: a little ${way}, still ${after}`;
  }
  const whole = / in 100?$/;
  const sameWhole = whole.exec(before)?.[0] === whole.exec(after)?.[0];
  return `${causeName(shift.cause)}: from ${sameWhole ? before.replace(whole, '') : before} to ${after}`;
}
