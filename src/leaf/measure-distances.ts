/**
 * Distance in pixels from each pixel whose mask equals `inside` to the nearest pixel that does not, up to about 8 % off
 * the Euclidean (two-pass chamfer with steps 1 and √2; Borgefors 1986); 0 elsewhere. The frame's rim does not count
 * as a border: a leaf cut by the frame goes on beyond it. Distances above `most` are cut to it.
 */
export function measureDistances(
  mask: Uint8Array,
  width: number,
  height: number,
  inside: number,
  most: number = Number.POSITIVE_INFINITY,
): Float32Array {
  const distance = new Float32Array(width * height);
  const far = Math.min(most, width + height);
  for (let i = 0; i < distance.length; i++) if (mask[i] === inside) distance[i] = far;
  const spans = findSpans(mask, width, height, far);
  for (let y = 0; y < height; y++) {
    const row = Math.floor(y / TILE) * spans.columns;
    for (let tile = 0; tile < spans.columns; tile++) {
      if (spans.near[row + tile] === 0) continue;
      const end = Math.min(width, (tile + 1) * TILE);
      for (let x = tile * TILE, i = y * width + x; x < end; x++, i++) {
        let d = distance[i]!;
        if (d === 0) continue;
        if (x > 0 && distance[i - 1]! + 1 < d) d = distance[i - 1]! + 1;
        if (y > 0) {
          const up = i - width;
          if (distance[up]! + 1 < d) d = distance[up]! + 1;
          if (x > 0 && distance[up - 1]! + Math.SQRT2 < d) d = distance[up - 1]! + Math.SQRT2;
          if (x < width - 1 && distance[up + 1]! + Math.SQRT2 < d) d = distance[up + 1]! + Math.SQRT2;
        }
        distance[i] = d;
      }
    }
  }
  for (let y = height - 1; y >= 0; y--) {
    const row = Math.floor(y / TILE) * spans.columns;
    for (let tile = spans.columns - 1; tile >= 0; tile--) {
      if (spans.near[row + tile] === 0) continue;
      const start = tile * TILE;
      for (let x = Math.min(width, start + TILE) - 1, i = y * width + x; x >= start; x--, i--) {
        let d = distance[i]!;
        if (d === 0) continue;
        if (x < width - 1 && distance[i + 1]! + 1 < d) d = distance[i + 1]! + 1;
        if (y < height - 1) {
          const down = i + width;
          if (distance[down]! + 1 < d) d = distance[down]! + 1;
          if (x < width - 1 && distance[down + 1]! + Math.SQRT2 < d) d = distance[down + 1]! + Math.SQRT2;
          if (x > 0 && distance[down - 1]! + Math.SQRT2 < d) d = distance[down - 1]! + Math.SQRT2;
        }
        distance[i] = d;
      }
    }
  }
  return distance;
}

/** Side of a tile, px. */
const TILE = 16;

/** Tiles that lie within `reach` px of a border; elsewhere no pixel can be nearer to one. */
function findSpans(
  mask: Uint8Array,
  width: number,
  height: number,
  reach: number,
): { readonly columns: number; readonly near: Uint8Array } {
  const columns = Math.ceil(width / TILE);
  const rows = Math.ceil(height / TILE);
  const near = new Uint8Array(columns * rows);
  const tiles = Math.ceil(reach / TILE);
  if (tiles >= Math.min(columns, rows) / 4) return { columns, near: near.fill(1) };
  const onBorder: number[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (isMixed(mask, width, height, column * TILE, row * TILE)) onBorder.push(row * columns + column);
    }
  }
  for (const k of onBorder) {
    const column = k % columns;
    const row = Math.floor(k / columns);
    for (let r = Math.max(0, row - tiles); r <= Math.min(rows - 1, row + tiles); r++) {
      near.fill(
        1,
        r * columns + Math.max(0, column - tiles),
        r * columns + Math.min(columns, column + tiles + 1),
      );
    }
  }
  return { columns, near };
}

/** Whether a tile, or its seam with the tiles on the right and below, holds both kinds of pixels. */
function isMixed(mask: Uint8Array, width: number, height: number, left: number, top: number): boolean {
  const first = mask[top * width + left]!;
  const right = Math.min(width - 1, left + TILE);
  const bottom = Math.min(height - 1, top + TILE);
  for (let y = top; y <= bottom; y++) {
    for (let i = y * width + left; i <= y * width + right; i++) if (mask[i] !== first) return true;
  }
  return false;
}
