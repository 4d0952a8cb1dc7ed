import type { PotTestRecord } from '../../../../garden/ground-records.ts';
import { looksOf } from '../../../state/pot-tests.ts';

/** Days of the looks that were ended and read, oldest first; once a test has ended, of all that were taken. */
export const looksRead = (test: PotTestRecord): string[] =>
  looksOf(test)
    .filter((day) => test.endedOn !== undefined || day <= (test.said?.on ?? ''))
    .reverse();
