/**
 * The same papaya leaf in place and on paper: other ground, other exposure, another moment. Prints how often each measure differs by
 * less than the errors of both together (they claim 68 of 100), on one half of the leaves, to fit errors without a white
 * reference on, and on the other; how far exposure is off from what the ground tells, and whether the outlines agree.
 * The camera stood at two distances, so what does not depend on scale is compared: area over convex hull (solidity), and
 * length over width by second moments; leaves that the frame cuts are left out of that. Writes nothing.
 *
 *     npx tsx training/compare-papaya.ts [--every 1]
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { findCentre } from '../src/leaf/find-centre.ts';
import { measureHull } from '../src/leaf/measure-hull.ts';
import type { Measures } from '../src/leaf/measures.ts';
import { readLeaf } from '../src/leaf/read-leaf.ts';
import type { LeafAnalysis, Mask } from '../src/leaf/types.ts';
import { LINEAR_OF_BYTE } from '../src/photo/convert-srgb-to-linear.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../src/photo/scale-to-working-frame.ts';
import type { Pixels } from '../src/photo/types.ts';
import { listPhotos, PHOTOS } from './list-photos.ts';
import { printCoverage } from './print-coverage.ts';

function describe({ width, height, data }: Mask): { solid: number; aspect: number; isCut: boolean } {
  const centre = findCentre(data, width);
  let n = 0;
  let rim = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < data.length; i++) {
    if (data[i] !== 255) continue;
    n++;
    const x = i % width;
    const y = Math.floor(i / width);
    if (x < 2 || y < 2 || x >= width - 2 || y >= height - 2) rim++;
    xx += (x - centre.x) ** 2;
    xy += (x - centre.x) * (y - centre.y);
    yy += (y - centre.y) ** 2;
  }
  const half = Math.hypot(0.5 * (xx - yy), xy);
  const mid = 0.5 * (xx + yy);
  return {
    solid: n / measureHull(data, width, height).areaPx,
    aspect: Math.sqrt((mid + half) / (mid - half)),
    isCut: rim > 0.2 * Math.sqrt(n),
  };
}

/** Log of red over green of the leaf's mean light, once the light is settled. */
function rednessOf({ data }: Pixels, { reading, mask }: LeafAnalysis): number {
  const sums = [0, 0];
  for (let i = 0; i < (mask?.data.length ?? 0); i++) {
    if (mask?.data[i] !== 255) continue;
    for (const c of [0, 1]) sums[c]! += LINEAR_OF_BYTE[data[i * 4 + c]!]!;
  }
  return Math.log(((reading.white?.gains[0] ?? 1) * sums[0]!) / sums[1]!);
}

const { values } = parseArgs({ options: { every: { type: 'string', default: '1' } } });
const rows = listPhotos().filter(({ set }) => set === 'papaya-spad');
const paper = new Map(
  rows.filter(({ label }) => label.endsWith('white_bg')).map(({ group, file }) => [group, file]),
);
const place = rows.filter(({ label }) => label.endsWith('natural_bg'));
type Pair = { first: Measures; second: Measures };
const halves: [Pair[], Pair[]] = [[], []];
const stops: number[] = [];
const redness: number[] = [];
const solids: number[] = [];
const aspects: number[] = [];
for (const [k, { file, group }] of place.filter((_, i) => i % Number(values.every) === 0).entries()) {
  const other = paper.get(group);
  if (other === undefined) continue;
  const [inPlace, onPaper] = await Promise.all(
    [file, other].map(async (name) => {
      const frame = scaleToWorkingFrame((await decodeInNode(readFileSync(PHOTOS + name))).pixels);
      const analysis = readLeaf(frame, { role: 'old', taps: { leaf: { x: 0.5, y: 0.5 } } });
      return { ...analysis, redness: rednessOf(frame, analysis) };
    }),
  );
  if (inPlace?.mask === undefined || onPaper?.mask === undefined) continue;
  const pair = { first: inPlace.reading.measures, second: onPaper.reading.measures };
  if (inPlace.reading.white?.exposure === undefined && onPaper.reading.white?.exposure !== undefined) {
    halves[k % 2 === 0 ? 0 : 1].push(pair);
    const level = (measures: Measures): number =>
      3 * Math.log2((measures.lightness?.value ?? Number.NaN) + 16);
    stops.push(level(pair.first) - level(pair.second));
    redness.push(inPlace.redness - onPaper.redness);
  }
  const shapes = [describe(inPlace.mask), describe(onPaper.mask)] as const;
  if (shapes[0].isCut || shapes[1].isCut) continue;
  solids.push(Math.abs(shapes[0].solid / shapes[1].solid - 1));
  aspects.push(Math.abs(shapes[0].aspect / shapes[1].aspect - 1));
}
const at = (list: readonly number[], share: number): number =>
  list.toSorted((p, q) => p - q)[Math.floor(share * (list.length - 1))] ?? Number.NaN;
printCoverage(...halves);
const spread = (list: readonly number[]): string =>
  `${at(list, 0.5).toFixed(2)} (median), two in three between ${at(list, 0.16).toFixed(2)} and ${at(list, 0.84).toFixed(2)}`;
console.log(
  `in place brighter than on paper by ${spread(stops)} stops; log of red over green more by ${spread(redness)}`,
);
const percent = (list: readonly number[], share: number): string => `${(100 * at(list, share)).toFixed(1)} %`;
console.log(
  `${solids.length} leaves not cut by the frame: solidity differs by ${percent(solids, 0.5)} (median), ${percent(solids, 0.9)} (90 %); length over width by ${percent(aspects, 0.5)}, ${percent(aspects, 0.9)}`,
);
