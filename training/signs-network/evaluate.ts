/**
 * Judges what `learn.py` answered on photographs it never saw, and writes what the app needs to weigh the network's answers.
 *
 *     npx tsx training/signs-network/evaluate.ts ANSWERS.json PHOTOS.jsonl
 *
 * Writes `results.json` beside this file and `src/classifier/calibration.ts`, and prints both in short.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Measures } from '../../src/leaf/measures.ts';
import { ratioOf } from '../../src/signs/findings-from-readings.ts';
import { LIKELIHOOD_PAIRS } from '../../src/signs/likelihood-pairs.ts';
import { rank } from '../fit-mark-pair.ts';
import { chanceOf, fitScale, lossOf, type Said, type Scale } from './score-answers.ts';

interface Photo {
  readonly id: string;
  readonly set: string;
  readonly label: string;
  readonly measures: Measures;
  readonly labels: Readonly<Record<string, 0 | 1>>;
}
interface Run {
  readonly taught: string;
  readonly size: number;
  readonly sees: string;
  readonly fold: string;
  readonly ids: readonly string[];
  readonly logits: readonly (readonly number[])[];
  readonly strangeness: readonly number[];
}

const [answersFile, photosFile] = process.argv.slice(2);
if (answersFile === undefined || photosFile === undefined) throw new Error('ANSWERS.json PHOTOS.jsonl');
const { marks, runs, labels } = JSON.parse(readFileSync(answersFile, 'utf8')) as {
  marks: string[];
  runs: Run[];
  labels: Record<string, Record<string, 0 | 1>>;
};
const photos = new Map(
  readFileSync(photosFile, 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Photo)
    .map((photo): [string, Photo] => [photo.id, { ...photo, labels: labels[photo.id] ?? {} }]),
);
const REPORTED = marks.slice(0, 9);
const SETS = ['blackgram-india', 'chilli-india', 'bean-uganda'];
const WITHIN = ['0', '1', '2', '3', '4'];
const round = (x: number, digits = 3): number => Math.round(x * 10 ** digits) / 10 ** digits;

interface Answered extends Said {
  readonly photo: Photo;
  readonly strangeness: number;
}

/** All answers on one mark from the given folds of one way of teaching; photographs of `set` only, if named. */
function answersOn(
  kind: Omit<Run, 'fold' | 'ids' | 'logits' | 'strangeness'>,
  folds: readonly string[],
  mark: string,
  set?: string,
): Answered[] {
  const at = marks.indexOf(mark);
  return runs
    .filter((run) => run.taught === kind.taught && run.size === kind.size && run.sees === kind.sees)
    .filter((run) => folds.includes(run.fold))
    .flatMap((run) =>
      run.ids.flatMap((id, k) => {
        const photo = photos.get(id)!;
        const label = photo.labels[mark];
        if (label === undefined || (set !== undefined && photo.set !== set)) return [];
        return [{ z: run.logits[k]![at]!, there: label === 1, photo, strangeness: run.strangeness[k]! }];
      }),
    );
}

const split = (said: readonly Answered[], missing = (_: Answered): boolean => true): [number[], number[]] => [
  said.filter(({ there }) => there).map(({ z }) => z),
  said.filter((one) => !one.there && missing(one)).map(({ z }) => z),
];
const rankOf = ([there, missing]: [number[], number[]]): number | undefined =>
  Math.min(there.length, missing.length) < 3 ? undefined : round(rank(there, missing));

// 1. Ranking, within sets and with the set left out, for every way of teaching.
const kinds = [
  ...new Map(
    runs.map(({ taught, size, sees }) => [`${taught}/${size}/${sees}`, { taught, size, sees }]),
  ).values(),
];
const table = kinds.map((kind) => {
  const leftOut: Record<string, number> = {};
  const within: Record<string, number> = {};
  for (const set of SETS) {
    const folds = kind.taught === 'rendered' ? ['none'] : [`without-${set}`];
    for (const mark of REPORTED.filter((own) => own !== 'healthy')) {
      const healthy = ({ photo }: Answered): boolean => photo.label === 'healthy';
      const apart = rankOf(split(answersOn(kind, folds, mark, set), healthy));
      if (apart !== undefined) leftOut[`${mark} ${set}`] = apart;
      const inside = rankOf(split(answersOn(kind, WITHIN, mark, set)));
      if (inside !== undefined) within[`${mark} ${set}`] = inside;
    }
  }
  const values = Object.values(within);
  const meanWithin = values.length > 0 ? round(values.reduce((sum, x) => sum + x, 0) / values.length) : null;
  return { ...kind, meanWithin, leftOut, within };
});

