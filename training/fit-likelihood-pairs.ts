/**
 * Fits what each measure says of each mark on the labelled photos, and writes `src/signs/likelihood-pairs.ts`.
 * Run: npx tsx training/fit-likelihood-pairs.ts (needs ../shared/photos). Only numbers leave this script.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { MeasureId } from '../src/leaf/measures.ts';
import { type MeasureScale, toScale } from '../src/signs/measure-scale.ts';
import type { MarkId } from '../src/signs/vocabulary.ts';
import { type LabelledReading, readLabelledPhotos } from './read-labelled-photos.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

interface Question {
  readonly mark: MarkId;
  readonly measure: MeasureId;
  readonly scale: MeasureScale;
  readonly present: (photo: LabelledReading) => boolean;
  readonly absent: (photo: LabelledReading) => boolean;
}

const is =
  (...keys: string[]) =>
  ({ set, label }: LabelledReading) =>
    keys.includes(`${set}/${label}`);
const HEALTHY = ['bean-uganda/healthy', 'blackgram-india/healthy', 'chilli-india/healthy'];
const SPOTTED = ['bean-uganda/angular_leaf_spot', 'blackgram-india/anthracnose', 'chilli-india/cercospora'];
const POWDER = ['blackgram-india/powdery_mildew', 'chilli-india/powdery_mildew'];
const INTERVEINAL = 'chilli-india/nutritional';
const MOSAIC = 'blackgram-india/yellow_mosaic';
/** SPAD below which a leaf is plainly pale and above which it is plainly green; papaya, meter SPAD-502. */
const PALE_SPAD = 22;
const GREEN_SPAD = 34;
const pale = ({ spad }: LabelledReading): boolean => spad !== undefined && spad < PALE_SPAD;
const green = ({ spad }: LabelledReading): boolean => spad !== undefined && spad > GREEN_SPAD;

const QUESTIONS: readonly Question[] = [
  ['dark-green-index', 'plain'],
  ['hue', 'plain'],
  ['chlorotic-fraction', 'log-odds'],
].map(([measure, scale]) => ({
  mark: 'yellow-even' as MarkId,
  measure: measure as MeasureId,
  scale: scale as MeasureScale,
  present: pale,
  absent: (photo: LabelledReading) => green(photo) || is(...HEALTHY, INTERVEINAL)(photo),
}));
const MORE: readonly Question[] = [
  {
    mark: 'yellow-between-veins',
    measure: 'vein-contrast',
    scale: 'plain',
    present: is(INTERVEINAL),
    absent: (p) => is(...HEALTHY)(p) || pale(p) || green(p),
  },
  {
    mark: 'yellow-between-veins',
    measure: 'chlorotic-fraction',
    scale: 'log-odds',
    present: is(INTERVEINAL),
    absent: (p) => is(...HEALTHY)(p) || green(p),
  },
  {
    mark: 'mottled',
    measure: 'mottle',
    scale: 'plain',
    present: is(MOSAIC),
    absent: (p) => is(...HEALTHY)(p) || green(p),
  },
  {
    mark: 'mottled',
    measure: 'evenness',
    scale: 'plain',
    present: is(MOSAIC),
    absent: (p) => is(...HEALTHY)(p) || green(p),
  },
  {
    mark: 'brown-spots',
    measure: 'spot-fraction',
    scale: 'log-odds',
    present: is(...SPOTTED),
    absent: is(...HEALTHY),
  },
  {
    mark: 'brown-spots',
    measure: 'spot-count',
    scale: 'log',
    present: is(...SPOTTED),
    absent: is(...HEALTHY),
  },
  {
    mark: 'brown-spots',
    measure: 'necrotic-fraction',
    scale: 'log-odds',
    present: is(...SPOTTED),
    absent: is(...HEALTHY),
  },
  {
    mark: 'white-powder',
    measure: 'white-fraction',
    scale: 'log-odds',
    present: is(...POWDER),
    absent: is(...HEALTHY),
  },
  {
    mark: 'ragged-holes',
    measure: 'hole-fraction',
    scale: 'log-odds',
    present: ({ set, measures }) => set === 'soybean-holes' && (measures['lost-fraction']?.value ?? 0) > 0.02,
    absent: is('bean-uganda/healthy', 'blackgram-india/healthy'),
  },
];

/** Chance that a photo with the mark measures higher than one without; ties count half. */
function auc(present: readonly number[], absent: readonly number[]): number {
  let wins = 0;
  for (const p of present) for (const a of absent) wins += p > a ? 1 : p === a ? 0.5 : 0;
  return wins / (present.length * absent.length);
}

