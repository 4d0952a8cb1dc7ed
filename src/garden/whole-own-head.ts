import { isObject, type Loose, number, oneOf, text } from './loose.ts';
import type { OwnHeadRecord } from './own-head-record.ts';

/** Id of the one record of its kind. */
export const OWN_HEAD_ID = 'own-head';

/**
 * What came of one mark: `used`: the garden's own head reports it; `no-better`: on plants kept aside it was not clearly better;
 * `overlaps`: a mark that takes it in, or a part of it, gained more; `too-few`: not tried.
 */
export const OWN_MARK_ENDS = ['used', 'no-better', 'overlaps', 'too-few'] as const;

/** What reports a mark in a garden that has taught nothing: the camera alone, or the shipped head beside it. */
export const OWN_MARK_BEFORE = ['camera', 'shipped'] as const;

/** Longer lists and larger numbers than any head of ours has. */
const MOST_NUMBERS = 4096;
const LARGEST = 1e6;

/** Is all of it there, and fits together? Half a head would report wrongly, so a damaged one is not used at all. */
export function isWholeOwnHead({ id, network, learntAt, photos, plantings, marks }: OwnHeadRecord): boolean {
  return (
    id === OWN_HEAD_ID &&
    network !== '' &&
    !Number.isNaN(Date.parse(learntAt)) &&
    [photos, plantings].every(isCount) &&
    marks.every(isMark) &&
    new Set(marks.map(({ mark }) => mark)).size === marks.length
  );
}

const isCount = (found: unknown): boolean =>
  number(found, 0, LARGEST) !== undefined && Number.isInteger(found);
const isBounded = (found: unknown): boolean => number(found, -LARGEST, LARGEST) !== undefined;
const has = (found: Loose, keys: readonly string[], is: (value: unknown) => boolean): boolean =>
  keys.every((key) => is(found[key]));

function isMark(found: unknown): boolean {
  if (!isObject(found) || text(found.mark) === '') return false;
  const { tested, head } = found;
  return (
    oneOf(OWN_MARK_ENDS, found.end) !== undefined &&
    has(found, ['present', 'absent', 'presentPlantings', 'absentPlantings'], isCount) &&
    (tested === undefined || isTested(tested)) &&
    // A mark is used with its head, and only then.
    (found.end === 'used' ? isHead(head) : head === undefined)
  );
}

const isTested = (found: unknown): boolean =>
  isObject(found) &&
  has(found, ['camera', 'shipped', 'own', 'gain', 'gainSe'], isBounded) &&
  has(found, ['right', 'rightBefore'], isCount) &&
  oneOf(OWN_MARK_BEFORE, found.before) !== undefined;

function isHead(found: unknown): boolean {
  if (!isObject(found) || !has(found, ['level', 'logit', 'most'], isBounded)) return false;
  const rows = [found.weights, found.mean, found.spread];
  const [first] = rows;
  return (
    Array.isArray(first) &&
    first.length > 0 &&
    first.length <= MOST_NUMBERS &&
    rows.every((row) => Array.isArray(row) && row.length === first.length && row.every(isBounded)) &&
    (found.spread as number[]).every((one) => one > 0) &&
    (found.most as number) >= 1
  );
}
