import type { PhotoRole } from '../photo/types.ts';
import { findingOf, saysNothing } from '../signs/finding-from-ratio.ts';
import { signAt } from '../signs/sign-at.ts';
import type { Finding } from '../signs/types.ts';
import { MARK_SCALES, NETWORK_MARKS } from './calibration.ts';
import { isUnlike } from './is-unlike.ts';
import type { MarkScale } from './mark-scale.ts';
import type { NetworkAnswer } from './types.ts';

/** What the network reports of one leaf: a chance at even odds for each mark that is switched on. */
export interface NetworkReport {
  readonly mark: MarkScale['mark'];
  readonly chance: number;
  /** How much likelier the picture is where the mark is there. */
  readonly ratio: number;
}

/** Reports of one answer; none where it must keep silent. */
export function reportsOf(
  answer: NetworkAnswer,
  scales: readonly MarkScale[] = MARK_SCALES,
): NetworkReport[] {
  if (isUnlike(answer)) return [];
  return scales.flatMap(({ mark, on, slope, most }) => {
    const at = NETWORK_MARKS.indexOf(mark);
    const z = answer.logits[at];
    if (!on || z === undefined || Number.isNaN(z)) return [];
    const ratio = Math.min(most, Math.max(1 / most, Math.exp(slope * z)));
    return [{ mark, chance: ratio / (1 + ratio), ratio }];
  });
}

/** The same as findings for the ranking, beside those of the camera. A normal leaf is asked for comparison only and reports nothing. */
export function findingsFromNetwork(
  answer: NetworkAnswer,
  role: PhotoRole,
  scales: readonly MarkScale[] = MARK_SCALES,
): Finding[] {
  if (role === 'normal') return [];
  return reportsOf(answer, scales).flatMap(({ mark, ratio }) =>
    saysNothing(ratio) ? [] : [findingOf(signAt(mark, role), ratio, 'network')],
  );
}
