/**
 * The camera against the chlorophyll meter, on all leaves of `papaya-spad`: how each measure of colour ranks them, how far the
 * same leaf differs between paper and place, what the correction of the light was fitted on (ten-fold by leaf), and what
 * the photographs allow at most: the rank correlation of a flexible, cross-validated fit to the whole distribution of
 * leaf and ground colours. `npx tsx training/check-chlorosis.ts`; some five minutes.
 */
import { classifyTissue, TISSUE_INDEX } from '../src/leaf/classify-tissue.ts';
import { seededRandom } from '../src/leaf/draw-leaf.ts';
import { findLeaf } from '../src/leaf/find-leaf.ts';
import { judgePlantColour } from '../src/leaf/judge-plant.ts';
import { measureColour } from '../src/leaf/measure-colour.ts';
import { findTinted, medianInside } from '../src/leaf/measure-tissue.ts';
import type { MeasureId, Measures } from '../src/leaf/measures.ts';
import { colourSample, sampleLeaf } from '../src/leaf/sample-leaf.ts';
import { erode, gainsOf, takeMeasures } from '../src/leaf/take-measures.ts';
import { convertPixelsToLab, type LabPlanes } from '../src/photo/convert-pixels-to-lab.ts';
import { scaleToWorkingFrame } from '../src/photo/scale-to-working-frame.ts';
import { LIGHT_PRIOR, type LightPrior, settleWhite } from '../src/photo/settle-white.ts';
import {
  decodePhoto,
  HAS_PHOTOS,
  medianOf,
  pickPhotos,
  rankCorrelation,
} from '../tests/leaf/shared-photos.ts';

const MEASURED = [
  'dark-green-index',
  'hue',
  'lightness',
  'chroma',
  'chlorotic-fraction',
] as const satisfies readonly MeasureId[];
const GROUNDS = ['white', 'natural'] as const;
const PRIORS: LightPrior[] = [0.1, 0.2, 0.3].flatMap((ground) =>
  [1, 1.25].flatMap((highlights) => [0, 0.1, 0.18].map((greenShade) => ({ ground, highlights, greenShade }))),
);

interface Shot {
  readonly spad: number;
  readonly measures: Measures;
  /** Hue under each of `PRIORS`. */
  readonly hues: number[];
  /** Quantiles of the colours of leaf and of ground, uncorrected, and the gains. */
  readonly features: number[];
}

const quantiles = (plane: Float32Array, inside: (i: number) => boolean): number[] => {
  const values = plane.filter((_, i) => i % 7 === 0 && inside(i)).sort();
  return [0.1, 0.25, 0.5, 0.75, 0.9].map((q) => values[Math.floor(q * (values.length - 1))] ?? 0);
};

async function readShot(file: string, spad: number): Promise<Shot | undefined> {
  const frame = scaleToWorkingFrame(await decodePhoto(file));
  const lab = convertPixelsToLab(frame);
  const leaf = findLeaf(frame, lab, {});
  if (leaf === undefined) return undefined;
  const plantAt = (i: number): number => judgePlantColour(lab.a[i]!, lab.b[i]!);
  const white = settleWhite(frame, leaf.outline, plantAt);
  const sample = sampleLeaf(frame, leaf.outline, leaf.remaining);
  const small = sampleLeaf(frame, leaf.outline, leaf.remaining, 10_000);
  const hues = PRIORS.map((prior) => {
    const gains = gainsOf(settleWhite(frame, leaf.outline, plantAt, undefined, prior));
    const planes = colourSample(small, gains);
    const tissue = erode(small, 1);
    const kinds = classifyTissue(planes, tissue, medianInside(planes.L, tissue));
    const living = Uint8Array.from(kinds, (kind) =>
      kind === TISSUE_INDEX.healthy || kind === TISSUE_INDEX.chlorotic ? 255 : 0,
    );
    return measureColour(small, planes, gains, findTinted(planes, kinds, living))?.hue ?? Number.NaN;
  });
  const planesOf = ({ L, a, b }: LabPlanes): Float32Array[] => [L, a, b];
  const features = [
    ...planesOf(lab).flatMap((plane) => quantiles(plane, (i) => leaf.remaining[i] === 255)),
    ...planesOf(lab).flatMap((plane) =>
      quantiles(plane, (i) => leaf.outline[i] !== 255 && lab.L[i]! > 65 && plantAt(i) < 0.5),
    ),
    ...white.gains.map(Math.log),
  ];
  return { spad, measures: takeMeasures(sample, small, white).measures, hues, features };
}