// 2. Temperature and level: fitted on other sets left out where a mark was photographed in two or more, else on groups left out;
//    always judged on what a network says of a set that it never saw.
const SHIPPED = { taught: 'all', size: Math.min(...kinds.map(({ size }) => size)), sees: 'leaf' };
const leftOutFolds = SETS.map((set) => `without-${set}`);
interface Judged {
  /** Photographed in two sets or more, so that temperature and level are tried on a set that neither was fitted on. */
  readonly across: boolean;
  /** What temperature and level are fitted on. */
  readonly learnt: (set: string) => Answered[];
  /** Answers of the network that never saw the set. */
  readonly judged: (set: string) => Answered[];
  readonly sets: readonly string[];
}
function judgeOf(mark: string): Judged {
  const apart = (set: string): Answered[] => answersOn(SHIPPED, [`without-${set}`], mark, set);
  const sets = SETS.filter((set) => apart(set).some(({ there }) => there));
  const across = sets.length > 1;
  const learnt = (set: string): Answered[] =>
    across ? sets.filter((own) => own !== set).flatMap(apart) : answersOn(SHIPPED, WITHIN, mark);
  return { across, sets, judged: apart, learnt };
}

// 3. Silence: beyond what nearly all photographs of sets left out reach, nothing was ever tried. The share was chosen with the five
//    pictures of `other/not-a-leaf` in view.
const strangenessOf = (folds: readonly string[], keep: (photo: Photo) => boolean): number[] =>
  runs
    .filter(
      (run) =>
        run.taught === SHIPPED.taught &&
        run.size === SHIPPED.size &&
        run.sees === SHIPPED.sees &&
        folds.includes(run.fold),
    )
    .flatMap((run) => run.ids.flatMap((id, k) => (keep(photos.get(id)!) ? [run.strangeness[k]!] : [])))
    .sort((a, b) => a - b);
const quantile = (sorted: readonly number[], q: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))]!;
const isLeafSet = ({ set }: Photo): boolean => SETS.includes(set);
const ofLeftOut = strangenessOf(leftOutFolds, isLeafSet);
const ofKept = strangenessOf(WITHIN, isLeafSet);
const STRANGE = round(quantile(ofLeftOut, 0.88));
const noLeaf = strangenessOf(['all'], ({ set, label }) => set === 'other' && label === 'not_a_leaf');

/** Chances at even odds, held to what few photographs can bear out. */
const logOddsOf = ({ slope, bias }: Scale, z: number): number => slope * z + bias;
function confident(
  said: readonly Answered[],
  scale: Scale,
): { reports: number; wrong: number; coverage: number } {
  const heard = said.filter(({ strangeness }) => strangeness <= STRANGE);
  const sure = heard.filter(({ z }) => chanceOf(logOddsOf(scale, z)) >= 0.8);
  const there = said.filter((one) => one.there).length;
  const right = sure.filter((one) => one.there).length;
  return { reports: sure.length, wrong: sure.length - right, coverage: round(right / Math.max(1, there)) };
}

// 4. What it adds to the camera's own measure of the same mark.
function leafLogOdds(mark: string, { measures }: Photo): number {
  const pair = LIKELIHOOD_PAIRS.find(
    (own) => own.mark === mark || (mark === 'holes' && own.mark === 'ragged-holes'),
  );
  const measured = pair && measures[pair.measure];
  return measured === undefined ? 0 : Math.log(ratioOf(pair!, measured));
}

