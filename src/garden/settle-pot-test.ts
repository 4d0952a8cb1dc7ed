import type { SownTest } from './compost-state.ts';
import type { Garden } from './gather-garden.ts';
import type { BatchRecord, PotTestRecord, PotTestSaid, Suspicion } from './ground-records.ts';
import { byDate } from './loose.ts';
import type { RipenessSaid } from './ripeness-test.ts';
import { batchesUnder, isSuspected, releaseBatch, suspectBatch } from './trace-batches.ts';

/** Tests of a batch that said something, oldest first; a void one says nothing. */
const spoke = (
  tests: readonly PotTestRecord[],
  batchId: string,
  question: PotTestRecord['question'],
  on?: string,
) =>
  tests
    .filter((test) => test.batchId === batchId && test.question === question && !test.deletedAt)
    .filter(
      ({ said }) => said !== undefined && said.verdict !== 'invalid' && (on === undefined || said.on <= on),
    )
    .sort((a, b) => (a.said!.on < b.said!.on ? -1 : 1));

/**
 * All residue tests of a batch together: their Bayes factors multiply, because each rests on samples and seed of its own. 1: no
 * test has spoken.
 */
export const injuryRatioOf = (tests: readonly PotTestRecord[], batchId: string, on?: string): number =>
  spoke(tests, batchId, 'residue', on).reduce((ratio, { said }) => ratio * (said?.injuryRatio ?? 1), 1);

/**
 * A new test does not wipe out an older one that stopped the load: together they must still leave so small a chance of harm,
 * at even odds beforehand (the chance at which a single test frees a load).
 */
const FREE_BELOW = 0.05;

/** What was held against the batch before a test stopped it: the test adds to it, and takes neither day nor words away. */
function suspicionBefore(batch: BatchRecord, on: string, sentence: string): Omit<Suspicion, 'state'> {
  const { suspicion } = batch;
  const caseId = suspicion?.caseId ? { caseId: suspicion.caseId } : {};
  if (!suspicion || !isSuspected(batch)) return { on, why: '', ...caseId };
  return {
    on: suspicion.on !== '' && suspicion.on < on ? suspicion.on : on,
    // Before the test's sentence had a place of its own it stood as the reason.
    why: suspicion.why === sentence ? '' : suspicion.why,
    ...caseId,
  };
}

/**
 * The batch after one of its tests has been read: put aside where the test says so, on top of what was held against it; given free where it was under suspicion and
 * the test clears it, unless an older test still outweighs it. Unripe compost is not put aside: it ripens. Whatever else the test
 * says leaves the batch as it is. Pure.
 * @param tests all pot tests of the garden, this one as it was read
 * @param why the sentence for what the test found; the face's words
 */
export function batchAfterPotTest(
  batch: BatchRecord,
  test: PotTestRecord,
  tests: readonly PotTestRecord[],
  why: string,
  now: string,
): BatchRecord {
  const { said, question, id: potTestId } = test;
  if (!said || test.batchId !== batch.id || question !== 'residue') return batch;
  if (said.verdict === 'do-not-spread')
    return suspectBatch(batch, { ...suspicionBefore(batch, said.on, why), potTestId, potTestSays: why }, now);
  if (said.verdict !== 'safe-enough' || !isSuspected(batch)) return batch;
  const all = [...tests.filter(({ id }) => id !== test.id), test];
  const ratio = injuryRatioOf(all, batch.id);
  return ratio / (1 + ratio) <= FREE_BELOW ? releaseBatch(batch, said.on, why, now, potTestId) : batch;
}

/**
 * What the last sowing in a batch up to a day says: pots of ripeness, radishes at home, or seeds in its extract. `undefined` where none was
 * decided.
 */
export function sownIn(
  { potTests, batches }: Pick<Garden, 'potTests' | 'batches'>,
  batchId: string,
  on: string,
): SownTest | undefined {
  const inPots = spoke(potTests, batchId, 'ripeness', on).flatMap(({ said }) =>
    said ? [{ date: said.on, says: POTS_SAY[said.verdict] }] : [],
  );
  const atHome = (batches.find(({ id }) => id === batchId)?.ripeness ?? [])
    .filter(({ how, date }) => how !== 'self-heating' && date <= on)
    .map(({ date, said }) => ({ date, says: HOME_SAYS[said] }));
  return byDate([...inPots, ...atHome].filter(({ says }) => says !== undefined)).at(-1)?.says;
}

const POTS_SAY: Partial<Record<PotTestSaid['verdict'], SownTest>> = {
  'safe-enough': 'passed',
  'do-not-spread': 'failed',
};
const HOME_SAYS: Partial<Record<RipenessSaid, SownTest>> = { passed: 'passed', failed: 'failed' };

/** A load under a bed or planting that residue tests have spoken of, and all they say together. */
export interface TestedLoad {
  readonly batch: BatchRecord;
  readonly ratio: number;
}

/** The tested loads under a bed or a planting, the one given last first: what a look there should know. */
export const testedLoadsUnder = (
  garden: Garden,
  where: { readonly bedId?: string; readonly plantingId?: string },
  on?: string,
): TestedLoad[] =>
  batchesUnder(garden, where, on).flatMap(({ batch }) =>
    spoke(garden.potTests, batch.id, 'residue', on).length === 0
      ? []
      : [{ batch, ratio: injuryRatioOf(garden.potTests, batch.id, on) }],
  );

/** One pot test in the year of a bed that got its batch. */
export interface PotTestHappening {
  readonly id: string;
  readonly date: string;
  readonly test: PotTestRecord;
  readonly batch: BatchRecord;
  /** `told`: on this day it came out. */
  readonly what: 'pots-sown' | 'pots-told';
}

/** The pot tests of every batch that went on a bed: when they were sown and what they said. */
export function potTestsOfBed(garden: Garden, bedId: string): PotTestHappening[] {
  const batches = new Map(batchesUnder(garden, { bedId }).map(({ batch }) => [batch.id, batch]));
  return garden.potTests.flatMap((test): PotTestHappening[] => {
    const batch = batches.get(test.batchId);
    if (!batch || test.toSow) return [];
    const sown = { id: `${test.id}:sown`, date: test.sownOn, test, batch, what: 'pots-sown' as const };
    const { said } = test;
    if (!said || said.verdict === 'go-on') return [sown];
    return [sown, { id: `${test.id}:told`, date: said.on, test, batch, what: 'pots-told' as const }];
  });
}
