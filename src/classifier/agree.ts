import { NETWORK_EXPERTS, NETWORK_MARKS } from './calibration.ts';

/**
 * What all experts bear out of each mark: the log odds nearest to 0 where all lie on one side of it, else 0. Only those are heard
 * who were shown leaves with the mark.
 * @param logits log odds of one expert after the other, marks in the order of `NETWORK_MARKS`
 */
export function agree(logits: readonly number[]): number[] {
  return NETWORK_MARKS.map((mark, k) => {
    const said = NETWORK_EXPERTS.flatMap(({ knows }, expert) =>
      knows.includes(mark) ? [logits[expert * NETWORK_MARKS.length + k]!] : [],
    );
    if (said.some(Number.isNaN)) return Number.NaN;
    const [least, most] = [Math.min(...said), Math.max(...said)];
    return least > 0 ? least : Math.min(most, 0);
  });
}
