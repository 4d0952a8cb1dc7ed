import { findCentre } from './find-centre.ts';
import { findLongAxis } from './find-long-axis.ts';
import type { LeafSample } from './sample-leaf.ts';

/** A leaf laid over itself across its best axis. */
export interface MirroredLeaf {
  /** Mirror image on the sample's grid, 255 = leaf. */
  readonly mask: Uint8Array;
  /** Where a pixel's mirror image lies; -1 beyond the grid. */
  readonly imageOf: (i: number) => number;
}

/** An axis through the plane and how much wider the half on its left is than the other. */
interface Axis {
  readonly angle: number;
  readonly shift: number;
  readonly stretch: number;
}

/** Points of the leaf that an axis is tried on: enough for a share to within 1 %. */
const TRIED_POINTS = 3000;

/**
 * Mirror image of a leaf over the axis that it matches best, the narrower half widened to fit the other, since halves of a
 * leaf are alike in kind but seldom in width. Searched coarsely over all angles, then ever more finely about the best.
 */
export function mirrorLeaf(sample: LeafSample): MirroredLeaf {
  const { width, outline, sizePx } = sample;
  const { x: cx, y: cy } = findCentre(outline, width);
  const inside: number[] = [];
  for (let i = 0; i < outline.length; i++) if (outline[i] === 255) inside.push(i);
  const stride = Math.max(1, Math.floor(inside.length / TRIED_POINTS));
  const points = inside.filter((_, k) => k % stride === 0);
  const matchOf = (axis: Axis): number => countMirrored(sample, points, cx, cy, axis);
  let best: Axis = { angle: 0, shift: 0, stretch: 1 };
  let bestMatch = -1;
  const attempt = (axis: Axis): void => {
    const match = matchOf(axis);
    if (match <= bestMatch) return;
    bestMatch = match;
    best = axis;
  };
  const long = findLongAxis(outline, width);
  for (let k = 0; k < 60; k++) {
    const turned = Math.abs(
      (((((k * Math.PI) / 60 - long.angle) % Math.PI) + 1.5 * Math.PI) % Math.PI) - 0.5 * Math.PI,
    );
    if (long.elongation > CLEARLY_LONG && turned > MOST_TURNED) continue;
    for (const off of [-0.06, -0.03, 0, 0.03, 0.06]) {
      attempt({ angle: (k * Math.PI) / 60, shift: off * sizePx, stretch: 1 });
    }
  }
  for (let step = 1; step > 0.1; step *= 0.6) {
    const { angle, shift, stretch } = best;
    for (const turn of [-1, 0, 1]) {
      for (const off of [-1, 0, 1]) {
        for (const wide of [-1, 0, 1]) {
          attempt({
            angle: angle + turn * step * 0.03,
            shift: shift + off * step * 0.02 * sizePx,
            stretch: Math.max(0.8, Math.min(1.25, stretch + wide * step * 0.06)),
          });
        }
      }
    }
  }
  const imageOf = placer(sample, cx, cy, best);
  const mask = new Uint8Array(outline.length);
  for (let i = 0; i < mask.length; i++) {
    const from = imageOf(i);
    if (from >= 0 && outline[from] === 255) mask[i] = 255;
  }
  return { mask, imageOf };
}

/** A leaf this much longer than wide is alike on both sides of its length, whatever a bite may make of it. */
const CLEARLY_LONG = 1.35;
const MOST_TURNED = 0.45;

/** How many of the points fall on the leaf again when mirrored. */
function countMirrored(
  sample: LeafSample,
  points: readonly number[],
  cx: number,
  cy: number,
  axis: Axis,
): number {
  const place = placer(sample, cx, cy, axis);
  let match = 0;
  for (const i of points) {
    const to = place(i);
    if (to >= 0 && sample.outline[to] === 255) match++;
  }
  return match;
}

/** Where a pixel's mirror image lies; -1 beyond the grid. */
function placer(
  { width, height }: LeafSample,
  cx: number,
  cy: number,
  { angle, shift, stretch }: Axis,
): (i: number) => number {
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  return (i) => {
    const x = i % width;
    const y = (i / width) | 0;
    const off = (x - cx) * nx + (y - cy) * ny - shift;
    const move = off + off * (off > 0 ? stretch : 1 / stretch);
    const sx = Math.round(x - move * nx);
    const sy = Math.round(y - move * ny);
    return sx >= 0 && sy >= 0 && sx < width && sy < height ? sy * width + sx : -1;
  };
}
