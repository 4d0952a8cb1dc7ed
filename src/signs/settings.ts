/**
 * The setting of a plant: everything about it that is no sign. Each factor has a distribution over its outcomes, used
 * when weighing whether to ask: how often a grower with an ailing plant would give that answer. These rates are our own
 * estimates (common practice, no source); they cancel out of the posterior of an answered setting and only scale the
 * worth of asking.
 */

interface Option<Id extends string = string> {
  readonly id: Id;
  readonly says: string;
  /** Share of growers who would give this answer; the options of one setting sum to 1 (any-of: each on its own). */
  readonly rate: number;
}

interface SettingBase {
  readonly says: string;
  /** The question as it is put to a person. */
  readonly asks: string;
  /** Minutes it takes to answer at the bed. */
  readonly minutes: number;
  /**
   * Facts (`wood-in-root-zone=yes`, `compost-kinds=horse-manure`) of which one must be known before the question makes
   * sense. Left out: it always does. Empty: it is asked by a check alone.
   */
  readonly onlyAfter?: readonly string[];
  /** Facts that answer it already, so that it is not put. */
  readonly neverWith?: readonly string[];
}

export interface OneOfSetting extends SettingBase {
  readonly kind: 'one-of';
  readonly options: readonly Option[];
}
export interface YesNoSetting extends SettingBase {
  readonly kind: 'yes-no';
  /** Share of growers who would say yes. */
  readonly rate: number;
}
export interface AnyOfSetting extends SettingBase {
  readonly kind: 'any-of';
  readonly options: readonly Option[];
}
export interface NumberSetting extends SettingBase {
  readonly kind: 'number';
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** Upper bounds are exclusive; the last band is open. */
  readonly bands: readonly (Option & { readonly below?: number })[];
}
export type Setting = OneOfSetting | YesNoSetting | AnyOfSetting | NumberSetting;

const o = <const Id extends string>(id: Id, rate: number, says: string): Option<Id> => ({ id, rate, says });

/** Whatever goes on a bed and rots there, as facts. */
const BROUGHT = [
  'own-compost',
  'green-waste',
  'cattle-manure',
  'horse-manure',
  'poultry-manure',
  'manure-unknown',
  'mushroom-compost',
  'bagged-compost',
  'straw-or-hay',
  'grass-clippings',
  'leaf-mould',
].map((kind) => `compost-kinds=${kind}`);

/** "Nothing" says of wood too that none went on: whoever finds some from an earlier year takes "nothing" back (`settle-wood.ts`). */
const NOTHING_BROUGHT = ['compost-kinds=none'];

