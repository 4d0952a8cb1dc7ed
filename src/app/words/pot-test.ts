import type { SowingCard } from '../../compare/pot-test/plan-pot-test.ts';
import type { PlannedLook } from '../../compare/pot-test/schedule-looks.ts';
import type { PotTestErrorCode, TestQuestion } from '../../compare/pot-test/types.ts';
import type { PotTestRecord, PotTestSaid } from '../../garden/ground-records.ts';
import { describeChanceShortly } from './chances.ts';
import { cropName } from './crops.ts';
import { describeDay, describeDayAndYear, describeDistance } from './dates.ts';
import { inUnits, sayLength, shownUnit } from './units.ts';

/** Pot tests: the list, the plan, the sowing card, the scoring. What they tell stands in `pot-test-reading.ts`. */
export const POT_WORDS = {
  title: 'Pot tests',
  lead: 'Sow a few sensitive plants in a load, and the same beside it in clean mix: three weeks later the pots show, more often than not, whether it harms.',
  none: 'No pot test yet.',
  toBook: 'The book',
  toList: 'All pot tests',
  toTest: 'Back to the test',
  running: 'Running',
  ended: 'Ended',
  sow: 'Sow a pot test',
  notFound: 'There is no such pot test on this device.',
  theLoad: 'the load',
  of: (batch: string): string => `Pot test of ${batch || 'a load that was deleted'}`,
  questions: {
    residue: 'Does it carry weedkiller?',
    ripeness: 'Is it ripe enough to sow in?',
  } satisfies Record<TestQuestion, string>,
  plan: {
    title: 'Plan a pot test',
    of: (batch: string): string => `Plan a pot test of ${batch}`,
    which: 'Of which load or heap?',
    noBatch: 'No load or heap on record yet. Put it on record first; then it can be tested.',
    toBatches: 'Add a load or heap',
    question: 'What is to be found out?',
    sowOn: 'Day of sowing',
    beds: 'Would it go on …',
    bedsWords: { one: 'one bed', several: 'several beds' },
    follows: 'Are beans, peas, potatoes, tomatoes or lettuce to follow there?',
    again: 'An earlier test of it ended undecided. This one takes six pots of each kind, so that it decides.',
    yes: 'Yes',
    no: 'No',
    seeds: 'Of which is there seed?',
    warmth: 'How warm do the pots stand?',
    warmthWords: {
      warm: (): string => inUnits('warm, 16 °C or more'),
      cool: (): string => inUnits('cool, 8 to 15 °C'),
      cold: (): string => 'colder',
    },
    comesTo: 'What it comes to',
    sowing: ({ crop, potsEach, seedsPerPot, question }: SowingCard): string =>
      question === 'residue'
        ? `${cropName(crop.id)}: ${potsEach} pots with the load and ${potsEach} with clean mix, ${seedsPerPot} seeds in each, ${2 * potsEach * seedsPerPot} seeds in all.`
        : `${cropName(crop.id)}: ${potsEach} pots of the compost itself and ${potsEach} of clean mix, ${seedsPerPot} seeds in each, ${2 * potsEach * seedsPerPot} seeds in all.`,
    takes: (last: string, from: string): string =>
      `About three looks of a minute each; the last on ${describeDay(last, from)}.`,
    layOut: 'Lay it out',
    impossible:
      'None of the seed at hand can answer this there. Find a warmer place, or other seed: bean, pea, broad bean or tomato; radish for ripeness.',
  },
  tells: ({ tells, potsEach, question }: SowingCard): string =>
    tells === undefined
      ? ''
      : question === 'residue'
        ? `With ${potsEach} pots of each kind, such a test stops ${describeChanceShortly(tells.stopsHarmful)} loads that plainly harm beans, and frees ${describeChanceShortly(tells.freesClean)} clean ones. The others take a second sowing.`
        : `With ${potsEach} pots of each kind, such a test finds ${describeChanceShortly(tells.stopsHarmful)} composts in which clearly fewer come up and grow, and passes ${describeChanceShortly(tells.freesClean)} ripe ones. The others take a second sowing.`,
  card: {
    title: 'Sowing card',
    of: (batch: string): string => `Sowing card: ${batch}`,
    print: 'Print it',
    hide: 'It shows which pot holds what. Keep it out of sight while you score.',
    sownToday: 'Sown today',
    sowOn: (day: string): string => `To be sown on ${describeDayAndYear(day)}.`,
    sownOn: (day: string): string => `Sown on ${describeDayAndYear(day)}.`,
    otherDay: 'It was sown on another day',
    day: 'Sown on',
    sownKept: 'Day of sowing kept. The looks are counted from it.',
    needs: 'What it takes',
    pots: ({ potsEach, potCm }: SowingCard): string =>
      inUnits(`${2 * potsEach} pots ${potCm[0]} to ${potCm[1]} cm wide, each with a saucer of its own`),
    seeds: ({ pots, crop, sowMm }: SowingCard): string =>
      `${cropName(crop.id)}: ${pots.reduce((sum, { seeds }) => sum + seeds, 0)} seeds of one lot; ${pots[0]?.seeds ?? 0} in each pot, ${sayLength('mm', sowMm)} deep`,
    labels: (from: string, to: string): string => `Labels ${from} to ${to}, one letter on each pot`,
    mixes: 'Mix',
    inTest: ({ mix: { test }, question }: SowingCard): string =>
      question === 'ripeness'
        ? 'With the load: the compost itself, nothing added'
        : `With the load: ${parts(test.batch)} of the load, ${parts(test.pottingMix)} of potting mix, by volume`,
    inControl: 'Clean mix: the same potting mix and nothing else',
    places: 'Where each pot stands',
    placesHow:
      'Chance chose the places: in every pair one pot holds the load, one clean mix. The ring is the saucer.',
    load: 'load',
    clean: 'clean',
    inWords: (load: string, clean: string): string => `With the load: ${load}. Clean mix: ${clean}.`,
    steps: 'Step by step',
    looks: 'When to look',
    lookWords: {
      count: 'count who is up',
      score: 'score leaves and height',
      last: 'score again; then it can end',
    } satisfies Record<PlannedLook['what'], string>,
    mind: 'Mind',
    ownSaucer: 'Water from one pot must not reach another: no shared saucers, no shared tray.',
  },
  /** Holds for every load under test. */
  keepAside: 'Keep the load where it is, covered and labelled, so that nobody takes from it or passes it on.',
  look: {
    title: 'Score the pots',
    when: (day: string, today: string): string => `Look of ${describeDay(day, today)}`,
    otherDay: 'Another day',
    day: 'Day of this look',
    pots: 'Pots from one end of the row to the other',
    pot: (label: string): string => `Pot ${label}`,
    potDone: (label: string): string => `Pot ${label}, scored`,
    emerged: (seeds: number): string => `Up so far, of ${seeds}`,
    emergedHow: 'Those that died since count too.',
    emergedFirst: 'Say first how many are up.',
    nothingUp: 'Nothing is up: there are no leaves to score.',
    injury: 'How do most of its seedlings look? Point at it.',
    injuryHow: 'Judge the whole pot beside the best of the row; the broken stroke is as tall as those.',
    notBeans: 'Drawn as beans; other seedlings twist in the same way.',
    injuryNo: 'not judged',
    lastTime: (what: string): string => `last time ${what}`,
    leafSets: 'Sets of true leaves open',
    leafSetsMore: '3 or more',
    height: (): string => `Mean height, ${shownUnit('mm')}`,
    heightHow: 'From the soil to the tip. The middle one will do.',
    grams: 'Cut and weighed, all shoots, g',
    photo: (label: string): string => `Photo of pot ${label}`,
    photoAdd: 'Add a photo',
    photoDrop: 'Take the photo away',
    photoGone: 'Photo taken away.',
    photoMeasuring: 'Measuring …',
    photoNoLeaf: 'No leaf was made out on it. The photo is kept all the same.',
    leavesToo: 'Leaves already? Score them too',
    next: (label: string): string => `Next: pot ${label}`,
    done: 'The look is done: read it',
    doneWith: (scored: number, all: number): string => `End the look with ${scored} of ${all} pots scored`,
    clear: (label: string): string => `Pot ${label}: not looked at`,
    kept: 'Every touch is kept at once. You can stop and go on later.',
    notSownYet: 'Not sown yet: there is nothing to score.',
    beforeSowing: 'That day is before the sowing.',
    notANumber: 'Write a number, like 120.',
    ended: 'Look kept and read.',
  },
  wrong: {
    'no-such-crop': 'This test was sown with a crop that this version does not know.',
    'bad-day': 'A day of it cannot be read.',
    'bad-count': 'A number of seedlings in it cannot be.',
    'more-up-than-sown': 'More seedlings are up than were sown. Put that right first.',
    'bad-injury': 'An injury beyond 100.',
    'bad-height': 'A height that no seedling has.',
    'bad-leaf-sets': 'A number of leaf sets that no seedling has.',
    'bad-mass': 'A mass that no seedling has.',
    'no-such-pot': 'A score is of a pot that was not sown.',
    'same-pot-twice': 'One pot is in it twice.',
    'before-sowing': 'A look lies before the day of sowing. Put one of the days right first.',
  } satisfies Record<PotTestErrorCode, string>,
  test: {
    sown: ({ crop, sownOn, pots, toSow }: PotTestRecord): string =>
      [
        cropName(crop),
        `${pots.length} pots`,
        `${toSow ? 'to be sown' : 'sown'} ${describeDayAndYear(sownOn)}`,
      ].join(' · '),
    toSow: 'Not sown yet. Sow it as the card says, then say so here.',
    due: (on: string, today: string): string =>
      `Look at the pots on ${describeDay(on, today)}, ${describeDistance(on, today)}.`,
    openLook: (day: string, scored: number, all: number, today: string): string =>
      scored < all
        ? `The look of ${describeDay(day, today)} is half-finished: ${scored} of ${all} pots scored. It counts once it is done.`
        : `All ${all} pots of the look of ${describeDay(day, today)} are scored. It counts once you say that it is done.`,
    score: 'Score the pots',
    goOnScoring: 'Go on scoring',
    endLook: 'Back to the look, to end it',
    openCard: 'Sowing card',
    looks: 'Looks',
    correct: 'Correct',
    correctThis: (day: string): string => `Correct the look of ${day}`,
    lookSays: (day: string, pots: number, up: number, seeds: number): string =>
      `${day}: ${pots} pots, ${up} of ${seeds} up`,
    giveUp: 'Give it up',
    givenUp: 'Given up.',
    gaveUp: (day: string): string => `Given up on ${day}.`,
    endedOn: (day: string): string => `Ended on ${day}.`,
    remove: 'Delete it',
    removeAsk: 'Delete this pot test with all its looks?',
    removeYes: 'Yes, delete it',
    removeNo: 'Keep it',
    removed: 'Pot test deleted.',
    sowAgain: 'Sow a new test',
  },
  /** In lists, after the name of the load. */
  states: {
    'safe-enough': 'Safe enough to spread',
    'do-not-spread': 'Do not spread it',
    'go-on': 'Not decided',
    invalid: 'Void: it says nothing',
  } satisfies Record<PotTestSaid['verdict'], string>,
  ripenessStates: {
    'safe-enough': 'Ripe enough to sow in',
    'do-not-spread': 'Not ripe yet',
    'go-on': 'Not decided',
    invalid: 'Void: it says nothing',
  } satisfies Record<PotTestSaid['verdict'], string>,
  batch: {
    title: 'Is this load safe?',
    titleUnder: 'Test it in pots',
    titleTold: 'What its pots told',
    lead: 'Beans or peas in a few pots show in three weeks, more often than not, whether it twists what grows in it.',
    sow: 'Sow a pot test',
  },
} as const;

function parts(count: number): string {
  return count === 1 ? '1 part' : `${count} parts`;
}

/** How a test stands, for a list. */
export function sayState(test: PotTestRecord, today: string): string {
  const { said, endedOn, toSow, lookOn, question, sownOn } = test;
  const words = question === 'ripeness' ? POT_WORDS.ripenessStates : POT_WORDS.states;
  if (endedOn) return said ? words[said.verdict] : POT_WORDS.test.gaveUp(describeDay(endedOn, today));
  if (toSow) return `To be sown on ${describeDay(sownOn, today)}`;
  return lookOn === undefined
    ? ''
    : `${said ? `${words[said.verdict]}. ` : ''}Look on ${describeDay(lookOn, today)}, ${describeDistance(lookOn, today)}`;
}
