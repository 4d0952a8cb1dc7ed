import type { Reporter } from '../signs/types.ts';

/** Reports on one sign, combined: reporters are independent given the sign, so their likelihoods multiply on it. */
export interface SignEvidence {
  readonly label: string;
  readonly sign: number;
  readonly ifPresent: number;
  readonly ifAbsent: number;
  readonly from: readonly Reporter[];
}

/** A report on the OR of several signs. */
export interface BroadEvidence {
  readonly label: string;
  readonly members: readonly number[];
  readonly ifPresent: number;
  readonly ifAbsent: number;
  readonly from: readonly Reporter[];
}

/** One factor whose outcome is known. */
export interface FactorEvidence {
  readonly label: string;
  readonly factor: number;
  readonly outcome: number;
  readonly from: readonly Reporter[];
  /** Odds multipliers that hold here instead of the factor's own, in the same layout. */
  readonly lean?: Float64Array;
  /** Why it leans on a cause (by index) here, where that is not what the knowledge base says in general. */
  readonly because?: ReadonlyMap<number, string>;
}

/** What the ranking is conditioned on rather than told: crop and season. Odds multipliers, one a cause. */
export interface ContextEvidence {
  readonly label: string;
  readonly oddsFactor: Float64Array;
}

/** Everything known, in indices of one network. */
export interface Evidence {
  readonly signs: readonly SignEvidence[];
  readonly broad: readonly BroadEvidence[];
  readonly factors: readonly FactorEvidence[];
  readonly context: readonly ContextEvidence[];
}

export const NO_EVIDENCE: Evidence = { signs: [], broad: [], factors: [], context: [] };
