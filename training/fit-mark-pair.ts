import { ratioOf } from '../src/signs/findings-from-readings.ts';
import type { MarkPair, Spread } from '../src/signs/mark-pair.ts';
import { toScale } from '../src/signs/measure-scale.ts';
import type { JudgedPhoto, MarkQuestion } from './mark-questions.ts';

/** What a pair fitted without a photo's group says of that photo. */
export interface HeldOut {
  readonly set: string;
  readonly isThere: boolean;
  /** Natural log of the ratio, before trust and cap. */
  readonly logRatio: number;
}

export interface FittedPair {
  readonly question: MarkQuestion;
  readonly pair: MarkPair;
  readonly heldOut: readonly HeldOut[];
}

const FOLDS = 5;
const FEWEST_PHOTOS = 10;
/** No ratio beyond this, whatever the photos say: they are few, and of few crops. */
const STRONGEST = 12;

/** The pair of one question, with its ranking and trust from groups left out of the fit; undefined with too few photos. */
export function fitMarkPair(question: MarkQuestion, photos: readonly JudgedPhoto[]): FittedPair | undefined {
  const taken = photos.filter(({ measures }) => measures[question.measure] !== undefined);
  const present = taken.filter(question.present);
  const absent = taken.filter((photo) => question.absent(photo) && !question.present(photo));
  if (Math.min(present.length, absent.length) < FEWEST_PHOTOS) return undefined;
  const heldOut = holdOut(question, present, absent);
  const auc = rank(
    heldOut.filter(({ isThere }) => isThere).map(({ logRatio }) => logRatio),
    heldOut.filter(({ isThere }) => !isThere).map(({ logRatio }) => logRatio),
  );
  const pair: MarkPair = {
    ...spreads(question, present, absent),
    trust: round(trustIn(heldOut)),
    // No stronger word than the ranking of the photos left out allows.
    most: round(Math.min(STRONGEST, Math.max(1.5, auc / (1 - auc)))),
    auc: round(auc),
    sets: [...new Set([...present, ...absent].map(({ set }) => set))].sort(),
  };
  return { question, pair, heldOut };
}

/** Chance that the one kind ranks above the other; ties count half. */
export function rank(above: readonly number[], below: readonly number[]): number {
  let wins = 0;
  for (const a of above) for (const b of below) wins += a > b ? 1 : a === b ? 0.5 : 0;
  return wins / (above.length * below.length);
}

/** Log ratio after trust and cap, as the app would say it. */
export function saidLogRatio({ trust, most }: MarkPair, logRatio: number): number {
  return Math.max(-Math.log(most), Math.min(Math.log(most), trust * logRatio));
}

const round = (x: number): number => Math.round(x * 1000) / 1000;

/** Log ratio of every photo under pairs fitted without its group: five folds, groups dealt out in order. */
function holdOut(
  question: MarkQuestion,
  present: readonly JudgedPhoto[],
  absent: readonly JudgedPhoto[],
): HeldOut[] {
  const keyOf = ({ set, group }: JudgedPhoto): string => `${set}/${group}`;
  const groups = [...new Set([...present, ...absent].map(keyOf))].sort();
  const foldOf = new Map(groups.map((group, k) => [group, k % FOLDS]));
  const inFold = (fold: number) => (photo: JudgedPhoto) => foldOf.get(keyOf(photo)) === fold;
  return Array.from({ length: FOLDS }, (_, fold) => fold).flatMap((fold) => {
    const out = (photo: JudgedPhoto): boolean => !inFold(fold)(photo);
    const pair: MarkPair = {
      ...spreads(question, present.filter(out), absent.filter(out)),
      trust: 1,
      most: Number.POSITIVE_INFINITY,
      auc: 0,
      sets: [],
    };
    const judge =
      (isThere: boolean) =>
      (photo: JudgedPhoto): HeldOut => ({
        set: photo.set,
        isThere,
        logRatio: Math.log(ratioOf(pair, photo.measures[question.measure]!)),
      });
    return [
      ...present.filter(inFold(fold)).map(judge(true)),
      ...absent.filter(inFold(fold)).map(judge(false)),
    ];
  });
}

function spreads(
  { mark, measure, scale }: MarkQuestion,
  present: readonly JudgedPhoto[],
  absent: readonly JudgedPhoto[],
): Omit<MarkPair, 'trust' | 'most' | 'auc' | 'sets'> {
  const scaledValue = (photo: JudgedPhoto): number => toScale(photo.measures[measure]!, scale).value;
  const there = present.map(scaledValue);
  const away = absent.map(scaledValue);
  return {
    mark,
    measure,
    scale,
    present: describe(there),
    absent: describe(away),
    seen: seenIn([...there, ...away]),
  };
}

const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.round(share * (sorted.length - 1))] ?? 0;

/** Median, and a spread from the quantiles, so that a few wrong labels do not move them. */
function describe(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const sd = (quantile(sorted, 0.84) - quantile(sorted, 0.16)) / 2;
  return { mean: round(quantile(sorted, 0.5)), sd: round(Math.max(sd, 0.02)), n: values.length };
}

/** From the 1st to the 99th of a hundred: a stray outline or a wrong label must not widen what was seen. */
function seenIn(values: readonly number[]): [number, number] {
  const sorted = [...values].sort((a, b) => a - b);
  return [round(quantile(sorted, 0.01)), round(quantile(sorted, 0.99))];
}

/**
 * The power under which the ratios of photos left out lose least (log loss, both kinds weighing alike, even odds before):
 * the slope of a logistic regression through the origin (Cox 1958), held to at most 1.
 */
function trustIn(heldOut: readonly HeldOut[]): number {
  const there = heldOut.filter(({ isThere }) => isThere).length;
  const lossAt = (power: number): number =>
    heldOut.reduce((sum, { isThere, logRatio }) => {
      const weight = 1 / (isThere ? there : heldOut.length - there);
      return sum + weight * Math.log1p(Math.exp((isThere ? -power : power) * logRatio));
    }, 0);
  const powers = Array.from({ length: 20 }, (_, k) => (k + 1) / 20);
  return powers.reduce((best, power) => (lossAt(power) < lossAt(best) ? power : best));
}
