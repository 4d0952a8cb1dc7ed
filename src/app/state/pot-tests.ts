/** Pot tests between the garden's records and the screens: laying out, scoring pot by pot, ending a look. Pure. */

import { type LaidOut, type SowingCard, sowingCardOf } from '../../compare/pot-test/plan-pot-test.ts';
import { type PotTestResult, readPotTest } from '../../compare/pot-test/read-pot-test.ts';
import { nextLook, type PlannedLook } from '../../compare/pot-test/schedule-looks.ts';
import { LOOK_LASTS_DAYS } from '../../compare/pot-test/stand-at-look.ts';
import { testCrop } from '../../compare/pot-test/test-crops.ts';
import { daysBetween } from '../../days/days.ts';
import type {
  BatchRecord,
  PotScored,
  PotSown,
  PotTestRecord,
  PotTestSaid,
} from '../../garden/ground-records.ts';
import { potScoreId } from '../../garden/ground-records.ts';
import { byDate } from '../../garden/loose.ts';
import { RECORDS_SCHEMA } from '../../garden/records.ts';
import { batchAfterPotTest } from '../../garden/settle-pot-test.ts';
import { withFields } from './edit-ground.ts';

/** A test as it was just laid out, not sown yet. */
export const newPotTest = (
  { question, crop, pots, looks }: SowingCard,
  batchId: string,
  sowOn: string,
  now: string,
): PotTestRecord => ({
  kind: 'pot-test',
  id: crypto.randomUUID(),
  schema: RECORDS_SCHEMA,
  changedAt: now,
  batchId,
  question,
  crop: crop.id,
  sownOn: sowOn,
  toSow: true,
  pots,
  scores: [],
  ...(looks[0] ? { lookOn: looks[0].on } : {}),
  note: '',
});

/** Its card; `undefined` where it was laid out by a version that knows other crops. */
export function cardOf({ question, crop, sownOn, pots }: PotTestRecord): SowingCard | undefined {
  if (!testCrop(crop)) return undefined;
  const placed: LaidOut['pots'] = pots.map((pot, at) => ({
    ...pot,
    block: pot.block ?? Math.floor(at / 2),
    place: pot.place ?? at % 2,
  }));
  return sowingCardOf({ question, crop, sownOn, pots: placed });
}

/** Pots as they stand, from one end of the row to the other. */
export const inPlace = (pots: readonly PotSown[]): PotSown[] =>
  [...pots].sort((a, b) => (a.block ?? 0) - (b.block ?? 0) || (a.place ?? 0) - (b.place ?? 0));

/** Sown on a day: from it the looks are counted. */
export function sownOnDay(test: PotTestRecord, day: string): PotTestRecord {
  const { toSow: _toSow, ...sown } = test;
  return { ...sown, sownOn: day, ...(test.endedOn ? {} : { lookOn: nextLook({ ...sown, sownOn: day }).on }) };
}

/** The look that was begun and not ended, if it is not too long ago; else the one of today. */
export function lookDay({ scores, said }: PotTestRecord, today: string): string {
  const newest = scores.at(-1)?.date ?? '';
  const isOpen =
    newest > (said?.on ?? '') && newest <= today && daysBetween(newest, today) <= LOOK_LASTS_DAYS;
  return isOpen ? newest : today;
}

export const scoreAt = (test: PotTestRecord, date: string, potId: string): PotScored | undefined =>
  test.scores.find(({ id }) => id === potScoreId(date, potId));

/** How a pot was scored last before a day. */
export const scoreBefore = (test: PotTestRecord, date: string, potId: string): PotScored | undefined =>
  test.scores.filter((score) => score.potId === potId && score.date < date).at(-1);

/** Seedlings that a pot shows on a day before anybody says otherwise: those of the last look. */
export const emergedSoFar = (test: PotTestRecord, date: string, potId: string): number | undefined =>
  scoreAt(test, date, potId)?.emerged ?? scoreBefore(test, date, potId)?.emerged;

export type ScorePatch = { readonly [Key in keyof PotScored]?: PotScored[Key] | undefined };

/**
 * The test with one thing more said of a pot on a day. What has come up is taken from the last look until it is said anew; as long as it
 * never was, nothing else can be.
 */
