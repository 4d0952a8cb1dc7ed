/** Small leaves, whole plants, soil, beds seen from above, and the things of the garden that several drawings share. */
import {
  along,
  circle,
  cross,
  crosses,
  dots,
  line,
  missing,
  over,
  type Parts,
  type Point,
  pair,
  polyline,
  shape,
  smooth,
  type Tint,
  wash,
} from './strokes.ts';

export interface Blade {
  readonly edge: string;
  /** The middle vein; empty where the leaf is too small to carry one. */
  readonly rib: string;
  /** Too small for more than one thing inside. */
  readonly small: boolean;
  readonly tiny: boolean;
  readonly at: (up: number, across?: number) => Point;
}

/** A small pointed leaf from its base, `degrees` clockwise from up. */
export function blade(from: Point, degrees: number, length: number, width = 0.46): Blade {
  const at = (up: number, across = 0): Point => along(from, degrees, up * length, across * length * width);
  const side = (sign: number): string => `C${pair(at(0.2, sign * 0.72))} ${pair(at(0.72, sign * 0.72))} `;
  const edge = `M${pair(from)}${side(1)}${pair(at(1))}C${pair(at(0.72, -0.72))} ${pair(at(0.2, -0.72))} ${pair(from)}z`;
  return {
    edge,
    small: length < 20,
    tiny: length < 11,
    rib: length < 11 ? '' : polyline([from, at(0.72)]),
    at,
  };
}

export type Dress = (b: Blade) => Parts;
export const sound: Dress = (b) => [shape('leaf', b.edge), line(b.rib)];
export const washed =
  (tint: Tint): Dress =>
  (b) => [shape(tint, b.edge), line(b.rib)];
export const yellowed: Dress = (b) => [
  shape('yellow', b.edge),
  dots(
    b.tiny
      ? [b.at(0.55)]
      : b.small
        ? [b.at(0.3), b.at(0.52, 0.26), b.at(0.52, -0.26), b.at(0.74)]
        : [b.at(0.22), b.at(0.42, 0.26), b.at(0.42, -0.26), b.at(0.64, 0.24), b.at(0.64, -0.24), b.at(0.82)],
  ),
];
export const deadened: Dress = (b) => [
  shape('dead', b.edge),
  crosses(b.small ? [b.at(0.52)] : [b.at(0.36), b.at(0.68)], 2),
];
export const gone: Dress = (b) => missing(b.edge);
/** The leaves that are asked about: washed, their veins drawn, where the others are bare outlines. */
export const marked: Dress = (b) => [
  shape('mark', b.edge),
  line(
    polyline([b.at(0), b.at(0.8)]),
    ...[0.28, 0.52].flatMap((up) =>
      [1, -1].map((side) => polyline([b.at(up), b.at(up + 0.12, side * 0.36)])),
    ),
  ),
];

export interface Growth {
  readonly x: number;
  readonly ground: number;
  readonly height: number;
  /** Pairs of leaves below the top pair. */
  readonly pairs?: number;
  readonly size?: number;
  /** How a leaf is dressed: `level` 0 is the lowest pair, `top` the pair at the tip, `side` -1 or 1. */
  readonly dress?: (level: number, side: number, top: boolean) => Dress;
  /** Degrees from up at which leaves stand; more than 90 hangs. */
  readonly stand?: (level: number, side: number) => number;
  readonly lean?: number;
}

/** A plant from the side: stem, pairs of leaves, two young leaves at the tip. */
export function plant({ x, ground, height, pairs = 2, size = 0.42, dress, stand, lean = 0 }: Growth): Parts {
  const stem = (s: number): Point => [x + lean * s * s, ground - height * s];
  const leaves: Parts[] = [];
  const put = (level: number, side: number, top: boolean): void => {
    const s = top ? 1 : (level + 0.6) / (pairs + 0.75);
    const degrees = side * (stand?.(level, side) ?? (top ? 32 : 74 - level * 8)) + lean * 0.6 * s;
    const length = height * size * (top ? 0.72 : 1 - level * 0.1);
    leaves.push((dress?.(level, side, top) ?? sound)(blade(stem(s), degrees, length)));
  };
  for (let level = 0; level < pairs; level++) for (const side of [-1, 1]) put(level, side, false);
  for (const side of [-1, 1]) put(pairs, side, true);
  return [line(smooth([0, 0.35, 0.7, 1].map(stem))), leaves];
}

/** A plant whose leaves hang from bent stalks. */
export function limpPlant(x: number, ground: number, height: number, dress: Dress = sound): Parts {
  const top: Point = [x + height * 0.3, ground - height * 0.72];
  const bend = smooth([
    [x, ground],
    [x, ground - height * 0.5],
    [x + height * 0.08, ground - height * 0.86],
    [x + height * 0.22, ground - height * 0.9],
    top,
  ]);
  const side = (sign: number, s: number, reach: number): Parts => {
    const start: Point = [x, ground - height * s];
    const end: Point = [x + sign * height * reach, ground - height * (s - 0.02)];
    const arch = smooth([start, [x + sign * height * reach * 0.6, ground - height * (s + 0.09)], end]);
    return [line(arch), dress(blade(end, sign * 168, height * 0.36))];
  };
  return [
    line(bend),
    side(-1, 0.4, 0.28),
    side(1, 0.36, 0.28),
    side(-1, 0.68, 0.2),
    dress(blade(top, 176, height * 0.38)),
  ];
}

