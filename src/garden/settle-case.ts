import type { Zone } from '../days/growing-year.ts';
import { bedKey } from './group-by-bed.ts';
import { partByYear } from './part-by-year.ts';
import type { CaseRecord, LookRecord, Outcome, ShownRanking } from './records.ts';

/** What a grower says when a case is over. */
export type SaidOutcome = Pick<Outcome, 'causes' | 'sureness' | 'lost' | 'done'>;

/**
 * The case with how it ended, closed. Saying it again renews the words and the moment; the day on which it was settled
 * and the day it was closed stay.
 * @param shown what was shown at the first and the last look
 * @param now ISO 8601, UTC; `today` the grower's day, `YYYY-MM-DD`
 */
export function settleCase(
  kept: CaseRecord,
  said: SaidOutcome,
  shown: Pick<Outcome, 'first' | 'last'>,
  now: string,
  today: string,
): CaseRecord {
  const outcome: Outcome = {
    ...shown,
    causes: said.causes,
    sureness: said.causes.length === 0 ? '' : said.sureness,
    lost: said.lost,
    done: said.done.trim(),
    settledOn: kept.outcome?.settledOn ?? today,
    settledAt: now,
  };
  return { ...kept, outcome, closedOn: kept.closedOn ?? today, changedAt: now };
}

/** A case that has ended, with how it ended. */
export type Settled = CaseRecord & { readonly outcome: Outcome };

/** Cases that are closed and say how they ended; not those opened again or deleted. */
export const settledCases = (cases: readonly CaseRecord[]): Settled[] =>
  cases.filter(
    (kept): kept is Settled =>
      kept.outcome !== undefined && kept.closedOn !== undefined && kept.deletedAt === undefined,
  );

/**
 * One key for all cases that are one outbreak, by the id of the case: the same end on one crop in one bed in one growing year. Five
 * plants in a row that die of one thing are one thing met, not five.
 */
export const outbreaksOf = (cases: readonly Settled[], zone: Zone): ReadonlyMap<string, string> =>
  partByYear(
    cases,
    ({ bed, crop, outcome }) => [bedKey(bed), crop ?? '', ...[...outcome.causes].sort()],
    zone,
  );

/**
 * The chances shown at the first look, and at the last where that is another one. Looks kept without a weighing are
 * passed over.
 * @param chancesOf the chances that a kept ranking shows, by cause
 */
export function shownAtLooks(
  looks: readonly LookRecord[],
  chancesOf: (ranking: unknown) => Readonly<Record<string, number>>,
): Pick<Outcome, 'first' | 'last'> {
  const weighed = looks
    .filter(({ ranking }) => ranking !== undefined)
    .map(
      ({ date, ranking, knowledge }): ShownRanking => ({
        date,
        chances: chancesOf(ranking),
        ...(knowledge ? { knowledge } : {}),
      }),
    );
  const [first] = weighed;
  const last = weighed.length > 1 ? weighed.at(-1) : undefined;
  return { ...(first ? { first } : {}), ...(last ? { last } : {}) };
}
