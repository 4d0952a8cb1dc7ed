import { CAUTIONS } from '../../causes/cautions.ts';
import { howOftenWrong } from '../../compare/pot-test/how-often-wrong.ts';
import { SEED_TESTS_ARE_BLUNT } from '../../compare/pot-test/judge-maturity.ts';
import type { Invalid, InvalidCode } from '../../compare/pot-test/judge-validity.ts';
import type { Harm, HarmWeighed, PotTestResult } from '../../compare/pot-test/read-pot-test.ts';
import { type PotNow, standAtLook } from '../../compare/pot-test/stand-at-look.ts';
import type { PotTest, TestQuestion } from '../../compare/pot-test/types.ts';
import type { PotTestSaid } from '../../garden/ground-records.ts';
import { capitalise, joinWords } from './causes.ts';
import { describeChance, describeChanceShortly } from './chances.ts';
import { describeDay, describeDistance } from './dates.ts';
import { POT_WORDS } from './pot-test.ts';
import { sayLength, shownUnit } from './units.ts';
import { WHERE_IT_LIES } from './where-it-lies.ts';

export const READING_WORDS = {
  seen: 'What the pots show',
  means: 'What it means',
  next: 'What to do',
  follows: 'What follows',
  whyVoid: 'Why it is void',
  wrong: 'How often such a test goes wrong',
  cannot: 'What it cannot know',
  mind: 'Mind',
  range:
    'In brackets: what you would say had you thought a bad load unlikely (1 in 5) or likely (4 in 5) before.',
  plots: {
    of: {
      injury: (): string => 'Injury, points of 100',
      heightMm: (): string => `Mean height, ${shownUnit('mm')}`,
      emerged: (): string => 'Seedlings up, of 100 sown',
    },
    load: 'with the load',
    clean: 'clean mix',
    says: (what: string, looks: number): string =>
      `${what}: every pot as a dot, ${looks === 1 ? 'one look' : `${looks} looks`}, pots with the load beside those of clean mix`,
    inWords: 'The same in numbers',
    line: (day: string, load: string, clean: string): string =>
      `${day}: with the load ${load || 'nothing noted'}; clean mix ${clean || 'nothing noted'}`,
  },
  aside: {
    put: (batch: string, day: string): string => `${batch} is put aside: under suspicion since ${day}.`,
    notPut: (batch: string): string => `${batch} is not under suspicion at present.`,
    freed: (batch: string): string => `${batch} is free to be spread.`,
    stillAside: (batch: string): string =>
      `${batch} stays aside all the same: what was found before outweighs this test.`,
    wentOn: 'It went on',
    wentNowhere: 'It went on no bed that is on record.',
    ranking:
      'A look at a plant on these beds takes this test into account from now on, with the weight it has.',
    rankingNone: 'What came up small or not at all does not speak for weedkiller in later looks.',
    toBatch: 'To the load, where it can be released or put aside',
    ripening: (batch: string): string =>
      `${batch} counts as not finished before it is tested again, however cool it is.`,
    sowable: (batch: string): string =>
      `${batch}: the test is kept with it, and speaks a little for its being ripe.`,
  },
} as const;

const LOADS = 'loads whose pots look like this';

/** The sentence for the strip at the top. */
export function sayVerdict(result: PotTestResult, question: TestQuestion, today: string): string {
  switch (result.verdict) {
    case 'safe-enough':
      return question === 'residue' ? 'Safe enough to spread.' : 'Ripe enough to sow in.';
    case 'do-not-spread':
      return question === 'residue' ? 'Do not spread it.' : 'Not ripe: sow and plant nothing in it yet.';
    case 'invalid':
      return 'This test is void: it says nothing about the load.';
    case 'go-on':
      return result.next === 'look-again' && result.look
        ? `Not decided yet. Look again on ${describeDay(result.look.on, today)}, ${describeDistance(result.look.on, today)}.`
        : 'Not decided, and its time is up.';
  }
}

/** The chance of harm as a frequency. */
export const sayHarm = ({ chance = 0, range }: PotTestResult, question: TestQuestion): string =>
  `${question === 'residue' ? 'Harms what grows in it' : 'Holds seedlings back'}: ${describeChance(
    { probability: chance, ...(range ? { low: range.low, high: range.high } : {}) },
    LOADS,
  )}.`;

const HARM_NAMES: Readonly<Record<Harm, string>> = {
  injury: 'Twisted or cupped growth by the load',
  emergence: 'Seedlings kept from coming up (a fifth of them or more)',
  size: 'Clearly smaller seedlings (a fifth or more)',
};

const points = (share: number): string => String(Math.round(share * 100));

