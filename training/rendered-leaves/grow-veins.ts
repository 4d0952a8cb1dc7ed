import type { Dice } from './dice.ts';
import type { BladeShape, Place } from './shape-outlines.ts';

/** The raster of a blade: texels a length, and the place of texel (0, 0). */
export interface BladeGrid {
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  readonly u0: number;
  readonly v0: number;
}

/** Rank of the vein at each texel: 0 none, 1 main, 2 side, 3 third. */
export type VeinRanks = Uint8Array;

/** A vein goes at least so far, in texels. */
const LEAST_STEPS = 4;

/**
 * Grows the veins by one rule: a vein leaves the one it springs from at an angle, bends towards its tip as it goes, and ends where it
 * meets another vein or the margin. Side veins spring from main ones, third veins from both. `edge` is the distance to the
 * margin in lengths.
 */
export function growVeins(
  shape: BladeShape,
  grid: BladeGrid,
  inside: Uint8Array,
  edge: Float32Array,
  dice: Dice,
): VeinRanks {
  const { width, height, scale } = grid;
  const ranks = new Uint8Array(width * height);
  const at = (x: number, y: number): number => {
    const ix = Math.round(x);
    const iy = Math.round(y);
    return ix < 0 || iy < 0 || ix >= width || iy >= height ? -1 : iy * width + ix;
  };
  const stamp = (x: number, y: number, half: number, rank: number): void => {
    const r = Math.floor(half);
    for (let dy = -r; dy <= r; dy++) {
      for (let dx = -r; dx <= r; dx++) {
        if (dx * dx + dy * dy > half * half) continue;
        const i = at(x + dx, y + dy);
        if (i >= 0 && ranks[i] === 0) ranks[i] = rank;
      }
    }
  };
  const texels = ({ u, v }: Place): [number, number] => [(u - grid.u0) * scale, (v - grid.v0) * scale];

  /** A grown or given vein as points and headings, for its children. */
  interface Grown {
    readonly points: Float64Array;
    readonly headings: Float64Array;
    readonly count: number;
  }

  const lay = (places: readonly Place[], veinWidth: number): Grown => {
    const points: number[] = [];
    const headings: number[] = [];
    for (let k = 1; k < places.length; k++) {
      const [x0, y0] = texels(places[k - 1]!);
      const [x1, y1] = texels(places[k]!);
      const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0)));
      for (let s = 0; s < steps; s++) {
        const share = (k - 1 + s / steps) / (places.length - 1);
        const x = x0 + ((x1 - x0) * s) / steps;
        const y = y0 + ((y1 - y0) * s) / steps;
        const i = at(x, y);
        if (i < 0 || inside[i] === 0) continue;
        stamp(x, y, Math.max(0.4, (veinWidth * scale * (1 - 0.7 * share)) / 2), 1);
        points.push(x, y);
        headings.push(Math.atan2(y1 - y0, x1 - x0));
      }
    }
    return {
      points: Float64Array.from(points),
      headings: Float64Array.from(headings),
      count: headings.length,
    };
  };

  const grow = (
    x0: number,
    y0: number,
    heading0: number,
    rank: number,
    bend: number,
    waver: number,
    most: number,
    half: number,
    keep: number,
  ): Grown => {
    const points: number[] = [];
    const headings: number[] = [];
    let x = x0;
    let y = y0;
    let heading = heading0;
    const ids: number[] = [];
    let isOut = false;
    for (let step = 0; step < most; step++) {
      heading += bend / scale + waver * (dice.next() - 0.5);
      x += Math.cos(heading);
      y += Math.sin(heading);
      const i = at(x, y);
      if (i < 0 || inside[i] === 0 || edge[i]! < keep) break;
      // It starts within the vein it springs from; once out of that, the next vein ends it.
      if (ranks[i] === 0) isOut = true;
      else if (isOut && step >= LEAST_STEPS) {
        ids.push(i);
        break;
      }
      ids.push(i);
      points.push(x, y);
      headings.push(heading);
    }
    const count = headings.length;
    for (const i of ids) if (ranks[i] === 0) ranks[i] = rank;
    if (half > 0.7) {
      for (let k = 0; k < count; k++)
        stamp(points[2 * k]!, points[2 * k + 1]!, half * (1 - (0.7 * k) / count), rank);
    }
    return { points: Float64Array.from(points), headings: Float64Array.from(headings), count };
  };

  const main = shape.mainVeins.map(({ places, width: w }) => lay(places, w));
  if (shape.venation.parallel) return ranks;
  const { angleDegrees, bend, sideVeins, mesh } = shape.venation;
  const angle = (angleDegrees * Math.PI) / 180;
  const side: Grown[] = [];
  main.forEach((vein, rib) => {
    const every = scale / sideVeins;
    const sideWidth = ((shape.mainVeins[rib]?.width ?? 0.01) * scale * 0.42) / 2;
    for (const sign of [-1, 1]) {
      let k = every * dice.between(0.25, 0.6);
      while (k < vein.count * 0.97) {
        const n = Math.floor(k);
        const share = n / vein.count;
        const start = vein.headings[n]! + sign * angle * (1.08 - 0.25 * share + dice.normal(0.05));
        const turn = -sign * ((bend * Math.PI) / 180) * dice.between(0.8, 1.2);
        side.push(
          grow(
            vein.points[2 * n]!,
            vein.points[2 * n + 1]!,
            start,
            2,
            turn,
            0.015,
            2 * scale,
            sideWidth * (1 - 0.4 * share),
            0.012,
          ),
        );
        k += every * dice.between(0.8, 1.2) * (1 - 0.35 * share);
      }
    }
  });
  const third = (vein: Grown, spacing: number, from: number): void => {
    for (const sign of [-1, 1]) {
      for (let k = spacing * dice.between(0.3, 1); k < vein.count; k += spacing * dice.between(0.7, 1.3)) {
        const n = Math.floor(k);
        const start = vein.headings[n]! + sign * (from + dice.normal(0.22));
        grow(vein.points[2 * n]!, vein.points[2 * n + 1]!, start, 3, 0, 0.34, 0.22 * scale, 0, 0.004);
      }
    }
  };
  const spacing = Math.max(3.5, mesh * scale);
  for (const vein of side) third(vein, spacing, 1.45);
  for (const vein of main) third(vein, spacing * 1.4, 1.2);
  return ranks;
}
