/** One step of the scale by which a pot is scored. */
export interface InjuryStep {
  readonly score: number;
  /** The class that growers' protocols have for it. */
  readonly grade: 'none' | 'doubtful' | 'slight' | 'moderate' | 'severe' | 'dead';
  /** What is seen on most of the pot's seedlings, set beside the best pots of the row: which hold clean mix, a rater does not know. */
  readonly says: string;
}

/**
 * Visible injury by weedkillers of the auxin type, 0 to 100 in steps of ten. The classes slight, moderate and severe and
 * what marks them are those of the growers' protocol (OSU-CARRY); the ladder of eleven steps follows the scales that weed
 * scientists rate beans by (Behrens and Lueschen 1979; Frans and others 1986; both from memory), in words of our own. Raters
 * are asked for no finer steps than ten below 60 (CWSS-SCM 2018).
 */
export const INJURY_STEPS: readonly InjuryStep[] = [
  { score: 0, grade: 'none', says: 'As in any sound pot: new leaves open and lie flat.' },
  {
    score: 10,
    grade: 'doubtful',
    says: 'The newest leaves are faintly crinkled; you are not sure, and growth is as in sound pots.',
  },
  {
    score: 20,
    grade: 'slight',
    says: 'The newest leaves are somewhat cupped and do not lie flat before they open; growth is as in sound pots.',
  },
  { score: 30, grade: 'slight', says: 'Two sets of leaves are cupped; the newest is a little small.' },
  {
    score: 40,
    grade: 'moderate',
    says: 'All newer leaves are plainly cupped or strap-like; the newest is about half as large as in sound pots.',
  },
  {
    score: 50,
    grade: 'moderate',
    says: 'Leaves plainly cupped, the tip hardly grows; the plant is clearly shorter than in sound pots.',
  },
  {
    score: 60,
    grade: 'severe',
    says: 'Most leaves are cupped, the stem bends or twists, the tip stands still.',
  },
  {
    score: 70,
    grade: 'severe',
    says: 'Stem and stalks twisted, the tip is dying or swollen; about half as tall as in sound pots, or less.',
  },
  {
    score: 80,
    grade: 'severe',
    says: 'The tip is dead, stems split or thickened; a few misshapen leaves remain.',
  },
  { score: 90, grade: 'severe', says: 'Most seedlings are dead or dying.' },
  { score: 100, grade: 'dead', says: 'All seedlings that came up are dead.' },
];

/** Index of the step that a score lies nearest to, 0 to 10. */
export const stepOf = (score: number): number => Math.round(score / 10);
