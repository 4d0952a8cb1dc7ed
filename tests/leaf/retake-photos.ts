/** Photographs read twice, and how often their measures agree within the errors stated. */
import { findLeaf } from '../../src/leaf/find-leaf.ts';
import type { MeasureId, Measures } from '../../src/leaf/measures.ts';
import { MEASURES } from '../../src/leaf/measures.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import type { Mask } from '../../src/leaf/types.ts';
import { convertPixelsToLab } from '../../src/photo/convert-pixels-to-lab.ts';
import { scaleToWorkingFrame } from '../../src/photo/scale-to-working-frame.ts';
import type { Spot } from '../../src/photo/types.ts';
import { drawRetake, takeAgain } from '../pictures/retake-photo.ts';
import { decodePhoto, medianOf, type PhotoRow } from './shared-photos.ts';

export interface RetakenPair {
  readonly file: string;
  readonly first: Measures;
  readonly second: Measures;
}

/** A place well inside a mask: of 400 tries, the one whose surroundings are fullest. */
export function placeInside({ width, height, data }: Mask): Spot {
  let best: Spot = { x: 0.5, y: 0.5 };
  let most = -1;
  for (let y = 1; y < 20; y++) {
    for (let x = 1; x < 20; x++) {
      const reach = Math.round(0.06 * width);
      let inside = 0;
      for (let dy = -reach; dy <= reach; dy += 4)
        for (let dx = -reach; dx <= reach; dx += 4) {
          const px = Math.round((x / 20) * width) + dx;
          const py = Math.round((y / 20) * height) + dy;
          if (px >= 0 && py >= 0 && px < width && py < height && data[py * width + px] === 255) inside++;
        }
      const worth = inside - 0.1 * Math.hypot(x - 10, y - 10);
      if (worth > most) {
        most = worth;
        best = { x: x / 20, y: y / 20 };
      }
    }
  }
  return best;
}

/** Reads each photograph and one second shot of it. Pairs in which either shows no leaf are left out. */
export async function retakePhotos(rows: readonly PhotoRow[], random: () => number): Promise<RetakenPair[]> {
  const pairs: RetakenPair[] = [];
  for (const { file } of rows) {
    const pixels = scaleToWorkingFrame(await decodePhoto(file));
    const found = findLeaf(pixels, convertPixelsToLab(pixels));
    if (found === undefined) continue;
    const tap = placeInside({ width: pixels.width, height: pixels.height, data: found.remaining });
    const { reading, mask } = readLeaf(pixels, { role: 'old', taps: { leaf: tap } });
    if (mask === undefined) continue;
    const retake = drawRetake(random, reading.white?.exposure !== undefined);
    const again = await takeAgain(pixels, tap, mask.data, retake);
    const second = readLeaf(again.pixels, { role: 'old', taps: { leaf: again.tap } }).reading;
    if (second.leaf.found) pairs.push({ file, first: reading.measures, second: second.measures });
  }
  return pairs;
}

export interface Coverage {
  readonly id: MeasureId;
  readonly count: number;
  /** Share of pairs that differ by less than the errors of both together. */
  readonly share: number;
  /** What errors must be multiplied by for the share to be 68 of 100. */
  readonly needed: number;
  readonly medianMove: number;
  readonly medianSe: number;
}

/** Pairs of which both show nothing at all (0 spots and 0 spots) tell nothing and are left out. */
export function tellCoverage(pairs: readonly Pick<RetakenPair, 'first' | 'second'>[]): Coverage[] {
  return MEASURES.flatMap(({ id }) => {
    const both = pairs.flatMap(({ first, second }) =>
      first[id] === undefined || second[id] === undefined || (first[id].value === 0 && second[id].value === 0)
        ? []
        : [[first[id], second[id]] as const],
    );
    if (both.length === 0) return [];
    const moves = both.map(([p, q]) => Math.abs(p.value - q.value));
    const errors = both.map(([p, q]) => Math.hypot(p.se, q.se));
    return [
      {
        id,
        count: both.length,
        share: moves.filter((move, k) => move <= errors[k]!).length / both.length,
        needed: moves.map((move, k) => move / errors[k]!).sort((p, q) => p - q)[
          Math.floor(0.683 * both.length)
        ]!,
        medianMove: medianOf(moves),
        medianSe: medianOf(errors),
      },
    ];
  });
}

/**
 * Shares that a sample of `count` may show although the true share lies between `low` and `high`: beyond them lies, on either
 * side, less than `stray` of the binomial distribution.
 */
export function binomialBounds(count: number, low: number, high: number, stray: number): [number, number] {
  const tail = (share: number): number => {
    let chance = (1 - share) ** count;
    let sum = 0;
    for (let k = 0; k <= count; k++) {
      sum += chance;
      if (sum >= stray) return k;
      chance *= ((count - k) / (k + 1)) * (share / (1 - share));
    }
    return count;
  };
  return [tail(low) / count, 1 - tail(1 - high) / count];
}