/** The soil's surface across the sheet, with a few strokes of earth under it. */
export const soil = (y: number, from = 6, to = 90): Parts => [
  line(`M${from} ${y}H${to}`),
  earth(y, from, to),
];
export function earth(y: number, from: number, to: number): Parts {
  const ticks: string[] = [];
  for (let x = from + 6, i = 0; x < to - 4; x += 13, i++) ticks.push(`M${x} ${y + 4 + (i % 2) * 3}h4`);
  return line(...ticks);
}

/** A sound plant seen from above: one outline of four lobes. */
export function rosette(x: number, y: number, r: number): Parts {
  const notch = (degrees: number): string => pair(along([x, y], degrees, r * 0.62));
  const lobes = [135, 225, 315, 45].map((degrees) => `A${r * 0.46} ${r * 0.46} 0 1 1 ${notch(degrees)}`);
  return shape('leaf', `M${notch(45)}${lobes.join('')}z`);
}
/** A plant in trouble, seen from above: a washed round under a bold cross. */
export const stricken = (x: number, y: number, r: number): Parts => [
  wash('dead', circle(x, y, r)),
  line(cross(x, y, r * 0.72)),
];

export interface BedPlan {
  readonly left?: number;
  readonly top?: number;
  readonly width?: number;
  readonly height?: number;
  readonly columns?: number;
  readonly rows?: number;
  readonly r?: number;
  readonly sick: (column: number, row: number) => boolean;
  readonly well?: (x: number, y: number, r: number, row: number, column: number) => Parts;
  readonly ill?: (x: number, y: number, r: number, row: number, column: number) => Parts;
}
/** A bed seen from above: boards round it, plants in rows, those in trouble crossed. */
export function bed(plan: BedPlan): Parts {
  const { left = 6, top = 14, width = 84, height = 68, columns = 4, rows = 3, r = 8.5, sick } = plan;
  const [well, ill] = [
    plan.well ?? ((x: number, y: number) => rosette(x, y, r)),
    plan.ill ?? ((x: number, y: number) => stricken(x, y, r * 0.86)),
  ];
  const parts: Parts[] = [line(board(left, top, width, height))];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const x = left + (width * (column + 0.5)) / columns;
      const y = top + (height * (row + 0.5)) / rows;
      parts.push((sick(column, row) ? ill : well)(x, y, r, row, column));
    }
  return parts;
}
export const board = (left: number, top: number, width: number, height: number): string =>
  `M${left + 3} ${top}h${width - 6}q3 0 3 3v${height - 6}q0 3-3 3h${6 - width}q-3 0-3-3v${6 - height}q0-3 3-3z`;

/** A flower pot with a rim; `fill` goes between rim and base. */
export function pot(x: number, rimY: number, width: number, height: number, tint: Tint = 'dead'): Parts {
  const half = width / 2;
  return [
    shape(
      tint,
      `M${x - half + 2} ${rimY + 6}l${width * 0.1} ${height - 6}h${width * 0.8 - 4}l${width * 0.1} ${6 - height}`,
    ),
    over(`M${x - half} ${rimY}h${width}v6h${-width}z`, tint),
  ];
}

export function drop(x: number, y: number, size: number): string {
  const p = (dx: number, dy: number): string => pair([x + dx * size, y + dy * size]);
  return `M${p(0, -1)}C${p(0.3, -0.2)} ${p(0.8, 0)} ${p(0.8, 0.5)}A${pair([size * 0.8, size * 0.8])} 0 0 1 ${p(-0.8, 0.5)}C${p(-0.8, 0)} ${p(-0.3, -0.2)} ${p(0, -1)}z`;
}

/** A sun: a round and rays; half of it when it stands on the horizon. */
export function sun(x: number, y: number, r: number, half = false, ray = 6): Parts {
  const rays: string[] = [];
  for (let degrees = half ? -90 : 0; degrees <= (half ? 90 : 330); degrees += 30)
    rays.push(polyline([along([x, y], degrees, r + 4), along([x, y], degrees, r + 4 + ray)]));
  const disc = half ? `M${x - r} ${y}a${r} ${r} 0 0 1 ${2 * r} 0` : circle(x, y, r);
  return [shape('yellow', disc), line(...rays)];
}
export const moon = (x: number, y: number, r: number): Parts =>
  shape('yellow', `M${x} ${y - r}a${r} ${r} 0 1 0 ${r} ${r}a${r * 0.8} ${r * 0.8} 0 0 1 ${-r} ${-r}z`);

/** A magnifying lens: the round, then its handle towards lower right. */
export const lens = (x: number, y: number, r: number): Parts => [
  over(circle(x, y, r)),
  line(polyline([along([x, y], 135, r), along([x, y], 135, r + 6)])),
  over(handle(along([x, y], 135, r + 5), 135, 20, 3)),
];
function handle(from: Point, degrees: number, length: number, half: number): string {
  const c = (up: number, across: number): string => pair(along(from, degrees, up, across));
  return `M${c(0, -half)}L${c(length, -half)}A${half} ${half} 0 0 1 ${c(length, half)}L${c(0, half)}z`;
}
/** A finger with its nail, the tip at `tip`, coming from the direction `degrees`. */
export function finger(tip: Point, degrees: number, length: number, half = 6): Parts {
  const p = (up: number, across: number): string => pair(along(tip, degrees, up, across));
  const skin = `M${p(length, -half)}L${p(half, -half)}A${half} ${half} 0 0 0 ${p(half, half)}L${p(length, half)}`;
  const n = half * 0.55;
  const nail = `M${p(half * 1.9, -n)}L${p(n + 2.5, -n)}A${n} ${n} 0 0 0 ${p(n + 2.5, n)}L${p(half * 1.9, n)}`;
  return [wash('ground', skin), line(skin, nail)];
}
