import type { OwnMark, OwnMarkCounts, OwnMarkTested } from '../../garden/own-head-record.ts';
import { membersOf } from '../../signs/members-of.ts';
import type { AskableId } from '../../signs/vocabulary.ts';
import { MARK_SCALES, NETWORK_MARKS } from '../calibration.ts';
import type { MarkScale } from '../mark-scale.ts';
import { type Dealt, dealFolds } from './deal-folds.ts';
import {
  baseOddsOf,
  headFrom,
  inputsOf,
  type MarkRows,
  offsetOf,
  rowsOf,
  type Standard,
  standardOf,
  WAYS,
  type Way,
} from './lay-out-fit.ts';
import type { LeafExample } from './leaf-example.ts';
import type { FitLogistic, LogisticFits } from './logistic-fits.ts';
import { OWN_MARKS } from './marks-said.ts';

/** Fewer photos with a mark, or without it, or from fewer plantings, and it is not tried (our own judgement; how often noise passes stands in the README). */
export const FEWEST = { photos: 8, plantings: 4 } as const;
/**
 * How many of its own standard errors the gain on plantings kept aside must exceed; of few plantings more, as Student's t is wider than
 * the normal distribution.
 */
const CLEARLY = 2;
const clearly = (plantings: number): number => CLEARLY * Math.sqrt((plantings - 1) / (plantings - 3));
/** A smaller gain is not worth another voice, in nats a photo: what the shipped marks had to add to the camera too. */
const WORTH_IT = 0.01;
/** However many photos stand behind it, no ratio is stronger: as strong as the camera's strongest. */
const MOST_RATIO = 12;

/**
 * What was learnt, mark by mark, in the order of the network's marks. The same photos teach the same.
 * @param solve does the fitting; where it rejects, so does this, and nothing was learnt
 * @param progress hears the share that is done, 0 to 1
 * @param scales the shipped head, as it was calibrated
 */
export async function learnOwnHead(
  examples: readonly LeafExample[],
  solve: FitLogistic,
  progress: (share: number) => void = () => {},
  scales: readonly MarkScale[] = MARK_SCALES,
): Promise<OwnMark[]> {
  const tries = OWN_MARKS.map((mark) => {
    const rows = rowsOf(examples, mark, NETWORK_MARKS.indexOf(mark));
    return { mark, rows, counts: countsOf(rows) };
  });
  const enough = tries.filter(({ counts }) => isEnough(counts));
  const learnt: OwnMark[] = [];
  for (const { mark, rows, counts } of tries) {
    if (!isEnough(counts)) {
      learnt.push({ mark, end: 'too-few', ...counts });
      continue;
    }
    const done = enough.findIndex((other) => other.mark === mark);
    learnt.push(
      await learnMark(
        mark,
        rows,
        counts,
        scales.find((one) => one.mark === mark),
        (problem) => solve(problem, (share) => progress((done + share) / enough.length)),
      ),
    );
  }
  progress(1);
  return withoutOverlap(learnt);
}

/** Enough photos of enough plantings to try a mark? */
export const isEnough = ({ present, absent, presentPlantings, absentPlantings }: OwnMarkCounts): boolean =>
  Math.min(present, absent) >= FEWEST.photos &&
  Math.min(presentPlantings, absentPlantings) >= FEWEST.plantings;

function countsOf({ labels, plantings }: MarkRows): OwnMarkCounts {
  const of = (wanted: boolean): string[] => plantings.filter((_, row) => labels[row] === wanted);
  return {
    present: of(true).length,
    absent: of(false).length,
    presentPlantings: new Set(of(true)).size,
    absentPlantings: new Set(of(false)).size,
  };
}

/** The counts of every mark, without learning anything. */
export const countMarks = (examples: readonly LeafExample[]): (OwnMarkCounts & { readonly mark: string })[] =>
  OWN_MARKS.map((mark) => ({
    mark,
    ...countsOf(rowsOf(examples, mark, NETWORK_MARKS.indexOf(mark))),
  }));

async function learnMark(
  mark: string,
  rows: MarkRows,
  counts: OwnMarkCounts,
  scale: MarkScale | undefined,
  solve: (problem: LogisticFits) => Promise<Float32Array>,
): Promise<OwnMark> {
  const dealt = dealFolds(rows.plantings, rows.labels);
  const plan = layOut(rows, dealt, scale);
  const coefficients = await solve(plan.problem);
  const of = (fit: number): number[] => [
    ...coefficients.subarray(fit * plan.problem.columns, (fit + 1) * plan.problem.columns),
  ];
  const { way, tested } = test(rows, dealt, scale?.on === true, (one, row) =>
    plan.oddsKeptAside(one, row, of),
  );
  const plantings = new Set(rows.plantings).size;
  if (!(tested.gain > Math.max(WORTH_IT, clearly(plantings) * tested.gainSe)))
    return { mark, end: 'no-better', ...counts, tested };
  const least = Math.min(counts.presentPlantings, counts.absentPlantings);
  const head = headFrom(of(plan.whole.fitOf(way)), plan.whole.standard, scale);
  return {
    mark,
    end: 'used',
    ...counts,
    tested,
    // After so many plantings without one that spoke against it the next may still do so, one time in that many and two (rule of succession).
    head: { ...head, most: Math.min(MOST_RATIO, least + 1) },
  };
}

