import { lookAgainOn } from './due-cases.ts';
import type { BedOfCase } from './place-cases.ts';
import type { CaseRecord } from './records.ts';

/** How a case stands. `due`: open, and the day to look again has come. `unsaid`: closed without saying how it ended. */
export const CASE_STATES = ['open', 'due', 'settled', 'unsaid'] as const;
export type CaseState = (typeof CASE_STATES)[number];

/** What a list of cases is narrowed to; what is left out narrows nothing. */
export interface Narrowing {
  /** Key of a bed, as `placesOf` gives it. */
  readonly bed?: string;
  readonly crop?: string;
  readonly cause?: string;
  /** First and last day, `YYYY-MM-DD`: cases that went on in between. */
  readonly from?: string;
  readonly to?: string;
  readonly state?: CaseState;
}

/** Of a settled case what it turned out to be; of another one what its last look thought likeliest. */
export const causesOf = ({ closedOn, outcome, looks }: CaseRecord): readonly string[] =>
  closedOn && outcome ? outcome.causes : (looks.at(-1)?.leading ?? []);

function isIn(kept: CaseRecord, state: CaseState, today: string): boolean {
  const { closedOn, outcome } = kept;
  if (state === 'open') return !closedOn;
  if (state === 'settled') return closedOn !== undefined && outcome !== undefined;
  if (state === 'unsaid') return closedOn !== undefined && outcome === undefined;
  const lookAgain = lookAgainOn(kept);
  return lookAgain !== undefined && lookAgain <= today;
}

/** The cases that hold to all of it, in the order given. */
export function narrowCases(
  cases: readonly CaseRecord[],
  { bed, crop, cause, from, to, state }: Narrowing,
  placeOf: (kept: CaseRecord) => BedOfCase,
  today: string,
): readonly CaseRecord[] {
  if ([bed, crop, cause, from, to, state].every((said) => said === undefined)) return cases;
  return cases.filter((kept) => {
    const last = kept.closedOn ?? kept.looks.at(-1)?.date ?? kept.openedOn;
    return (
      (crop === undefined || kept.crop === crop) &&
      (from === undefined || last >= from) &&
      (to === undefined || kept.openedOn <= to) &&
      (state === undefined || isIn(kept, state, today)) &&
      (cause === undefined || causesOf(kept).includes(cause)) &&
      (bed === undefined || placeOf(kept).key === bed)
    );
  });
}
