/** Logistic fits over the same rows, each with its own inputs, offsets and share of the rows. */
export interface LogisticFits {
  readonly fits: number;
  readonly rows: number;
  readonly columns: number;
  /** Fit by fit, row by row: `fits · rows · columns`. */
  readonly inputs: Float32Array;
  /** Added to each row's log odds as they stand: `fits · rows`. */
  readonly offsets: Float32Array;
  /** 1: there, 0: not; the same for every fit: `rows`. */
  readonly labels: Float32Array;
  /** How much each row counts, 0 to 1: `fits · rows`. */
  readonly counts: Float32Array;
}

/**
 * Finds the coefficients u that minimise Σ counts · log loss + |u|² / 2, each fit for itself. `progress` hears the share that is likely done.
 * @returns `fits · columns`, fit by fit; rejects where it was told to stop
 */
export type FitLogistic = (problem: LogisticFits, progress: (share: number) => void) => Promise<Float32Array>;
