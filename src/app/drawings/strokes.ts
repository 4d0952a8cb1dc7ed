/**
 * The few pieces that every drawing is made of: path data on a 96 by 96 sheet, and the looks a path can have.
 * One weight of line throughout; a tint never carries meaning alone (yellow is dotted, dead crossed, missing a gap
 * or a broken outline). Numbers are in sheet units; angles in degrees clockwise from straight up.
 */

export type Point = readonly [x: number, y: number];
/** The washes defined in drawings.css. */
export type Tint = 'leaf' | 'yellow' | 'dead' | 'purple' | 'pale' | 'rust' | 'mark' | 'black' | 'ground';
export interface Stroke {
  /** CSS classes of the path, see drawings.css. */
  readonly look: string;
  readonly d: string;
}
export type Parts = Stroke | readonly Parts[];
/** Says whether a place on the sheet belongs to a region. */
export type Region = (x: number, y: number) => boolean;

const short = (value: number): number => Math.round(value * 10) / 10;
export const pair = ([x, y]: Point): string => `${short(x)} ${short(y)}`;

/** A drawing's strokes in painting order, however deeply its parts are nested. */
export function flatten(parts: Parts): readonly Stroke[] {
  return 'look' in parts ? (parts.d === '' ? [] : [parts]) : parts.flatMap(flatten);
}

const stroke = (look: string, ds: readonly string[]): Stroke => ({ look, d: ds.join('') });
export const line = (...ds: string[]): Stroke => stroke('line', ds);
/** Something that is not there: a broken outline. */
export const missing = (...ds: string[]): Stroke => stroke('missing', ds);
export const ink = (...ds: string[]): Stroke => stroke('ink', ds);
/** A wash without an outline. */
export const wash = (tint: Tint, ...ds: string[]): Stroke => stroke(`wash tint-${tint}`, ds);
/** A wash with an outline. */
export const shape = (tint: Tint, ...ds: string[]): Stroke => stroke(`line tint-${tint}`, ds);
/** A broad soft band along a line, in a wash. */
export const band = (tint: Tint, ...ds: string[]): Stroke => stroke(`band band-${tint}`, ds);
/** A shape that hides what lies beneath it, then its outline and perhaps a wash. */
export const over = (d: string, tint?: Tint): Parts => [
  wash('ground', d),
  tint === undefined ? line(d) : shape(tint, d),
];

/** Round dots as long as the pen is wide; `dots` with a broader pen, `specks` with the common one. */
const points = (at: readonly Point[]): string => at.map((point) => `M${pair(point)}h0`).join('');
export const dots = (at: readonly Point[]): Stroke => stroke('dots', [points(at)]);
export const specks = (at: readonly Point[]): Stroke => stroke('line', [points(at)]);
export const crosses = (at: readonly Point[], arm = 2.2): Stroke =>
  line(...at.map(([x, y]) => cross(x, y, arm)));
export const cross = (x: number, y: number, arm: number): string =>
  `M${pair([x - arm, y - arm])}l${2 * arm} ${2 * arm}m0 ${-2 * arm}l${-2 * arm} ${2 * arm}`;

export const turned = (degrees: number, length: number): Point => [
  Math.sin((degrees * Math.PI) / 180) * length,
  -Math.cos((degrees * Math.PI) / 180) * length,
];
export const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];
/** A place given by its way along (up, before turning) and across an axis that starts at `from`. */
export const along = (from: Point, degrees: number, up: number, across = 0): Point =>
  plus(plus(from, turned(degrees, up)), turned(degrees + 90, across));

export const circle = (x: number, y: number, r: number): string => oval(x, y, r, r);
export function oval(x: number, y: number, rx: number, ry: number, degrees = 0): string {
  const start = along([x, y], degrees, 0, -rx);
  const end = along([x, y], degrees, 0, rx);
  const arc = `A${rx} ${ry} ${degrees} 0 1 `;
  return `M${pair(start)}${arc}${pair(end)}${arc}${pair(start)}z`;
}
export const polyline = (at: readonly Point[]): string => (at.length < 2 ? '' : `M${at.map(pair).join('L')}`);
export const polygon = (at: readonly Point[]): string => `${polyline(at)}z`;

