import type { Spot } from '../../photo/types.ts';

/** A square of a photo, in pixels of that photo, turned so that the leaf's long axis stands upright, its more pointed end on top. */
export interface LeafFrame {
  readonly centre: { readonly x: number; readonly y: number };
  /** Side of the square, px. */
  readonly side: number;
  /** Turn of the photo about the centre, radians. Where the ends look alike, between −π/2 and π/2. */
  readonly turn: number;
}

/** Room around the leaf, as a share of its length. */
const MARGIN = 0.12;

/**
 * The square in which a leaf is shown beside another: both leaves then have the same length and stand upright. How large
 * they are in life is not known from a photo. The long axis is the first principal axis of the outline's vertices,
 * weighted by the length of the sides they bound; the more pointed end is the one to which the area has its longer tail.
 * @param outline closed polygon, fractions of the frame
 * @throws RangeError for fewer than three corners
 */
export function frameOfLeaf(outline: readonly Spot[], width: number, height: number): LeafFrame {
  if (outline.length < 3) throw new RangeError('an outline has at least three corners');
  const corners = outline.map(({ x, y }) => ({ x: x * width, y: y * height }));
  let weight = 0;
  let mx = 0;
  let my = 0;
  const sides = corners.map((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    const side = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, w: Math.hypot(b.x - a.x, b.y - a.y) };
    weight += side.w;
    mx += side.w * side.x;
    my += side.w * side.y;
    return side;
  });
  mx /= weight || 1;
  my /= weight || 1;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const { x, y, w } of sides) {
    xx += w * (x - mx) ** 2;
    xy += w * (x - mx) * (y - my);
    yy += w * (y - my) ** 2;
  }
  const axis = Math.atan2(2 * xy, xx - yy) / 2;
  const upright = Math.PI / 2 - axis;
  const either = upright > Math.PI / 2 ? upright - Math.PI : upright;
  const [cos0, sin0] = [Math.cos(either), Math.sin(either)];
  const upOrDown = corners.map(({ x, y }) => ({
    x: cos0 * (x - mx) - sin0 * (y - my),
    y: sin0 * (x - mx) + cos0 * (y - my),
  }));
  // Half a turn more is the same with both signs changed.
  const sign = skewDownward(upOrDown) > LEAST_SKEW ? -1 : 1;
  const turn = sign === 1 ? either : either + Math.PI;
  const [cos, sin] = [sign * cos0, sign * sin0];
  const turned = upOrDown.map(({ x, y }) => ({ x: sign * x, y: sign * y }));
  const [left, right] = ends(turned.map(({ x }) => x));
  const [top, bottom] = ends(turned.map(({ y }) => y));
  const [ox, oy] = [(left + right) / 2, (top + bottom) / 2];
  return {
    centre: { x: mx + cos * ox + sin * oy, y: my - sin * ox + cos * oy },
    side: Math.max(right - left, bottom - top) * (1 + 2 * MARGIN),
    turn,
  };
}

/**
 * Below this skewness the ends look alike. An oval has none; a leaf that widens straight over a third of its length and narrows straight over the
 * rest has 0.305, that of a triangular distribution (closed form). The bound between is our own.
 */
const LEAST_SKEW = 0.1;

/**
 * Skewness of a polygon's area along y: above 0 where its longer tail is at the bottom. Area moments by Green's theorem, side by side
 * by Gauss–Legendre of three points, which is exact here.
 */
function skewDownward(polygon: readonly Spot[]): number {
  const [area, m1, m2, m3] = [0, 1, 2, 3].map((power) =>
    polygon.reduce((sum, a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      const along = GAUSS.map(([at, w]) => w * (a.x + at * (b.x - a.x)) * (a.y + at * (b.y - a.y)) ** power);
      return sum + (along[0]! + along[1]! + along[2]!) * (b.y - a.y);
    }, 0),
  ) as [number, number, number, number];
  const mean = m1 / area;
  const variance = m2 / area - mean ** 2;
  const third = m3 / area - 3 * mean * (m2 / area) + 2 * mean ** 3;
  return variance > 0 ? third / variance ** 1.5 : 0;
}

/** Place along a side and weight. */
const GAUSS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;

const ends = (values: readonly number[]): readonly [number, number] => [
  values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
  values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
];
