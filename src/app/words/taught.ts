import type { TaughtRate } from '../../ranker/learn-lessons.ts';
import type { GardenScore } from '../../ranker/learn-score.ts';
import type { ReliabilityBin } from '../../ranker/score-forecasts.ts';

/** Fewer settled cases than this say nothing of how well the tool does. */
export const FEWEST_CASES = 5;

const casesIn = (count: number): string => (count === 1 ? '1 settled case' : `${count} settled cases`);

export const TAUGHT_WORDS = {
  title: 'What this garden has taught',
  leaves: 'What the network learns from your leaves',
  nothing:
    'Nothing yet. When a case is over, say on its page how it ended. What you found out then counts in every later look.',
  lead: (count: number): string =>
    `${casesIn(count)} ${count === 1 ? 'counts' : 'count'} in every look. Guesses do not, nor what was never found out.`,
  rates: 'How often each cause is met',
  caption:
    'Of 1,000 plants that look wrong, so many have this cause at work, whatever the crop. In brackets what this garden’s own rate may well be, eight times in ten',
  cause: 'Cause',
  table: 'In general',
  garden: 'Here',
  from: 'Settled here',
  caseOf: (plant: string, day: string): string => `${plant}, ${day}`,
  others: (count: number): string => `${count} causes not met here yet`,
  how: 'How it learns',
  howLines: [
    'What is met more often than the crop and the season lead one to expect becomes likelier here; the rest a little less likely.',
    'A few cases cannot overturn what is known in general. No cause is taken above eight times its usual odds, or below half of them.',
    'After a year a case counts four fifths, after three years half. Plants of one crop that end the same way in one bed in one year count once.',
    'Only what you recognised and settled is counted. What is easy to recognise therefore comes out too often, and what nobody finds out, never.',
  ],
  score: 'How well Bedside did here',
  tooFew: (count: number): string =>
    `Too few cases to say: ${count === 0 ? 'none' : count} of at least ${FEWEST_CASES} settled ones with a weighing.`,
  unsettled: 'Closed without saying how they ended',
  unsettledWhy: 'Each that you can still settle teaches something.',
  reset: 'Forget what was taught',
  resetWhy: 'The cases stay in the book; they only stop counting. For a new garden, or after a mistake.',
  resetDone: 'Forgotten. Cases settled from now on count.',
  putAside: (count: number): string =>
    `${casesIn(count)} from before the last reset ${count === 1 ? 'is' : 'are'} put aside.`,
  restore: 'Let them count again',
  restored: 'All settled cases count again.',
  bins: {
    caption: 'What was shown at the first look, and what came true. Lines of few cases say little.',
    shown: 'Chance shown',
    cameTrue: 'Came true',
  },
} as const;

/** Per thousand, as whole plants; tenths where there would be few. */
export function perThousand(rate: number): string {
  const count = rate * 1000;
  return count < 9.95 ? count.toFixed(1).replace(/\.0$/, '') : String(Math.round(count));
}

/** "20 (8 to 34)": the garden's rate with the span that holds it eight times in ten. */
export function sayGardenRate({ garden, low, high }: Pick<TaughtRate, 'garden' | 'low' | 'high'>): string {
  const [middle, from, to] = [garden, low, high].map(perThousand);
  return from === to ? `${middle}` : `${middle} (${from} to ${to})`;
}

/** "2 to 4 in 10" */
export const sayBin = ({ from, to }: ReliabilityBin): string =>
  `${from === 0 ? 'up to' : `${Math.round(from * 10)} to`} ${Math.round(to * 10)} in 10`;

export const sayCameTrue = ({ count, cameTrue }: ReliabilityBin): string =>
  `${Math.round(count * cameTrue)} of ${count}`;

const of = (part: number, whole: number): string => `${part} of ${whole}`;

/** How well it did at the first look, in sentences. */
export function describeScore(first: GardenScore, last: GardenScore | undefined): string[] {
  const { cases, shown, tableAlone } = first;
  const better = shown.logLoss < tableAlone.logLoss && shown.brier < tableAlone.brier;
  const worse = shown.logLoss > tableAlone.logLoss && shown.brier > tableAlone.brier;
  return [
    `At the first look, what it turned out to be led the weighing in ${of(first.first, cases)} cases and was among the first three in ${of(first.inFirstThree, cases)}.`,
    ...(last
      ? [
          `Looked at more than once: ${last.cases === 1 ? '1 case' : `${last.cases} cases`}; at the last look it led in ${of(last.first, last.cases)}.`,
        ]
      : []),
    `Brier score ${shown.brier.toFixed(2)}, log loss ${shown.logLoss.toFixed(2)}; 0 would be perfect. Saying only how often each cause is met on such a crop in that season would have earned ${tableAlone.brier.toFixed(2)} and ${tableAlone.logLoss.toFixed(2)}: ${better ? 'the looks were worth it' : worse ? 'so far the looks told less than that' : 'so far about as much'}.`,
  ];
}
