import type { Spot } from '../photo/types.ts';

/** Most corners of the outline drawn. */
const MOST_CORNERS = 200;

/**
 * The outer border of the one region of a mask as a closed polygon of at most 200 corners, as fractions of the frame.
 * Follows pixel edges clockwise, then drops corners that matter least (Douglas and Peucker 1973, tolerance raised until
 * few enough remain).
 */
export function traceOutline(mask: Uint8Array, width: number, height: number): Spot[] {
  const start = mask.indexOf(255);
  if (start < 0) return [];
  const isIn = (x: number, y: number): boolean =>
    x >= 0 && y >= 0 && x < width && y < height && mask[y * width + x] === 255;
  const points: [number, number][] = [];
  // Corner (x, y) is the upper left of pixel (x, y); walking with the region on the right hand.
  let x = start % width;
  let y = Math.floor(start / width);
  let dx = 1;
  let dy = 0;
  const x0 = x;
  const y0 = y;
  do {
    points.push([x, y]);
    x += dx;
    y += dy;
    // Pixels ahead on the left and right of the direction of travel.
    const ahead = (side: number): boolean => {
      const px = x + (dx - side * dy - 1) / 2;
      const py = y + (dy + side * dx - 1) / 2;
      return isIn(Math.round(px), Math.round(py));
    };
    if (ahead(-1)) [dx, dy] = [dy, -dx];
    else if (!ahead(1)) [dx, dy] = [-dy, dx];
  } while ((x !== x0 || y !== y0) && points.length < 8 * (width + height) * 4);
  return simplify(points).map(([px, py]) => ({ x: px / width, y: py / height }));
}

function simplify(points: [number, number][]): [number, number][] {
  let tolerance = 0.7;
  for (;;) {
    const kept = dropCorners(points, tolerance);
    if (kept.length <= MOST_CORNERS) return kept;
    tolerance *= 1.4;
  }
}

/** Splits the ring at its farthest pair and simplifies both halves. */
function dropCorners(points: [number, number][], tolerance: number): [number, number][] {
  let far = 0;
  let most = -1;
  for (const [k, p] of points.entries()) {
    const d = Math.hypot(p[0] - points[0]![0], p[1] - points[0]![1]);
    if (d > most) {
      most = d;
      far = k;
    }
  }
  const keep = new Uint8Array(points.length + 1);
  keep[0] = keep[far] = 1;
  const ring = [...points, points[0]!];
  const todo: [number, number][] = [
    [0, far],
    [far, points.length],
  ];
  while (todo.length > 0) {
    const [from, to] = todo.pop()!;
    const [ax, ay] = ring[from]!;
    const [bx, by] = ring[to]!;
    const length = Math.hypot(bx - ax, by - ay);
    let worst = 0;
    let at = -1;
    for (let k = from + 1; k < to; k++) {
      const [px, py] = ring[k]!;
      const off =
        length === 0
          ? Math.hypot(px - ax, py - ay)
          : Math.abs((bx - ax) * (py - ay) - (by - ay) * (px - ax)) / length;
      if (off > worst) {
        worst = off;
        at = k;
      }
    }
    if (worst > tolerance && at > 0) {
      keep[at] = 1;
      todo.push([from, at], [at, to]);
    }
  }
  return points.filter((_, k) => keep[k] === 1);
}
