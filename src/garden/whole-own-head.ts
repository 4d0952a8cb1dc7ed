import { isObject, type Loose, number, oneOf, text } from './loose.ts';
import { OWN_HEAD_ID, OWN_MARK_ENDS, type OwnHeadRecord } from './own-head-record.ts';

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
    (tested === undefined || (isObject(tested) && has(tested, TESTED, isBounded))) &&
    // A mark is used with its head, and only then.
    (found.end === 'used' ? isHead(head) : head === undefined)
  );
}

const TESTED = ['own', 'shipped', 'camera', 'gain', 'gainSe', 'ownRight', 'shippedRight'];

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