/** Its strength, once it is likelier than not. */
function sayEffect(harm: Harm, { effect: { mean, low, high }, chance }: HarmWeighed): string {
  if (chance <= 0.5) return '';
  switch (harm) {
    case 'injury':
      return ` If so, about ${points(mean)} points of 100 (${points(low)} to ${points(high)}) are to be expected once three sets of leaves are open; fewer show before.`;
    case 'emergence':
      return ` It keeps about ${points(mean)} of 100 seedlings from coming up (${points(low)} to ${points(high)}).`;
    case 'size': {
      const short = (lag: number): string => points(1 - Math.exp(-Math.max(0, lag)));
      return ` They are about ${short(mean)} parts of 100 shorter (${short(low)} to ${short(high)}).`;
    }
  }
}

/** Said where only seedlings were counted: the chance is then hardly more than what was taken beforehand. */
export const sayStillBefore = ({ harms }: PotTestResult, question: TestQuestion): string[] =>
  question === 'residue' && harms?.injury.ratio === 1
    ? ['No leaf has been scored yet: this is little more than what one supposes beforehand.']
    : [];

/** Each harm by itself, the likeliest first. */
export const sayHarms = ({ harms }: PotTestResult): string[] =>
  harms === undefined
    ? []
    : (Object.entries(harms) as [Harm, HarmWeighed][])
        .sort(([, a], [, b]) => b.chance - a.chance)
        .map(
          ([harm, weighed]) =>
            `${HARM_NAMES[harm]}: ${describeChanceShortly(weighed.chance)}.${sayEffect(harm, weighed)}`,
        );

const present = (pots: readonly PotNow[], key: 'injury' | 'heightMm'): number[] =>
  pots.flatMap((pot) => pot[key] ?? []);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const sayUp = (pots: readonly PotNow[]): string => {
  const looked = pots.filter(({ emerged }) => emerged !== undefined);
  const up = looked.reduce((sum, { emerged = 0 }) => sum + emerged, 0);
  return `${up} of ${looked.reduce((sum, { seeds }) => sum + seeds, 0)}`;
};

/** What was seen at the look that the reading rests on, before what it means. */
export function saySeen(test: PotTest, until: string | undefined): string[] {
  const stand = standAtLook(test, until);
  if (!stand) return [];
  const lines = [`Up: ${sayUp(stand.test)} with the load, ${sayUp(stand.control)} in clean mix.`];
  const both = (key: 'injury' | 'heightMm'): [number, number] | undefined => {
    const [load, clean] = [present(stand.test, key), present(stand.control, key)];
    return load.length > 0 && clean.length > 0 ? [mean(load), mean(clean)] : undefined;
  };
  const injury = both('injury');
  const height = both('heightMm');
  if (injury)
    lines.push(
      `Injury on average: ${injury[0].toFixed(0)} points of 100 with the load, ${injury[1].toFixed(0)} in clean mix.`,
    );
  if (height)
    lines.push(
      `Mean height: ${sayLength('mm', Math.round(height[0]))} with the load, ${sayLength('mm', Math.round(height[1]))} in clean mix.`,
    );
  lines.push(
    `Sets of true leaves in clean mix: ${stand.leafSets}${stand.leafSetsCounted ? '' : ', reckoned from the days'}.`,
  );
  return lines;
}

const VOID: Readonly<
  Record<InvalidCode, (fault: Invalid) => { readonly why: string; readonly next: string }>
> = {
  'too-few-control-pots': ({ found, limit }) => ({
    why: `Only ${found} pots of clean mix; it takes ${limit}.`,
    next: `Sow again, with ${limit} pots of clean mix or more.`,
  }),
  'too-few-test-pots': ({ found, limit }) => ({
    why: `Only ${found} pots with the load; it takes ${limit}.`,
    next: `Sow again, with ${limit} pots of the load or more.`,
  }),
  'control-poor-germination': ({ found, limit }) => ({
    why: `In clean mix only ${points(found)} of 100 seeds came up; it takes ${points(limit)}. Old seed, cold or water may be why, and may be why in the other pots too.`,
    next: 'Sow again with fresh seed, warmer, and neither wet nor dry.',
  }),
  'control-injured': ({ found, limit }) => ({
    why: `The pots of clean mix are injured too: ${found.toFixed(0)} points on average, where below ${limit} is usual. The potting mix, water from the other pots, or a spray may be why.`,
    next: 'Sow again with another bag of potting mix, each pot on a saucer of its own, away from any spray.',
  }),
  'control-not-grown': ({ found, limit }) => ({
    why: `In clean mix the seedlings stand at ${found} ${found === 1 ? 'set' : 'sets'} of leaves, not ${limit}, two weeks after the time.`,
    next: 'Sow again, lighter and warmer.',
  }),
  'control-too-light': ({ found, limit }) => ({
    why: `In clean mix the plants weigh ${found.toFixed(1)} g each; it takes ${limit.toFixed(1)} g.`,
    next: 'Sow again, lighter and warmer, with potting mix that holds feed.',
  }),
};

export const sayVoid = ({ invalid }: PotTestResult): { readonly why: string; readonly next: string }[] =>
  invalid.map((fault) => VOID[fault.code](fault));

