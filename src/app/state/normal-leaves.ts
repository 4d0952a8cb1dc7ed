/** The healthy leaves on record that a look is held against. */
import { normalLeavesOf } from '../../garden/normal-leaves-of.ts';
import type { LeafReading } from '../../leaf/types.ts';
import type { SeenAtLook } from '../../signs/seen-at-look.ts';
import type { Answers } from '../../signs/types.ts';
import { garden } from './garden.ts';

/** What was read from the healthy leaves of the variety that the answers name; none where they name none. */
export const normalReadingsFor = ({ crop, variety, setting }: Answers): readonly LeafReading[] =>
  normalLeavesOf(garden.value?.normalLeaves ?? [], { crop, variety, stage: setting['crop-stage'] }).flatMap(
    ({ reading }) => (reading ? [{ ...(reading as LeafReading), role: 'normal' as const }] : []),
  );

/** A look with the healthy leaves of its variety beside its own photos. */
export const besideNormal = (look: SeenAtLook): SeenAtLook => ({
  ...look,
  photos: [...look.photos, ...normalReadingsFor(look.answers)],
});
