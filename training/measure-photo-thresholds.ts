/**
 * How dark, burnt out or blurred a photograph may be before its leaf can no longer be measured. Photographs of leaves are
 * spoilt by steps (linear light multiplied, Gaussian blur), and each is read again. A photograph counts as spoilt when more than
 * a third of the measures that it should bear on (a third may by what a standard error claims) have moved by more than
 * their stated error, or the outline keeps less than `SAME` of its overlap. Printed are the figures that the thresholds of
 * `read-leaf.ts` and `judge-frame.ts` look at, the share spoilt, and for each figure the place that parts spoilt from sound best.
 *
 *     npx tsx training/measure-photo-thresholds.ts [--most 20]
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import sharp from 'sharp';
import { seededRandom } from '../src/leaf/draw-leaf.ts';
import { judgeFrame } from '../src/leaf/judge-frame.ts';
import { judgeExposure } from '../src/leaf/judge-photo.ts';
import type { MeasureId } from '../src/leaf/measures.ts';
import { readLeaf } from '../src/leaf/read-leaf.ts';
import type { LeafAnalysis } from '../src/leaf/types.ts';
import { convertPixelsToLab } from '../src/photo/convert-pixels-to-lab.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../src/photo/scale-to-working-frame.ts';
import type { Pixels } from '../src/photo/types.ts';
import { overlapOf } from '../tests/leaf/shared-photos.ts';
import { relight } from '../tests/pictures/retake-photo.ts';
import { listPhotos, PHOTOS } from './list-photos.ts';

/** Overlap of outlines under which they are not the same leaf's any more. */
const SAME = 0.85;
/** What light bears on, and what focus does. */
const COLOUR = [
  'hue',
  'chroma',
  'chlorotic-fraction',
  'dark-green-index',
  'white-fraction',
  'mottle',
] as const;
const DETAIL = [
  'vein-contrast',
  'mottle',
  'spot-fraction',
  'surface-relief',
  'evenness',
  'white-fraction',
] as const;

/** Light multiplied, with the grain that a phone adds when there is little of it (2 levels of 255; common practice, no source). */
function dim(pixels: Pixels, gain: number): Pixels {
  const random = seededRandom(1);
  const data = relight(pixels, [gain, gain, gain]).data;
  return { ...pixels, data: data.map((v, i) => (i % 4 === 3 ? 255 : v + 7 * (random() - 0.5))) };
}

async function blur(pixels: Pixels, sigma: number): Promise<Pixels> {
  const { width, height, data } = pixels;
  const raw = { width, height, channels: 4 as const };
  const soft = await sharp(Buffer.from(data.buffer), { raw }).blur(sigma).raw().toBuffer();
  return { width, height, data: new Uint8ClampedArray(soft) };
}

/** Share of the measures that moved by more than their stated error, and whether the outline is another. */
function compare(first: LeafAnalysis, second: LeafAnalysis, ids: readonly MeasureId[]) {
  const overlap =
    first.mask === undefined || second.mask === undefined ? 0 : overlapOf(second.mask.data, first.mask.data);
  const taken = ids.filter((id) => first.reading.measures[id] !== undefined);
  const moved = taken.filter((id) => {
    const { value, se } = first.reading.measures[id]!;
    const again = second.reading.measures[id];
    return again === undefined || Math.abs(again.value - value) > se;
  });
  const share = moved.length / Math.max(1, taken.length);
  return { overlap, share, isSpoilt: overlap < SAME || share > 1 / 3 };
}

interface Shot {
  readonly kind: 'dark' | 'bright' | 'blur';
  readonly name: string;
  readonly figures: { readonly [name: string]: number };
  readonly overlap: number;
  readonly share: number;
  readonly isSpoilt: boolean;
  readonly inTrouble: boolean;
}

