import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { closeUndo, leaveUndo, offerUndo, undoable } from '../../src/app/state/undo-bar.ts';

const offer = { says: 'Deleted.', undo: () => {} };

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  closeUndo();
  vi.useRealTimers();
});

describe('what can be undone', () => {
  it('goes along to the page that opens at once, and stays behind once it could be read', () => {
    offerUndo(offer);
    vi.advanceTimersByTime(500);
    leaveUndo();
    expect(undoable.value).toBe(offer);
    vi.advanceTimersByTime(3000);
    expect(undoable.value).toBe(offer);
    leaveUndo();
    expect(undoable.value).toBeUndefined();
  });

  it('goes by itself after twenty seconds on one page', () => {
    offerUndo(offer);
    vi.advanceTimersByTime(19_000);
    expect(undoable.value).toBe(offer);
    vi.advanceTimersByTime(2000);
    expect(undoable.value).toBeUndefined();
  });
});
