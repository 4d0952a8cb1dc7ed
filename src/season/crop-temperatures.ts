/**
 * What temperatures the crops bear, as published: the soil temperatures at which seed comes up (OSU-HARR, Harrington),
 * the mean temperatures at which plants grow (UCSC-KNOTT), how much cold they stand. Kept in the degrees Fahrenheit of
 * the publications, so that the numbers can be compared with them; every function speaks Celsius. Crops are named by the
 * ids of the vocabulary, which this folder does not know.
 */

export const celsiusOf = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

export interface Germination {
  readonly min: number;
  readonly optimumFrom: number;
  readonly optimumTo: number;
  readonly optimum: number;
  readonly max: number;
}
export interface Growing {
  readonly optimumFrom: number;
  readonly optimumTo: number;
  readonly min: number;
  readonly max: number;
}

const germinates = (min: number, optimumFrom: number, optimumTo: number, optimum: number, max: number) => ({
  min,
  optimumFrom,
  optimumTo,
  optimum,
  max,
});
const grows = (optimumFrom: number, optimumTo: number, min: number, max: number) => ({
  optimumFrom,
  optimumTo,
  min,
  max,
});

/** Soil temperature for seed to come up, °F: least, best from and to, best, most (OSU-HARR). */
export const GERMINATION: Readonly<Record<string, Germination>> = {
  asparagus: germinates(50, 60, 85, 75, 95),
  'french-bean': germinates(60, 60, 85, 80, 95),
  beetroot: germinates(40, 50, 85, 85, 95),
  cabbage: germinates(40, 45, 95, 85, 100),
  carrot: germinates(40, 45, 85, 80, 95),
  cauliflower: germinates(40, 45, 85, 80, 100),
  chard: germinates(40, 50, 85, 85, 95),
  sweetcorn: germinates(50, 60, 95, 95, 105),
  cucumber: germinates(60, 60, 95, 95, 105),
  aubergine: germinates(60, 75, 90, 85, 95),
  lettuce: germinates(35, 40, 80, 75, 95),
  melon: germinates(60, 75, 95, 90, 100),
  onion: germinates(35, 50, 95, 75, 95),
  parsley: germinates(40, 50, 85, 75, 90),
  parsnip: germinates(35, 50, 70, 65, 85),
  pea: germinates(40, 40, 75, 75, 85),
  pepper: germinates(60, 65, 95, 85, 95),
  pumpkin: germinates(60, 70, 90, 95, 100),
  radish: germinates(40, 45, 90, 85, 95),
  spinach: germinates(35, 45, 75, 70, 85),
  squash: germinates(60, 70, 95, 95, 100),
  tomato: germinates(50, 60, 85, 85, 95),
  turnip: germinates(40, 60, 105, 85, 105),
};

/** Classes of UCSC-KNOTT: monthly mean temperature, °F: best from and to, least, most. */
const ONIONS = grows(55, 75, 45, 85);
const COOL_AND_HARDY = grows(60, 65, 40, 75);
const COOL = grows(60, 65, 45, 75);
const BEANS = grows(60, 70, 50, 80);
const SWEETCORN = grows(60, 75, 50, 95);
const SQUASHES = grows(65, 75, 50, 90);
const CUCUMBERS = grows(65, 75, 60, 90);
const TOMATOES = grows(70, 75, 65, 80);
const HEAT_LOVERS = grows(70, 85, 65, 95);

/**
 * From E13 of the trade's groups (from memory; CAN-LETT for lettuce): very hardy stand through winter, half-hardy bear a
 * light frost, tender bear none.
 */
export type Hardiness = 'very-hardy' | 'half-hardy' | 'tender';

export interface CropTemperatures {
  readonly growing: Growing;
  /** Where the class comes from: published, or put with its kin by us. */
  readonly growingSource: 'UCSC-KNOTT' | 'from memory';
  readonly hardiness: Hardiness;
  /**
   * A day whose mean is below this counts as cold for the crop, °C. The growing minimum of UCSC-KNOTT; where that lies at
   * 18 °C, which other sources contradict (AGMET-VEG: tomatoes slow down below 20 and stop near 8 °C), the
   * upper end of the chilling range instead (PURDUE-CHILL).
   */
  readonly coldBelowCelsius: number;
  readonly coldSource: 'UCSC-KNOTT' | 'PURDUE-CHILL' | 'common practice, no source' | 'from memory';
  /** Soil at 10 cm below which it stands still or grows poorly, °C. */
  readonly soilSlowBelowCelsius: number;
  readonly soilSource:
    | 'common practice, no source'
    | 'AGMET-VEG'
    | 'OSU-FRANKLIN'
    | 'UCSC-KNOTT'
    | 'from memory';
  /**
   * Cold days in three weeks after which about half the plants show it. The order is the trade's (common practice, no
   * source: tomato hardier than pepper and aubergine, melon the most tender, soya a little hardier than French beans,
   * broad beans stand through winter) and that of PURDUE-CHILL (cucumber before tomato); for the scale, cucumbers bear
   * 10 °C for a week but not 8 °C for three days (CUC-CHILL).
   */
  readonly coldDaysBorne: number;
}

