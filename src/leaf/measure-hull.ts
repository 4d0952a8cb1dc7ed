/** Convex hull of a mask. */
export interface Hull {
  /** Corners in order, as x, y pairs of pixel corners. */
  readonly corners: readonly (readonly [number, number])[];
  /** Area in px²: at least that of the mask. */
  readonly areaPx: number;
}

/** Convex hull of the pixels equal to 255, pixels taken as unit squares (monotone chain; Andrew 1979). */
export function measureHull(mask: Uint8Array, width: number, height: number): Hull {
  const points: [number, number][] = [];
  for (let y = 0; y < height; y++) {
    let first = -1;
    let last = -1;
    for (let x = 0, i = y * width; x < width; x++, i++) {
      if (mask[i] !== 255) continue;
      if (first < 0) first = x;
      last = x;
    }
    if (first < 0) continue;
    points.push([first, y], [first, y + 1], [last + 1, y], [last + 1, y + 1]);
  }
  points.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const turn = (o: [number, number], p: [number, number], q: [number, number]): number =>
    (p[0] - o[0]) * (q[1] - o[1]) - (p[1] - o[1]) * (q[0] - o[0]);
  const half = (ordered: [number, number][]): [number, number][] => {
    const chain: [number, number][] = [];
    for (const point of ordered) {
      while (chain.length >= 2 && turn(chain[chain.length - 2]!, chain[chain.length - 1]!, point) <= 0) {
        chain.pop();
      }
      chain.push(point);
    }
    chain.pop();
    return chain;
  };
  const corners = [...half(points), ...half(points.reverse())];
  let twice = 0;
  for (const [k, [x, y]] of corners.entries()) {
    const [nx, ny] = corners[(k + 1) % corners.length]!;
    twice += x * ny - nx * y;
  }
  return { corners, areaPx: Math.abs(twice) / 2 };
}
