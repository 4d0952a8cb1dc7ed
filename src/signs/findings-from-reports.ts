import { findingsFromRatios } from './finding-from-ratio.ts';
import { isAskable } from './members-of.ts';
import type { Finding } from './types.ts';

/** What the network said of one photo, as it is kept: how much likelier the picture is where the sign is there. */
export interface NetworkSaid {
  readonly sign: string;
  readonly ratio: number;
}

/** The network's reports as findings of its own. A sign that this version does not know says nothing. */
export const findingsFromReports = (reports: readonly NetworkSaid[]): Finding[] =>
  findingsFromRatios(
    reports.flatMap(({ sign, ratio }) => (isAskable(sign) ? [{ sign, ratio }] : [])),
    'network',
  );
