import { findingOf, SILENT_BELOW } from './findings-from-readings.ts';
import { isAskable } from './members-of.ts';
import type { Finding } from './types.ts';

/** What the network said of one photo, as it is kept: how much likelier the picture is where the sign is there. */
export interface NetworkSaid {
  readonly sign: string;
  readonly ratio: number;
}

/**
 * The network's reports as findings of its own. Several photos of one position count as the mean of their ratios, as with the
 * camera. A sign that this version does not know says nothing.
 */
export function findingsFromReports(reports: readonly NetworkSaid[]): Finding[] {
  const said = new Map<string, number[]>();
  for (const { sign, ratio } of reports) said.set(sign, [...(said.get(sign) ?? []), ratio]);
  return [...said].flatMap(([sign, ratios]) => {
    const ratio = ratios.reduce((sum, r) => sum + r, 0) / ratios.length;
    const isSilent = ratio < SILENT_BELOW && ratio > 1 / SILENT_BELOW;
    return isSilent || !isAskable(sign) ? [] : [findingOf(sign, ratio, 'network')];
  });
}