/** Upper end of the chilling range of young warm-season plants, 55 °F (PURDUE-CHILL). */
export const CHILLING_BELOW_CELSIUS = celsiusOf(55);

/** Roots grow slowly in soil below this, 60 °F (OSU-FRANKLIN). */
const ROOTS_SLOW_BELOW_CELSIUS = celsiusOf(60);

type Rest = Partial<CropTemperatures>;
const hardy = (growing: Growing, rest: Rest = {}): CropTemperatures => ({
  growing,
  growingSource: 'UCSC-KNOTT',
  hardiness: 'very-hardy',
  coldBelowCelsius: celsiusOf(growing.min),
  coldSource: 'UCSC-KNOTT',
  soilSlowBelowCelsius: celsiusOf(growing.min),
  soilSource: 'UCSC-KNOTT',
  coldDaysBorne: 30,
  ...rest,
});
const halfHardy = (growing: Growing, rest: Rest = {}): CropTemperatures =>
  hardy(growing, { hardiness: 'half-hardy', coldDaysBorne: 12, ...rest });
const tender = (growing: Growing, coldDaysBorne: number, rest: Rest = {}): CropTemperatures =>
  hardy(growing, {
    hardiness: 'tender',
    coldDaysBorne,
    soilSlowBelowCelsius: ROOTS_SLOW_BELOW_CELSIUS,
    soilSource: 'OSU-FRANKLIN',
    ...rest,
  });

const BY_KIN: Rest = { growingSource: 'from memory', coldSource: 'from memory' };
const CHILLED: Rest = { coldBelowCelsius: CHILLING_BELOW_CELSIUS, coldSource: 'PURDUE-CHILL' };

/** Every crop of the vocabulary but "other". */
export const CROP_TEMPERATURES: Readonly<Record<string, CropTemperatures>> = {
  tomato: tender(TOMATOES, 7, { ...CHILLED, soilSlowBelowCelsius: 17, soilSource: 'AGMET-VEG' }),
  potato: halfHardy(COOL),
  pepper: tender(TOMATOES, 5, CHILLED),
  aubergine: tender(HEAT_LOVERS, 5, CHILLED),
  'french-bean': tender(BEANS, 6, { soilSlowBelowCelsius: 18, soilSource: 'common practice, no source' }),
  'runner-bean': tender(BEANS, 6, BY_KIN),
  'broad-bean': hardy(COOL_AND_HARDY),
  pea: halfHardy(COOL, { coldDaysBorne: 15 }),
  // A little hardier than French beans (common practice, no source): one degree Celsius, one day.
  'soya-bean': tender(BEANS, 7, {
    growingSource: 'from memory',
    coldBelowCelsius: 9,
    coldSource: 'common practice, no source',
    soilSource: 'common practice, no source',
  }),
  courgette: tender(SQUASHES, 6),
  squash: tender(SQUASHES, 6),
  pumpkin: tender(SQUASHES, 6),
  cucumber: tender(CUCUMBERS, 4),
  melon: tender(CUCUMBERS, 3),
  cabbage: halfHardy(COOL_AND_HARDY, { coldDaysBorne: 20 }),
  broccoli: halfHardy(COOL_AND_HARDY, { coldDaysBorne: 20 }),
  calabrese: halfHardy(COOL_AND_HARDY),
  cauliflower: halfHardy(COOL),
  kale: hardy(COOL_AND_HARDY),
  'brussels-sprout': hardy(COOL_AND_HARDY),
  turnip: halfHardy(COOL_AND_HARDY),
  swede: halfHardy(COOL_AND_HARDY, { coldDaysBorne: 20 }),
  radish: halfHardy(COOL_AND_HARDY),
  rocket: halfHardy(COOL_AND_HARDY),
  'pak-choi': halfHardy(COOL_AND_HARDY),
  lettuce: halfHardy(COOL),
  endive: halfHardy(COOL, BY_KIN),
  spinach: hardy(COOL_AND_HARDY),
  chard: halfHardy(COOL_AND_HARDY),
  beetroot: halfHardy(COOL_AND_HARDY),
  celery: halfHardy(COOL),
  celeriac: halfHardy(COOL, BY_KIN),
  parsley: halfHardy(COOL, { ...BY_KIN, coldDaysBorne: 20 }),
  coriander: halfHardy(COOL, BY_KIN),
  fennel: halfHardy(COOL, BY_KIN),
  carrot: halfHardy(COOL),
  parsnip: hardy(COOL_AND_HARDY, BY_KIN),
  onion: halfHardy(ONIONS, { coldDaysBorne: 20 }),
  leek: hardy(ONIONS),
  garlic: hardy(ONIONS),
  sweetcorn: tender(SWEETCORN, 7),
  basil: tender(HEAT_LOVERS, 4, { ...CHILLED, growingSource: 'from memory' }),
  strawberry: halfHardy(COOL_AND_HARDY, { ...BY_KIN, coldDaysBorne: 20 }),
  raspberry: hardy(COOL_AND_HARDY, BY_KIN),
  rhubarb: hardy(COOL_AND_HARDY, BY_KIN),
  asparagus: halfHardy(COOL_AND_HARDY, BY_KIN),
  'sweet-potato': tender(HEAT_LOVERS, 5, { ...CHILLED, growingSource: 'from memory' }),
};

