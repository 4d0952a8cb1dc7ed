import type { Finding, Reporter } from './types.ts';
import type { AskableId } from './vocabulary.ts';

/** A ratio closer to 1 than this says nothing worth reading. */
const SILENT_BELOW = 1.15;
/** What the likelier side of a pair is given; only the ratio counts. */
const LIKELIER = 0.9;

/** Is a likelihood ratio so close to 1 that it is better left unsaid? */
export const saysNothing = (ratio: number): boolean => ratio < SILENT_BELOW && ratio > 1 / SILENT_BELOW;

/** The finding whose likelihoods stand in this ratio. */
export function findingOf(sign: AskableId, ratio: number, from: Reporter = 'camera'): Finding {
  return {
    sign,
    from,
    ifPresent: ratio >= 1 ? LIKELIER : LIKELIER * ratio,
    ifAbsent: ratio >= 1 ? LIKELIER / ratio : LIKELIER,
  };
}

/** What one reporter says of a sign on one photo: how much likelier the picture is where the sign is there. */
export interface SignRatio {
  readonly sign: AskableId;
  readonly ratio: number;
}

/**
 * What one reporter's ratios from several photos come to. Photos of one position count as the mean of their ratios, which is the ratio
 * of a mark that is on one of these leaves, none knows which: a mark need not be on every leaf, and the same leaf taken
 * again adds nothing.
 */
export function findingsFromRatios(ratios: readonly SignRatio[], from: Reporter): Finding[] {
  const said = new Map<AskableId, number[]>();
  for (const { sign, ratio } of ratios) said.set(sign, [...(said.get(sign) ?? []), ratio]);
  return [...said].flatMap(([sign, own]) => {
    const ratio = own.reduce((sum, r) => sum + r, 0) / own.length;
    return saysNothing(ratio) ? [] : [findingOf(sign, ratio, from)];
  });
}
