/** One large leaf that fills the sheet, the stage for most marks. */
import {
  any,
  circle,
  clipped,
  line,
  type Parts,
  type Point,
  polygon,
  type Region,
  shape,
  smooth,
  type Tint,
  within,
} from './strokes.ts';

const BASE_Y = 80;
const LENGTH = 73;
const HALF_WIDTH = 34;

const axis = (t: number): number => 47 + 5 * Math.sin(t * 3);
const halfWidth = (t: number): number =>
  HALF_WIDTH * Math.sin(Math.PI * Math.min(1, Math.max(0, t)) ** 0.78) ** 0.82;

/** From leaf terms (u: -1 left edge to 1 right edge, t: 0 base to 1 tip) to the sheet. */
export const place = (u: number, t: number): Point => [axis(t) + u * halfWidth(t), BASE_Y - LENGTH * t];
/** From the sheet to leaf terms; u is beyond 1 outside the leaf. */
export function terms(x: number, y: number): { u: number; t: number } {
  const t = (BASE_Y - y) / LENGTH;
  const half = t <= 0 || t >= 1 ? 0.001 : halfWidth(t);
  return { u: (x - axis(t)) / half, t };
}
/** A region in leaf terms, always within the leaf by `margin` (as a share of its half width). */
export const onLeaf =
  (where: (u: number, t: number) => boolean = () => true, margin = 0.1): Region =>
  (x, y) => {
    const { u, t } = terms(x, y);
    return t > 0.03 && t < 0.965 && Math.abs(u) < 1 - margin && where(u, t);
  };

const ts = Array.from({ length: 15 }, (_, i) => i / 14);
const rim = (u: number, from = 0, to = 1): Point[] => ts.map((t) => place(u, from + (to - from) * t));
export const OUTLINE_POINTS: readonly Point[] = [...rim(-1), ...rim(1).reverse().slice(1, -1)];
export const OUTLINE = smooth(OUTLINE_POINTS, true);
/** The leaf's shape drawn in from its edge: `u` of its width, between two heights. */
export const inner = (u: number, from: number, to: number): string =>
  smooth([...rim(-u, from, to), ...rim(u, from, to).reverse()], true);

const fine = Array.from({ length: 81 }, (_, i) => i / 80);
const midrib: readonly Point[] = fine.map((t) => place(0, t * 0.95));
const sideVein = (side: number, from: number): Point[] =>
  fine.map((s) => place(side * 0.84 * s, from + 0.2 * s ** 1.3));
export const VEIN_STARTS = [0.1, 0.27, 0.44, 0.61] as const;
export const VEINS: readonly (readonly Point[])[] = [
  midrib,
  ...VEIN_STARTS.flatMap((from) => [sideVein(-1, from), sideVein(1, from)]),
];
export const STALK = smooth([place(0, 0), [45, 86], [42, 92]]);
const coarse = (vein: readonly Point[]): Point[] => vein.filter((_, i) => i % 10 === 0);
export const VEIN_PATHS = VEINS.map((vein) => smooth(coarse(vein))).join('');

const VEIN_POINTS = VEINS.flatMap((vein) => vein.filter((_, i) => i % 3 === 0));
/** Within `reach` of a vein. */
export const nearVein =
  (reach: number): Region =>
  (x, y) =>
    VEIN_POINTS.some(([vx, vy]) => Math.hypot(vx - x, vy - y) < reach);

export const veins = (where?: Region): Parts =>
  line(...(where ? VEINS.map((vein) => clipped(vein, where)) : [VEIN_PATHS]));
/** The whole leaf: wash, outline, stalk and veins. */
export const leaf = (tint: Tint = 'leaf'): Parts => [shape(tint, OUTLINE), line(STALK), veins()];
/** The leaf without its veins. */
export const bareLeaf = (tint: Tint = 'leaf'): Parts => [shape(tint, OUTLINE), line(STALK)];

interface Hole {
  readonly d: string;
  readonly region: Region;
}
export const roundHole = (x: number, y: number, r: number): Hole => ({
  d: circle(x, y, r),
  region: within(x, y, r + 2),
});
/** A hole with the given corners, kept sharp. */
export function raggedHole(corners: readonly Point[]): Hole {
  return { d: polygon(corners), region: insideOf(corners) };
}
/** The leaf with pieces gone: neither wash nor vein crosses a hole. */
export function leafWithHoles(holes: readonly Hole[]): Parts {
  const gone = any(...holes.map((hole) => hole.region));
  return [shape('leaf', OUTLINE, ...holes.map((hole) => hole.d)), line(STALK), veins((x, y) => !gone(x, y))];
}

/** Even-odd test for a polygon. */
export const insideOf =
  (corners: readonly Point[]): Region =>
  (x, y) => {
    let inside = false;
    corners.forEach(([ax, ay], i) => {
      const [bx, by] = corners[(i + corners.length - 1) % corners.length] ?? [ax, ay];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    });
    return inside;
  };
