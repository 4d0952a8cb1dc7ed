import { signal } from '@preact/signals';

/** The term that is being explained, if any. */
export const explained = signal<string | undefined>(undefined);
