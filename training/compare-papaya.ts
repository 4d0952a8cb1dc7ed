/**
 * The same papaya leaf on its natural and on a white ground: do the outlines agree? The camera stood at two distances, so
 * what does not depend on scale is compared: area over convex hull (solidity), and length over width by second moments.
 * Leaves that the frame cuts in either photograph are left out. Prints; writes nothing.
 *
 *     npx tsx training/compare-papaya.ts [--every 1]
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { findCentre } from '../src/leaf/find-centre.ts';
import { findLeaf } from '../src/leaf/find-leaf.ts';
import { measureHull } from '../src/leaf/measure-hull.ts';
import { convertPixelsToLab } from '../src/photo/convert-pixels-to-lab.ts';
import { decodeInNode } from '../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../src/photo/scale-to-working-frame.ts';
import { listPhotos, PHOTOS } from './list-photos.ts';

async function describe(file: string): Promise<{ solid: number; aspect: number; onRim: number } | undefined> {
  const frame = scaleToWorkingFrame((await decodeInNode(readFileSync(PHOTOS + file))).pixels);
  const { width, height } = frame;
  const leaf = findLeaf(frame, convertPixelsToLab(frame), { leaf: { x: 0.5, y: 0.5 } });
  if (leaf === undefined) return undefined;
  const { outline } = leaf;
  const centre = findCentre(outline, width);
  let n = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < outline.length; i++) {
    if (outline[i] !== 255) continue;
    n++;
    const dx = (i % width) - centre.x;
    const dy = Math.floor(i / width) - centre.y;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  const half = Math.hypot(0.5 * (xx - yy), xy);
  const mid = 0.5 * (xx + yy);
  const solid = n / measureHull(outline, width, height).areaPx;
  return { solid, aspect: Math.sqrt((mid + half) / (mid - half)), onRim: leaf.score.onRim };
}

const { values } = parseArgs({ options: { every: { type: 'string', default: '1' } } });
const natural = listPhotos().filter(({ label }) => label.endsWith('natural_bg'));
const solids: number[] = [];
const aspects: number[] = [];
let cut = 0;
const white = new Map(
  listPhotos()
    .filter(({ label }) => label.endsWith('white_bg'))
    .map(({ group, file }) => [group, file]),
);
for (const { file, group } of natural.filter((_, i) => i % Number(values.every) === 0)) {
  const first = await describe(file);
  const other = white.get(group);
  const second = other === undefined ? undefined : await describe(other);
  if (first === undefined || second === undefined) continue;
  if (first.onRim > 0.05 || second.onRim > 0.05) {
    cut++;
    continue;
  }
  solids.push(Math.abs(first.solid / second.solid - 1));
  aspects.push(Math.abs(first.aspect / second.aspect - 1));
}
const at = (list: number[], share: number): string =>
  `${(100 * list.sort((p, q) => p - q)[Math.floor(share * (list.length - 1))]!).toFixed(1)} %`;
process.stdout.write(
  `${solids.length} leaves seen twice, ${cut} cut by the frame left out\nsolidity differs by ${at(solids, 0.5)} (median), ${at(solids, 0.9)} (90 %)\nlength over width by ${at(aspects, 0.5)} (median), ${at(aspects, 0.9)} (90 %)\n`,
);
