import type { CaseState } from '../../garden/narrow-cases.ts';

/** Narrowing the list of cases in the book. */
export const NARROW_WORDS = {
  title: 'Narrow the list',
  bed: 'Bed',
  crop: 'Crop',
  cause: 'Cause, found or thought likeliest',
  state: 'How it stands',
  from: 'Went on from',
  to: 'up to',
  all: 'All',
  noBed: 'No bed named',
  states: {
    open: 'Open',
    due: 'Open, and due a look',
    settled: 'Closed, with how it ended',
    unsaid: 'Closed without saying',
  } satisfies Record<CaseState, string>,
} as const;
