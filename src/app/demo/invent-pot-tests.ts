import { planPotTest } from '../../compare/pot-test/plan-pot-test.ts';
import type { BatchRecord, PotTestRecord } from '../../garden/ground-records.ts';
import { endLook, newPotTest, type ScorePatch, sownOnDay, withScore } from '../state/pot-tests.ts';
import { sayWhyOfBatch } from '../words/pot-test-reading.ts';
import { dayBefore, demoStamp } from './invent-days.ts';

/** What the grower saw in each pot at a look, in the order of the pots of its kind. */
interface InventedLook {
  readonly daysAgo: number;
  readonly load: readonly ScorePatch[];
  readonly clean: readonly ScorePatch[];
}

/** A test with its looks as they were taken; what they came to is read by the same code as a grower's. */
function follow(
  id: string,
  batch: BatchRecord,
  sownDaysAgo: number,
  looks: readonly InventedLook[],
  today: string,
): { readonly test: PotTestRecord; readonly batch: BatchRecord } {
  const sownOn = dayBefore(today, sownDaysAgo);
  const card = planPotTest({ question: 'residue', sowOn: sownOn, beds: 1, seed: 7 });
  const stamp = demoStamp(id, dayBefore(today, looks.at(-1)?.daysAgo ?? sownDaysAgo));
  let test: PotTestRecord = {
    ...sownOnDay(newPotTest(card, batch.id, sownOn, stamp.changedAt), sownOn),
    ...stamp,
  };
  let load = batch;
  for (const { daysAgo, load: seenInLoad, clean } of looks) {
    const day = dayBefore(today, daysAgo);
    for (const role of ['test', 'control'] as const)
      test.pots
        .filter((pot) => pot.role === role)
        .forEach((pot, at) => {
          test = withScore(test, day, pot.id, (role === 'test' ? seenInLoad : clean)[at] ?? {});
        });
    const ended = endLook(test, load, [test], sayWhyOfBatch, day, `${day}T09:00:00.000Z`);
    test = { ...ended.test, ...stamp };
    load = ended.batch ?? load;
  }
  return { test, batch: load };
}

const up = (...counts: readonly number[]): ScorePatch[] => counts.map((emerged) => ({ emerged }));
const seen = (
  ...rows: readonly (readonly [injury: number, leafSets: number, heightMm: number])[]
): ScorePatch[] => rows.map(([injury, leafSets, heightMm]) => ({ injury, leafSets, heightMm }));

/**
 * Two pot tests: one that runs and is due a look today, one that stopped a load. `stopped` comes back with its load as the test left it.
 */
export function inventPotTests(running: BatchRecord, stopped: BatchRecord, today: string) {
  const first = follow(
    'pots-running',
    running,
    17,
    [{ daysAgo: 5, load: up(3, 2, 3), clean: up(3, 3, 3) }],
    today,
  );
  const second = follow(
    'pots-stopped',
    stopped,
    31,
    [
      { daysAgo: 19, load: up(3, 3, 2), clean: up(3, 3, 3) },
      {
        daysAgo: 14,
        load: seen([20, 1, 70], [30, 1, 65], [20, 1, 72]),
        clean: seen([0, 1, 78], [0, 1, 74], [10, 1, 80]),
      },
      {
        daysAgo: 9,
        load: seen([50, 2, 88], [60, 2, 80], [40, 2, 95]),
        clean: seen([0, 3, 150], [0, 3, 142], [10, 3, 160]),
      },
    ],
    today,
  );
  return { tests: [first.test, second.test], stopped: second.batch };
}