/** Published least mean temperature for growth, °C; undefined for a crop that is not known. */
export function growingMinimumOf(crop: string): number | undefined {
  const known = CROP_TEMPERATURES[crop];
  return known && celsiusOf(known.growing.min);
}

/** Temperatures below which single crops come to harm, °C. */
export const HARM_BELOW: readonly {
  readonly crop: string;
  readonly celsius: number;
  readonly what: string;
  readonly source: string;
}[] = [
  { crop: 'basil', celsius: celsiusOf(42), what: 'may die', source: 'UMASS-2021' },
  { crop: 'aubergine', celsius: celsiusOf(40), what: 'nights that stunt it', source: 'PSU-TOM' },
  { crop: 'tomato', celsius: 8, what: 'growth stops', source: 'AGMET-VEG' },
  { crop: 'tomato', celsius: 10, what: 'no fruit sets', source: 'AGMET-VEG' },
  { crop: 'cucumber', celsius: 12, what: 'seed does not sprout', source: 'AGMET-VEG' },
  { crop: 'cucumber', celsius: 14, what: 'turns yellow and stops', source: 'AGMET-VEG' },
];

/** Sources disagree about the least temperature for seed by about this much, °C (OSU-HARR, SUNDOWN-IFAS, TAMU-EK). */
const GERMINATION_SPREAD_CELSIUS = 3;

/**
 * Chance that seed in soil of this temperature does not come up because it is too cold, 0–1: one half at the published
 * minimum, one in ten at three degrees above it. Undefined where no minimum is published.
 */
export function chanceTooColdForSeed(crop: string, soilCelsius: number): number | undefined {
  const published = GERMINATION[crop];
  if (!published) return undefined;
  const above = soilCelsius - celsiusOf(published.min);
  return 1 / (1 + 9 ** (above / GERMINATION_SPREAD_CELSIUS));
}

/** Base temperatures for degree-days, °C (peas and cool crops 40 °F: UDEL-GDD; sweetcorn 50 °F: OSU-CROPT; the others from memory). */
export function degreeDayBaseOf(crop: string): number | undefined {
  const known = CROP_TEMPERATURES[crop];
  if (!known) return undefined;
  return known.hardiness === 'tender' ? celsiusOf(50) : celsiusOf(40);
}

/** From when on an expected night or day is worth a word for a crop, °C. */
export interface ColdLimits {
  /** Lowest of a night at or below which it comes to harm; absent for what stands through winter. */
  readonly frostAt?: number;
  /** Mean of a day below which it stands still or is chilled. */
  readonly coldBelow: number;
}

/**
 * Tender crops bear no frost; near the ground it is up to two degrees colder than where thermometers hang (common practice,
 * no source). Half-hardy ones are hurt at −1 °C (CAN-LETT; potato tops −1 to −2 °C, from memory).
 */
const FROST_AT: Readonly<Record<Hardiness, number | undefined>> = {
  tender: 2,
  'half-hardy': -1,
  'very-hardy': undefined,
};

/** What cold a crop bears, to hold against a forecast; `undefined` for a crop that is not known. */
export function coldLimitsOf(crop: string): ColdLimits | undefined {
  const known = CROP_TEMPERATURES[crop];
  if (!known) return undefined;
  const frostAt = FROST_AT[known.hardiness];
  return { coldBelow: known.coldBelowCelsius, ...(frostAt === undefined ? {} : { frostAt }) };
}
