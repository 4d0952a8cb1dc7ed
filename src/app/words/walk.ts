export const WALK_WORDS = {
  title: (day: string): string => day,
  wayIn: 'A plant looks wrong',
  lead: 'Take a photo of the plant, or just say what you see. Bedside weighs the causes against each other and says whether to leave it, look again, check first or act now.',
  onThePath: 'On today’s path',
  waiting: (count: number): string =>
    count === 1
      ? 'A photo from another app waits: begin a look with it'
      : `${count} photos from another app wait: begin a look with them`,
  coming: 'Coming up',
  begun: 'Begun and not kept yet',
  throwAway: (what: string): string => `Throw away: ${what}`,
  throwAwayShort: 'Throw away',
  thrownAway: 'The look is thrown away.',
  more: (count: number): string => (count === 1 ? '1 more' : `${count} more`),
  goOn: (what: string, day: string): string => `${what}, begun ${day}`,
  noCropYet: 'A plant',
  unnamedBed: 'no bed named',
} as const;
