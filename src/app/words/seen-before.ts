export const SEEN_BEFORE_WORDS = {
  title: 'Last time',
  counts: (looks: number): string =>
    looks === 1
      ? 'The look before this one counts in the weighing, and so does what has changed since.'
      : `The ${looks} looks before this one count in the weighing, and so does what has changed since.`,
  /** "12 June: Act now. Likeliest: nitrogen locked up." */
  madeOfIt: (day: string, made: string): string => `${day}: ${made}.`,
  byNow: 'What was to be seen by then:',
  still: 'Still there',
  gone: 'Gone',
} as const;
