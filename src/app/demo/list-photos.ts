import type { PhotoRole } from '../../photo/types.ts';
import { INVENTED_CASES, type InventedLook, type InventedPicture } from './invent-cases.ts';

/** One photo of the demo: the id under which it is kept, and what is drawn on it. */
export interface InventedPhoto {
  readonly id: string;
  readonly role: PhotoRole;
  readonly picture: InventedPicture & { readonly width: number; readonly height: number };
}

/** Large enough for veins and spots to be read, small enough to be shipped, px. */
const SIZE = { width: 512, height: 384 } as const;

/** The photos of one look; `place` is its place among the looks of its case, from 0. */
export const photosOfLook = (caseId: string, place: number, { photos }: InventedLook): InventedPhoto[] =>
  photos.map(({ role, ...drawn }, number) => ({
    id: `demo-photo-${caseId}-${place + 1}-${number + 1}`,
    role,
    picture: { ...SIZE, ...drawn },
  }));

/** Every photo of the demo, each once. */
export const listPhotos = (): InventedPhoto[] =>
  INVENTED_CASES.flatMap(({ id, looks }) => looks.flatMap((look, place) => photosOfLook(id, place, look)));
