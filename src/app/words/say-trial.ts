/** What is planned and what came out of a trial, in sentences: the finding first, its range with it. */
import type {
  DifferenceWord,
  TreatmentDifference,
  TrialResult,
} from '../../compare/side-by-side/read-trial.ts';
import type { TrialMeasure } from '../../compare/side-by-side/trial.ts';
import type { TrialRecord } from '../../garden/trial-record.ts';
import type { MeasureId } from '../../leaf/measures.ts';
import type { PlanNumbers } from '../state/plan-trial.ts';
import { measuredOn } from '../state/read-kept-trial.ts';
import { nameOfMeasure, scaleOf } from './changes.ts';
import { describeDay } from './dates.ts';
import { countUnits, TRIAL_WORDS as WORDS } from './trial.ts';
import { shownUnit, toShown } from './units.ts';

/** Leaf measures that a trial may rest on: what a grower wants more or less of, and one photo of one leaf tells. */
export const TRIAL_PHOTO_MEASURES = [
  'chlorotic-fraction',
  'necrotic-fraction',
  'purple-fraction',
  'lost-fraction',
  'hole-count',
  'spot-count',
  'dark-green-index',
] as const satisfies readonly MeasureId[];

/** A count, a share, a score says nothing until it is said of what. */
const isOfSomething = (measure: TrialMeasure): boolean =>
  measure.by === 'hand' && ['count', 'share', 'score'].includes(measure.kind);

/** How a measure is typed and said: times what is stored, its unit, and which way is more. */
export interface MeasureWords {
  readonly name: string;
  readonly times: number;
  readonly unit: string;
  readonly more: string;
  readonly less: string;
}

export function measureWords(
  measure: TrialMeasure,
  { ofWhat }: Pick<TrialRecord, 'ofWhat'> = {},
): MeasureWords {
  if (measure.by === 'hand' && measure.kind === 'height') {
    const unit = shownUnit('cm');
    return {
      ...WORDS.hand.height,
      times: toShown('cm', 1),
      unit,
      name: `${WORDS.hand.height.name}, ${unit}`,
    };
  }
  if (measure.by === 'hand') {
    const words = { times: measure.kind === 'share' ? 100 : 1, ...WORDS.hand[measure.kind] };
    return ofWhat && isOfSomething(measure) ? { ...words, name: ofWhat } : words;
  }
  const { times, unit } = scaleOf(measure.measure);
  return { name: nameOfMeasure(measure.measure), times, unit, more: 'more', less: 'less' };
}

/** "Height, cm", "Pale to yellow, of 100" */
export const nameWithUnit = ({ name, unit }: MeasureWords): string =>
  unit && !name.includes(',') ? `${name}, ${unit}` : name;

/** So many digits that a twentieth of `span` can still be told. */
export const digitsFor = (span: number): number =>
  span > 0 && Number.isFinite(span) ? Math.min(4, Math.max(0, -Math.floor(Math.log10(span / 4)))) : 1;

/** A number without needless noughts at its end, with a true minus. */
export const figure = (value: number, digits: number): string => {
  const said = Number(value.toFixed(digits)).toString();
  return (said === '-0' ? '0' : said).replace('-', '−');
};

const withUnit = (said: string, unit: string): string => (unit ? `${said} ${unit}` : said);

/** A stored value as it is typed: "23", "12.5". */
export const typedOf = (value: number, { times }: MeasureWords): string =>
  String(Number((value * times).toPrecision(6)));

/** "4 cm" */
export const sayAmount = (value: number, words: MeasureWords, digits: number): string =>
  withUnit(figure(Math.abs(value) * words.times, digits), words.unit);

export const wayNameOf = (trial: Pick<TrialRecord, 'ways'>, id: string): string =>
  WORDS.wayName(id, trial.ways.find((way) => way.id === id)?.name ?? '');

export interface DifferenceInWords {
  /** "Taller with “not dug”" */
  readonly head: string;
  /** The size, and the range that holds the truth in 9 of 10 such trials. */
  readonly says: string;
}

type Trial = Pick<TrialRecord, 'ways' | 'matters' | 'ofWhat' | 'better'>;

