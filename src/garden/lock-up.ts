import type { Material } from './materials.ts';
import { blendRatios, chanceOfTieUp } from './nitrogen-balance.ts';
import { chanceAbove } from './normal.ts';

/** Warmth in the soil since something was mixed in: degree-days (base 0 °C) and its relative error. */
export interface Warmth {
  readonly degreeDays: number;
  readonly relativeSd: number;
}

/**
 * Chance that a material still ties nitrogen up after so much warmth: a half at its published time (dairy solids 700
 * degree-days, KUSON-2005), over the spreads of both.
 */
export function chanceStillRotting(material: Material, { degreeDays, relativeSd }: Warmth): number {
  if (degreeDays <= 0) return 1;
  return chanceAbove(material.tiesUpFor, degreeDays, relativeSd);
}

/** The slowest of several decides how long it lasts. */
export const slowestOf = (materials: readonly Material[]): Material =>
  materials.reduce((slow, one) => (one.tiesUpFor.logMean > slow.tiesUpFor.logMean ? one : slow));

/** Several things brought together, as one: what it holds, how much of it rots, and for how long. */
export function mixOf(materials: readonly Material[]): Material {
  const active = materials.reduce((sum, { activity }) => sum + activity, 0);
  return {
    carbonToNitrogen: blendRatios(materials),
    activity: Math.min(1, active),
    tiesUpFor: slowestOf(materials).tiesUpFor,
  };
}

/** Chance, 0–1, that these things rotting together tie up so much nitrogen that plants go short, while they do. */
export function chanceOfBite(materials: readonly Material[]): number {
  const rotting = materials.filter(({ activity }) => activity > 0);
  if (rotting.length === 0) return 0;
  const active = rotting.reduce((sum, { activity }) => sum + activity, 0);
  return Math.min(1, active) * chanceOfTieUp(blendRatios(rotting));
}

/** The same for what was mixed into the rooting depth, so much warmth ago. */
export function chanceLockedInSoil(materials: readonly Material[], warmth: Warmth): number {
  const bite = chanceOfBite(materials);
  return bite === 0 ? 0 : bite * chanceStillRotting(slowestOf(materials), warmth);
}

/**
 * What reaches the roots of what lies on top. Only a thin zone at the contact is robbed (CHALKER-WC), yet a trial with
 * fine wood renewed each year found less nitrogen at 15 cm too; pieces finer than 10 mm are the main trouble (SPU-MULCH), and
 * shallow roots feel it first (CHALKER-WC). The shares themselves are our own (common practice, no source).
 */
const REACHES = { coarse: 0.04, fine: 0.15, unknown: 0.07, shallowTimes: 2 } as const;

/** Which pieces lie on top, and how deep the roots go that feel it. */
export interface OnSurface {
  readonly pieces: 'fine' | 'coarse' | 'unknown';
  /** Seedlings and what was just planted. */
  readonly shallowRoots: boolean;
}

/** Share of the tie-up on top that plants feel. */
export function reachOf({ pieces, shallowRoots }: OnSurface): number {
  return REACHES[pieces] * (shallowRoots ? REACHES.shallowTimes : 1);
}

/** Chance, 0–1, that what lies on the surface ties up so much nitrogen that plants go short: small, never zero. */
export function chanceLockedUnderMulch(
  materials: readonly Material[],
  warmth: Warmth,
  surface: OnSurface,
): number {
  return reachOf(surface) * chanceLockedInSoil(materials, warmth);
}
