/**
 * Gaussian-like mean of `plane` over the pixels of a mask only (normalised convolution; Knutsson and Westin 1993): three
 * box means in a row each way, which come within 3 % of a Gaussian of `sigmaPx` (Wells 1986). Pixels outside the mask
 * get the mean of the mask's pixels near them, so that later derivatives see no false edge; 0 where none is near.
 */
export function blurInside(
  plane: Float32Array,
  mask: Uint8Array,
  width: number,
  height: number,
  sigmaPx: number,
): Float32Array {
  // A wide blur leaves nothing finer than its width, so it is taken on a coarser grid at a fraction of the cost.
  const cell = Math.max(1, Math.floor(sigmaPx / 1.8));
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const values = new Float32Array(columns * rows);
  const weights = new Float32Array(columns * rows);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    const to = Math.floor(y / cell) * columns;
    for (let x = 0; x < width; x++) {
      if (mask[at + x] !== 255) continue;
      const k = cell === 1 ? to + x : to + ((x / cell) | 0);
      values[k]! += plane[at + x]!;
      weights[k]! += 1;
    }
  }
  blurGrid(values, columns, rows, sigmaPx / cell);
  blurGrid(weights, columns, rows, sigmaPx / cell);
  for (let k = 0; k < values.length; k++) values[k] = weights[k]! > 1e-6 ? values[k]! / weights[k]! : 0;
  return cell === 1 ? values : spreadGrid(values, columns, rows, cell, width, height);
}

/** Three boxes each way, in place. */
function blurGrid(plane: Float32Array, width: number, height: number, sigma: number): void {
  const radius = radiusOf(sigma);
  const row = new Float32Array(width);
  for (let pass = 0; pass < 3; pass++) {
    boxRows(plane, width, height, radius, row);
    boxColumns(plane, width, height, radius);
  }
}

/** Half width of each of three boxes: the variance of a box of 2r + 1 is ((2r + 1)² − 1) / 12. */
const radiusOf = (sigma: number): number =>
  Math.max(1, Math.round((Math.sqrt(4 * sigma * sigma + 1) - 1) / 2));

/** A coarse grid back to pixels, linear between cell centres; cells without a value (0) take no part. */
function spreadGrid(
  values: Float32Array,
  columns: number,
  rows: number,
  cell: number,
  width: number,
  height: number,
): Float32Array {
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const gy = Math.max(0, Math.min(rows - 1, (y + 0.5) / cell - 0.5));
    const y0 = Math.floor(gy);
    const fy = gy - y0;
    const top = y0 * columns;
    const bottom = Math.min(rows - 1, y0 + 1) * columns;
    for (let x = 0; x < width; x++) {
      const gx = Math.max(0, Math.min(columns - 1, (x + 0.5) / cell - 0.5));
      const x0 = gx | 0;
      const fx = gx - x0;
      const x1 = Math.min(columns - 1, x0 + 1);
      out[y * width + x] =
        (values[top + x0]! * (1 - fx) + values[top + x1]! * fx) * (1 - fy) +
        (values[bottom + x0]! * (1 - fx) + values[bottom + x1]! * fx) * fy;
    }
  }
  return out;
}

/** The same blur of a whole plane; at the rim the mean is over what lies inside. */
export function blurPlane(plane: Float32Array, width: number, height: number, sigmaPx: number): Float32Array {
  const values = plane.slice();
  blurGrid(values, width, height, sigmaPx);
  // The weights of a full rectangle are a product of one row and one column.
  const across = weightsAlong(width, sigmaPx);
  const down = weightsAlong(height, sigmaPx);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    for (let x = 0; x < width; x++) values[at + x]! /= across[x]! * down[y]!;
  }
  return values;
}

function weightsAlong(length: number, sigma: number): Float32Array {
  const weights = new Float32Array(length).fill(1);
  const row = new Float32Array(length);
  for (let pass = 0; pass < 3; pass++) boxRows(weights, length, 1, radiusOf(sigma), row);
  return weights;
}

function boxRows(
  plane: Float32Array,
  width: number,
  height: number,
  radius: number,
  row: Float32Array,
): void {
  const scale = 1 / (2 * radius + 1);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    let sum = 0;
    for (let x = 0; x < Math.min(radius, width); x++) sum += plane[at + x]!;
    for (let x = 0; x < width; x++) {
      if (x + radius < width) sum += plane[at + x + radius]!;
      if (x - radius - 1 >= 0) sum -= plane[at + x - radius - 1]!;
      row[x] = sum * scale;
    }
    for (let x = 0; x < width; x++) plane[at + x] = row[x]!;
  }
}

/** Columns all at once, so that memory is read in order. */
function boxColumns(plane: Float32Array, width: number, height: number, radius: number): void {
  const scale = 1 / (2 * radius + 1);
  const sums = new Float32Array(width);
  // Rows still needed after they were overwritten.
  const kept = new Float32Array(width * (radius + 1));
  for (let y = 0; y < Math.min(radius, height); y++) {
    for (let x = 0; x < width; x++) sums[x]! += plane[y * width + x]!;
  }
  for (let y = 0; y < height; y++) {
    const slot = (y % (radius + 1)) * width;
    const at = y * width;
    const ahead = (y + radius) * width;
    const entering = y + radius < height;
    const leaving = y - radius - 1 >= 0;
    for (let x = 0; x < width; x++) {
      if (entering) sums[x]! += plane[ahead + x]!;
      if (leaving) sums[x]! -= kept[slot + x]!;
      kept[slot + x] = plane[at + x]!;
      plane[at + x] = sums[x]! * scale;
    }
  }
}
