import type { RankedCause } from '../../ranker/types.ts';
import type { CauseId } from '../../signs/vocabulary.ts';

export interface Shift {
  readonly cause: CauseId;
  readonly before: number;
  readonly after: number;
}

/** Below this chance a move is of no interest however large its factor. */
const WORTH_NAMING = 0.03;
/** Least move in decibans that is worth a line. */
const LEAST_DECIBANS = 0.8;

const decibans = (chance: number): number => {
  const kept = Math.min(1 - 1e-9, Math.max(1e-9, chance));
  return 10 * Math.log10(kept / (1 - kept));
};

/** The causes that an answer moved most, largest move first; at most three. */
export function findShifts(before: readonly RankedCause[], after: readonly RankedCause[]): Shift[] {
  const was = new Map(before.map(({ id, probability }) => [id, probability]));
  return after
    .map(({ id, probability }) => ({ cause: id, before: was.get(id) ?? 0, after: probability }))
    .filter((shift) => Math.max(shift.before, shift.after) >= WORTH_NAMING && moved(shift) >= LEAST_DECIBANS)
    .sort((a, b) => moved(b) - moved(a))
    .slice(0, 3);
}

const moved = ({ before, after }: Shift): number => Math.abs(decibans(after) - decibans(before));