export const SETTINGS = {
  'crop-stage': {
    kind: 'one-of',
    says: 'stage of growth',
    asks: 'How far on is the plant?',
    minutes: 0.1,
    options: [
      o('seedling', 0.2, 'a seedling'),
      o('just-planted', 0.2, 'just planted out'),
      o('growing', 0.3, 'growing on'),
      o('fruiting', 0.22, 'flowering or fruiting'),
      o('old', 0.08, 'old, nearly over'),
    ],
  },
  'days-since-planting': {
    kind: 'number',
    says: 'days since planting out',
    asks: 'How many days since it was planted out?',
    minutes: 0.2,
    unit: 'days',
    least: 0,
    most: 3650,
    bands: [
      { id: '0-9', below: 10, rate: 0.2, says: 'planted less than ten days ago' },
      { id: '10-20', below: 21, rate: 0.2, says: 'planted ten to twenty days ago' },
      { id: '21+', rate: 0.6, says: 'planted three weeks ago or more' },
    ],
  },
  'hardened-off': {
    kind: 'yes-no',
    says: 'hardened off before planting out',
    asks: 'Was it hardened off before it went out?',
    minutes: 0.1,
    rate: 0.7,
  },
  place: {
    kind: 'one-of',
    says: 'where it grows',
    asks: 'Where does it grow?',
    minutes: 0.1,
    options: [
      o('open-ground', 0.6, 'open ground'),
      o('under-cover', 0.2, 'under cover'),
      o('container', 0.15, 'in a pot or other container'),
      o('windowsill', 0.05, 'on a windowsill'),
    ],
  },
  'variety-colour': {
    kind: 'one-of',
    says: 'what the seed packet says of its colour',
    asks: 'What does the seed packet say of its colour?',
    minutes: 0.3,
    options: [
      o('ordinary-green', 0.8, 'ordinary green'),
      o('yellow-or-golden', 0.06, 'yellow or golden'),
      o('pale-or-self-blanching', 0.03, 'pale or self-blanching'),
      o('red-or-purple', 0.08, 'red or purple'),
      o('variegated-or-silver', 0.03, 'variegated or silver-marked'),
    ],
  },
  'recent-temperature': {
    kind: 'one-of',
    says: 'the last two or three weeks',
    asks: 'How warm have the last two or three weeks been?',
    minutes: 0.1,
    options: [
      o('frost', 0.07, 'there was frost'),
      o('cold-for-crop', 0.25, 'cold for this crop'),
      o('about-right', 0.48, 'about right'),
      o('hot', 0.2, 'hot'),
    ],
  },
  'cold-days': {
    kind: 'number',
    says: 'days of the last three weeks that were too cold for this crop',
    asks: 'On how many of the last 21 days was it too cold for this crop to grow?',
    minutes: 2,
    unit: 'days',
    least: 0,
    most: 21,
    bands: [
      { id: '0-3', below: 4, rate: 0.6, says: 'at most three cold days in three weeks' },
      { id: '4-9', below: 10, rate: 0.25, says: 'four to nine cold days in three weeks' },
      { id: '10+', rate: 0.15, says: 'ten cold days or more in three weeks' },
    ],
  },
  'recent-rain': {
    kind: 'one-of',
    says: 'rain and watering',
    asks: 'How much rain or watering has it had?',
    minutes: 0.1,
    options: [o('dry', 0.25, 'little'), o('about-right', 0.5, 'about right'), o('wet', 0.25, 'a lot')],
  },
  'soil-water': {
    kind: 'one-of',
    says: 'soil a finger deep',
    asks: 'Push a finger into the soil: how wet is it?',
    minutes: 0.5,
    options: [o('dry', 0.25, 'dry'), o('moist', 0.6, 'moist'), o('waterlogged', 0.15, 'sodden')],
  },
  light: {
    kind: 'one-of',
    says: 'light',
    asks: 'How much light does it get?',
    minutes: 0.1,
    options: [
      o('dull', 0.2, 'dull'),
      o('about-right', 0.65, 'about right'),
      o('scorching', 0.15, 'scorching sun'),
    ],
  },
  wind: {
    kind: 'one-of',
    says: 'wind',
    asks: 'How windy is the spot?',
    minutes: 0.1,
    options: [o('sheltered', 0.7, 'sheltered'), o('windy', 0.3, 'windy')],
  },
  'soil-ph': {
    kind: 'one-of',
    says: 'soil reaction',
    asks: 'Is the soil acid, neutral or limy?',
    minutes: 5,
    options: [
      o('acid', 0.2, 'acid'),
      o('about-neutral', 0.6, 'about neutral'),
      o('chalky-or-limed', 0.2, 'chalky or limed'),
    ],
  },
  'soil-kind': {
    kind: 'one-of',
    says: 'soil',
    asks: 'What soil is it?',
    minutes: 0.2,
    options: [
      o('sandy', 0.2, 'sandy'),
      o('loam', 0.4, 'loam'),
      o('clay', 0.2, 'clay'),
      o('potting-mix', 0.2, 'potting mix'),
    ],
  },
  'bed-disturbed': {
    kind: 'yes-no',
    says: 'dug, forked or rotavated in the last two months',
    asks: 'Was the bed dug, forked or rotavated in the last two months?',
    minutes: 0.1,
    rate: 0.35,
  },
  'compost-kinds': {
    kind: 'any-of',
    says: 'what went on the bed this year',
    asks: 'What went on the bed this year?',
    minutes: 0.3,
    options: [
      o('none', 0.3, 'nothing'),
      o('own-compost', 0.3, 'compost of your own'),
      o('green-waste', 0.12, 'green-waste compost'),
      o('cattle-manure', 0.08, 'cattle manure'),
      o('horse-manure', 0.12, 'horse manure'),
      o('poultry-manure', 0.05, 'poultry manure'),
      o('manure-unknown', 0.05, 'manure of unknown origin'),
      o('mushroom-compost', 0.06, 'mushroom compost'),
      o('bagged-compost', 0.15, 'bagged compost'),
      o('straw-or-hay', 0.08, 'straw or hay'),
      o('grass-clippings', 0.1, 'grass clippings'),
      o('leaf-mould', 0.08, 'leaf mould'),
      o('biochar-or-ash', 0.05, 'biochar or ash'),
      // Of this project's own: where it lies, mixed in or on top, the next questions ask.
      o('wood', 0.1, 'wood chip, bark or sawdust'),
    ],
  },
  'compost-state': {
    kind: 'one-of',
    says: 'state of the compost when it went on',
    asks: 'In what state was it when it went on?',
    minutes: 0.2,
    options: [
      o('finished', 0.7, 'finished'),
      o('fresh', 0.15, 'fresh'),
      o('still-warm', 0.1, 'still warm'),
      o('hot', 0.05, 'hot'),
    ],
  },
  'compost-celsius': {
    kind: 'number',
    says: 'hottest reading in the heap in the last month',
    asks: 'What was the hottest reading in the heap in the last month?',
    minutes: 3,
    unit: '°C',
    least: -20,
    most: 95,
    bands: [
      { id: 'below-30', below: 30, rate: 0.7, says: 'the heap stayed below 30 °C' },
      { id: '30-45', below: 45, rate: 0.17, says: 'the heap reached 30 to 45 °C' },
      { id: '45+', rate: 0.13, says: 'the heap reached 45 °C or more' },
    ],
  },
  'compost-age': {
    kind: 'number',
    says: 'age of the compost',
    asks: 'How many months old was the compost?',
    minutes: 0.3,
    unit: 'months',
    least: 0,
    most: 120,
    bands: [
      { id: '0-2', below: 3, rate: 0.2, says: 'compost less than three months old' },
      { id: '3-11', below: 12, rate: 0.45, says: 'compost three to twelve months old' },
      { id: '12+', rate: 0.35, says: 'compost a year old or more' },
    ],
  },
  'wood-in-root-zone': {
    kind: 'yes-no',
    says: 'wood chip, sawdust or straw mixed into the rooting depth',
    asks: 'Is wood chip, sawdust or straw mixed into the soil where the roots are?',
    minutes: 1,
    rate: 0.12,
    neverWith: NOTHING_BROUGHT,
  },
  'wood-on-surface': {
    kind: 'yes-no',
    says: 'wood chip or straw lying on the surface only',
    asks: 'Is wood chip or straw lying on the surface only?',
    minutes: 0.1,
    rate: 0.2,
    neverWith: NOTHING_BROUGHT,
  },
  'hay-source': {
    kind: 'one-of',
    says: 'hay, straw or manure from fields that may have been sprayed',
    asks: 'Could the hay, straw or manure come from sprayed fields?',
    minutes: 0.5,
    options: [o('no', 0.5, 'no'), o('unknown', 0.4, 'not known'), o('yes', 0.1, 'yes')],
  },
  'sprayed-nearby': {
    kind: 'yes-no',
    says: 'weedkiller used within sight in the last month',
    asks: 'Was weedkiller used within sight in the last month?',
    minutes: 0.2,
    rate: 0.12,
  },
  feed: {
    kind: 'one-of',
    says: 'feeding',
    asks: 'How has it been fed?',
    minutes: 0.1,
    options: [o('none', 0.5, 'not at all'), o('light', 0.4, 'lightly'), o('heavy', 0.1, 'heavily')],
  },
  netted: {
    kind: 'yes-no',
    says: 'netted or meshed',
    asks: 'Is it netted or under mesh?',
    minutes: 0.1,
    rate: 0.25,
  },
  'pests-about': {
    kind: 'any-of',
    says: 'animals known to visit this plot',
    asks: 'Which animals are known to visit this plot?',
    minutes: 0.2,
    options: [
      o('pigeons', 0.4, 'pigeons'),
      o('rabbits', 0.2, 'rabbits'),
      o('deer', 0.1, 'deer'),
      o('slugs', 0.6, 'slugs'),
      o('mice-or-voles', 0.3, 'mice or voles'),
    ],
  },
  'rotation-same-family': {
    kind: 'yes-no',
    says: 'same plant family grown here last season',
    asks: 'Did the same plant family grow here last season?',
    minutes: 0.2,
    rate: 0.2,
  },
  // Settings of this project's own, beyond the agreed vocabulary.
  'weeks-since-mixed-in': {
    kind: 'number',
    says: 'weeks since it was mixed in',
    asks: 'How many weeks ago was the wood, straw, manure or compost mixed into the soil?',
    minutes: 0.2,
    unit: 'weeks',
    least: 0,
    most: 520,
    onlyAfter: ['wood-in-root-zone=yes', 'compost-kinds=wood', ...BROUGHT],
    bands: [
      { id: '0-3', below: 4, rate: 0.25, says: 'mixed in less than four weeks ago' },
      { id: '4-11', below: 12, rate: 0.3, says: 'mixed in one to three months ago' },
      { id: '12-25', below: 26, rate: 0.25, says: 'mixed in three to six months ago' },
      { id: '26+', rate: 0.2, says: 'mixed in half a year ago or more' },
    ],
  },
  'compost-ammonia': {
    kind: 'yes-no',
    says: 'compost or manure smells of ammonia',
    asks: 'Does the compost or manure smell sharp, of ammonia, like a stable?',
    minutes: 0.3,
    rate: 0.12,
    onlyAfter: BROUGHT,
  },
  'soil-celsius': {
    kind: 'number',
    says: 'soil temperature at 10 cm in the morning',
    asks: 'What does a soil thermometer read at 10 cm, in the morning?',
    minutes: 3,
    // Never a plain question: the check with the soil thermometer asks for it.
    onlyAfter: [],
    unit: '°C',
    least: -10,
    most: 45,
    bands: [
      { id: 'below-8', below: 8, rate: 0.15, says: 'the soil is colder than 8 °C' },
      { id: '8-11', below: 12, rate: 0.25, says: 'the soil is at 8 to 11 °C' },
      { id: '12-15', below: 16, rate: 0.3, says: 'the soil is at 12 to 15 °C' },
      { id: '16+', rate: 0.3, says: 'the soil is at 16 °C or more' },
    ],
  },
} as const satisfies Record<string, Setting>;

export type SettingId = keyof typeof SETTINGS;

/** The value that a person gives for a setting: yes/no, one option, a list of options, or a number. */
export type SettingValue<Id extends SettingId> = (typeof SETTINGS)[Id] extends { kind: 'yes-no' }
  ? boolean
  : (typeof SETTINGS)[Id] extends { kind: 'number' }
    ? number
    : (typeof SETTINGS)[Id] extends { kind: 'any-of'; options: readonly { id: infer O }[] }
      ? readonly O[]
      : (typeof SETTINGS)[Id] extends { options: readonly { id: infer O }[] }
        ? O
        : never;
