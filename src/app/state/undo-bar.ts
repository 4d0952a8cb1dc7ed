import { signal } from '@preact/signals';

export interface Undoable {
  readonly says: string;
  readonly undo: () => void | Promise<void>;
}

/** Long enough to notice with wet gloves on. */
const STAYS_MS = 20_000;
/** So long it takes to be read: a page that is opened sooner takes it along. */
const READ_MS = 3000;

export const undoable = signal<Undoable | undefined>(undefined);
let timer: ReturnType<typeof setTimeout> | undefined;
let offeredAt = 0;

export function offerUndo(offer: Undoable): void {
  clearTimeout(timer);
  undoable.value = offer;
  offeredAt = performance.now();
  timer = setTimeout(() => {
    undoable.value = undefined;
  }, STAYS_MS);
}

export function closeUndo(): void {
  clearTimeout(timer);
  undoable.value = undefined;
}

/** Another page was opened: what could be read by then stays behind. */
export function leaveUndo(): void {
  if (performance.now() - offeredAt >= READ_MS) closeUndo();
}