const REPORT =
  'Tell the supplier, and the authority or advisory service that takes such reports where you live; rules differ. Keep a labelled bag of the load, photos of the pots, and this page.';

/** What to do, by what came out. */
export function sayNext(result: PotTestResult, question: TestQuestion): string[] {
  if (result.verdict === 'invalid') {
    const ways = [...new Set(sayVoid(result).map(({ next }) => next))];
    return question === 'residue' ? [...ways, POT_WORDS.keepAside] : ways;
  }
  if (question === 'ripeness')
    return result.verdict === 'do-not-spread'
      ? ['Leave it for some weeks more, turned and moist, then test again.']
      : result.verdict === 'go-on'
        ? ['Leave it for the time being.']
        : ['Sow and plant in it as you would in any ripe compost, at first where a failure costs little.'];
  switch (result.verdict) {
    case 'do-not-spread':
      return [
        POT_WORDS.keepAside,
        REPORT,
        WHERE_IT_LIES,
        'Put what is in the pots with the rubbish; it goes on no bed and on no heap.',
      ];
    case 'safe-enough':
      return ['Spread it where you like; begin with one bed if much hangs on it.'];
    case 'go-on':
      return result.next === 'sow-again'
        ? ['Sow again with fresh samples from all over the heap, six pots of each kind.', POT_WORDS.keepAside]
        : ['Water all pots alike, and turn the row round.', POT_WORDS.keepAside];
  }
}

const among = (shares: readonly number[], of: number): string => {
  const [low, high] = [Math.min(...shares), Math.max(...shares)].map((share) =>
    Math.round((share * of) / 100),
  );
  if (high === 0) return 'fewer than 1';
  if (low === 0) return `at most ${high}`;
  return low === high ? String(low) : `${low} to ${high}`;
};

/** From the simulated tests, as `compare/pot-test/how-often-wrong.ts` holds them. */
export function sayHowOftenWrong({ question, crop, pots }: PotTest): string[] {
  const each = Math.min(
    ...(['test', 'control'] as const).map((role) => pots.filter((pot) => pot.role === role).length),
  );
  const found = howOftenWrong(question, crop, each);
  if (!found) return [];
  const { harmless, harmful } = found;
  const of = (set: typeof harmless, how: 'safe' | 'stopped' | 'void'): number[] => [
    set.alike[how],
    set.unlike[how],
  ];
  const bad =
    question === 'residue'
      ? 'loads that plainly harm (30 points)'
      : 'composts with 40 of 100 fewer and smaller';
  return [
    'By 10,000 made-up tests of this size, not by tests in gardens. The two numbers: pots that are alike, and pots that differ much.',
    `Of 1,000 ${bad}, ${among(of(harmful, 'safe'), 1000)} were passed by mistake. Of 1,000 harmless ones, ${among(of(harmless, 'stopped'), 1000)} were stopped by mistake.`,
    `Of 100 harmless ones ${among(of(harmless, 'safe'), 100)} were passed, and of 100 harmful ones ${among(of(harmful, 'stopped'), 100)} stopped; of 100 tests ${among([...of(harmless, 'void'), ...of(harmful, 'void')], 100)} were void, the others undecided.`,
  ];
}

/** What no pot can tell. */
export const sayLimits = (question: TestQuestion): string[] =>
  question === 'residue'
    ? [
        'It shows growth as after weedkillers of the auxin type. Which one it was, no pot can tell.',
        'The pots know only what went into them: the samples may have missed a bad corner of the heap.',
        'Salt and unripe compost hurt seedlings too. Small or missing seedlings without a twisted leaf do not speak for weedkiller.',
        'Very small amounts, at which plants live but set few pods or fruit, show in no pot within three weeks.',
      ]
    : [SEED_TESTS_ARE_BLUNT.says, 'It says nothing of weedkiller: radishes bear what twists beans.'];

export const sayCautions = ({ cautions }: PotTestResult): string[] => cautions.map((id) => CAUTIONS[id]);

const SHORT_HARMS: Readonly<Record<Harm, string>> = {
  injury: 'twisted or cupped growth',
  emergence: 'seedlings that did not come up',
  size: 'stunted seedlings',
};

/** Why a batch was put aside or freed, kept with it. */
export function sayWhyOfBatch({ verdict, on, why }: PotTestSaid): string {
  const day = describeDay(on, '');
  if (verdict !== 'do-not-spread') return `Pot test of ${day}: no harm found.`;
  const harms = why.flatMap((code) => SHORT_HARMS[code as Harm] ?? []);
  return `Pot test of ${day}: ${harms.length > 0 ? joinWords(harms) : 'harm'} where the load was in the pot.`;
}

export const sayUndo = (said: PotTestSaid | undefined, batch: string, changed: boolean): string => {
  if (!changed || !said) return POT_WORDS.look.ended;
  const name = capitalise(batch || POT_WORDS.theLoad);
  return said.verdict === 'do-not-spread' ? `${name} is put aside.` : `${name} is free to be spread.`;
};
