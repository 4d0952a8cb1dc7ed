import type { CaseRecord, LookSummary } from './records.ts';

/** The case with one look more (or the same look renewed), its looks in order of date. `now`: ISO 8601, UTC. */
export function addLookToCase(kept: CaseRecord, look: LookSummary, now: string): CaseRecord {
  const looks = [...kept.looks.filter((other) => other.id !== look.id), look].sort((a, b) =>
    a.date < b.date ? -1 : a.date > b.date ? 1 : 0,
  );
  return { ...kept, looks, changedAt: now };
}
