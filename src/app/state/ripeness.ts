/** Home tests of ripeness: what was typed becomes a test of the batch, judged at once. Pure. */
import { judgeExtract, judgeRadish, verdictOfExtract } from '../../compare/pot-test/judge-maturity.ts';
import { PotTestError } from '../../compare/pot-test/types.ts';
import { maturityOfRise } from '../../garden/compost-state.ts';
import type { BatchRecord } from '../../garden/ground-records.ts';
import { byDate } from '../../garden/loose.ts';
import {
  extractOf,
  type RipenessSaid,
  type RipenessTest,
  type RipenessWay,
} from '../../garden/ripeness-test.ts';
import { readNumber, type Typed } from './edit-ground.ts';

type Counted = Omit<RipenessTest, 'id' | 'said'>;

function saidOf(test: Counted): RipenessSaid | undefined {
  const { how, sown, grown, riseCelsius } = test;
  if (how === 'self-heating')
    return riseCelsius === undefined
      ? undefined
      : maturityOfRise(riseCelsius) === 'immature'
        ? 'failed'
        : 'passed';
  if (how === 'radish-pots')
    return sown === undefined || grown === undefined
      ? undefined
      : judgeRadish({ sown, grown }).ready
        ? 'passed'
        : 'failed';
  const extract = extractOf(test);
  if (!extract) return undefined;
  const result = judgeExtract(extract);
  return result === 'invalid' ? 'invalid' : verdictOfExtract(result);
}

const NUMBERS = ['sown', 'grown', 'waterSown', 'waterGrown', 'rootMm', 'waterRootMm', 'riseCelsius'] as const;

/**
 * A test as typed. `missing`: a number that it needs is not there; `more-up`: more came up than were sown; `bad-count`: numbers that
 * cannot be.
 */
export function ripenessFrom(
  how: RipenessWay,
  typed: Typed,
  today: string,
  id: string = crypto.randomUUID(),
): RipenessTest | 'missing' | 'more-up' | 'bad-count' {
  const numbers = Object.fromEntries(
    NUMBERS.flatMap((key) => {
      const number = readNumber(typed[key]);
      return number === undefined ? [] : [[key, number]];
    }),
  );
  const test: Counted = { date: typed.date || today, how, ...numbers };
  try {
    const said = saidOf(test);
    return said === undefined ? 'missing' : { id, ...test, said };
  } catch (cause) {
    if (!(cause instanceof PotTestError)) throw cause;
    return cause.code === 'more-up-than-sown' ? 'more-up' : 'bad-count';
  }
}

/** The batch with a test put in, or put in the place of the one with its id. */
export const putRipeness = (batch: BatchRecord, test: RipenessTest): BatchRecord => ({
  ...batch,
  ripeness: byDate([...(batch.ripeness ?? []).filter(({ id }) => id !== test.id), test]),
});

export const withoutRipeness = (batch: BatchRecord, id: string): BatchRecord => ({
  ...batch,
  ripeness: (batch.ripeness ?? []).filter((one) => one.id !== id),
});