/** A smooth curve through the points (Catmull-Rom written as cubic pieces), open or closed. */
export function smooth(at: readonly Point[], closed = false): string {
  const n = at.length;
  const pick = (i: number): Point => at[closed ? (i + n) % n : Math.min(n - 1, Math.max(0, i))] ?? [0, 0];
  let d = `M${pair(pick(0))}`;
  for (let i = 0; i < (closed ? n : n - 1); i++) {
    const [a, b, c, e] = [pick(i - 1), pick(i), pick(i + 1), pick(i + 2)];
    const out: Point = [b[0] + (c[0] - a[0]) / 6, b[1] + (c[1] - a[1]) / 6];
    const into: Point = [c[0] - (e[0] - b[0]) / 6, c[1] - (e[1] - b[1]) / 6];
    d += `C${pair(out)} ${pair(into)} ${pair(c)}`;
  }
  return closed ? `${d}z` : d;
}

/** A repeatable source of numbers from 0 to 1 (mulberry32, from memory), so that every build draws the same. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Evenly loose points, about `gap` apart, over the part of the sheet that lies in the region. */
export function scatter(region: Region, gap: number, seed = 7): Point[] {
  const next = seeded(seed);
  const found: Point[] = [];
  for (let y = gap / 2, row = 0; y < 96; y += gap * 0.87, row++)
    for (let x = (row % 2) * (gap / 2); x < 96; x += gap) {
      const point: Point = [x + (next() - 0.5) * gap * 0.5, y + (next() - 0.5) * gap * 0.5];
      if (region(...point)) found.push(point);
    }
  return found;
}

/** The pieces of a line that lie inside a region. */
export function clipped(at: readonly Point[], region: Region): string {
  const runs: Point[][] = [[]];
  for (const point of at) {
    if (region(...point)) runs[runs.length - 1]?.push(point);
    else if (runs[runs.length - 1]?.length) runs.push([]);
  }
  return runs
    .filter((run) => run.length > 2)
    .map(polyline)
    .join('');
}

/** Points close together on the straight line between two places, to be clipped. */
export function stepped(from: Point, to: Point, step = 0.8): Point[] {
  const n = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / step);
  return Array.from({ length: n + 1 }, (_, i) => [
    from[0] + ((to[0] - from[0]) * i) / n,
    from[1] + ((to[1] - from[1]) * i) / n,
  ]);
}

/** Slanting hatch over a region. */
export function hatch(region: Region, gap: number, slope = 1): Stroke {
  const lines: string[] = [];
  for (let start = -96; start < 192; start += gap)
    lines.push(clipped(stepped([start, 0], [start + slope * 96, 96]), region));
  return line(...lines);
}

/** Gone black: a near-black patch, hatched so that it stands out from a dusky page too. */
export const blackened = (region: Region, ...ds: string[]): Parts => [
  shape('black', ...ds),
  hatch(region, 6.5),
];

/** The corners of a loose round patch. */
export function lump(x: number, y: number, r: number, seed: number, wobble = 0.3, corners = 9): Point[] {
  const next = seeded(seed);
  return Array.from({ length: corners }, (_, i) =>
    plus([x, y], turned((i * 360) / corners, r * (1 - wobble / 2 + wobble * next()))),
  );
}
export const blob = (x: number, y: number, r: number, seed: number, wobble?: number): string =>
  smooth(lump(x, y, r, seed, wobble), true);
export const within =
  (x: number, y: number, r: number): Region =>
  (px, py) =>
    Math.hypot(px - x, py - y) < r;
export const any =
  (...regions: readonly Region[]): Region =>
  (x, y) =>
    regions.some((region) => region(x, y));
export const both =
  (...regions: readonly Region[]): Region =>
  (x, y) =>
    regions.every((region) => region(x, y));
export const not =
  (region: Region): Region =>
  (x, y) =>
    !region(x, y);

/** A small arrow head at the end of a path. */
export const head = (x: number, y: number, degrees: number, size = 5): string =>
  polyline([along([x, y], degrees + 150, size), [x, y], along([x, y], degrees - 150, size)]);
export const arrow = (from: Point, to: Point): Stroke => {
  const degrees = (Math.atan2(to[0] - from[0], from[1] - to[1]) * 180) / Math.PI;
  return line(polyline([from, to]), head(to[0], to[1], degrees));
};
