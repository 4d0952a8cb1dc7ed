export const WALK_WORDS = {
  title: (day: string): string => day,
  wayIn: 'A plant looks wrong',
  lead: 'Take its photo, or just say what you see. Bedside weighs the causes against each other and says whether to leave it, look again, check first or act now.',
  onThePath: 'On today’s path',
  nothingDue: 'Nothing is due a look today.',
  nothingDueNext: (day: string, distance: string): string =>
    `Nothing is due today. Next: ${day}, ${distance}.`,
  coming: 'Coming up',
  begun: 'Begun and not kept yet',
  throwAway: (what: string): string => `Throw away: ${what}`,
  throwAwayShort: 'Throw away',
  thrownAway: 'The look is thrown away.',
  more: (count: number): string => (count === 1 ? '1 more' : `${count} more`),
  goOn: (what: string, day: string): string => `${what}, begun ${day}`,
  noCropYet: 'A plant',
  unnamedBed: 'no bed named',
  due: { overdue: 'was due', today: 'due today', coming: '' },
} as const;
