/**
 * Judges what `answers.py` put together of photographs no net saw, and writes what the app needs to weigh the network's answers.
 *
 *     npx tsx training/signs-network/evaluate.ts ANSWERS.json PHOTOS.jsonl
 *
 * Writes `results.json` beside this file, `src/classifier/calibration.ts` and `tests/classifier/left-out-answers.json`, and prints the first two in short.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ratioOf } from '../../src/signs/findings-from-readings.ts';
import { LIKELIHOOD_PAIRS } from '../../src/signs/likelihood-pairs.ts';
import { rank } from '../fit-mark-pair.ts';
import { type Photo, type Run, readAnswers, SHIPPED } from './read-answers.ts';
import { chanceOf, fitScale, lossOf, type Said, type Scale } from './score-answers.ts';

const { marks, experts, runs, photos } = readAnswers(process.argv.slice(2));
const REPORTED = marks.slice(0, 9);
const SETS = ['blackgram-india', 'chilli-india', 'bean-uganda'];
const WITHIN = ['0', '1', '2', '3', '4'];
const round = (x: number, digits = 3): number => Math.round(x * 10 ** digits) / 10 ** digits;

interface Answered extends Said {
  readonly photo: Photo;
  readonly strangeness: number;
  /** Log odds that all experts bear out. */
  readonly agreed: number;
}

type Kind = Pick<Run, 'taught' | 'size' | 'sees' | 'steps'>;
const nameOf = ({ taught, size, sees, steps }: Kind): string => `${taught}/${size}/${sees}/${steps}`;

