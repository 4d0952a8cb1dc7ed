import { KNOWN_BY, NETWORK_EXPERTS } from './calibration.ts';

/**
 * What all experts bear out of each mark: the log odds nearest to 0 where all lie on one side of it, else 0. Only those are heard
 * who were shown leaves with the mark.
 * @param logits log odds of one expert after the other, marks in the order of `KNOWN_BY`
 */
export function agree(logits: readonly number[]): number[] {
  return KNOWN_BY.map(([, by], k) => {
    const said = by.map((expert) => logits[NETWORK_EXPERTS.indexOf(expert) * KNOWN_BY.length + k]!);
    if (said.some(Number.isNaN)) return Number.NaN;
    const [least, most] = [Math.min(...said), Math.max(...said)];
    return least > 0 ? least : Math.min(most, 0);
  });
}
