import type { OwnMark, OwnMarkCounts } from '../../garden/own-head-record.ts';
import { TAUGHT_WORDS } from './taught.ts';

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;
const photos = (count: number): string => many(count, 'photo', 'photos');
const plantings = (count: number): string => many(count, 'planting', 'plantings');

export const OWN_LEAVES_WORDS = {
  title: TAUGHT_WORDS.leaves,
  lead: 'The small network was taught on leaves from elsewhere. From photos that you have told about it can learn how marks look on your plants. What it learnt is used only for marks that it then told better on plants it had not learnt from. All of it happens on this device.',
  toTaught: TAUGHT_WORDS.title,

  has: 'What it has to learn from',
  counts: (count: number, groups: number, healthy: number): string =>
    count === 0
      ? 'Nothing yet. Photos count when the network looked at them as they were taken, and you said which marks you see or do not see; once the case is settled, they teach. Healthy leaves on record teach at once.'
      : `${photos(count)} from ${plantings(groups)}; ${healthy === 0 ? 'none' : healthy} of them ${healthy === 1 ? 'a healthy leaf' : 'healthy leaves'}.`,
  unseen: (count: number): string =>
    `${photos(count)} cannot teach: the network was off when ${count === 1 ? 'it was' : 'they were'} taken, or it was another one.`,
  unlike: (count: number): string =>
    `${photos(count)} cannot teach: ${count === 1 ? 'it is' : 'they are'} too unlike all that the network was taught.`,
  caption: 'Photos where you saw the mark, and where you looked and it was not there',
  mark: 'Mark',
  withIt: 'With it',
  without: 'Without',
  enough: 'Enough to try.',
  noPhoto: (count: number): string =>
    `Of ${many(count, 'other mark', 'other marks')} there is no photo with it yet.`,

  learn: 'Learn from these photos',
  learnAgain: 'Learn again from all photos',
  notEnough: 'There is no mark yet with enough photos to learn from.',
  isOff: 'The network is not switched on, so it cannot learn and looks at no photos.',
  toHelp: 'Switch it on under Help',
  learning: 'Learning …',
  done: (share: number): string => `${Math.floor(share * 100)} % done`,
  stop: 'Stop',
  stopped: 'Stopped. What was learnt before stays as it was.',
  failed: 'It could not be done here. What was learnt before stays as it was. Try once more.',
  notKept: 'It could not be stored. What was learnt before stays as it was.',

  learnt: 'What it learnt',
  learntOn: (day: string, count: number, groups: number): string =>
    `Learnt on ${day} from ${photos(count)} of ${plantings(groups)}.`,
  damaged:
    'What was learnt is damaged on this device, so nothing of it is used. Learn again, or read a backup from before.',
  usesNone: 'No mark was told clearly better than without, so nothing of it is used.',
  moreSince: 'The photos are no longer the same: learn again to count them all.',
  otherNetwork:
    'This was learnt with another network than the one that came with this version, so it is set aside and changes nothing. Photos that the present network looks at from now on can teach it anew.',
  used: 'Used in every look',
  notUsed: (count: number): string => `Tried and not used (${count})`,
  numbers: 'All numbers',
  forget: 'Forget what was learnt',
  forgetWhy: 'Photos and cases stay. The network then reports as it came, until it learns again.',
  forgotten: 'Forgotten. The network reports as it came.',

  how: 'How it learns',
  howLines: [
    'Only your own eye teaches: marks that you saw on the leaves in the photo, or looked for and did not find. What the network or the camera reported never does.',
    'Each planting (one crop in one bed in one year) is kept aside once while it learns from the others. So it is tried on plants that it has not seen, and five plants of one row do not count as five proofs.',
    'A mark is used only where it was told better than by the camera, and by the network as it came where that reports the mark, and by more than chance would do. With few plantings behind it, it weighs little.',
  ],
} as const;

/** "Needs 6 more photos with it, from 2 more plantings, and 3 more without it." Empty where nothing is missing. */
export function sayMissing(
  { present, absent, presentPlantings, absentPlantings }: OwnMarkCounts,
  fewest: { readonly photos: number; readonly plantings: number },
): string {
  const side = (count: number, groups: number, which: string): string => {
    const [more, moreGroups] = [Math.max(0, fewest.photos - count), Math.max(0, fewest.plantings - groups)];
    if (more === 0 && moreGroups === 0) return '';
    // A planting more needs a photo more, however many there are.
    const wanted = Math.max(more, moreGroups);
    const from = moreGroups > 0 ? `, from ${many(moreGroups, 'more planting', 'more plantings')}` : '';
    return `${wanted} more ${wanted === 1 ? 'photo' : 'photos'} ${which}${from}`;
  };
  const parts = [
    side(present, presentPlantings, 'with it'),
    side(absent, absentPlantings, 'without it'),
  ].filter(Boolean);
  return parts.length === 0 ? '' : `Needs ${parts.join('; and ')}.`;
}

/** What came of a mark that was tried, in a sentence with its numbers. Empty where it was not tried. */
export function sayTested({ end, tested, present, absent }: OwnMark): string {
  if (!tested) return '';
  const count = present + absent;
  const before = tested.before === 'shipped' ? 'the network as it came' : 'the camera alone';
  const told = `Of ${photos(count)} kept aside it told ${tested.right} right, ${before} ${tested.rightBefore}`;
  switch (end) {
    case 'used':
      return `${told}.`;
    case 'overlaps':
      return `${told}; but a mark that takes it in, or is a part of it, gained more and is used instead.`;
    default:
      return `${told}: not clearly better.`;
  }
}

const two = (value: number): string => value.toFixed(2).replace('-', '−');

/** The numbers behind it, line by line. */
export function sayNumbers({ tested, head, presentPlantings, absentPlantings }: OwnMark): string[] {
  if (!tested) return [];
  const { own, shipped, camera, gain, gainSe } = tested;
  return [
    `From ${plantings(presentPlantings)} with it and ${absentPlantings} without.`,
    `Mean surprise a photo kept aside (natural log loss, less is better): ${two(camera)} by the camera alone, ${two(shipped)} with the network’s own opinion set anew, ${two(own)} with weights on what it sees too. ${gain < 0 ? 'Worse' : 'Better'} by ${two(Math.abs(gain))}, give or take ${two(gainSe)}.`,
    ...(head
      ? [
          `It makes the mark at most ${Math.round(head.most)} times likelier, or less likely. Level ${two(head.level)}, weight of the network’s own opinion ${two(head.logit)}, ${sayWeights(head.weights)}.`,
        ]
      : []),
  ];
}

/** Where the network's own opinion did best by itself there are none on the features. */
const sayWeights = (weights: readonly number[]): string =>
  weights.some((weight) => weight !== 0)
    ? `${weights.length} weights on what it sees, their size ${two(sizeOf(weights))}`
    : 'none on what it sees';

const sizeOf = (weights: readonly number[]): number =>
  Math.sqrt(weights.reduce((sum, weight) => sum + weight ** 2, 0));