/** One end of a range of differences, with its direction: "2 cm shorter". */
const sayEnd = (value: number, words: MeasureWords, digits: number): string => {
  const size = figure(Math.abs(value) * words.times, digits);
  if (size === '0') return 'no difference';
  return `${withUnit(size, words.unit)} ${value < 0 ? words.less : words.more}`;
};

/** "1 to 7 cm taller", "from 2 cm shorter to 9 cm taller" */
export function sayRange(low: number, high: number, words: MeasureWords, digits: number): string {
  const [from, to] = low < 0 && high <= 0 ? [high, low] : [low, high];
  if (from < 0 !== to < 0 && from !== 0 && to !== 0)
    return `from ${sayEnd(from, words, digits)} to ${sayEnd(to, words, digits)}`;
  const near = figure(Math.abs(from) * words.times, digits);
  return `${near} to ${sayEnd(to, words, digits)}`;
}

/** Said only where it gives the very ends of the range that stands beside it: two ranges that differ would confuse. */
function giveOrTake(
  estimate: number,
  { low, high }: { readonly low: number; readonly high: number },
  words: MeasureWords,
  digits: number,
): string {
  const [middle, from, to] = [estimate, low, high].map((value) =>
    Number((value * words.times).toFixed(digits)),
  ) as [number, number, number];
  const [below, above] = [(middle - from).toFixed(digits), (to - middle).toFixed(digits)];
  return below === above ? `, give or take ${figure(to - middle, digits)}` : '';
}

/**
 * What is to be said where ways differ, but perhaps by less than matters to the grower: with the finding where the best guess is
 * less, with its range where only the near end is.
 */
function doubtSize(
  { matters }: Trial,
  { estimate, interval }: Pick<TreatmentDifference, 'estimate' | 'interval'>,
  scale: 'difference' | 'ratio',
  words: MeasureWords,
): Partial<DifferenceInWords> {
  if (matters === undefined || !interval) return {};
  const sizeOf = (value: number): number => Math.abs(scale === 'ratio' ? Math.log(value) : value);
  const enough = sizeOf(matters);
  const amount = scale === 'ratio' ? sayTimes(matters) : sayAmount(matters, words, 2);
  if (sizeOf(estimate) < enough)
    return { head: `, perhaps too little to matter to you (you said ${amount})` };
  return Math.min(sizeOf(interval.low), sizeOf(interval.high)) < enough
    ? { says: ` It may still be less than what matters to you: ${amount}.` }
    : {};
}

const sayTimes = (value: number): string => `${figure(value, 2)} times as much`;

const HOLDS = 'A range found in this way holds the truth in at least 9 of 10 such trials.';
/** With one bed a side it held that of the treatment in 7 to 9 of 10 made-up trials (`compare/side-by-side/README.md`). */
const HOLDS_HERE =
  'That is true of these two beds. Of the ways themselves such a range misses the truth more often.';

/** What came out between two ways, and which did better by what the grower wants. */
export function sayDifference(
  trial: Trial,
  difference: TreatmentDifference,
  measure: TrialMeasure,
  scale: 'difference' | 'ratio',
): DifferenceInWords {
  const { head, says } = sayFound(trial, difference, measure, scale);
  const { word, first, second } = difference;
  if (word !== 'more' && word !== 'less') return { head, says };
  const doubt = doubtSize(trial, difference, scale, measureWords(measure, trial));
  const winner = wayNameOf(trial, trial.better === word ? second : first);
  const better = trial.better === undefined ? '' : ` ${WORDS.did[trial.better](winner)}`;
  return { head: `${head}${doubt.head ?? ''}`, says: `${says}${doubt.says ?? ''}${better}` };
}