export function withScore(
  test: PotTestRecord,
  date: string,
  potId: string,
  patch: ScorePatch,
): PotTestRecord {
  const emerged = patch.emerged ?? emergedSoFar(test, date, potId);
  if (emerged === undefined) return test;
  const id = potScoreId(date, potId);
  const before = scoreAt(test, date, potId) ?? { id, date, potId, emerged, photos: [] };
  const score = withFields<PotScored>(before, { ...patch, emerged });
  return { ...test, scores: byDate([...test.scores.filter((one) => one.id !== id), score]) };
}

export const withoutScore = (test: PotTestRecord, date: string, potId: string): PotTestRecord => ({
  ...test,
  scores: test.scores.filter(({ id }) => id !== potScoreId(date, potId)),
});

/** What is asked at a look on a day: the plan's look that it answers. */
export function lookAsked(test: PotTestRecord, date: string): PlannedLook['what'] {
  const before = { ...test, scores: test.scores.filter((score) => score.date < date) };
  const { on, what } = nextLook(before);
  // Who comes a good while after the count is due sees leaves.
  return what === 'count' && daysBetween(on, date) > LOOK_LASTS_DAYS ? 'score' : what;
}

/** Has a pot been looked at on that day? At a count it is enough to say how many are up; later its leaves count, if it has any. */
export function isScored(test: PotTestRecord, date: string, potId: string): boolean {
  const score = scoreAt(test, date, potId);
  if (!score) return false;
  const asksLeaves = test.question === 'residue' && lookAsked(test, date) !== 'count' && score.emerged > 0;
  return !asksLeaves || score.injury !== undefined;
}

/** The reading as it was told last; a look that is only half-way does not count yet. */
export const readingTold = (test: PotTestRecord): PotTestResult | undefined =>
  test.said && testCrop(test.crop) ? readPotTest(test, test.said.on) : undefined;

/** What of a reading is kept with the test. */
export function saidOf({
  verdict,
  on,
  chance,
  harms,
  because,
  invalid,
}: PotTestResult): PotTestSaid | undefined {
  if (on === undefined) return undefined;
  return {
    verdict,
    on,
    why: verdict === 'invalid' ? invalid.map(({ code }) => code) : because,
    ...(chance === undefined ? {} : { chance }),
    ...(harms ? { injuryRatio: harms.injury.ratio } : {}),
  };
}

export interface LookEnded {
  readonly test: PotTestRecord;
  readonly result: PotTestResult;
  /** The batch, where the test changes what holds for it. */
  readonly batch?: BatchRecord;
}

/**
 * Ends a look: the test is read on everything scored so far, the next look is set or the test ends, and the batch follows.
 * @param tests all pot tests of the garden
 * @param sayWhy the sentence that the batch keeps as its reason; the face's words
 * @throws PotTestError where numbers cannot be
 */
export function endLook(
  test: PotTestRecord,
  batch: BatchRecord | undefined,
  tests: readonly PotTestRecord[],
  sayWhy: (said: PotTestSaid) => string,
  today: string,
  now: string,
): LookEnded {
  const result = readPotTest(test);
  const said = saidOf(result);
  const { lookOn: _lookOn, endedOn: _endedOn, ...rest } = test;
  // A look taken after the end is part of the test: it ends with its last look, not before.
  const lastLook = test.scores.at(-1)?.date ?? '';
  const endedOn = test.endedOn === undefined ? today : [test.endedOn, lastLook].sort().at(-1)!;
  const goesOn = result.verdict === 'go-on' && result.next === 'look-again' && result.look;
  const read: PotTestRecord = {
    ...rest,
    ...(said ? { said } : {}),
    ...(goesOn ? { lookOn: goesOn.on } : { endedOn }),
  };
  const after = batch && said && batchAfterPotTest(batch, read, tests, sayWhy(said), now);
  return { test: read, result, ...(after && after !== batch ? { batch: after } : {}) };
}

/** Has a test of the batch ended without saying whether it harms? Then the next one should decide. */
export const isLeftOpen = (tests: readonly PotTestRecord[], batchId: string): boolean =>
  tests.some(
    ({ batchId: of, question, endedOn, said }) =>
      of === batchId && question === 'residue' && endedOn !== undefined && said?.verdict === 'go-on',
  );

/** Ended before it told anything. */
export function givenUp({ lookOn: _lookOn, ...test }: PotTestRecord, today: string): PotTestRecord {
  return { ...test, endedOn: today };
}

/** Days on which pots were scored, newest first. */
export const looksOf = ({ scores }: PotTestRecord): string[] =>
  [...new Set(scores.map(({ date }) => date))].sort().reverse();
