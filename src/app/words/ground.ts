export const GROUND_WORDS = {
  title: 'The ground',
  lead: 'Beds as you named them in your cases.',
  none: 'No bed yet. Name one when you keep a look, and its history is gathered here.',
  unnamed: 'No bed named',
  open: (count: number): string =>
    count === 0 ? 'no open case' : count === 1 ? '1 open case' : `${count} open cases`,
  all: (count: number): string => (count === 1 ? '1 case in all' : `${count} cases in all`),
  notFound: 'No case names this bed.',
  toGround: 'All beds',
  ended: (how: string): string => `Ended: ${how}`,
  history: 'What happened here, newest first',
  cases: 'Cases',
} as const;
