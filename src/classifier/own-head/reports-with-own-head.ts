import type { OwnHeadRecord, OwnMarkHead } from '../../garden/own-head-record.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { PhotoRole } from '../../photo/types.ts';
import { signAt } from '../../signs/sign-at.ts';
import { NETWORK_MARKS } from '../calibration.ts';
import { isUnlike } from '../is-unlike.ts';
import { NETWORK_ID } from '../network-file.ts';

/** How much likelier a photo is where the mark is there, as the garden's own head has it. */
export function ratioOf(head: OwnMarkHead, logit: number, features: readonly number[]): number {
  const { level, logit: weight, weights, mean, spread, most } = head;
  const log = weights.reduce(
    (sum, own, k) => sum + (own * (features[k]! - mean[k]!)) / spread[k]!,
    level + weight * logit,
  );
  return Math.min(most, Math.max(1 / most, Math.exp(log)));
}

/** Was it learnt on the features of the network that the app has now? */
export const fitsNetwork = ({ network }: Pick<OwnHeadRecord, 'network'>): boolean => network === NETWORK_ID;

/**
 * What the network reports of one photo, in this garden: marks that its own head tells better come from that, also where
 * the shipped head is switched off for them; all others as they were reported. Silent as the shipped head is: of a normal leaf, and where the
 * picture is unlike all that was taught.
 */
export function reportsWithOwnHead(
  seen: SeenByNetwork,
  role: PhotoRole,
  own: OwnHeadRecord | undefined,
): SeenByNetwork['reports'] {
  const isSilent = role === 'normal' || isUnlike(seen) || seen.network !== NETWORK_ID;
  if (own === undefined || isSilent || !fitsNetwork(own)) return seen.reports;
  const reports = new Map(seen.reports.map((report) => [report.sign, report]));
  for (const { mark, head } of own.marks) {
    const logit = seen.logits[NETWORK_MARKS.indexOf(mark)];
    if (!head || logit === undefined || head.weights.length !== seen.features.length) continue;
    const sign = signAt(mark, role);
    reports.set(sign, { sign, ratio: ratioOf(head, logit, seen.features) });
  }
  return [...reports.values()];
}
