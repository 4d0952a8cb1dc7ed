import type { LeafReading } from '../../leaf/types.ts';

/** One drawn photo of the invented garden as the build saw it (`at-build/see-photos.ts`). */
export interface SeenPhoto {
  readonly id: string;
  /** The file, base64. */
  readonly jpeg: string;
  /** What was read off that file. */
  readonly reading: LeafReading;
}
