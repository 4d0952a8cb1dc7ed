import type { CaseRecord } from './records.ts';

export interface DueCase {
  readonly kept: CaseRecord;
  /** `YYYY-MM-DD` */
  readonly lookAgain: string;
  readonly when: 'overdue' | 'today' | 'coming';
}

/** The day on which a case asks to be looked at again, `YYYY-MM-DD`; none for one that is closed. */
export const lookAgainOn = ({ deletedAt, closedOn, looks }: CaseRecord): string | undefined =>
  deletedAt || closedOn ? undefined : looks.at(-1)?.lookAgain;

/** Open cases by the day on which their last look asked to look again, earliest first. `today`: `YYYY-MM-DD`. */
export function dueCases(cases: readonly CaseRecord[], today: string): DueCase[] {
  const due: DueCase[] = [];
  for (const kept of cases) {
    const lookAgain = lookAgainOn(kept);
    if (!lookAgain) continue;
    const when = lookAgain < today ? 'overdue' : lookAgain === today ? 'today' : 'coming';
    due.push({ kept, lookAgain, when });
  }
  return due.sort((a, b) =>
    a.lookAgain === b.lookAgain ? (a.kept.id < b.kept.id ? -1 : 1) : a.lookAgain < b.lookAgain ? -1 : 1,
  );
}
