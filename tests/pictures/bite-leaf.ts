import { seededRandom } from '../../src/leaf/draw-leaf.ts';
import type { Pixels } from '../../src/photo/types.ts';

export interface Bites {
  readonly count: number;
  /** Radius over the root of the leaf's area. */
  readonly radius: number;
  readonly seed: number;
}

/** A leaf with pieces bitten out of its edge, and what share of it they took. */
export interface BittenLeaf {
  readonly pixels: Pixels;
  readonly lostFraction: number;
  /** Bites that were found room for. */
  readonly count: number;
}

/**
 * Bites round pieces out of the edge of a photographed leaf: what the leaf covered there shows the ground next to it, taken
 * from the nearest pixel well outside the leaf, so light and grain stay those of the photograph.
 * @param mask the leaf's tissue, 255 inside, on the same grid
 */
export function biteLeaf(pixels: Pixels, mask: Uint8Array, { count, radius, seed }: Bites): BittenLeaf {
  const { width, height } = pixels;
  const random = seededRandom(seed);
  let area = 0;
  const edge: number[] = [];
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] !== 255) continue;
    area++;
    const x = i % width;
    const y = (i / width) | 0;
    if (x < 2 || y < 2 || x >= width - 2 || y >= height - 2) continue;
    if ([1, -1, width, -width].some((d) => mask[i + d] !== 255)) edge.push(i);
  }
  const r = radius * Math.sqrt(area);
  const centres: [number, number][] = [];
  for (let attempt = 0; attempt < 400 && centres.length < count && edge.length > 0; attempt++) {
    const i = edge[Math.floor(random() * edge.length)]!;
    const x = i % width;
    const y = (i / width) | 0;
    const clear = centres.every(([cx, cy]) => Math.hypot(cx - x, cy - y) > 2.6 * r);
    if (clear && shareInside(mask, width, height, x, y, r) > 0.3) centres.push([x, y]);
  }
  const data = pixels.data.slice();
  let lost = 0;
  for (const [cx, cy] of centres) {
    const ground = groundNear(mask, width, height, cx, cy, r);
    for (let y = Math.max(0, Math.floor(cy - r)); y <= Math.min(height - 1, cy + r); y++) {
      for (let x = Math.max(0, Math.floor(cx - r)); x <= Math.min(width - 1, cx + r); x++) {
        const i = y * width + x;
        if (mask[i] !== 255) {
          // The blend of leaf and ground along the old outline goes too.
          if (Math.hypot(x - cx, y - cy) <= r && touches(mask, width, i, 3))
            paint(data, i, pixels, ground, random);
          continue;
        }
        if (Math.hypot(x - cx, y - cy) > r) continue;
        lost++;
        paint(data, i, pixels, ground, random);
      }
    }
  }
  return { pixels: { width, height, data }, lostFraction: lost / area, count: centres.length };
}

function paint(
  data: Uint8ClampedArray,
  i: number,
  from: Pixels,
  ground: readonly number[],
  random: () => number,
): void {
  const source = ground[Math.floor(random() * ground.length)];
  if (source === undefined) return;
  for (let c = 0; c < 3; c++) data[i * 4 + c] = from.data[source * 4 + c]!;
}

const touches = (mask: Uint8Array, width: number, i: number, reach: number): boolean =>
  [1, -1, width, -width].some((d) => mask[i + reach * d] === 255);

function shareInside(
  mask: Uint8Array,
  width: number,
  height: number,
  cx: number,
  cy: number,
  r: number,
): number {
  let inside = 0;
  let all = 0;
  for (let y = Math.floor(cy - r); y <= cy + r; y += 2) {
    for (let x = Math.floor(cx - r); x <= cx + r; x += 2) {
      if (Math.hypot(x - cx, y - cy) > r) continue;
      all++;
      if (x >= 0 && y >= 0 && x < width && y < height && mask[y * width + x] === 255) inside++;
    }
  }
  return inside / Math.max(1, all);
}

/** Pixels of plain ground in a ring of growing width about the bite, a safe way off the leaf. */
function groundNear(
  mask: Uint8Array,
  width: number,
  height: number,
  cx: number,
  cy: number,
  r: number,
): number[] {
  for (let reach = 1.3 * r; reach < 8 * r; reach *= 1.3) {
    const found: number[] = [];
    for (let y = Math.max(0, Math.floor(cy - reach)); y <= Math.min(height - 1, cy + reach); y++) {
      for (let x = Math.max(0, Math.floor(cx - reach)); x <= Math.min(width - 1, cx + reach); x++) {
        const i = y * width + x;
        if (mask[i] !== 255 && !touches(mask, width, i, 4) && !touches(mask, width, i, 8)) found.push(i);
      }
    }
    if (found.length > 60) return found;
  }
  return [];
}
