import {
  judgeExtract,
  judgeRadish,
  MATURITY_TESTS,
  SEED_TESTS_ARE_BLUNT,
} from '../../compare/pot-test/judge-maturity.ts';
import { maturityOfRise } from '../../garden/compost-state.ts';
import {
  extractOf,
  type RipenessSaid,
  type RipenessTest,
  type RipenessWay,
} from '../../garden/ripeness-test.ts';
import { describeChanceShortly } from './chances.ts';
import { describeDayAndYear } from './dates.ts';
import { sayDegreesApart } from './units.ts';

/** Home tests of ripeness on the page of a batch. */
export const RIPENESS_WORDS = {
  title: 'Is it ripe?',
  lead: 'Seeds are blunt tools for this, so each says how little it proves. A fuller test sets pots of the compost beside pots of clean mix: choose “ripe enough” when you plan a pot test.',
  how: 'Tests that need no laboratory',
  ways: {
    'radish-pots': 'Radishes in it',
    'water-extract': 'Seeds in its water',
    'self-heating': 'Warmth in a flask',
  } satisfies Record<RipenessWay, string>,
  enter: 'Enter what came out',
  enterThis: (way: string): string => `${way}: enter what came out`,
  takes: (days: number): string => `Takes about ${days} days.`,
  change: 'Change',
  changeThis: (what: string): string => `Change: ${what}`,
  remove: 'Delete',
  removeThis: (what: string): string => `Delete: ${what}`,
  removed: 'Test of ripeness deleted.',
  kept: 'Test of ripeness kept.',
  fields: {
    sown: 'Seeds sown in it',
    grown: 'Up and growing on',
    extractSown: 'Seeds in the extract',
    extractGrown: 'Sprouted in the extract',
    waterSown: 'Seeds in plain water',
    waterGrown: 'Sprouted in plain water',
    rootMm: 'If measured: mean root in the extract',
    waterRootMm: 'If measured: mean root in plain water',
    riseCelsius: 'Greatest rise over the room, degrees Celsius',
  },
  faults: {
    missing: 'Write the numbers that it asks for.',
    'more-up': 'More came up than were sown: put one of the numbers right.',
    'bad-count': 'Seeds are counted in whole numbers, one at the least; roots in water have some length.',
  },
} as const;

/** How each test is made. */
export const howToMake = (how: RipenessWay) => MATURITY_TESTS.find(({ id }) => id === how)!;

const SAID: Readonly<Record<RipenessWay, Readonly<Record<RipenessSaid, string>>>> = {
  'radish-pots': {
    passed: 'Three in four or more grew on: ready by this test.',
    failed: 'Fewer than three in four grew on: not ready yet.',
    unclear: 'Undecided.',
    invalid: 'Void.',
  },
  'water-extract': {
    passed: 'Much as in plain water: ready by this test.',
    failed: 'Clearly worse than in plain water: not ready yet.',
    unclear: 'Neither clearly as good as plain water nor clearly worse.',
    invalid: 'Void: too few sprouted in plain water, so the seed is to blame. Try fresher seed.',
  },
  'self-heating': {
    passed: 'It hardly warms any more.',
    failed: 'It still warms by itself: not ripe.',
    unclear: 'Undecided.',
    invalid: 'Void.',
  },
};

const RISE = {
  'very-mature': 'It does not warm any more: at rest.',
  mature: 'It warms a little: ripe enough for most uses.',
  immature: 'It still warms by itself: not ripe.',
} as const;

/** What was counted. */
function sayCounted(test: RipenessTest): string {
  const { how, sown = 0, grown = 0, waterSown = 0, waterGrown = 0, riseCelsius = 0 } = test;
  if (how === 'self-heating') return `${sayDegreesApart(riseCelsius)} over the room`.replace('-', '−');
  if (how === 'radish-pots') return `${grown} of ${sown} up and growing`;
  return `${grown} of ${sown} in the extract, ${waterGrown} of ${waterSown} in plain water`;
}

/** "Radishes in it, Monday 1 June 2026: 14 of 20 up and growing" */
export const sayTest = (test: RipenessTest): string =>
  `${RIPENESS_WORDS.ways[test.how]}, ${describeDayAndYear(test.date)}: ${sayCounted(test)}`;

/** What it comes to, how sure that is, and what is known against the test. */
export function sayRipeness(test: RipenessTest): string[] {
  const { how, said, sown, grown, riseCelsius } = test;
  if (how === 'self-heating')
    return [
      riseCelsius === undefined ? SAID[how][said] : RISE[maturityOfRise(riseCelsius)],
      'Compost that is too dry or was chilled does not warm either, ripe or not. The word for the heap above does not use this test.',
    ];
  const lines: string[] = [SAID[how][said]];
  if (how === 'radish-pots' && sown !== undefined && grown !== undefined)
    lines.push(
      `By so few seeds: ${describeChanceShortly(judgeRadish({ sown, grown }).chance)} that three in four or more would grow on in it. Poor seed looks the same as poor compost.`,
    );
  const extract = extractOf(test);
  const result = how === 'water-extract' && extract ? judgeExtract(extract) : undefined;
  if (result && result !== 'invalid') {
    lines.push(
      `The extract keeps a fifth of the seed or more from sprouting: ${describeChanceShortly(result.harmed)}.`,
    );
    if (result.index !== undefined)
      lines.push(
        `Index of sprouting and roots: ${Math.round(result.index)} of 100. Below 50 it harms strongly, above 80 hardly.`,
      );
  }
  return [...lines, SEED_TESTS_ARE_BLUNT.says];
}