/** Kernel ridge regression, ten-fold; kernel width and ridge are chosen within each training part. */
function predictBeyondFolds(features: number[][], truth: number[], fold: number[]): number[] {
  const width = features[0]!.length;
  const columns = Array.from({ length: width }, (_, c) => {
    const values = features.map((row) => row[c]!);
    const mean = values.reduce((s, v) => s + v, 0) / values.length;
    const sd = Math.sqrt(values.reduce((s, v) => s + (v - mean) ** 2, 0) / values.length) || 1;
    return values.map((v) => (v - mean) / sd);
  });
  const distance = features.map((_, i) =>
    features.map((_, j) => columns.reduce((s, column) => s + (column[i]! - column[j]!) ** 2, 0) / width),
  );
  const predict = (train: number[], test: number[], reach: number, ridge: number): number[] => {
    const mean = train.reduce((s, i) => s + truth[i]!, 0) / train.length;
    const kernel = (i: number, j: number): number => Math.exp(-distance[i]![j]! / (2 * reach * reach));
    const weights = solve(
      train.map((i) => train.map((j) => kernel(i, j) + (i === j ? ridge : 0))),
      train.map((i) => truth[i]! - mean),
    );
    return test.map((i) => mean + train.reduce((s, j, k) => s + kernel(i, j) * weights[k]!, 0));
  };
  const out = new Array<number>(truth.length).fill(0);
  for (let k = 0; k < 10; k++) {
    const train = truth.flatMap((_, i) => (fold[i] === k ? [] : [i]));
    const test = truth.flatMap((_, i) => (fold[i] === k ? [i] : []));
    let best = { error: Number.POSITIVE_INFINITY, reach: 1, ridge: 1 };
    for (const reach of [1, 2, 4]) {
      for (const ridge of [1e-3, 1e-2, 1e-1]) {
        let error = 0;
        for (const inner of [0, 1, 2]) {
          const part = train.filter((i) => (fold[i]! + (fold[i]! > k ? 2 : 0)) % 3 !== inner);
          const rest = train.filter((i) => (fold[i]! + (fold[i]! > k ? 2 : 0)) % 3 === inner);
          for (const [n, value] of predict(part, rest, reach, ridge).entries())
            error += (value - truth[rest[n]!]!) ** 2;
        }
        if (error < best.error) best = { error, reach, ridge };
      }
    }
    for (const [n, value] of predict(train, test, best.reach, best.ridge).entries()) out[test[n]!] = value;
  }
  return out;
}

/** Gaussian elimination with pivots. */
function solve(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const n = rows.length;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[pivot]![c]!)) pivot = r;
    [rows[c], rows[pivot]] = [rows[pivot]!, rows[c]!];
    for (let r = c + 1; r < n; r++) {
      const part = rows[r]![c]! / rows[c]![c]!;
      for (let k = c; k <= n; k++) rows[r]![k]! -= part * rows[c]![k]!;
    }
  }
  const out = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let sum = rows[r]![n]!;
    for (let k = r + 1; k < n; k++) sum -= rows[r]![k]! * out[k]!;
    out[r] = sum / rows[r]![r]!;
  }
  return out;
}

if (!HAS_PHOTOS) throw new Error('No photographs beside the repository: nothing to check.');
const leaves = new Map<string, Partial<Record<(typeof GROUNDS)[number], Shot>>>();
for (const ground of GROUNDS) {
  for (const kind of ['golden', 'tainung']) {
    for (const row of pickPhotos('papaya-spad', `${kind}_${ground}_bg`, 999)) {
      const shot = await readShot(row.file, Number(row.note.split('=')[1]));
      const leaf = `${kind}-${/m[a-z]\d+/.exec(row.file)?.[0]}`;
      if (shot !== undefined) leaves.set(leaf, { ...leaves.get(leaf), [ground]: shot });
    }
  }
}
const random = seededRandom(7);
for (const ground of GROUNDS) {
  const shots = [...leaves.values()].flatMap((leaf) => leaf[ground] ?? []);
  const spads = shots.map(({ spad }) => spad);
  console.log(`\n${ground}: ${shots.length} leaves; rank correlation with the meter`);
  for (const id of MEASURED)
    console.log(
      ' ',
      id.padEnd(20),
      rankCorrelation(
        shots.map(({ measures }) => measures[id]?.value ?? 0),
        spads,
      ).toFixed(3),
    );
  const ceilings = [1, 2, 3].map(() => {
    const order = shots.map((_, i) => [random(), i] as const).sort((p, q) => p[0] - q[0]);
    const fold = new Array<number>(shots.length).fill(0);
    for (const [rank, [, i]] of order.entries()) fold[i] = rank % 10;
    return rankCorrelation(
      predictBeyondFolds(
        shots.map(({ features }) => features),
        spads,
        fold,
      ),
      spads,
    );
  });
  console.log(
    '  any smooth function of leaf and ground colours, ten-fold:',
    ceilings.map((v) => v.toFixed(3)).join(' '),
  );
}
const pairs = [...leaves.values()].flatMap(({ white, natural }) =>
  white === undefined || natural === undefined ? [] : [{ white, natural }],
);
console.log(`\nthe same leaf on paper and in place: ${pairs.length}`);
for (const id of MEASURED) {
  const both = pairs.map(({ white, natural }) => [natural.measures[id]!, white.measures[id]!] as const);
  const moves = both.map(([p, q]) => p.value - q.value);
  const middle = medianOf(moves);
  const covered = both.filter(([p, q]) => Math.abs(p.value - q.value) <= Math.hypot(p.se, q.se)).length;
  console.log(
    ' ',
    id.padEnd(20),
    `median difference ${medianOf(moves.map(Math.abs)).toFixed(3)}, of it a constant ${middle.toFixed(3)},`,
    `rest ${medianOf(moves.map((v) => Math.abs(v - middle))).toFixed(3)}; within the errors ${(covered / both.length).toFixed(2)}`,
  );
}
const missed = PRIORS.map((_, k) =>
  pairs.map(({ white, natural }) => Math.abs(natural.hues[k]! - white.measures.hue!.value)),
);
const chosen = PRIORS.findIndex((prior) => JSON.stringify(prior) === JSON.stringify(LIGHT_PRIOR));
const folds = pairs.map(() => Math.floor(10 * random()));
const beyondFold = pairs.map((_, i) => {
  const inside = missed.map((row) => medianOf(row.filter((_, j) => folds[j] !== folds[i])));
  return missed[inside.indexOf(Math.min(...inside))]![i]!;
});
console.log('median difference of hue by prior of the light (ground, highlights, green shade):');
for (const [k, prior] of PRIORS.entries())
  console.log(
    ' ',
    Object.values(prior).join(' '),
    medianOf(missed[k]!).toFixed(2),
    k === chosen ? '← used' : '',
  );
console.log('  best prior, chosen without the fold it is tried on:', medianOf(beyondFold).toFixed(2));
