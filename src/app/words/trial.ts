import type { LayoutWarning } from '../../compare/side-by-side/find-independent.ts';
import type { SpreadWord } from '../../compare/side-by-side/guess-spread.ts';
import type { TrialTrouble } from '../../compare/side-by-side/trial-error.ts';
import type { ReadingWarning } from '../../compare/side-by-side/warn-of-readings.ts';
import type { HAND_MEASURES, TRIAL_LOOKS, TRIAL_SCALES, TRIAL_UNITS } from '../../garden/trial-record.ts';
import type { TrialState } from '../state/read-kept-trial.ts';

type Unit = (typeof TRIAL_UNITS)[number];

/** "1 plant", "6 plots" */
export const countUnits = (count: number, unit: Unit): string => `${count} ${unit}${count === 1 ? '' : 's'}`;

/** All that is said on the screens of a trial, but for what is planned, drawn and read (see `say-trial.ts`). */
export const TRIAL_WORDS = {
  title: 'Side by side',
  running: 'Trials that run',
  past: 'Trials that have ended',
  unnamed: 'A trial without a name yet',
  notFound: 'This trial is not in the book of this device.',
  toBook: 'The book',
  toTrial: 'Back to the trial',
  states: {
    planned: 'planned, not laid out yet',
    'laid-out': 'laid out, nothing measured yet',
    measured: 'measuring',
    ended: 'ended',
  } satisfies Record<TrialState, string>,
  nextOn: (day: string, distance: string, isFirst: boolean): string =>
    `${isFirst ? 'First measuring' : 'Measure next'} on ${day}, ${distance}.`,
  endedOn: (day: string): string => `Ended on ${day}.`,
  givenUpOn: (day: string): string => `Given up on ${day}.`,

  plan: 'What is tried',
  planLead: 'Settle this before anything is sown. What is changed after measuring counts for less.',
  planAfter:
    'This trial is laid out already. Change the words freely; what is measured, and what matters, should stay as it was settled before.',
  name: 'What do you want to find out?',
  nameHint: 'does digging help the leeks?',
  ways: 'The ways',
  way: (letter: string): string => `Way ${letter}`,
  wayHints: ['dug', 'not dug', '', ''],
  addWay: 'Add another way',
  dropWay: (letter: string): string => `Leave way ${letter} out`,
  wayName: (letter: string, name: string): string => (name.trim() ? `“${name.trim()}”` : `way ${letter}`),
  unit: 'What gets one way or the other?',
  units: {
    plant: 'Single plants',
    plot: 'Plots in a bed',
    bed: 'Whole beds',
  } satisfies Record<Unit, string>,
  unitSays: {
    plant: 'Each plant is treated by itself. The most for the least work.',
    plot: 'Each piece of a bed is treated as one, with a gap between neighbours.',
    bed: 'For what cannot be done to part of a bed. Then beds count, not the plants in them: two beds of each way at the least, three are better.',
  } satisfies Record<Unit, string>,
  measure: 'What do you measure?',
  byHand: 'By hand or eye',
  byPhoto: 'By the camera, from a photo of a leaf',
  hand: {
    height: { name: 'Height', unit: 'cm', more: 'taller', less: 'shorter' },
    weight: { name: 'Weight, g', unit: 'g', more: 'heavier', less: 'lighter' },
    count: { name: 'A count: leaves, fruits, slugs', unit: '', more: 'more', less: 'fewer' },
    share: { name: 'A share, parts of 100 by eye', unit: 'of 100', more: 'more', less: 'less' },
    score: { name: 'A score from 0 to 10', unit: 'points', more: 'higher', less: 'lower' },
  } satisfies Record<
    (typeof HAND_MEASURES)[number],
    { readonly name: string; readonly unit: string; readonly more: string; readonly less: string }
  >,
  ofWhat: { count: 'A count of what?', share: 'A share of what?', score: 'A score of what?' } as Readonly<
    Record<string, string>
  >,
  ofWhatHint: 'leaf eaten into holes',
  better: 'Which would be better?',
  betters: { more: 'More', less: 'Less' },
  did: {
    more: (way: string): string => `You said more is better: so ${way} did better.`,
    less: (way: string): string => `You said less is better: so ${way} did better.`,
  },
  photoSays:
    'Take the same leaf of every plant, in the same light. Where the camera cannot measure, a value may be typed by eye.',
  looks: 'If you measure more than once, what counts?',
  looksWays: {
    last: 'the last measuring',
    mean: 'the mean over the time',
    total: 'all of it added up, as harvests are',
    change: 'how much it changed from first to last',
  } satisfies Record<(typeof TRIAL_LOOKS)[number], string>,
  scale: 'How is a difference said?',
  scales: {
    difference: 'so much more',
    ratio: 'so many times as much, for what grows by shares',
  } satisfies Record<(typeof TRIAL_SCALES)[number], string>,
  howMany: 'How many does it take?',
  typical: (unit: string): string => `What does one usually come to${unit && `, ${unit}`}?`,
  matters: (unit: string): string => `What difference would matter to you${unit && `, ${unit}`}?`,
  mattersRatio: 'How many times as much would matter to you? 1.2 is a fifth more',
  spread: (unit: Unit): string =>
    unit === 'plot'
      ? 'How uneven are plots that are treated alike?'
      : 'How uneven are plants that are treated alike?',
  spreads: {
    'hard-to-tell-apart': 'hard to tell apart',
    'a-little-uneven': 'a little uneven',
    uneven: 'uneven',
    'very-uneven': 'very uneven',
  } satisfies Record<SpreadWord, string>,
  ownRange: 'I have some to go by',
  smallest: (unit: string): string => `The smallest of them${unit && `, ${unit}`}`,
  largest: (unit: string): string => `The largest${unit && `, ${unit}`}`,
  outOf: 'Of how many, 2 to 25',
  chance: 'How often must it show, if it is there?',
  chances: { '0.5': '5 times in 10', '0.8': '8 times in 10', '0.9': '9 times in 10' } as Readonly<
    Record<string, string>
  >,
  each: (unit: Unit): string => `How many ${unit}s of each way will you have?`,
  perBed: 'How many plants will you measure in each bed?',
  numberWrong: 'Write a number, like 12 or 12.5.',
  missing: {
    matters: 'Say what difference would matter to you, then the number is worked out here.',
    typical: 'Say what one usually comes to, then the number is worked out here.',
    spread: 'Say how uneven they are, then the number is worked out here.',
  },
  toLayOut: 'Lay it out',
  nameWays: 'Name at least two ways first, each by its own words.',

  layOut: 'Lay it out by lot',
  layOutLead:
    'The lot decides, not the eye: whoever chooses gives the better soil to the favourite without meaning to.',
  layOutAgain: 'Lay out another season',
  season: (id: string): string => {
    const [year = id, time] = id.split('-');
    return time ? `${year}, sowing ${time}` : year;
  },
  seasonOf: (season: string): string => `Season ${season}`,
  where: 'Where does it stand?',
  places: (unit: Unit): string => `${unit === 'plot' ? 'Plots' : 'Plants'} in it, 0 for none`,
  anotherBed: 'A bed that is not in the list',
  noBed: 'No bed on record yet. Name one.',
  how: 'How are the lots drawn?',
  hows: { blocks: 'Neighbours in sets', random: 'At random' },
  howSays: {
    blocks:
      'Neighbours form a set with one of each way, in an order drawn anew. Best where a bed changes from one end to the other.',
    random: 'Drawn over all places at once. Best where the ground is even.',
    'whole-beds': 'Each bed gets one way.',
  },
  draw: 'Draw the lots',
  placesTrouble: {
    blocks: (ways: number): string =>
      `No bed has room for a set of ${ways}. Give one bed at least ${ways} places.`,
    random: (ways: number): string => `Give the trial at least ${ways} places in all.`,
    'whole-beds': (ways: number): string => `Choose at least ${ways} beds, one for each way.`,
  },
  fewer: (each: number, needed: number): string =>
    `That is ${each} of each way. It would take about ${needed} to see what matters to you.`,
  drawAnew: 'Take this layout back',
  drawAnewAsk:
    'Take this layout back? Draw anew only if the beds have changed: whoever draws until it looks right has chosen.',
  theLayout: 'The plan of the beds',
  spareSays: 'A place marked – is spare: sow it like the rest, it is not counted.',
  bracketSays: 'A line under neighbours holds a set together.',
  print: 'Print the plan',
  printSheet: 'Write what you measure beside each place.',
  place: 'Place',
  onDay: 'on',
  note: 'Note',

  measureNow: 'Measure now',
  measureTitle: 'Measuring',
  day: 'Day of this measuring',
  whichSeason: 'Which season?',
  lettersHidden: 'The ways are covered, so that hoping does not measure along.',
  showLetters: 'Show which way each has',
  hideLetters: 'Cover the ways again',
  plantAt: (unit: Unit, place: number): string => `${unit === 'plot' ? 'Plot' : 'Plant'} ${place}`,
  inBed: (what: string, bed: string): string => `${what}, ${bed}`,
  several: 'Several numbers of one plant or plot, parted by spaces, are averaged.',
  valueWrong: {
    count: 'Whole numbers only.',
    share: 'From 0 to 100.',
    score: 'From 0 to 10.',
    other: 'Write a number, like 12 or 12.5.',
  },
  farOff: 'Far from the others. Right as it is?',
  photo: 'Photo',
  photoOf: (what: string): string => `Take a photo: ${what}`,
  photoWaits: 'Photo kept, not measured yet.',
  photoNone: 'The camera could not measure it in this photo.',
  photoReading: 'Measuring …',
  photoDrop: 'Take the photo away',
  photoDropOf: (what: string): string => `Take the photo away: ${what}`,
  openPhoto: 'See and correct the outline',
  lost: 'Lost',
  lostOf: (what: string): string => `Lost: ${what}`,
  lostWhy: 'What happened to it?',
  lostWhys: ['slugs or snails', 'died', 'dug up or broken', 'picked by mistake'],
  lostOther: 'Something else',
  lostSay: 'Strike it out',
  lostOn: (why: string, day: string): string => `Lost${why && `: ${why}`}, ${day}`,
  back: 'It is there after all',
  backOf: (what: string): string => `It is there after all: ${what}`,
  progress: (done: number, all: number): string => `${done} of ${all} measured`,
  allDone: 'All are measured for this day.',
  next: 'Measure again',
  nextIn: { '7': 'in a week', '14': 'in two weeks', '28': 'in four weeks', none: 'not again' } as Readonly<
    Record<string, string>
  >,
  nextDay: 'Day of the next measuring',
  firstDay: 'Day of the first measuring',
  toResult: 'See what came out',

  result: 'What came out',
  trouble: {
    'no-readings': 'Nothing can be said yet: measure plants of at least two of the ways.',
    'no-measure': 'What is measured was not said, or this version of Bedside does not know it.',
    treatments: 'A trial needs two to four ways.',
    units: 'The layout cannot be read.',
    places: 'The layout cannot be read.',
    'unknown-unit': 'The layout cannot be read.',
    value: 'One of the values cannot be: look through what was measured.',
    day: 'One of the days cannot be read.',
    'ratio-needs-positive':
      'One value is nought, and nothing is so many times nought. Say the difference as “so much more” instead.',
    'no-common-season': 'The beds were never measured in one and the same season.',
    plan: 'What matters to you is no difference. Correct it on the page of what is tried.',
    'too-many-units': 'More than 100 of one way: that is more than this tool counts.',
  } satisfies Record<TrialTrouble | 'no-measure', string>,
  warnings: {
    'one-bed-a-side':
      'One bed a side is an indication, not a proof: whatever else differs between these beds, sun, soil, last year’s crop, is in the difference too. Give each way two beds or more, or split one bed into plots.',
    'beds-are-the-units': 'Whole beds were treated, so beds are counted, not the plants in them.',
    'plants-in-bed-not-independent':
      'The plants of one bed share its soil. Together they make the bed’s number better, but count as one.',
    'treatment-alone-in-block':
      'Some bed or set holds one way only. It has nothing beside it and tells little.',
    'same-beds-every-season':
      'Each bed kept its way over the seasons. More seasons tell more of these beds, but make no more beds of them.',
    'stands-in-strips':
      'Each way stands in one unbroken strip. If the strips were treated as wholes, they are the units, not the plants.',
    'carry-over': 'Beds changed their way between seasons. What was done before may still work in the soil.',
    'units-lost':
      'Some were lost, or never measured. They are left out, and so is what then stands alone in its set.',
    'lost-unevenly':
      'One way lost more than another. That may be the effect itself, and it is not in the difference above.',
    'looks-apart': 'Some were measured more than a week after others. In that time all of them grew.',
    'photo-errors-lead':
      'The photos’ own error makes at least half of the spread. Better photos would help more than more plants.',
    'few-units': 'So few rest on a guess at how plants differ. One odd plant can upset it.',
    'no-interval': 'Too few to say how far the difference may be off.',
    'no-spread': 'All values of a way are the same: measured too coarsely to tell.',
    'seasons-disagree':
      'The seasons do not agree: their ranges lie apart. It may work in one kind of year and not in another.',
    'alone-pair': 'Two of the ways never stood in one bed or set, so they are not compared.',
  } satisfies Record<LayoutWarning | ReadingWarning, string>,
  /** In place of these two while a measuring is half-way: what has no number yet is not lost. */
  notYet: {
    lost: (count: number): string =>
      `${count} ${count === 1 ? 'was' : 'were'} lost. ${count === 1 ? 'It is' : 'They are'} left out, and so is what then stands alone in its set.`,
    unmeasured: (count: number): string =>
      `${count} ${count === 1 ? 'is' : 'are'} not measured yet, and left out until then.`,
    halfWay: (done: number, all: number, day: string): string =>
      `Half-way: ${done} of ${all} are measured on ${day}. The others count as they were measured before, and have grown since.`,
  },
  byEye: 'Some values were read by the camera and some by eye. The two may differ for that alone.',
  warningsTitle: 'What makes it doubtful',
  plot: 'Every one as a dot, and the difference with its range',
  plotDifference: (unit: string): string =>
    `Difference${unit && `, ${unit}`}: the dot is the best guess, the bar its range; dotted: no difference.`,
  plotMatters: 'Within the band to both sides of that line it does not matter to you.',
  dotsOf: (way: string, values: string, centre: string, unit: string): string =>
    `${way}: ${values}${unit && ` ${unit}`}; in the middle ${centre}.`,
  indication: 'An indication, no proof',
  inWords: 'The same in words',
  seasons: 'Season by season:',
  seasonsSay: 'Each of these ranges holds by itself. What is said above takes all seasons together.',
  end: 'End the trial',
  endLead: 'What do you take from it? It goes into the book and the year of its beds.',
  takes: 'What I take from it',
  endRead: 'End it: it is read',
  endGivenUp: 'Give it up',
  reopen: 'Let it run on',
  delete: 'Delete the trial',
  deleted: (name: string): string => `${name ? `“${name}”` : 'The trial'} is deleted.`,
  changePlan: 'Change what is tried',
  lostList: 'Struck out',
} as const;