function sayFound(
  trial: Trial,
  difference: TreatmentDifference,
  measure: TrialMeasure,
  scale: 'difference' | 'ratio',
): DifferenceInWords {
  const words = measureWords(measure, trial);
  const [first, second] = [wayNameOf(trial, difference.first), wayNameOf(trial, difference.second)];
  const { estimate, interval, word, standing } = difference;
  const holds = standing === 'indication' ? HOLDS_HERE : HOLDS;
  const isNamed = measure.by === 'photo' || (isOfSomething(measure) && trial.ofWhat !== undefined);
  const about = isNamed ? `${words.name}: ` : '';
  const heads: Record<DifferenceWord, string> = {
    more: `${about}${words.more} with ${second}`,
    less: `${about}${words.less} with ${second}`,
    alike: `${about}between ${first} and ${second} too little to matter`,
    open: `${about}${first} or ${second}: it cannot be told yet`,
  };
  const head = heads[word].charAt(0).toLocaleUpperCase('en-GB') + heads[word].slice(1);
  if (scale === 'ratio') {
    const size = `With ${second} about ${sayTimes(estimate)} as with ${first}`;
    return {
      head,
      says: interval
        ? `${size}: ${figure(interval.low, 2)} to ${figure(interval.high, 2)} times. ${holds}`
        : `${size}.`,
    };
  }
  const digits = digitsFor((interval ? interval.high - interval.low : Math.abs(estimate)) * words.times);
  const size = `With ${second} about ${sayEnd(estimate, words, digits)}${figure(Math.abs(estimate) * words.times, digits) === '0' ? ' from' : ' than with'} ${first}`;
  if (!interval) return { head, says: `${size}.` };
  const range = sayRange(interval.low, interval.high, words, digits);
  if (word === 'open')
    return {
      head,
      says: `With ${second} it may be anything ${range.startsWith('from') ? range : `from ${range}`} than with ${first}. ${holds}`,
    };
  if (word === 'alike')
    return {
      head,
      says: `With ${second} it is ${range.startsWith('from') ? 'anything ' : ''}${range} than with ${first}, less than the ${sayAmount(trial.matters ?? 0, words, 2)} that matter to you. ${holds}`,
    };
  return { head, says: `${size}${giveOrTake(estimate, interval, words, digits)}: ${range}. ${holds}` };
}

/** One season's difference by itself: "4 cm taller (1 to 7 cm taller)". */
export function saySeason(
  { estimate, interval }: Pick<TreatmentDifference, 'estimate' | 'interval'>,
  measure: TrialMeasure,
  scale: 'difference' | 'ratio',
): string {
  const words = measureWords(measure);
  if (scale === 'ratio')
    return `${sayTimes(estimate)}${interval ? ` (${figure(interval.low, 2)} to ${figure(interval.high, 2)})` : ''}`;
  const digits = digitsFor((interval ? interval.high - interval.low : Math.abs(estimate)) * words.times);
  const range = interval ? ` (${sayRange(interval.low, interval.high, words, digits)})` : '';
  return `${sayEnd(estimate, words, digits)}${range}`;
}

/** What was counted: "6 plants of each", "5 plants of “dug”, 6 of “not dug”". */
export function sayCounts(trial: TrialRecord, difference: TreatmentDifference, ofBeds: boolean): string {
  const [one, other] = difference.counts;
  const unit = ofBeds ? 'bed' : trial.unit === 'plot' ? 'plot' : 'plant';
  if (one === other) return `Counted: ${countUnits(one, unit)} of each.`;
  return `Counted: ${countUnits(one, unit)} of ${wayNameOf(trial, difference.first)}, ${other} of ${wayNameOf(trial, difference.second)}.`;
}

/** So many more lost of one way than of another are worth a word, as in `compare/side-by-side/warn-of-readings.ts`. */
const LOST_UNEVENLY = 2;

/**
 * What makes the result doubtful, a sentence each. While a measuring is half-way, what has no number yet is said to be that,
 * and not lost.
 */
export function sayDoubts(trial: TrialRecord, warnings: TrialResult['warnings']): string[] {
  const layout = trial.layouts.at(-1);
  const valued = trial.readings.filter(({ value }) => value !== undefined);
  const day =
    valued
      .map(({ date }) => date)
      .sort()
      .at(-1) ?? '';
  const [done, all] = layout ? measuredOn(trial, layout, day) : [0, 0];
  if (trial.ended || done === all) return warnings.map((one) => WORDS.warnings[one]);
  const units = trial.layouts.flatMap((one) => one.units);
  const have = new Set(valued.map(({ unitId }) => unitId));
  const gone = new Set(trial.losses.map(({ id }) => id));
  const lost = units.filter(({ id }) => gone.has(id));
  const unmeasured = units.filter(({ id }) => !gone.has(id) && !have.has(id)).length;
  const lostOf = trial.ways.map(({ id }) => lost.filter(({ way }) => way === id).length);
  const sayLost = [
    ...(lost.length > 0 ? [WORDS.notYet.lost(lost.length)] : []),
    ...(unmeasured > 0 ? [WORDS.notYet.unmeasured(unmeasured)] : []),
  ];
  return warnings.flatMap((one) => {
    if (one === 'units-lost') return sayLost;
    if (one === 'looks-apart') return WORDS.notYet.halfWay(done, all, describeDay(day, day));
    const isEven = Math.max(...lostOf) - Math.min(...lostOf) < LOST_UNEVENLY;
    return one === 'lost-unevenly' && isEven ? [] : WORDS.warnings[one];
  });
}

