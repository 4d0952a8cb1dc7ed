import { dayAfter } from '../../days/days.ts';
import { LAST_LEAF_SET, type PotNow, type StandAtLook } from './stand-at-look.ts';
import { testCrop } from './test-crops.ts';
import type { PotTest } from './types.ts';

/** Why a test says nothing. */
export type InvalidCode =
  | 'too-few-control-pots'
  | 'too-few-test-pots'
  | 'control-poor-germination'
  | 'control-injured'
  | 'control-not-grown'
  | 'control-too-light';

/** What makes a test void, with the number found, the limit, and who set it. */
export interface Invalid {
  readonly code: InvalidCode;
  readonly found: number;
  readonly limit: number;
  readonly source: string;
}

export const VALIDITY = {
  /** Control pots at least (WSU-WHATCOM fills three), and test pots (OSU-CARRY: three to six). */
  pots: { limit: 3, source: 'WSU-WHATCOM' },
  /** Share of the control seeds that must come up (OECD-208; from memory). */
  germination: { limit: 0.7, source: 'OECD-208' },
  /** Mean injury of the control pots that is still normal: below the first sure step of the scale. Controls that are abnormal too void the test (OSU-CARRY). */
  injury: { limit: 15, source: 'OSU-CARRY' },
  /** Sets of true leaves that control plants must reach (OSU-CARRY, WSU-WHATCOM). */
  leafSets: { limit: LAST_LEAF_SET, source: 'WSU-WHATCOM' },
  /** Mean fresh mass a control plant of tomato must have, g, where it was weighed (REAL-PRT). */
  grams: { limit: 2, source: 'REAL-PRT' },
} as const;

/** Controls that are so long over their time will not grow any more (common practice, no source). */
export const PATIENCE_DAYS = 14;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const seen = (pots: readonly PotNow[], key: 'injury' | 'grams'): number[] =>
  pots.flatMap((pot) => pot[key] ?? []);

/**
 * Whether the test can say anything, before it is asked what. Germination is judged once the crop's last day has passed, growth once
 * the test is two weeks over its time. Pure.
 * @returns what makes it void; nothing: it holds so far
 */
export function judgeValidity(test: PotTest, stand: StandAtLook): Invalid[] {
  const faults: Invalid[] = [];
  const fault = (
    code: InvalidCode,
    found: number,
    { limit, source }: { limit: number; source: string },
  ): void => {
    faults.push({ code, found, limit, source });
  };
  const { control } = stand;
  const { pots, germination, injury, leafSets, grams } = VALIDITY;
  if (control.length < pots.limit) fault('too-few-control-pots', control.length, pots);
  if (stand.test.length < pots.limit)
    fault('too-few-test-pots', stand.test.length, { ...pots, source: 'OSU-CARRY' });
  const crop = testCrop(test.crop);
  const looked = control.filter(({ emerged }) => emerged !== undefined);
  const up = sum(looked.map(({ emerged = 0 }) => emerged));
  const share = up / Math.max(1, sum(looked.map(({ seeds }) => seeds)));
  if (
    looked.length > 0 &&
    stand.on >= dayAfter(test.sownOn, crop?.upAfterDays[1] ?? 0) &&
    share < germination.limit
  )
    fault('control-poor-germination', share, germination);
  const injuries = seen(control, 'injury');
  const meanInjury = sum(injuries) / Math.max(1, injuries.length);
  if (meanInjury >= injury.limit) fault('control-injured', meanInjury, injury);
  const wanted = test.question === 'residue' ? leafSets.limit : 0;
  if (stand.leafSets < wanted && stand.on >= dayAfter(stand.endsOn, PATIENCE_DAYS))
    fault('control-not-grown', stand.leafSets, leafSets);
  const weighed = control.filter((pot) => pot.grams !== undefined && (pot.emerged ?? 0) > 0);
  if (test.crop === 'tomato' && weighed.length > 0) {
    const perPlant = sum(seen(weighed, 'grams')) / sum(weighed.map(({ emerged = 0 }) => emerged));
    if (perPlant < grams.limit) fault('control-too-light', perPlant, grams);
  }
  return faults;
}
