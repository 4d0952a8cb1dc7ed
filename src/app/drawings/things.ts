/** Weather, instruments, heaps and the count of days: what drawings of circumstances, checks and spread share. */
import { blade, sound } from './plant.ts';
import {
  along,
  circle,
  ink,
  line,
  over,
  type Parts,
  type Point,
  pair,
  polygon,
  polyline,
  shape,
  smooth,
  type Tint,
  wash,
} from './strokes.ts';

/** A star of frost: three lines through, a pair of barbs on each arm. */
export const frostStar = (x: number, y: number, r: number): string =>
  [0, 60, 120]
    .map((degrees) => polyline([along([x, y], degrees, r), along([x, y], degrees + 180, r)]))
    .join('') +
  [0, 60, 120, 180, 240, 300]
    .map((degrees) => {
      const knot = along([x, y], degrees, r * 0.62);
      return polyline([along(knot, degrees + 50, r * 0.36), knot, along(knot, degrees - 50, r * 0.36)]);
    })
    .join('');

/** A cloud around its middle, `w` wide and half as high. */
export function cloud(x: number, y: number, w: number): string {
  const c = (dx: number, dy: number): string => pair([x + dx * w, y + dy * w]);
  return `M${c(-0.36, 0.2)}C${c(-0.56, 0.2)} ${c(-0.56, -0.08)} ${c(-0.34, -0.08)}C${c(-0.34, -0.34)} ${c(0.02, -0.38)} ${c(0.08, -0.18)}C${c(0.2, -0.32)} ${c(0.42, -0.2)} ${c(0.36, -0.02)}C${c(0.56, -0.02)} ${c(0.54, 0.2)} ${c(0.36, 0.2)}z`;
}

/** A soil thermometer with a pointed foot, its column filled up to `level`. */
export const thermometer = (x: number, top: number, bottom: number, level: number): Parts => [
  over(`M${x - 5} ${top + 5}a5 5 0 0 1 10 0V${bottom}L${x} ${bottom + 8}L${x - 5} ${bottom}z`),
  ink(`M${x - 1.5} ${level}h3V${bottom}h-3z`),
  line(...Array.from({ length: 4 }, (_, i) => `M${x + 5} ${top + 8 + i * 7}h5`)),
];

/** A weather thermometer with a bulb, `share` of its column filled (0 to 1). */
export function bulbThermometer(x: number, top: number, bottom: number, share: number): Parts {
  const from = bottom - 14;
  const level = from - (from - top - 8) * share;
  return [
    over(`M${x - 6} ${from}V${top + 6}a6 6 0 0 1 12 0V${from}a9.5 9.5 0 1 1 -12 0z`),
    ink(circle(x, bottom - 6.5, 5.5), `M${x - 2} ${level}h4V${bottom - 8}h-4z`),
    line(...Array.from({ length: 5 }, (_, i) => `M${x + 6} ${top + 9 + (i * (from - top - 12)) / 4}h5`)),
  ];
}

/** A young plant with its two seed leaves. */
export const seedling = (x: number, ground: number, height = 18, size = 11): Parts => [
  line(`M${x} ${ground}q-1 ${-height / 2} 0 ${-height}`),
  sound(blade([x, ground - height], -55, size, 0.6)),
  sound(blade([x, ground - height], 55, size, 0.6)),
];

/** A bit of chipped wood, 6 by 14 at its full size. */
export function chip(x: number, y: number, degrees: number, size = 1): Parts {
  const corner = (up: number, across: number): Point => along([x, y], degrees, up * size, across * size);
  return over(polygon([corner(3, -7), corner(3, 7), corner(-3, 5), corner(-3, -7)]), 'yellow');
}

/** A heap from the side, its top at `top`. */
export function heapEdge(top: number, left = 6, right = 90, base = 88): string {
  const w = right - left;
  const at = (s: number, up: number): string => pair([left + w * s, base - (base - top) * up]);
  return `M${at(0, 0)}C${at(0.1, 0.5)} ${at(0.3, 1)} ${at(0.5, 1)}C${at(0.7, 1)} ${at(0.9, 0.5)} ${at(1, 0)}z`;
}
export const heap = (top: number, left?: number, right?: number, base?: number): Parts =>
  over(heapEdge(top, left, right, base), 'dead');

/** Wisps of steam rising from each foot. */
export const steam = (feet: readonly Point[], height = 20): Parts =>
  line(
    ...feet.map(([x, y]) => {
      const q = height / 4;
      return `M${pair([x, y])}q${-q} ${-q} 0 ${-2 * q}t0 ${-2 * q}`;
    }),
  );

/** A tree's leaf with round lobes. */
export function lobedLeaf(from: Point, degrees: number, length: number, tint: Tint = 'dead'): Parts {
  const half: readonly Point[] = [
    [0.1, 0.06],
    [0.22, 0.24],
    [0.34, 0.1],
    [0.48, 0.36],
    [0.6, 0.14],
    [0.74, 0.3],
    [0.84, 0.12],
  ];
  const at = ([up, across]: Point, side: number): Point =>
    along(from, degrees, up * length, side * across * length);
  const edge = smooth(
    [...half.map((p) => at(p, 1)), at([1, 0], 1), ...[...half].reverse().map((p) => at(p, -1))],
    true,
  );
  return [over(edge, tint), line(polyline([at([-0.14, 0], 1), at([0.75, 0], 1)]))];
}

/** The year as a dial of twelve months, washed from one share of it to another; clockwise from the top. */
export function yearDial(x: number, y: number, r: number, from: number, to: number): Parts {
  const rim = Array.from({ length: 25 }, (_, i): Point => {
    const degrees = 360 * (from + ((to - from) * i) / 24);
    return along([x, y], degrees, r);
  });
  const whole = to - from >= 1;
  return [
    whole ? wash('mark', circle(x, y, r)) : shape('mark', polygon([[x, y], ...rim])),
    line(
      circle(x, y, r),
      ...Array.from({ length: 12 }, (_, i) =>
        polyline([along([x, y], i * 30, r - (i % 3 ? 3 : 5)), along([x, y], i * 30, r)]),
      ),
    ),
  ];
}

/** Three weeks as three rows of seven boxes; `mark` fills those that count. */
export function threeWeeks(
  top: number,
  size: number,
  mark: (x: number, y: number, day: number) => Parts,
): Parts {
  const left = 48 - size * 3.5;
  const grid = [
    ...Array.from({ length: 4 }, (_, row) => `M${left} ${top + row * size}h${size * 7}`),
    ...Array.from({ length: 8 }, (_, column) => `M${left + column * size} ${top}v${size * 3}`),
  ];
  return [
    Array.from({ length: 21 }, (_, day) =>
      mark(left + ((day % 7) + 0.5) * size, top + (Math.floor(day / 7) + 0.5) * size, day),
    ),
    line(...grid),
  ];
}
/** A box of the three weeks, full. */
export const fullDay = (x: number, y: number, size: number): Parts =>
  ink(`M${x - size / 2 + 2.2} ${y - size / 2 + 2.2}h${size - 4.4}v${size - 4.4}h${4.4 - size}z`);

/** A question mark around its middle. */
export const asking = (x: number, y: number, size: number): Parts => {
  const c = (dx: number, dy: number): string => pair([x + dx * size, y + dy * size]);
  return line(
    `M${c(-0.4, -0.5)}C${c(-0.4, -1.1)} ${c(0.5, -1.1)} ${c(0.5, -0.45)}C${c(0.5, 0)} ${c(0, 0)} ${c(0, 0.45)}M${c(0, 0.95)}v0.1`,
  );
};
