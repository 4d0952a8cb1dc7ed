import type { GardenRecord } from '../records.ts';

/**
 * Why the store did not take something. Whatever was typed stays with whoever typed it.
 * `full`: no room; `refused`: the browser keeps nothing for this page; `newer`: a newer version of the tool wrote this
 * record or this store, and writing over it would lose what it knows; `conflict`: another tab has changed or taken away the record since it
 * was read here.
 */
export type StoreTrouble = 'full' | 'refused' | 'newer' | 'conflict';

export class StoreError extends Error {
  override readonly name = 'StoreError';
  /** With `conflict`: the record as it is stored now; absent when it is gone. */
  readonly theirs?: GardenRecord;
  constructor(
    readonly code: StoreTrouble,
    options: { readonly cause?: unknown; readonly theirs?: GardenRecord | undefined } = {},
  ) {
    super(`store: ${code}`, options);
    if (options.theirs) this.theirs = options.theirs;
  }
}

/** Runs a store operation; whatever it throws crosses as a `StoreError` with a code. */
export async function guarded<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (cause) {
    if (cause instanceof StoreError) throw cause;
    const name = cause instanceof Error || cause instanceof DOMException ? cause.name : '';
    throw new StoreError(name === 'QuotaExceededError' ? 'full' : 'refused', { cause });
  }
}
