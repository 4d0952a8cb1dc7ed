import type { LeafReading } from '../../leaf/types.ts';
import type { KeptLook } from './kept.ts';

/** A leaf that was read well enough to be held against another. */
export interface KnownLeaf {
  readonly lookId: string;
  readonly date: string;
  readonly photoId: string;
  readonly role: 'old' | 'new';
  readonly reading: LeafReading;
}

/** Leaves by role, oldest first, one a look; only roles that at least two looks photographed. */
export function leavesToCompare(
  looks: readonly KeptLook[],
): ReadonlyMap<KnownLeaf['role'], readonly KnownLeaf[]> {
  const found = new Map<KnownLeaf['role'], KnownLeaf[]>();
  const inOrder = looks
    .filter(({ deletedAt }) => !deletedAt)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  for (const role of ['old', 'new'] as const) {
    const leaves = inOrder.flatMap(({ id, date, photos }): KnownLeaf[] => {
      const photo = photos.find(
        ({ reading, role: said }) =>
          said === role &&
          reading?.role === role &&
          (reading.leaf.outline?.length ?? 0) >= 3 &&
          Object.keys(reading.measures).length > 0,
      );
      return photo?.reading ? [{ lookId: id, date, photoId: photo.id, role, reading: photo.reading }] : [];
    });
    if (leaves.length > 1) found.set(role, leaves);
  }
  return found;
}

/** What a sound leaf of the variety measured, where a look has one: the newest. */
export const normalMeasures = (looks: readonly KeptLook[]): LeafReading['measures'] | undefined =>
  looks
    .flatMap(({ photos }) => photos)
    .filter(({ role, reading }) => role === 'normal' && reading?.leaf.found)
    .at(-1)?.reading?.measures;
