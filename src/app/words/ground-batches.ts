import type { ReadingDoubt } from '../../garden/doubt-reading.ts';
import type { BatchKind } from '../../garden/ground-records.ts';
import type { BatchReason, BatchState } from '../../garden/judge-batch.ts';
import { describeDays } from './dates.ts';
import { GROUND_WORDS } from './ground.ts';
import { GROUND_PLACES } from './ground-places.ts';
import { inUnits, sayCelsius, sayDegreesApart, shownUnit } from './units.ts';

const sayDoubt = (doubt: ReadingDoubt): string => {
  const day = (date: string): string => describeDays(date, date);
  switch (doubt.code) {
    case 'future':
      return `${day(doubt.date)} is still to come. Put the day on which you read it.`;
    case 'before-it-came':
      return `By what is kept the heap came, or was begun, on ${day(doubt.came)}. Was it read before, on ${day(doubt.date)}?`;
    case 'below-air':
      return `${sayCelsius(doubt.celsius, 1)} in the middle is ${sayDegreesApart(doubt.airCelsius - doubt.celsius)} colder than the air. A heap is hardly ever more than ${sayDegreesApart(10)} colder: was the tip deep in the middle, and the number read right?`;
  }
};

/** Loads and heaps of compost, manure, straw and wood. */
export const BATCH_WORDS = {
  title: GROUND_PLACES.batches,
  none: 'No load or heap yet. With one on record, Bedside knows what went on which bed, and lists every bed that got it if it turns out bad.',
  toBatches: 'All loads and heaps',
  addName: 'What do you call it?',
  addHint: 'such as: horse manure from the lane',
  what: 'What is it?',
  added: (name: string): string => `${name} added.`,
  notFound: 'There is no such load or heap.',
  kinds: {
    'own-compost': 'Compost of your own',
    'green-waste': 'Green-waste compost',
    'cattle-manure': 'Cattle manure',
    'horse-manure': 'Horse manure',
    'poultry-manure': 'Poultry manure',
    'manure-unknown': 'Manure of unknown origin',
    'mushroom-compost': 'Mushroom compost',
    'bagged-compost': 'Bagged compost',
    'straw-or-hay': 'Straw or hay',
    'grass-clippings': 'Grass clippings',
    'leaf-mould': 'Leaf mould',
    'biochar-or-ash': 'Biochar or ash',
    'wood-chips': 'Wood chips',
    sawdust: 'Sawdust',
  } satisfies Record<BatchKind, string>,
  source: 'Where does it come from?',
  sprayed: 'Could the hay, straw or manure in it come from sprayed fields?',
  sprayedWords: { no: 'No', unknown: 'Nobody knows', yes: 'Yes' } as Readonly<Record<string, string>>,
  arrived: 'Came on',
  started: 'Heap begun on',
  hot: 'Hot when it came?',
  told: 'What would you call it?',
  toldWords: {
    finished: 'Finished',
    fresh: 'Fresh',
    'still-warm': 'Still warm',
    hot: 'Hot',
  } as Readonly<Record<string, string>>,
  toldSays: {
    finished: 'You call it finished.',
    fresh: 'You call it fresh.',
    'still-warm': 'You call it still warm.',
    hot: 'You call it hot.',
  } as Readonly<Record<string, string>>,
  wood: 'How much of it is wood, chips or sawdust, by the eye? Parts of 100',
  woodSaid: (parts: string): string => `${parts} of 100 wood`,
  usedUp: 'Used up on',
  cameOn: (day: string): string => `came ${day}`,
  usedUpOn: (day: string): string => `used up ${day}`,
  change: 'Change the details',
  removed: (name: string): string => `${name} deleted.`,
  states: {
    unfinished: 'Not finished',
    ripening: 'Still ripening',
    nearly: 'Nearly finished',
    finished: 'Finished',
    unknown: 'Cannot say whether it is finished',
  } satisfies Record<BatchState['state'], string>,
  reasons: {
    'smells-of-ammonia': 'It smelt of ammonia, and that counts against it however cool it is.',
    'still-hot': 'It is still in its heat.',
    get 'far-above-air'() {
      return `It is more than ${sayDegreesApart(20)} warmer than the air.`;
    },
    get 'somewhat-above-air'() {
      return `It is ${sayDegreesApart(10)} to ${sayDegreesApart(20)} warmer than the air.`;
    },
    'cool-once': 'It has come down to the air. If it is so in a week again, call it finished.',
    'cooled-lately':
      'It has come down to the air, but less than four weeks after its heat. It ripens on for weeks to months: go on reading it.',
    'colder-than-air':
      'Its last reading is much colder than the air, which no heap is. Read it again, deep in the middle.',
    get 'cool-for-good'() {
      return `It had its heat, and has stayed within ${sayDegreesApart(10)} of the air for a week or more.`;
    },
    'seeds-fared-badly':
      'It is cool, but seeds sown in it fared worse than in clean mix. Give it some weeks more.',
    'never-heated': 'It is cool, but no reading shows that it ever heated, so it may still be raw.',
    'told-only': 'This rests on your word alone. A thermometer would tell more.',
    'nothing-known': 'Nothing is known of its heat yet. Take a reading in the middle of it.',
    'does-not-ripen': 'This kind does not heat up and ripen; it is what it is.',
  } satisfies Record<BatchReason, string>,
  tooHot: (what: 'turn' | 'take-apart', celsius: number): string =>
    inUnits(
      what === 'turn'
        ? `${sayCelsius(celsius, 1)} is as hot as a heap should get: it works at 55 to 77 °C, and above that what makes it rot dies. Turn it, water what is dry, and read it again tomorrow.`
        : `${sayCelsius(celsius, 1)} is too hot: a heap can begin to smoulder. Take it apart now, spread it out, water it well, and stay with it until it has cooled.`,
    ),
  heat: 'Heat in the middle',
  read: 'Add a reading',
  readClose: 'No reading now',
  readHow: (): string => `Tap what the thermometer shows, in ${shownUnit('°C')}. It is kept for today.`,
  exact: 'Another day, an exact number, turned, smell',
  celsius: 'In the middle',
  air: 'Air',
  turned: 'Turned that day?',
  smells: 'Does it smell of ammonia?',
  needsCelsius: 'Write the temperature as a number, like 54 or 54.5.',
  readingKept: (celsius: number): string => `${sayCelsius(celsius, 1)} kept.`,
  doubt: sayDoubt,
  keepAgain: `Press “${GROUND_WORDS.save}” once more if it is right.`,
  keepDoubted: (celsius: number): string => `It is right: keep ${sayCelsius(celsius, 1)}`,
  readingChanged: 'Reading changed.',
  readingGone: 'Reading deleted.',
  readChange: 'Change the reading',
  degrees: (celsius: number): string => sayCelsius(celsius, 1),
  curveSays: (count: number, first: string, last: string): string =>
    count === 1 ? `One reading, ${first}.` : `${count} readings, from ${first} to ${last}.`,
  readings: 'The readings in words',
  reading: (day: string, celsius: number, air: number | undefined, turned: boolean): string =>
    `${day}: ${sayCelsius(celsius, 1)}${air === undefined ? '' : `, air ${sayCelsius(air, 1)}`}${turned ? ', turned' : ''}`,
  legendHeap: 'heap',
  legendAir: 'air',
  went: 'Where it went',
  wentNowhere: 'On no bed yet.',
  wentTooEarly: (came: string, went: string): string =>
    `By what is kept it came on ${came}, but was on a bed on ${went}. Change whichever day is not right.`,
  wentBeds: 'Beds and pots',
  wentPlantings: 'Plantings that stood in it or came into it',
  noPlantings: 'No planting noted there.',
  giveTitle: 'Put it on beds',
  noBeds: 'No bed on record yet.',
  suspect: 'Put it under suspicion',
  suspectHow:
    'If it may carry weedkiller: it is then no longer offered for any bed, and every bed and planting that got it is listed.',
  release: 'Release it',
  suspectedNow: (name: string): string => `${name} is under suspicion.`,
  releasedNow: (name: string): string => `${name} is released.`,
  suspectedSince: (day: string): string => `Under suspicion since ${day}`,
  releasedOn: (day: string): string => `Was under suspicion; released ${day}.`,
  notOffered:
    'It is not offered when something is put on a bed. Spread, sell or give away none of it until you know.',
  ofWeedkiller: {
    bought:
      'It may carry weedkiller. Ask the supplier today which fields its hay, straw, grass or manure came from, and what they were sprayed with.',
    own: 'It may carry weedkiller. Ask today where any hay, straw, manure or clippings in it came from, and what was sprayed there.',
  },
  lookThere: 'Look at what grows there, and at the youngest leaves first:',
  lookAt: (planting: string, bed: string): string => `Look at ${planting}${bed && ` (${bed})`}`,
  since: 'Since when?',
  sinceKept: 'Day kept.',
  why: 'Why?',
  whyKept: 'Reason kept.',
  under: 'What went on this bed',
} as const;
