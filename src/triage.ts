import type { LeafReading } from './leaf/types.ts';
import type { Ranking } from './ranker/types.ts';
import type { Answers, Finding } from './signs/types.ts';

/** Everything that is known about one look at a plant. Photos have been read by `readLeaf` before. */
export interface TriageInput {
  readonly photos: readonly LeafReading[];
  readonly answers: Answers;
  /** ISO date of today, `YYYY-MM-DD`: dates the verdict. */
  readonly today: string;
  /** South of the equator the seasons are turned by half a year. Default north. */
  readonly hemisphere?: 'north' | 'south';
  /** Draws of the tables for the ranges. Default 200. */
  readonly draws?: number;
  /** Questions that were answered "can't say": not offered again. */
  readonly cannotSay?: readonly string[];
}

/** The answer, the same for both faces. */
export interface TriageResult extends Ranking {
  readonly photos: readonly LeafReading[];
  readonly findings: readonly Finding[];
  /** Version of the knowledge base that the ranking was made with. */
  readonly knowledge: string;
}
