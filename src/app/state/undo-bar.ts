import { signal } from '@preact/signals';

export interface Undoable {
  readonly says: string;
  readonly undo: () => void | Promise<void>;
}

/** Long enough to notice with wet gloves on; it stays while the person goes elsewhere in the app. */
const STAYS_MS = 20_000;

export const undoable = signal<Undoable | undefined>(undefined);
let timer: ReturnType<typeof setTimeout> | undefined;

export function offerUndo(offer: Undoable): void {
  clearTimeout(timer);
  undoable.value = offer;
  timer = setTimeout(() => {
    undoable.value = undefined;
  }, STAYS_MS);
}

export function closeUndo(): void {
  clearTimeout(timer);
  undoable.value = undefined;
}
