import { signal } from '@preact/signals';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { PhotoRole } from '../../photo/types.ts';

/** Set while the garden has taught the network something (`own-head.ts`). */
export const ownReports = signal<
  ((seen: SeenByNetwork, role: PhotoRole) => SeenByNetwork['reports']) | undefined
>(undefined);

/** What the network reports of a photo, in this garden. */
export const reportsHere = (seen: SeenByNetwork | undefined, role: PhotoRole): SeenByNetwork['reports'] =>
  seen ? (ownReports.value?.(seen, role) ?? seen.reports) : [];
