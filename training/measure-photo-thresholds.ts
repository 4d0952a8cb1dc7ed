/**
 * How dark, burnt out or blurred a photograph may be before its leaf can no longer be measured. Photographs of leaves are
 * spoilt by steps (linear light multiplied, Gaussian blur), and each is read again: printed are the figures that the
 * thresholds of `read-leaf.ts` and `judge-frame.ts` look at, and how far the outline and the hue have moved from what the
 * photograph gave as it was.
 *
 *     npx tsx training/measure-photo-thresholds.ts [--most 20]
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import sharp from 'sharp';
import { judgeFrame } from '../src/leaf/judge-frame.ts';
import { judgeExposure } from '../src/leaf/judge-photo.ts';
import { readLeaf } from '../src/leaf/read-leaf.ts';
import type { LeafAnalysis } from '../src/leaf/types.ts';
import { convertPixelsToLab } from '../src/photo/convert-pixels-to-lab.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import type { Pixels } from '../src/photo/types.ts';
import { listPhotos, PHOTOS } from './list-photos.ts';

const toLinear = (u: number): number => (u <= 0.04045 ? u / 12.92 : ((u + 0.055) / 1.055) ** 2.4);
const toCoded = (v: number): number => (v <= 0.0031308 ? v * 12.92 : 1.055 * v ** (1 / 2.4) - 0.055);

/** Light multiplied, with the grain that a phone adds when there is little of it (2 levels of 255; common practice, no source). */
function relight(pixels: Pixels, gain: number): Pixels {
  let state = 1;
  const grain = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return ((state >>> 8) / 2 ** 24 - 0.5) * 7;
  };
  const data = pixels.data.map((v, i) =>
    i % 4 === 3 ? 255 : 255 * toCoded(Math.min(1, toLinear(v / 255) * gain)) + (gain < 1 ? grain() : 0),
  );
  return { ...pixels, data };
}

async function blur(pixels: Pixels, sigma: number): Promise<Pixels> {
  const { width, height, data } = pixels;
  const raw = { width, height, channels: 4 as const };
  const soft = await sharp(Buffer.from(data.buffer), { raw }).blur(sigma).raw().toBuffer();
  return { width, height, data: new Uint8ClampedArray(soft) };
}

function overlap(first: LeafAnalysis, second: LeafAnalysis): number {
  if (first.mask === undefined || second.mask === undefined) return 0;
  let both = 0;
  let either = 0;
  for (let i = 0; i < first.mask.data.length; i++) {
    const a = first.mask.data[i] === 255;
    const b = second.mask.data[i] === 255;
    if (a && b) both++;
    if (a || b) either++;
  }
  return both / either;
}

const { values } = parseArgs({ options: { most: { type: 'string', default: '20' } } });
const field = listPhotos().filter((row) =>
  ['bean-uganda', 'blackgram-india', 'chilli-india', 'papaya-spad'].includes(row.set),
);
const most = Number(values.most);
const sample = Array.from({ length: most }, (_, k) => field[Math.floor(((k + 0.5) * field.length) / most)]!);
const steps: [string, (pixels: Pixels) => Pixels | Promise<Pixels>][] = [
  ['as taken', (pixels) => pixels],
  ...[0.25, 0.1, 0.04, 0.015, 0.006].map((gain): [string, (p: Pixels) => Pixels] => [
    `light × ${gain}`,
    (pixels) => relight(pixels, gain),
  ]),
  ...[2, 4, 8, 16].map((gain): [string, (p: Pixels) => Pixels] => [
    `light × ${gain}`,
    (pixels) => relight(pixels, gain),
  ]),
  ...[1, 1.5, 2, 3, 4, 6].map((sigma): [string, (p: Pixels) => Promise<Pixels>] => [
    `blur ${sigma} px`,
    (pixels) => blur(pixels, sigma),
  ]),
];
const rows = new Map<string, number[][]>();
for (const { file } of sample) {
  const { pixels } = await decodeInNode(readFileSync(PHOTOS + file));
  const taps = { leaf: { x: 0.5, y: 0.5 } };
  const first = readLeaf(pixels, { role: 'old', taps });
  for (const [name, spoil] of steps) {
    const spoilt = await spoil(pixels);
    const analysis = readLeaf(spoilt, { role: 'old', taps });
    const exposure = judgeExposure(spoilt, convertPixelsToLab(spoilt), first.mask?.data);
    const hue = analysis.reading.measures.hue?.value;
    const hueBefore = first.reading.measures.hue?.value;
    const row = [
      exposure.medianL,
      exposure.burnt,
      analysis.reading.measures.sharpness?.value ?? Number.NaN,
      judgeFrame(spoilt).sharpness,
      overlap(first, analysis),
      hue === undefined || hueBefore === undefined ? Number.NaN : Math.abs(hue - hueBefore),
      analysis.reading.trouble.length > 0 ? 1 : 0,
    ];
    rows.set(name, [...(rows.get(name) ?? []), row]);
  }
}
const heads = ['median L*', 'burnt', 'sharpness', 'in viewfinder', 'overlap', 'hue off', 'in trouble'];
process.stdout.write(
  `${sample.length} photographs; 10 %, 50 % and 90 % of each, share for "in trouble"\n${['', ...heads].join(' | ')}\n`,
);
for (const [name, list] of rows) {
  const cells = heads.map((_, k) => {
    const sorted = list
      .map((row) => row[k]!)
      .filter((v) => !Number.isNaN(v))
      .sort((p, q) => p - q);
    if (k === heads.length - 1) return (sorted.reduce((s, v) => s + v, 0) / sorted.length).toFixed(2);
    const at = (share: number): string =>
      (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(2);
    return `${at(0.1)} ${at(0.5)} ${at(0.9)}`;
  });
  process.stdout.write(`${[name, ...cells].join(' | ')}\n`);
}