const PORTIONS = [
  [0.3, 'less than a third'],
  [0.42, 'about a third'],
  [0.58, 'about half'],
  [0.8, 'about two thirds'],
  [1, 'not quite all'],
] as const;

/** Alike, or apart by more than matters over the whole range: more of them would tell nothing new. */
export const isSettled = (
  trial: Trial,
  difference: TreatmentDifference,
  measure: TrialMeasure,
  scale: 'difference' | 'ratio',
): boolean =>
  difference.word === 'alike' ||
  (difference.word !== 'open' &&
    Object.keys(doubtSize(trial, difference, scale, measureWords(measure, trial))).length === 0);

/** That fewer were counted than it takes to see what matters, as a sentence; none where there are enough, or nobody can tell. */
export function sayTooFew(
  trial: TrialRecord,
  counts: readonly number[],
  ofBeds: boolean,
  numbers: PlanNumbers,
  words: MeasureWords,
): string[] {
  if ('missing' in numbers || numbers.needed === undefined || trial.matters === undefined) return [];
  const { needed, chance } = numbers;
  const fewest = Math.min(...counts);
  const portion = PORTIONS.find(([most]) => fewest / needed <= most)?.[1];
  if (fewest >= needed || !portion) return [];
  const unit = ofBeds ? 'bed' : trial.unit === 'plot' ? 'plot' : 'plant';
  const wanted = trial.scale === 'ratio' ? sayTimes(trial.matters) : sayAmount(trial.matters, words, 2);
  return [
    `${countUnits(fewest, unit)} of a way ${fewest === 1 ? 'was' : 'were'} counted, ${portion} of the ${needed} it takes to see a difference of ${wanted} in ${Math.round(chance * 10)} of 10 such trials.`,
  ];
}

const inTen = (chance: number): string => {
  const tens = Math.round(chance * 10);
  if (tens < 1) return 'fewer than 1 in 10';
  return tens > 9 ? 'more than 9 in 10' : `about ${tens} in 10`;
};

/** How many it takes and what so many would see, in sentences. */
export function sayPlan(trial: TrialRecord, numbers: PlanNumbers, words: MeasureWords): string[] {
  if ('missing' in numbers) return [WORDS.missing[numbers.missing]];
  const { chance, needed, each, chanceAtEach, smallest, ranksReach } = numbers;
  const unit = trial.unit ?? 'plant';
  const ratio = trial.scale === 'ratio';
  const amount = (value: number): string =>
    ratio ? sayTimes(value) : sayAmount(value, words, digitsFor(value * words.times * 4));
  const many = Math.max(2, trial.ways.length);
  const says: string[] = [];
  const often = `in ${Math.round(chance * 10)} of 10 such trials`;
  const wanted = ratio ? amount(trial.matters ?? 0) : `a difference of ${amount(trial.matters ?? 0)}`;
  if (needed === undefined)
    says.push(
      `Even 100 ${unit}s of each way would not do.`,
      `To see ${wanted}, measure something that varies less, or be content with a larger difference.`,
    );
  else
    says.push(
      `It takes about ${countUnits(needed, unit)} of each way, ${needed * many} in all.`,
      `Then ${wanted} shows ${often}, if it is there.`,
    );
  if (each > 0 && each !== needed) {
    says.push(
      each === 1
        ? `With one of each nothing can be said of chance: any difference may be that one ${unit}’s own.`
        : `With ${each} of each it would show in ${inTen(chanceAtEach)} such trials${smallest === undefined ? '' : `; what shows ${often} is ${ratio ? '' : 'a difference of '}${amount(smallest)} or more`}.`,
    );
  }
  if (each > 1 && !ranksReach) says.push(WORDS.warnings['few-units']);
  return says;
}
