import type { Garden } from './gather-garden.ts';
import type { BatchRecord, BedRecord, PlantingRecord, Spreading, Suspicion } from './ground-records.ts';
import { compareWords } from './loose.ts';

/** A batch under a bed or planting, and how it came there. */
export interface BatchUnder {
  readonly batch: BatchRecord;
  /** Every time that it was given here, oldest first. */
  readonly given: readonly Spreading[];
}

/** Who received a batch. */
export interface Received {
  /** In the order of the walk; pots are beds. */
  readonly beds: readonly BedRecord[];
  readonly plantings: readonly PlantingRecord[];
}

/** Did a planting stand in, or come into, the ground that was given something? */
function stoodIn(planting: PlantingRecord, given: Spreading): boolean {
  if (given.plantingId !== undefined) return given.plantingId === planting.id;
  if (planting.bedId !== given.bedId) return false;
  return planting.clearedOn === undefined || planting.clearedOn >= given.date;
}

/**
 * Every bed and planting that received a batch. What was planted after it was spread counts too: residues last for years
 * (UT-STEW, JG-BIO). A planting that was cleared before does not.
 */
export function whoReceived(garden: Garden, batchId: string): Received {
  const given = garden.batches.find(({ id }) => id === batchId)?.given ?? [];
  const beds = new Set(given.map(({ bedId }) => bedId));
  return {
    beds: garden.beds.filter(({ id }) => beds.has(id)),
    plantings: garden.plantings.filter((planting) => given.some((one) => stoodIn(planting, one))),
  };
}

/**
 * Every batch under a bed or a planting, the one given last first.
 * @param on only what was there on that day
 */
export function batchesUnder(
  garden: Garden,
  where: { readonly bedId?: string; readonly plantingId?: string },
  on?: string,
): BatchUnder[] {
  const planting = garden.plantings.find(({ id }) => id === where.plantingId);
  const bedId = where.bedId ?? planting?.bedId;
  const isHere = (given: Spreading): boolean => {
    if (on !== undefined && given.date > on) return false;
    if (planting) return stoodIn(planting, given);
    return given.bedId === bedId;
  };
  return garden.batches
    .map((batch) => ({ batch, given: batch.given.filter(isHere) }))
    .filter(({ given }) => given.length > 0)
    .sort(
      (a, b) =>
        compareWords(b.given.at(-1)!.date, a.given.at(-1)!.date) || compareWords(a.batch.id, b.batch.id),
    );
}

export const isSuspected = ({ suspicion }: BatchRecord): boolean => suspicion?.state === 'suspected';

/** Is a batch to be kept aside until its pots have told: is its newest test for weedkiller running, void or undecided? */
export function awaitsPots({ potTests }: Garden, batchId: string): boolean {
  const newest = potTests.filter((test) => test.batchId === batchId && test.question === 'residue').at(-1);
  if (newest === undefined) return false;
  const verdict = newest.said?.verdict;
  return !newest.endedOn || verdict === 'invalid' || verdict === 'go-on';
}

/** Batches that may be offered for spreading: there is some left, and nothing is held against them. */
export const batchesToSpread = (garden: Garden): BatchRecord[] =>
  garden.batches.filter((batch) => batch.usedUpOn === undefined && !isSuspected(batch));

/** The batch put aside. `now`: ISO 8601, UTC. */
export function suspectBatch(
  batch: BatchRecord,
  { on, why, caseId, potTestId, potTestSays }: Omit<Suspicion, 'state'>,
  now: string,
): BatchRecord {
  const suspicion: Suspicion = {
    state: 'suspected',
    on,
    why,
    ...(caseId ? { caseId } : {}),
    ...(potTestId ? { potTestId } : {}),
    ...(potTestSays ? { potTestSays } : {}),
  };
  return { ...batch, suspicion, changedAt: now };
}

/** The batch given free again; that it was suspected, and why it was released, stays on record. */
export function releaseBatch(
  batch: BatchRecord,
  on: string,
  why: string,
  now: string,
  potTestId?: string,
): BatchRecord {
  const caseId = batch.suspicion?.caseId;
  return {
    ...batch,
    suspicion: {
      state: 'released',
      on,
      why,
      ...(caseId ? { caseId } : {}),
      ...(potTestId ? { potTestId } : {}),
    },
    changedAt: now,
  };
}
