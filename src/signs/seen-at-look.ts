import type { LeafReading } from '../leaf/types.ts';
import type { NetworkSaid } from './findings-from-reports.ts';
import type { Answers } from './types.ts';

/** What one look at a plant brought. */
export interface SeenAtLook {
  /** Day of the look, `YYYY-MM-DD`. */
  readonly date: string;
  readonly photos: readonly LeafReading[];
  readonly answers: Answers;
  /** What the network said of these photos, where it was switched on. */
  readonly network?: readonly NetworkSaid[];
}
