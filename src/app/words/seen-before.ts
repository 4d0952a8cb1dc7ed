export const SEEN_BEFORE_WORDS = {
  title: 'Last time',
  counts: (looks: number): string =>
    looks === 1
      ? 'The look before this one counts in the weighing, and so does what has changed since.'
      : `The ${looks} looks before this one count in the weighing, and so does what has changed since.`,
  still: 'Still there',
  gone: 'Gone',
} as const;