interface Plan {
  readonly problem: LogisticFits;
  readonly whole: { fitOf(way: Way): number; readonly standard: Standard };
  /** Log odds of a row by a way that has not learnt from its part. */
  oddsKeptAside(way: Way, row: number, coefficientsOf: (fit: number) => readonly number[]): number;
}

/** Every way without every part, then on all: fitted together. */
function layOut(rows: MarkRows, { fold, folds }: Dealt, scale: MarkScale | undefined): Plan {
  const count = rows.labels.length;
  const parts = Array.from({ length: folds }, (_, part) => {
    const isLearnt = (row: number): boolean => fold[row] !== part;
    return { isLearnt, standard: standardOf(rows, isLearnt), base: baseOddsOf(rows, isLearnt) };
  });
  const all = {
    isLearnt: () => true,
    standard: standardOf(rows, () => true),
    base: baseOddsOf(rows, () => true),
  };
  const jobs = [
    ...WAYS.flatMap((way) => parts.map((part) => ({ way, ...part }))),
    ...WAYS.map((way) => ({ way, ...all })),
  ];
  const columns = all.standard.mean.length + 1;
  const inputs = new Float32Array(jobs.length * count * columns);
  const offsets = new Float32Array(jobs.length * count);
  const counts = new Float32Array(jobs.length * count);
  jobs.forEach(({ way, standard, base, isLearnt }, job) => {
    for (let row = 0; row < count; row++) {
      const at = job * count + row;
      inputs.set(inputsOf(rows, row, standard, way), at * columns);
      offsets[at] = offsetOf(rows, row, base, scale, way);
      counts[at] = isLearnt(row) ? 1 : 0;
    }
  });
  const labels = Float32Array.from(rows.labels, Number);
  return {
    problem: { fits: jobs.length, rows: count, columns, inputs, offsets, labels, counts },
    whole: { fitOf: (way) => WAYS.length * folds + WAYS.indexOf(way), standard: all.standard },
    oddsKeptAside(way, row, coefficientsOf) {
      const fit = WAYS.indexOf(way) * folds + fold[row]!;
      const at = fit * count + row;
      const coefficients = coefficientsOf(fit);
      return coefficients.reduce((sum, value, k) => sum + value * inputs[at * columns + k]!, offsets[at]!);
    },
  };
}

/** Log loss of a forecast in log odds, natural. */
const lossOf = (odds: number, isThere: boolean): number =>
  Math.max(0, isThere ? -odds : odds) + Math.log1p(Math.exp(-Math.abs(odds)));

/**
 * How the three ways did on what was kept aside. Where the shipped head reports the mark, weights on the features must be better than that
 * and than the camera alone. Where it is switched off, the camera is all there is, and setting the shipped head anew may do as well.
 */
function test(
  rows: MarkRows,
  { fold }: Dealt,
  isShippedOn: boolean,
  oddsOf: (way: Way, row: number) => number,
): { readonly way: Way; readonly tested: OwnMarkTested } {
  const all = fold.map((_, row) => row);
  const losses = new Map(
    WAYS.map((way) => [way, all.map((row) => lossOf(oddsOf(way, row), rows.labels[row]!))]),
  );
  const mean = (way: Way): number => meanOf(losses.get(way)!);
  const right = (way: Way): number => all.filter((row) => oddsOf(way, row) > 0 === rows.labels[row]).length;
  const way = isShippedOn || mean('own') < mean('shipped') ? 'own' : 'shipped';
  const before = isShippedOn && mean('shipped') < mean('camera') ? 'shipped' : 'camera';
  const gains = all.map((row) => losses.get(before)![row]! - losses.get(way)![row]!);
  const tested = {
    camera: mean('camera'),
    shipped: mean('shipped'),
    own: mean('own'),
    before,
    gain: meanOf(gains),
    gainSe: clusteredSe(gains, rows.plantings),
    right: right(way),
    rightBefore: right(before),
  } as const;
  return { way, tested };
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Standard error of a mean of photos that come in plantings (Liang and Zeger 1986): plantings are independent, photos of one are not. */
export function clusteredSe(values: readonly number[], plantings: readonly string[]): number {
  const mean = meanOf(values);
  const sums = new Map<string, number>();
  values.forEach((value, i) => {
    sums.set(plantings[i]!, (sums.get(plantings[i]!) ?? 0) + value - mean);
  });
  const groups = sums.size;
  if (groups < 2) return Number.POSITIVE_INFINITY;
  const squares = [...sums.values()].reduce((sum, value) => sum + value ** 2, 0);
  return Math.sqrt((squares * groups) / (groups - 1)) / values.length;
}

/** Of two marks of which one takes the other in, the one that gained more is used: one look must not count twice. */
function withoutOverlap(learnt: readonly OwnMark[]): OwnMark[] {
  const total = ({ tested, present, absent }: OwnMark): number => (tested?.gain ?? 0) * (present + absent);
  const taken = new Set<string>();
  const kept = new Set<string>();
  for (const { mark, end } of [...learnt].sort((a, b) => total(b) - total(a))) {
    const members = membersOf(`${mark}@old` as AskableId);
    if (end !== 'used' || members.some((member) => taken.has(member))) continue;
    for (const member of members) taken.add(member);
    kept.add(mark);
  }
  return learnt.map((one) => {
    if (one.end !== 'used' || kept.has(one.mark)) return one;
    const { head: _head, ...rest } = one;
    return { ...rest, end: 'overlaps' };
  });
}
