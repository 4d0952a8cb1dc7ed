import {
  POT_TEST_QUESTIONS,
  POT_TEST_VERDICTS,
  type PotScored,
  type PotSown,
  type PotTestRecord,
  type PotTestSaid,
} from './ground-records.ts';
import {
  byDate,
  day,
  isObject,
  type Loose,
  list,
  number,
  once,
  oneOf,
  optional,
  text,
  texts,
} from './loose.ts';
import type { Stamp } from './records.ts';

/** Seeds in one pot, and a seedling's height, mm: beyond them it was a slip of the finger. */
const MOST = { seeds: 60, heightMm: 2000, leafSets: 12, grams: 2000 } as const;

/** A pot test made whole; `undefined` where the batch or the day of sowing is missing. */
export function repairPotTest(found: Loose, stamp: Stamp): PotTestRecord | undefined {
  const sownOn = day(found.sownOn);
  if (text(found.batchId) === '' || sownOn === '') return undefined;
  return {
    ...stamp,
    kind: 'pot-test',
    batchId: text(found.batchId),
    question: oneOf(POT_TEST_QUESTIONS, found.question) ?? 'residue',
    crop: text(found.crop),
    sownOn,
    ...(found.toSow === true ? { toSow: true } : {}),
    pots: once(list(found.pots).map(repairPot)),
    scores: byDate(once(list(found.scores).map(repairScore))),
    note: text(found.note),
    ...optional('lookOn', day(found.lookOn)),
    ...optional('said', repairSaid(found.said)),
    ...optional('endedOn', day(found.endedOn)),
  };
}

function repairPot(found: unknown): PotSown | undefined {
  if (!isObject(found) || text(found.id) === '') return undefined;
  const seeds = number(found.seeds, 1, MOST.seeds);
  // A pot of which nobody knows what is in it can be neither test nor control.
  const role = oneOf(['test', 'control'] as const, found.role);
  if (seeds === undefined || role === undefined) return undefined;
  return {
    id: text(found.id),
    label: text(found.label),
    role,
    seeds,
    ...optional('block', number(found.block, 0, 1e3)),
    ...optional('place', number(found.place, 0, 1e3)),
  };
}

function repairScore(found: unknown): PotScored | undefined {
  if (!isObject(found) || text(found.id) === '') return undefined;
  const emerged = number(found.emerged, 0, MOST.seeds);
  if (day(found.date) === '' || text(found.potId) === '' || emerged === undefined) return undefined;
  return {
    id: text(found.id),
    date: day(found.date),
    potId: text(found.potId),
    emerged,
    ...optional('heightMm', number(found.heightMm, Number.MIN_VALUE, MOST.heightMm)),
    ...optional('injury', number(found.injury, 0, 100)),
    ...optional('leafSets', number(found.leafSets, 0, MOST.leafSets)),
    ...optional('grams', number(found.grams, Number.MIN_VALUE, MOST.grams)),
    photos: texts(found.photos),
    ...(isObject(found.reading) ? { reading: found.reading } : {}),
  };
}

function repairSaid(found: unknown): PotTestSaid | undefined {
  const verdict = isObject(found) ? oneOf(POT_TEST_VERDICTS, found.verdict) : undefined;
  if (!isObject(found) || verdict === undefined || day(found.on) === '') return undefined;
  return {
    verdict,
    on: day(found.on),
    why: texts(found.why),
    ...optional('chance', number(found.chance, 0, 1)),
    ...optional('injuryRatio', number(found.injuryRatio, Number.MIN_VALUE, Number.MAX_VALUE)),
  };
}
