/** What stands on a sheet, by kind; comes with the sheets alone. */
export const SHEET_PARTS = {
  case: {
    bed: 'Bed',
    crop: 'Crop',
    looked: 'Looked at',
    verdict: 'What to do',
    seen: 'What was seen and said',
    weighed: 'What it may be',
    looks: 'From look to look',
    ended: 'How it ended',
    note: 'Note',
    noVerdict: 'Nothing was weighed.',
  },
  bed: {
    title: (bed: string, year: string): string => `${bed}, ${year}`,
    nothing: 'Nothing is noted in this year.',
    happened: 'What happened',
    cases: 'Plants that looked wrong',
    ended: 'It ended as',
    long: 'A year with much in it may take more than two pages.',
  },
  trial: {
    plan: 'How it was laid out',
    asked: 'What was tried',
    photos: (day: string): string => `Photos, ${day}`,
  },
  for: 'for it',
  against: 'against it',
  cautions: 'Mind',
  morePhotos: (count: number, keptWith: 'case' | 'trial'): string =>
    `${count === 1 ? 'One more photo is' : `${count} more photos are`} kept with the ${keptWith}.`,
} as const;

/** What a trial in a garden can and cannot show (common practice, no source). */
export const TRIAL_CAUTIONS: readonly string[] = [
  'A trial in a garden shows what happened on this ground, in this season, with these plants. On other soil or in another year it may come out otherwise: try it a second season before you rely on it.',
  'It shows that ways differ, not why. Whatever else was unlike between them, water, shade or what grew there before, is in the difference too.',
  'A difference too small to show here may still be there.',
  'Where a load, a feed or a spray was tried: keep to its label and to local rules, ask a licensed adviser, and do not eat from plants that it may have hurt.',
];