const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.round(share * (sorted.length - 1))] ?? 0;

/** Median, and a spread from the quartiles, so that a few wrong labels do not move them. */
function describe(values: readonly number[]): { mean: number; sd: number; n: number } {
  const sorted = [...values].sort((a, b) => a - b);
  const sd = (quantile(sorted, 0.84) - quantile(sorted, 0.16)) / 2;
  return { mean: quantile(sorted, 0.5), sd: Math.max(sd, 0.02), n: values.length };
}

const two = (x: number): number => Math.round(x * 1000) / 1000;

const sources = ['photo', 'leaf'].flatMap((folder) =>
  readdirSync(`${ROOT}src/${folder}`)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${ROOT}src/${folder}/${name}`),
);
const hash = createHash('sha256');
for (const file of sources.sort()) hash.update(readFileSync(file));
const photos = (await readLabelledPhotos(process.env.READINGS ?? hash.digest('hex').slice(0, 12))).filter(
  ({ trouble }) => !trouble.includes('no-leaf'),
);

interface Fitted {
  readonly question: Question;
  readonly auc: number;
  readonly bySet: string;
  readonly line: string;
}

function fit(question: Question): Fitted | undefined {
  const { measure, scale } = question;
  const scaledValue = ({ measures }: LabelledReading): number[] => {
    const measured = measures[measure];
    return measured ? [toScale(measured, scale).value] : [];
  };
  const withMark = photos.filter(question.present);
  const without = photos.filter(question.absent);
  const present = withMark.flatMap(scaledValue);
  const absent = without.flatMap(scaledValue);
  if (present.length < 10 || absent.length < 10) return undefined;
  const raw = auc(present, absent);
  const strength = Math.max(raw, 1 - raw);
  const sets = [...new Set(withMark.map(({ set }) => set))];
  const bySet = sets
    .map(
      (set) => `${set} ${auc(withMark.filter((p) => p.set === set).flatMap(scaledValue), absent).toFixed(2)}`,
    )
    .join(', ');
  // No stronger word than the ranking of the photos themselves allows.
  const most = Math.min(12, Math.max(1.5, strength / (1 - strength)));
  const p = describe(present);
  const a = describe(absent);
  const line = `  { mark: '${question.mark}', measure: '${measure}', scale: '${scale}', present: { mean: ${two(p.mean)}, sd: ${two(p.sd)}, n: ${p.n} }, absent: { mean: ${two(a.mean)}, sd: ${two(a.sd)}, n: ${a.n} }, most: ${two(most)}, auc: ${two(strength)}, sets: ${JSON.stringify([...new Set([...withMark, ...without].map(({ set }) => set))].sort()).replaceAll('"', "'")} },`;
  return { question, auc: strength, bySet, line };
}

/** Below this a measure separates too little to speak at all. */
const SPEAKS_FROM = 0.7;

const fitted = [...QUESTIONS, ...MORE].map(fit).filter((one) => one !== undefined);
for (const { question, auc: strength, bySet } of fitted) {
  process.stdout.write(
    `${question.mark.padEnd(22)} ${question.measure.padEnd(20)} AUC ${strength.toFixed(3)}  (${bySet})\n`,
  );
}
const best = [...new Set(fitted.map(({ question }) => question.mark))].flatMap((mark) => {
  const [first] = fitted.filter(({ question }) => question.mark === mark).sort((a, b) => b.auc - a.auc);
  return first && first.auc >= SPEAKS_FROM ? [first] : [];
});
const file = `${ROOT}src/signs/likelihood-pairs.ts`;
writeFileSync(
  file,
  `/**
 * What a measure says of a mark: its distribution on photographs with and without the mark, on the given scale.
 * Written by \`training/fit-likelihood-pairs.ts\`; do not edit by hand. \`auc\` is measured on the same photographs,
 * \`most\` is the strongest ratio that it allows. Licences of the sets: \`training/README.md\`.
 */
import type { MarkPair } from './mark-pair.ts';

export const LIKELIHOOD_PAIRS: readonly MarkPair[] = [
${best.map(({ line }) => line).join('\n')}
];
`,
);
execFileSync('npx', ['--no-install', 'biome', 'check', '--write', file], { cwd: ROOT, stdio: 'ignore' });
process.stdout.write(`\n${best.length} marks written to src/signs/likelihood-pairs.ts\n`);