const { values } = parseArgs({ options: { most: { type: 'string', default: '20' } } });
const field = listPhotos().filter((row) =>
  ['bean-uganda', 'blackgram-india', 'chilli-india', 'papaya-spad'].includes(row.set),
);
const most = Number(values.most);
const sample = Array.from({ length: most }, (_, k) => field[Math.floor(((k + 0.5) * field.length) / most)]!);
type Step = [Shot['kind'], string, (pixels: Pixels) => Pixels | Promise<Pixels>];
const steps: Step[] = [
  ...[0.1, 0.03, 0.01, 0.005].map((gain): Step => ['dark', `light × ${gain}`, (pixels) => dim(pixels, gain)]),
  ...[1.5, 2.2, 3.3, 5, 10].map(
    (gain): Step => ['bright', `light × ${gain}`, (pixels) => relight(pixels, [gain, gain, gain])],
  ),
  ...[1, 1.6, 2.4, 3.6].map((sigma): Step => ['blur', `blur ${sigma} px`, (pixels) => blur(pixels, sigma)]),
];
const shots: Shot[] = [];
for (const { file } of sample) {
  const pixels = scaleToWorkingFrame((await decodeInNode(readFileSync(PHOTOS + file))).pixels);
  const taps = { leaf: { x: 0.5, y: 0.5 } };
  const first = readLeaf(pixels, { role: 'old', taps });
  if (first.mask === undefined) continue;
  for (const [kind, name, spoil] of steps) {
    const spoilt = await spoil(pixels);
    const second = readLeaf(spoilt, { role: 'old', taps });
    const { medianL, burnt } = judgeExposure(spoilt, convertPixelsToLab(spoilt), first.mask.data);
    const finder = judgeFrame(spoilt);
    shots.push({
      kind,
      name,
      ...compare(first, second, kind === 'blur' ? DETAIL : COLOUR),
      figures: {
        'median L*': medianL,
        burnt,
        sharpness: second.reading.measures.sharpness?.value ?? 0,
        'finder L*': finder.lightness,
        'finder burnt': finder.burnt,
        'finder sharpness': finder.sharpness,
      },
      inTrouble: second.reading.trouble.length > 0,
    });
  }
}

const middleOf = (list: readonly number[]): number => list.toSorted((p, q) => p - q)[list.length >> 1] ?? 0;
const shareOf = (list: readonly boolean[]): string =>
  (list.filter(Boolean).length / Math.max(1, list.length)).toFixed(2);
console.log(`${sample.length} photographs; medians of figures, of overlap and of measures moved; shares`);
for (const [, name] of steps) {
  const list = shots.filter((shot) => shot.name === name);
  const figures = Object.keys(list[0]?.figures ?? {}).map(
    (figure) => `${figure} ${middleOf(list.map((shot) => shot.figures[figure]!)).toFixed(2)}`,
  );
  console.log(
    [
      name,
      ...figures,
      `overlap ${middleOf(list.map(({ overlap }) => overlap)).toFixed(2)}`,
      `moved ${middleOf(list.map(({ share }) => share)).toFixed(2)}`,
      `spoilt ${shareOf(list.map(({ isSpoilt }) => isSpoilt))}`,
      `in trouble ${shareOf(list.map(({ inTrouble }) => inTrouble))}`,
    ].join(' | '),
  );
}
/** The place where fewest are judged wrongly; of sound and spoilt, each kind counts half. */
for (const [kind, figure, spoiltAbove] of [
  ['dark', 'median L*', false],
  ['dark', 'finder L*', false],
  ['bright', 'burnt', true],
  ['bright', 'finder burnt', true],
  ['blur', 'sharpness', false],
  ['blur', 'finder sharpness', false],
] as const) {
  const list = shots.filter((shot) => shot.kind === kind);
  const sound = list.filter(({ isSpoilt }) => !isSpoilt);
  const bad = list.filter(({ isSpoilt }) => isSpoilt);
  const rightAt = (bound: number): [number, number] => [
    sound.filter(({ figures }) => figures[figure]! > bound !== spoiltAbove).length /
      Math.max(1, sound.length),
    bad.filter(({ figures }) => figures[figure]! > bound === spoiltAbove).length / Math.max(1, bad.length),
  ];
  const bounds = list.map(({ figures }) => figures[figure]!);
  const best = bounds.reduce((held, bound) => {
    const [p, q] = rightAt(bound);
    const [heldP, heldQ] = rightAt(held);
    return p + q > heldP + heldQ ? bound : held;
  }, bounds[0] ?? 0);
  const [kept, caught] = rightAt(best);
  console.log(
    `${kind}: ${figure} ${spoiltAbove ? 'above' : 'up to'} ${best.toFixed(3)} catches ${caught.toFixed(2)} of ${bad.length} spoilt, lets ${kept.toFixed(2)} of ${sound.length} sound ones pass`,
  );
  const sorted = list.toSorted((p, q) => p.figures[figure]! - q.figures[figure]!);
  const tenth = Math.ceil(sorted.length / 10);
  console.log(
    Array.from({ length: 10 }, (_, k) => sorted.slice(k * tenth, (k + 1) * tenth))
      .filter((part) => part.length > 0)
      .map(
        (part) => `${part[0]!.figures[figure]!.toFixed(2)}: ${shareOf(part.map(({ isSpoilt }) => isSpoilt))}`,
      )
      .join('  '),
  );
}