/** All answers on one mark from the given folds of one way of teaching; photographs of `set` only, if named. */
function answersOn(kind: Kind, folds: readonly string[], mark: string, set?: string): Answered[] {
  const at = marks.indexOf(mark);
  return runs
    .filter((run) => nameOf(run) === nameOf(kind) && folds.includes(run.fold))
    .flatMap((run) =>
      run.ids.flatMap((id, k) => {
        const photo = photos.get(id)!;
        const label = photo.labels[mark];
        if (label === undefined || (set !== undefined && photo.set !== set)) return [];
        return [
          {
            z: run.logits[k]![at]!,
            there: label === 1,
            photo,
            strangeness: run.strangeness[k]!,
            agreed: run.agreed[k]![at]!,
          },
        ];
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
    runs.map(({ taught, size, sees, steps }) => [
      nameOf({ taught, size, sees, steps }),
      { taught, size, sees, steps },
    ]),
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

// 2. Temperature. Evidence is what all experts bear out (`agreed`), so 0 is where they part and there is no level to fit. One
//    temperature for all marks, fitted on leaves of sets that the nets never saw; judged on a set that neither nets nor temperature saw.
const leftOutFolds = SETS.map((set) => `without-${set}`);
const MARKED = REPORTED.filter((mark) => mark !== 'healthy');
/** Marks by whose answers the temperature is fitted: those that more than the shape of a leaf shows. */
const TEMPERING = ['yellow-between-veins', 'mottled', 'spotted', 'rust-pustules', 'white-powder'];

/** What the nets that never saw a set say of one mark on its leaves. */
const leftOutOf = (mark: string, set: string): Answered[] =>
  answersOn(SHIPPED, [`without-${set}`], mark, set).map((one) => ({ ...one, z: one.agreed }));

/** Answers on these sets, weighed so that each mark counts alike, and leaves with and without it. */
function pooled(sets: readonly string[], offset: (mark: string, photo: Photo) => number): Said[] {
  return TEMPERING.flatMap((mark) => {
    const said = sets
      .flatMap((set) => leftOutOf(mark, set))
      .filter(({ strangeness }) => strangeness <= STRANGE);
    const there = said.filter((one) => one.there).length;
    if (there === 0) return [];
    return said.map((one) => ({
      ...one,
      offset: offset(mark, one.photo),
      weight: 0.5 / (one.there ? there : said.length - there),
    }));
  });
}
const temperature = (sets: readonly string[], offset: (mark: string, photo: Photo) => number): Scale =>
  fitScale(pooled(sets, offset), false);

// 3. Silence: beyond what nearly all photographs of sets left out reach, nothing was ever tried. The share was chosen with the five
//    pictures of `other/not-a-leaf` in view.
const strangenessOf = (folds: readonly string[], keep: (photo: Photo) => boolean): number[] =>
  runs
    .filter((run) => nameOf(run) === nameOf(SHIPPED) && folds.includes(run.fold))
    .flatMap((run) => run.ids.flatMap((id, k) => (keep(photos.get(id)!) ? [run.strangeness[k]!] : [])))
    .sort((a, b) => a - b);
const quantile = (sorted: readonly number[], q: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))]!;
const isLeafSet = ({ set }: Photo): boolean => SETS.includes(set);
const ofLeftOut = strangenessOf(leftOutFolds, isLeafSet);
const ofKept = strangenessOf(WITHIN, isLeafSet);
const STRANGE = round(quantile(ofLeftOut, 0.88));
const noLeaf = strangenessOf(['all'], ({ set, label }) => set === 'other' && label === 'not_a_leaf');

const heard = ({ strangeness }: Answered): boolean => strangeness <= STRANGE;
interface Confident {
  readonly reports: number;
  readonly wrong: number;
  /** Share of the leaves with the mark that are reported so. */
  readonly coverage: number;
}
/** What counts as a confident report, a chance at even odds. */
const SURE = 0.8;
/** The strongest ratio of a mark whose confident reports were not borne out: it may lean, and is never sure. */
const UNSURE_MOST = 3.9;
const oddsOf = (one: Answered, { slope }: Scale, most: number): number =>
  heard(one) ? Math.max(-Math.log(most), Math.min(Math.log(most), slope * one.z)) : 0;
function confident(said: readonly Answered[], scale: Scale, most: number): Confident {
  const sure = said.filter((one) => chanceOf(oddsOf(one, scale, most)) >= SURE);
  const right = sure.filter((one) => one.there).length;
  const there = said.filter((one) => one.there).length;
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

const besideCamera = leafLogOdds;
const alone = (): number => 0;
const others = (set: string): string[] => SETS.filter((own) => own !== set);
const scales = new Map(
  SETS.map((set) => [
    set,
    { alone: temperature(others(set), alone), beside: temperature(others(set), besideCamera) },
  ]),
);
const final = { alone: temperature(SETS, alone), beside: temperature(SETS, besideCamera) };

/** Loss over leaves that surely lack the mark, or over both kinds alike. */
const lossOn = (said: readonly (Answered & { offset: number })[], z: (one: Answered) => number): number => {
  const rows = said.map((one) => ({ ...one, z: z(one) }));
  const there = rows.filter((one) => one.there).length;
  return lossOf(there > 0 ? rows : rows.map((one) => ({ ...one, weight: 1 / rows.length })), {
    slope: 1,
    bias: 0,
  });
};

const calibration = MARKED.map((mark) => {
  const sets = SETS.filter((set) => leftOutOf(mark, set).length > 0);
  const shown = sets.filter((set) => leftOutOf(mark, set).filter((one) => one.there).length >= 3);
  const healthy = ({ photo }: Answered): boolean => photo.label === 'healthy';
  const rankingOn = (set: string): number | undefined =>
    rankOf(split(answersOn(SHIPPED, [`without-${set}`], mark, set), healthy));
  // The odds of a pair of leaves being put in order on the worst set bound how strong a report may be.
  const least = Math.min(...shown.map((set) => rankingOn(set) ?? 0.5));
  const bound = shown.length === 0 ? 1 : Math.min(12, least / Math.max(1e-3, 1 - least));
  const count = (most: number): Confident[] =>
    sets.map((set) => confident(leftOutOf(mark, set), scales.get(set)!.alone, most));
  const sum = (of: readonly Confident[], what: 'reports' | 'wrong'): number =>
    of.reduce((total, one) => total + one[what], 0);
  const free = count(bound);
  const isBorneOut = sum(free, 'wrong') < 0.05 * sum(free, 'reports');
  const most = isBorneOut ? bound : Math.min(bound, UNSURE_MOST);
  const bySet = sets.map((set, k) => {
    const said = leftOutOf(mark, set).map((one) => ({ ...one, offset: leafLogOdds(mark, one.photo) }));
    const own = scales.get(set)!;
    const both = (one: Answered): number => oddsOf(one, own.beside, most);
    const ranked = (z: (one: (typeof said)[number]) => number): number | null =>
      rankOf(
        split(
          said.map((one) => ({ ...one, z: z(one) })),
          healthy,
        ),
      ) ?? null;
    return {
      set,
      there: said.filter((one) => one.there).length,
      missing: said.filter((one) => !one.there).length,
      ...free[k]!,
      ranking: rankingOn(set) ?? null,
      camera: ranked(({ offset }) => offset),
      both: ranked((one) => one.offset + both(one)),
      lossCamera: round(lossOn(said, () => 0)),
      lossBoth: round(lossOn(said, both)),
    };
  });
  const on =
    shown.length > 0 &&
    bySet.every(({ set, ranking, lossBoth, lossCamera }) =>
      shown.includes(set)
        ? (ranking ?? 0) >= 0.85 && lossBoth < lossCamera - 0.01
        : lossBoth < lossCamera + 0.01,
    );
  return {
    mark,
    on,
    most: round(on ? most : 1),
    reports: sum(free, 'reports'),
    wrong: sum(free, 'wrong'),
    isBorneOut,
    bySet,
  };
});

// 5. What was said of sets left out, kept for the tests: mark, set, there, log odds borne out, the camera's log odds, strangeness.
const kept = MARKED.flatMap((mark) =>
  SETS.flatMap((set) =>
    leftOutOf(mark, set).map((one) => [
      mark,
      set,
      one.there ? 1 : 0,
      one.z,
      round(leafLogOdds(mark, one.photo)),
      round(one.strangeness),
    ]),
  ),
);
writeFileSync(
  fileURLToPath(new URL('../../tests/classifier/left-out-answers.json', import.meta.url)),
  `[\n${kept.map((row) => JSON.stringify(row)).join(',\n')}\n]\n`,
);

const results = {
  note: 'Ranking is the area under the ROC curve. leftOut: trained without the set, its marked leaves against its healthy ones. within: five folds by group, against all leaves of the set that surely lack the mark.',
  shipped: SHIPPED,
  table,
  temperature: {
    alone: round(final.alone.slope),
    besideTheCamera: round(final.beside.slope),
    withoutEach: Object.fromEntries([...scales].map(([set, own]) => [set, round(own.alone.slope)])),
  },
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
  ({ mark, on, most }) =>
    `  { mark: '${mark}', on: ${on}, slope: ${round(final.beside.slope)}, most: ${most} },\n`,
);
writeFileSync(
  fileURLToPath(new URL('../../src/classifier/calibration.ts', import.meta.url)),
  `/**
 * How the network's answers are weighed. Written by \`training/signs-network/evaluate.ts\`; do not edit by hand. Card: \`models/README.md\`.
 */
import type { MarkScale } from './mark-scale.ts';

/** The experts in the order of the network's logits. */
export const NETWORK_EXPERTS = ${JSON.stringify(experts.map(({ expert }) => expert))} as const;

/** Marks in the order of each expert's logits, with those who were shown leaves with it: only they speak of it. */
export const KNOWN_BY: readonly (readonly [mark: string, by: readonly (typeof NETWORK_EXPERTS)[number][]])[] = ${JSON.stringify(
    marks.map((mark) => [
      mark,
      experts.filter(({ knows }) => knows.includes(mark)).map(({ expert }) => expert),
    ]),
  )};

export const NETWORK_MARKS: readonly string[] = KNOWN_BY.map(([mark]) => mark);

/** Above this the picture is unlike all that was taught or tried: silence. */
export const STRANGE = ${STRANGE};

export const MARK_SCALES: readonly MarkScale[] = [
${lines.join('')}];
`,
);
for (const { meanWithin, leftOut, ...kind } of table)
  console.log(nameOf(kind), 'within', meanWithin, JSON.stringify(leftOut));
console.log(JSON.stringify(results.temperature));
for (const { bySet, ...one } of calibration) {
  console.log(JSON.stringify(one));
  for (const own of bySet) console.log('   ', JSON.stringify(own));
}
console.log(JSON.stringify(results.silence));
