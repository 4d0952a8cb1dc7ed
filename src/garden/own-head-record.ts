import { isObject, type Loose, list, number, oneOf, optional, text } from './loose.ts';
import type { Stamp } from './records.ts';

/** Id of the one record of its kind. */
export const OWN_HEAD_ID = 'own-head';

/**
 * What came of one mark: `used`: the garden's own head reports it; `no-better`: on plants kept aside it was not clearly better;
 * `overlaps`: a mark that takes it in, or a part of it, gained more; `too-few`: not tried.
 */
export const OWN_MARK_ENDS = ['used', 'no-better', 'overlaps', 'too-few'] as const;

/** What was counted of one mark: photos where the eye said it is there, or is not, and the plantings that they come from. */
export interface OwnMarkCounts {
  readonly present: number;
  readonly absent: number;
  readonly presentPlantings: number;
  readonly absentPlantings: number;
}

/** How three ways of telling a mark did on plantings that they had not learnt from: mean log losses, natural, a photo. */
export interface OwnMarkTested {
  readonly own: number;
  readonly shipped: number;
  readonly camera: number;
  /** By how much the own head was better than the better of the two others, and the standard error of that over plantings. */
  readonly gain: number;
  readonly gainSe: number;
  /** Photos told right. */
  readonly ownRight: number;
  readonly shippedRight: number;
}

/** Log likelihood ratio = level + logit · z + Σ weights · (features − mean) / spread; z is the shipped head's log odds. */
export interface OwnMarkHead {
  readonly level: number;
  readonly logit: number;
  readonly weights: readonly number[];
  readonly mean: readonly number[];
  readonly spread: readonly number[];
  /** The strongest ratio that it may give. */
  readonly most: number;
}

export interface OwnMark extends OwnMarkCounts {
  readonly mark: string;
  readonly end: (typeof OWN_MARK_ENDS)[number];
  /** Absent where it was not tried. */
  readonly tested?: OwnMarkTested;
  /** Only where it is used. */
  readonly head?: OwnMarkHead;
}

/** What the network of signs has learnt of one garden's look. Merged whole: the newer holds. */
export interface OwnHeadRecord extends Stamp {
  readonly kind: 'own-head';
  /** Which network's features it was learnt on, as `SeenByNetwork.network` names it. */
  readonly network: string;
  /** When it was learnt, ISO 8601, UTC. */
  readonly learntAt: string;
  /** Photos and plantings that it was learnt from. */
  readonly photos: number;
  readonly plantings: number;
  readonly marks: readonly OwnMark[];
}

const MOST_NUMBERS = 4096;
const LARGEST = 1e6;

/** Whole, or `undefined`: half a head would report wrongly, so nothing of a damaged one is used. */
export function repairOwnHead(found: Loose, stamp: Stamp): OwnHeadRecord | undefined {
  const marks = list(found.marks).map(markOf);
  const [photos, plantings] = [countOf(found.photos), countOf(found.plantings)];
  if (text(found.network) === '' || Number.isNaN(Date.parse(text(found.learntAt)))) return undefined;
  if (stamp.id !== OWN_HEAD_ID || photos === undefined || plantings === undefined) return undefined;
  if (!Array.isArray(found.marks) || marks.includes(undefined)) return undefined;
  const whole = marks as OwnMark[];
  if (new Set(whole.map(({ mark }) => mark)).size < whole.length) return undefined;
  return {
    ...stamp,
    kind: 'own-head',
    network: text(found.network),
    learntAt: text(found.learntAt),
    photos,
    plantings,
    marks: whole,
  };
}

const countOf = (found: unknown): number | undefined => {
  const count = number(found, 0, LARGEST);
  return Number.isInteger(count) ? count : undefined;
};

/** Every named number of an object within bounds, or `undefined` where one is missing. */
function numbersIn<Key extends string>(
  found: unknown,
  keys: readonly Key[],
  read: (value: unknown) => number | undefined,
): Readonly<Record<Key, number>> | undefined {
  if (!isObject(found)) return undefined;
  const all = keys.map((key) => [key, read(found[key])] as const);
  return all.some(([, value]) => value === undefined)
    ? undefined
    : (Object.fromEntries(all) as Readonly<Record<Key, number>>);
}

const finite = (value: unknown): number | undefined => number(value, -LARGEST, LARGEST);

function markOf(found: unknown): OwnMark | undefined {
  if (!isObject(found) || text(found.mark) === '') return undefined;
  const end = oneOf(OWN_MARK_ENDS, found.end);
  const counts = numbersIn(
    found,
    ['present', 'absent', 'presentPlantings', 'absentPlantings'] as const,
    countOf,
  );
  const tested = numbersIn(
    found.tested,
    ['own', 'shipped', 'camera', 'gain', 'gainSe', 'ownRight', 'shippedRight'] as const,
    finite,
  );
  const head = headOf(found.head);
  if (end === undefined || counts === undefined) return undefined;
  if ((found.tested !== undefined && !tested) || (found.head !== undefined && !head)) return undefined;
  if ((end === 'used') !== (head !== undefined)) return undefined;
  return { mark: text(found.mark), end, ...counts, ...optional('tested', tested), ...optional('head', head) };
}

function headOf(found: unknown): OwnMarkHead | undefined {
  const single = numbersIn(found, ['level', 'logit', 'most'] as const, finite);
  if (!isObject(found) || single === undefined || single.most < 1) return undefined;
  const [weights, mean, spread] = [found.weights, found.mean, found.spread].map(rowOf);
  if (!weights || !mean || !spread) return undefined;
  if (weights.length !== mean.length || weights.length !== spread.length) return undefined;
  return spread.every((one) => one > 0) ? { ...single, weights, mean, spread } : undefined;
}

function rowOf(found: unknown): readonly number[] | undefined {
  const row = list(found).map(finite);
  return row.length > 0 && row.length <= MOST_NUMBERS && !row.includes(undefined)
    ? (row as number[])
    : undefined;
}
