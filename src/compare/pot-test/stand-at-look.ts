import { daysBetween } from '../../days/days.ts';
import { DAYS_AFTER_HALF_UP, endsOn, halfUpOn } from './schedule-looks.ts';
import type { Pot, PotScore, PotTest } from './types.ts';

/** One pot as it stands at a look. */
export interface PotNow extends Pot {
  /** `undefined` while the pot was never looked at. */
  readonly emerged?: number;
  readonly heightMm?: number;
  readonly injury?: number;
  readonly grams?: number;
}

export interface StandAtLook {
  /** Day of the newest score that counts. */
  readonly on: string;
  readonly test: readonly PotNow[];
  readonly control: readonly PotNow[];
  /** Sets of true leaves of the control plants, 0 to 3 (more counts as 3). */
  readonly leafSets: number;
  /** Were they counted, or reckoned from the days? */
  readonly leafSetsCounted: boolean;
  /** Day from which the test can be called safe. */
  readonly endsOn: string;
}

/** Scores taken within so many days count as one look (common practice, no source). */
export const LOOK_LASTS_DAYS = 3;
/** Sets of leaves at which the protocols end (OSU-CARRY, WSU-WHATCOM). */
export const LAST_LEAF_SET = 3;

const median = (values: readonly number[]): number | undefined => {
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = [
    sorted[Math.floor((sorted.length - 1) / 2)],
    sorted[Math.ceil((sorted.length - 1) / 2)],
  ];
  return low === undefined || high === undefined ? undefined : (low + high) / 2;
};

/**
 * Every pot as it stands at the newest look up to a day. What has come up counts for good; height and injury are those of the
 * newest look only, because seedlings of different days cannot be compared. Leaf sets are the middle of the control pots, where they
 * were counted; else reckoned: three sets by 14 days after half were up (common practice, no source). Pure.
 * @returns `undefined` while nothing was scored
 */
export function standAtLook(test: PotTest, until?: string): StandAtLook | undefined {
  const scores = test.scores.filter(({ date }) => until === undefined || date <= until);
  const on =
    scores
      .map(({ date }) => date)
      .sort()
      .at(-1) ?? '';
  if (on === '') return undefined;
  const newestOf = new Map<string, PotScore>();
  const up = new Map<string, number>();
  for (const score of scores) {
    const before = newestOf.get(score.potId);
    if (!before || score.date >= before.date) newestOf.set(score.potId, score);
    up.set(score.potId, Math.max(up.get(score.potId) ?? 0, score.emerged));
  }
  const now = (pot: Pot): PotNow => {
    const newest = newestOf.get(pot.id);
    const emerged = up.get(pot.id);
    const counts = newest !== undefined && daysBetween(newest.date, on) <= LOOK_LASTS_DAYS;
    const { heightMm, injury, grams } = counts ? newest : ({} as Partial<PotScore>);
    return {
      ...pot,
      ...(emerged === undefined ? {} : { emerged }),
      ...(heightMm === undefined ? {} : { heightMm }),
      ...(injury === undefined ? {} : { injury }),
      ...(grams === undefined ? {} : { grams }),
    };
  };
  const of = (role: Pot['role']): PotNow[] => test.pots.filter((pot) => pot.role === role).map(now);
  const control = of('control');
  const counted = median(
    control.flatMap(({ id }) => {
      const newest = newestOf.get(id);
      return newest?.leafSets === undefined || daysBetween(newest.date, on) > LOOK_LASTS_DAYS
        ? []
        : [newest.leafSets];
    }),
  );
  const half = halfUpOn({ ...test, scores });
  const reckoned =
    half === undefined ? 0 : Math.floor((LAST_LEAF_SET * daysBetween(half, on)) / DAYS_AFTER_HALF_UP);
  const leafSets = Math.max(0, Math.min(LAST_LEAF_SET, Math.floor(counted ?? reckoned)));
  return {
    on,
    test: of('test'),
    control,
    leafSets,
    leafSetsCounted: counted !== undefined,
    endsOn: endsOn(test, half),
  };
}