const calibration = REPORTED.filter((mark) => mark !== 'healthy').map((mark) => {
  const { across, sets, judged, learnt } = judgeOf(mark);
  const beside = (said: readonly Answered[]): (Answered & { offset: number })[] =>
    said.map((one) => ({ ...one, offset: leafLogOdds(mark, one.photo) }));
  const bySet = sets.map((set) => {
    const own = judged(set);
    const judge = fitScale(learnt(set));
    const besides = beside(own);
    const added = fitScale(beside(learnt(set)));
    const healthy = ({ photo }: Answered): boolean => photo.label === 'healthy';
    return {
      set,
      ranking: rankOf(split(own, healthy)) ?? null,
      camera:
        rankOf(
          split(
            besides.map((one) => ({ ...one, z: one.offset })),
            healthy,
          ),
        ) ?? null,
      both:
        rankOf(
          split(
            besides.map((one) => ({ ...one, z: one.offset + logOddsOf(added, one.z) })),
            healthy,
          ),
        ) ?? null,
      ...confident(own, judge),
      lossAlone: round(lossOf(own, judge)),
      lossCamera: round(lossOf(besides, { slope: 0, bias: 0 })),
      lossBoth: round(lossOf(besides, added)),
    };
  });
  const all = learnt('');
  // Confident reports on left-out sets that do not show the mark at all: each is a false alarm.
  const elsewhere = SETS.filter((set) => !sets.includes(set)).flatMap(judged);
  const alarms = confident(elsewhere, fitScale(all)).wrong;
  const [add, scale] = [fitScale(beside(all)), fitScale(all)];
  const helps =
    bySet.length > 0 &&
    alarms <= 0.05 * elsewhere.length &&
    bySet.every(
      ({ lossBoth, lossCamera, ranking, reports, wrong }) =>
        lossBoth < lossCamera - 0.01 && (ranking ?? 0) >= 0.85 && wrong <= 0.05 * reports,
    );
  return {
    mark,
    across,
    on: helps,
    slope: round(add.slope),
    bias: round(add.bias),
    elsewhere: elsewhere.length,
    alarms,
    alone: { slope: round(scale.slope), bias: round(scale.bias) },
    bySet,
  };
});

const results = {
  note: 'Ranking is the area under the ROC curve. leftOut: trained without the set, its marked leaves against its healthy ones. within: five folds by group, against all leaves of the set that surely lack the mark.',
  shipped: SHIPPED,
  table,
  calibration,
  silence: {
    strange: STRANGE,
    silencedWithin: round(ofKept.filter((x) => x > STRANGE).length / ofKept.length),
    silencedLeftOut: round(ofLeftOut.filter((x) => x > STRANGE).length / ofLeftOut.length),
    notALeaf: noLeaf.map((x) => round(x)),
  },
};
writeFileSync(
  fileURLToPath(new URL('./results.json', import.meta.url)),
  `${JSON.stringify(results, null, 1)}\n`,
);
const lines = calibration.map(
  ({ mark, on, slope, bias, bySet }) =>
    `  { mark: '${mark}', on: ${on}, slope: ${slope}, bias: ${bias}, most: ${on ? mostOf(bySet) : 1} },\n`,
);
function mostOf(bySet: readonly { ranking: number | null }[]): number {
  const least = Math.min(...bySet.map(({ ranking }) => ranking ?? 0.5));
  return round(Math.min(12, Math.max(1.5, least / Math.max(1e-3, 1 - least))));
}
writeFileSync(
  fileURLToPath(new URL('../../src/classifier/calibration.ts', import.meta.url)),
  `/**
 * How the network's answers are weighed. Written by \`training/signs-network/evaluate.ts\`; do not edit by hand. Card: \`models/README.md\`.
 */
import type { MarkScale } from './mark-scale.ts';

/** Marks in the order of the network's logits. */
export const NETWORK_MARKS: readonly string[] = ${JSON.stringify(marks)};

/** Above this the picture is unlike all that was taught or tried: silence. */
export const STRANGE = ${STRANGE};

export const MARK_SCALES: readonly MarkScale[] = [
${lines.join('')}];
`,
);
for (const { taught, size, sees, meanWithin, leftOut } of table)
  console.log(taught, size, sees, 'within', meanWithin, JSON.stringify(leftOut));
for (const { bySet, ...one } of calibration) {
  console.log(JSON.stringify(one));
  for (const own of bySet) console.log('   ', JSON.stringify(own));
}
console.log(JSON.stringify(results.silence));
