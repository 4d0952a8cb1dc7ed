import {
  type BroaderMarkId,
  CREATURE_SIGNS,
  MARKS,
  PLANT_SIGNS,
  type Position,
  SPREAD_SIGNS,
  type SpreadSignId,
  TEST_SIGNS,
} from '../../signs/vocabulary.ts';

export type Place = Position | 'some';

/** What people say when they cannot say it more exactly. */
export const BROADER_WORDS: Record<BroaderMarkId, string> = {
  yellowing: 'pale or yellow, one way or another',
  curled: 'curled, cupped, twisted or crinkled',
  holes: 'holes or bites',
  spotted: 'spots of some kind',
  browning: 'brown, black or dead parts',
  'pale-marks': 'whitish, silvery or see-through marks',
};

export const PLACE_WORDS: Record<
  Place,
  { readonly on: string; readonly lookAt: string; readonly short: string }
> = {
  old: { on: 'on the oldest leaves', lookAt: 'The oldest leaves, low on the plant', short: 'oldest leaves' },
  new: { on: 'on the youngest leaves', lookAt: 'The youngest leaves, at the tip', short: 'youngest leaves' },
  some: { on: 'on some leaves', lookAt: 'Any of the leaves', short: 'some leaves' },
};

/**
 * How the bed lies and how it came about, asked as a person would; the vocabulary's own words are made for lists.
 */
export const SPREAD_ASKS: { readonly [Id in SpreadSignId]: string } = {
  'one-plant': 'Is it only one plant?',
  scattered: 'Is it a plant here and there?',
  patch: 'Is it in a patch or cluster?',
  'every-year': 'Is it the same every year in this place?',
  'whole-bed': 'Is it every plant of this crop in the bed, much the same?',
  'several-kinds': 'Does it show on several different crops in the same place?',
  'one-end': 'Is it worse at one end, edge or side?',
  'variety-only': 'Is it only this variety, and another beside it is fine?',
  'elsewhere-fine': 'Is the same crop from the same sowing fine in another bed?',
  'same-compost-only': 'Is it only where one load of compost, manure or wood chip went?',
  spreading: 'Is it moving from plant to plant?',
  'oldest-first': 'Did it begin on the lowest leaves and move up?',
  sudden: 'Did it appear within a day or two?',
  'after-cold': 'Did it follow cold nights or a cold, dull spell?',
  'after-planting': 'Did it follow planting out?',
  'after-spray': 'Did it follow spraying nearby or on the plant?',
  'after-feed': 'Did it follow feeding or a strong dressing?',
  'after-hot-sun': 'Did it follow sudden hot sun?',
  'after-wind': 'Did it follow strong wind?',
  'after-rain': 'Did it follow heavy or long rain?',
  'always-so': 'Has it looked like this from the start?',
  'getting-better': 'Is it already growing out of it?',
};

export type SignGroup = 'mark' | 'plant' | 'creature' | 'spread' | 'test';

/** What the signs of a group are asked under, in the list and one at a time. */
export const GROUP_NAMES: Record<Exclude<SignGroup, 'mark'>, string> = {
  plant: 'The whole plant',
  creature: 'Creatures and their traces',
  spread: 'Where it shows and how it began',
  test: 'Tests you made',
};

export interface SignInWords {
  /** "yellow between the veins, the veins still green" */
  readonly what: string;
  readonly group: SignGroup;
  /** Set for marks on leaves. */
  readonly place?: Place;
  /** Id of the mark or sign without its place: what a drawing is filed under. */
  readonly base: string;
}

const ALL = new Map<string, { what: string; group: SignGroup }>([
  ...MARKS.map(({ id, says }) => [id, { what: says, group: 'mark' }] as const),
  ...Object.entries(BROADER_WORDS).map(([id, what]) => [id, { what, group: 'mark' }] as const),
  ...PLANT_SIGNS.map(({ id, says }) => [id, { what: says, group: 'plant' }] as const),
  ...CREATURE_SIGNS.map(({ id, says }) => [id, { what: says, group: 'creature' }] as const),
  ...SPREAD_SIGNS.map(({ id, says }) => [id, { what: says, group: 'spread' }] as const),
  ...TEST_SIGNS.map(({ id, says }) => [id, { what: says, group: 'test' }] as const),
]);

/** A sign, mark at a place or broader mark in words. An id that this version does not know is shown as its own words. */
export function describeSign(id: string): SignInWords {
  const [base = id, at] = id.split('@');
  const known = ALL.get(base);
  const place = at === 'old' || at === 'new' || at === 'some' ? at : undefined;
  const what = known?.what ?? base.replaceAll('-', ' ');
  return { what, base, group: known?.group ?? 'plant', ...(place ? { place } : {}) };
}

/** In one phrase: "on the oldest leaves: yellow between the veins, the veins still green". */
export function sayShortly(id: string): string {
  const { what, place } = describeSign(id);
  return place ? `${PLACE_WORDS[place].on}: ${what}` : what;
}
