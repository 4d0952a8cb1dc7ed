import { dayAfter, daysBetween } from '../../days/days.ts';
import { testCrop } from './test-crops.ts';
import { type PotTest, PotTestError } from './types.ts';

/** One look that the test asks for. */
export interface PlannedLook {
  /** Day on which it is due, `YYYY-MM-DD`. */
  readonly on: string;
  /** `count`: who has come up. `score`: height and injury too. `last`: the same, and the test can end. */
  readonly what: 'count' | 'score' | 'last';
}

/** Plants are judged 14 to 21 days after half of the control seedlings were up (OECD-208). */
export const DAYS_AFTER_HALF_UP = 14;
/** Looks at new leaves lie five days apart; a test that is over its time is looked at weekly (common practice, no source). */
const LEAF_DAYS = 5;
const WEEK = 7;

export type Sown = Pick<PotTest, 'crop' | 'sownOn'> & Partial<Pick<PotTest, 'pots' | 'scores'>>;

/**
 * Day by which half of the control seeds were up. Where the very first look finds them up, they may have been so for days:
 * then the usual day of the crop, if that is earlier. `undefined` while fewer are.
 */
export function halfUpOn({ crop, sownOn, pots = [], scores = [] }: Sown): string | undefined {
  const controls = new Map(pots.filter(({ role }) => role === 'control').map(({ id, seeds }) => [id, seeds]));
  const sown = [...controls.values()].reduce((sum, seeds) => sum + seeds, 0);
  const days = [...new Set(scores.map(({ date }) => date))].sort();
  const up = new Map<string, number>();
  for (const [at, day] of days.entries()) {
    for (const score of scores)
      if (score.date === day && controls.has(score.potId))
        up.set(score.potId, Math.max(up.get(score.potId) ?? 0, score.emerged));
    const total = [...up.values()].reduce((sum, count) => sum + count, 0);
    if (sown === 0 || total < sown / 2) continue;
    const usual = testCrop(crop)?.upAfterDays;
    const usualDay = usual && dayAfter(sownOn, Math.ceil((usual[0] + usual[1]) / 2));
    return at === 0 && usualDay !== undefined && usualDay < day ? usualDay : day;
  }
  return undefined;
}

/**
 * Day from which the test may be called safe: the crop's own time has passed (two to three weeks for beans and peas, OSU-CARRY,
 * WSU-WHATCOM; 28 days for tomato, REAL-PRT), and 14 days since half the controls were up (OECD-208).
 * @param half the day by which half of them were up, where it has been worked out
 */
export function endsOn(test: Sown, half = halfUpOn(test)): string {
  const crop = testCrop(test.crop);
  if (!crop) throw new PotTestError('no-such-crop');
  const byCrop = dayAfter(test.sownOn, crop.days);
  const byStandard = half === undefined ? byCrop : dayAfter(half, DAYS_AFTER_HALF_UP);
  return [byCrop, byStandard].sort()[1]!;
}

/** All looks of a test, in order: the count, a look or two at new leaves, the last. Pure. */
export function scheduleLooks(test: Sown): PlannedLook[] {
  const crop = testCrop(test.crop);
  if (!crop) throw new PotTestError('no-such-crop');
  const count = dayAfter(test.sownOn, crop.upAfterDays[1]);
  const last = endsOn(test);
  const between: PlannedLook[] = [];
  for (let day = dayAfter(count, LEAF_DAYS); daysBetween(day, last) > 3; day = dayAfter(day, LEAF_DAYS))
    between.push({ on: day, what: 'score' });
  return [{ on: count, what: 'count' }, ...between, { on: last, what: 'last' }];
}

/**
 * The look that is due next: the first that no score on or after its day answers. After the last one every week, because a
 * test that goes on wants to be looked at.
 */
export function nextLook(test: Sown): PlannedLook {
  const newest =
    (test.scores ?? [])
      .map(({ date }) => date)
      .sort()
      .at(-1) ?? '';
  const open = scheduleLooks(test).find(({ on }) => on > newest);
  return open ?? { on: dayAfter(newest, WEEK), what: 'last' };
}
