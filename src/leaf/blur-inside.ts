/** A blur over the pixels of one mask, for as many planes as there are: what the mask alone decides is worked out once. */
export type InsideBlur = (plane: Float32Array) => Float32Array;

/**
 * Gaussian-like mean over the pixels of a mask only (normalised convolution; Knutsson and Westin 1993): three
 * box means in a row each way (Wells 1986). Boxes have whole widths, so the width comes in steps: never below 1.4 px, and from
 * 1.5 px on up to 29 % off `sigmaPx`; with a Gaussian of the width that comes out it agrees closely. Pixels outside the mask get the mean of the mask's pixels near them, so that later derivatives see no false edge; 0 where none is near.
 */
export function createInsideBlur(
  mask: Uint8Array,
  width: number,
  height: number,
  sigmaPx: number,
): InsideBlur {
  // A wide blur leaves nothing finer than its width, so it is taken on a coarser grid at a fraction of the cost.
  const cell = Math.max(1, Math.floor(sigmaPx / 1.8));
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const radius = radiusOf(sigmaPx / cell);
  const weights = new Float32Array(columns * rows);
  gatherCells(mask, undefined, width, height, cell, columns, weights);
  sumBoxes(weights, columns, rows, radius);
  // Counts are whole numbers, so where nothing is near the sum is exactly 0.
  for (let k = 0; k < weights.length; k++) weights[k] = weights[k]! > 0.5 ? 1 / weights[k]! : 0;
  return (plane) => {
    const values = new Float32Array(columns * rows);
    gatherCells(mask, plane, width, height, cell, columns, values);
    sumBoxes(values, columns, rows, radius);
    for (let k = 0; k < values.length; k++) values[k]! *= weights[k]!;
    return cell === 1 ? values : spreadGrid(values, columns, rows, cell, width, height);
  };
}

/** Blurs over one mask by their width, each made when it is first asked for. */
export type InsideBlurs = (sigmaPx: number) => InsideBlur;

export function createInsideBlurs(mask: Uint8Array, width: number, height: number): InsideBlurs {
  const made = new Map<number, InsideBlur>();
  return (sigmaPx) => {
    const known = made.get(sigmaPx);
    if (known !== undefined) return known;
    const blur = createInsideBlur(mask, width, height, sigmaPx);
    made.set(sigmaPx, blur);
    return blur;
  };
}

/** The blur of a single plane, as `createInsideBlur`. */
export function blurInside(
  plane: Float32Array,
  mask: Uint8Array,
  width: number,
  height: number,
  sigmaPx: number,
): Float32Array {
  return createInsideBlur(mask, width, height, sigmaPx)(plane);
}

/** Sum of a plane, or of ones, over the mask's pixels in each cell of a coarser grid. */
function gatherCells(
  mask: Uint8Array,
  plane: Float32Array | undefined,
  width: number,
  height: number,
  cell: number,
  columns: number,
  out: Float32Array,
): void {
  if (cell === 1) {
    if (plane === undefined) for (let k = 0; k < out.length; k++) out[k] = mask[k] === 255 ? 1 : 0;
    else for (let k = 0; k < out.length; k++) out[k] = mask[k] === 255 ? plane[k]! : 0;
    return;
  }
  const line = new Float32Array(columns * cell);
  for (let top = 0, o = 0; top < height; top += cell) {
    line.fill(0);
    for (let y = top; y < Math.min(height, top + cell); y++) {
      const at = y * width;
      if (plane === undefined) for (let x = 0; x < width; x++) line[x]! += mask[at + x]! & 1;
      else for (let x = 0; x < width; x++) if (mask[at + x] === 255) line[x]! += plane[at + x]!;
    }
    for (let k = 0, x = 0; k < columns; k++, o++) {
      let sum = 0;
      for (const end = x + cell; x < end; x++) sum += line[x]!;
      out[o] = sum;
    }
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
  const lefts = new Int32Array(width);
  const parts = new Float32Array(width);
  for (let x = 0; x < width; x++) {
    const gx = Math.max(0, Math.min(columns - 1, (x + 0.5) / cell - 0.5));
    // The last column has no neighbour on its right: the one before it takes a part of 1.
    lefts[x] = Math.max(0, Math.min(columns - 2, gx | 0));
    parts[x] = gx - lefts[x]!;
  }
  const line = new Float32Array(columns + 1);
  for (let y = 0; y < height; y++) {
    const gy = Math.max(0, Math.min(rows - 1, (y + 0.5) / cell - 0.5));
    const y0 = Math.floor(gy);
    const fy = gy - y0;
    const top = y0 * columns;
    const bottom = Math.min(rows - 1, y0 + 1) * columns;
    for (let k = 0; k < columns; k++) line[k] = values[top + k]! * (1 - fy) + values[bottom + k]! * fy;
    for (let x = 0, at = y * width; x < width; x++, at++) {
      const k = lefts[x]!;
      const left = line[k]!;
      out[at] = left + (line[k + 1]! - left) * parts[x]!;
    }
  }
  return out;
}

/** The same blur of a whole plane; at the rim the mean is over what lies inside. */
export function blurPlane(plane: Float32Array, width: number, height: number, sigmaPx: number): Float32Array {
  const values = plane.slice();
  const radius = radiusOf(sigmaPx);
  sumBoxes(values, width, height, radius);
  // The weights of a full rectangle are a product of one row and one column.
  const across = sharesAlong(width, radius);
  const down = sharesAlong(height, radius);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    const row = down[y]!;
    for (let x = 0; x < width; x++) values[at + x]! *= across[x]! * row;
  }
  return values;
}

/** One over what the boxes sum up to along a row of ones. */
function sharesAlong(length: number, radius: number): Float32Array {
  const shares = new Float32Array(length).fill(1);
  if (radius === 1) sumNarrowRows(shares, shares, length, 1);
  else sumRows(shares, length, 1, radius);
  for (let x = 0; x < length; x++) shares[x] = 1 / shares[x]!;
  return shares;
}

/** Room for a plane between two passes; kept, since it is needed some hundred times a photo. */
let room = new Float32Array(0);

/** Sums over three boxes of 2 × `radius` + 1 each way, in place; nothing lies beyond the rim. */
function sumBoxes(plane: Float32Array, width: number, height: number, radius: number): void {
  if (room.length < plane.length + width) room = new Float32Array(plane.length + width);
  if (radius === 1) {
    sumNarrowBoxes(plane, width, height);
    return;
  }
  sumRows(plane, width, height, radius);
  sumColumns(plane, room, width, height, radius);
  sumColumns(room, plane, width, height, radius);
  sumColumns(plane, room, width, height, radius);
  for (let i = 0; i < plane.length; i++) plane[i] = room[i]!;
}

/** Three boxes of 3 each way as the one kernel that they come to: 1 3 6 7 6 3 1. */
function sumNarrowBoxes(plane: Float32Array, width: number, height: number): void {
  sumNarrowRows(plane, room, width, height);
  // A row of zeros stands for those beyond the rim.
  const nothing = width * height;
  room.fill(0, nothing, nothing + width);
  const rowAt = (y: number): number => (y >= 0 && y < height ? y * width : nothing);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    const up3 = rowAt(y - 3);
    const up2 = rowAt(y - 2);
    const up1 = rowAt(y - 1);
    const down1 = rowAt(y + 1);
    const down2 = rowAt(y + 2);
    const down3 = rowAt(y + 3);
    for (let x = 0; x < width; x++) {
      plane[at + x] =
        room[up3 + x]! +
        room[down3 + x]! +
        3 * (room[up2 + x]! + room[down2 + x]!) +
        6 * (room[up1 + x]! + room[down1 + x]!) +
        7 * room[at + x]!;
    }
  }
}

function sumNarrowRows(from: Float32Array, to: Float32Array, width: number, height: number): void {
  const line = new Float32Array(width + 6);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    for (let x = 0; x < width; x++) line[x + 3] = from[at + x]!;
    for (let x = 0; x < width; x++) {
      to[at + x] =
        line[x]! +
        line[x + 6]! +
        3 * (line[x + 1]! + line[x + 5]!) +
        6 * (line[x + 2]! + line[x + 4]!) +
        7 * line[x + 3]!;
    }
  }
}

/** Three boxes along each row. */
function sumRows(plane: Float32Array, width: number, height: number, radius: number): void {
  const margin = radius + 1;
  // Zeros on both sides, so that no place needs to ask whether it has neighbours.
  const one = new Float32Array(width + 2 * margin);
  const other = new Float32Array(width + 2 * margin);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    for (let x = 0; x < width; x++) one[margin + x] = plane[at + x]!;
    sumLine(one, other, width, radius);
    sumLine(other, one, width, radius);
    sumLine(one, other, width, radius);
    for (let x = 0; x < width; x++) plane[at + x] = other[margin + x]!;
  }
}

function sumLine(from: Float32Array, to: Float32Array, width: number, radius: number): void {
  const margin = radius + 1;
  const reach = 2 * radius + 1;
  let sum = 0;
  for (let x = margin; x < margin + radius; x++) sum += from[x]!;
  for (let x = 0; x < width; x++) {
    sum += from[x + reach]! - from[x]!;
    to[x + margin] = sum;
  }
}

/** One box along each column, all columns at once so that memory is read in order. */
function sumColumns(
  from: Float32Array,
  to: Float32Array,
  width: number,
  height: number,
  radius: number,
): void {
  const sums = new Float64Array(width);
  for (let y = 0; y < Math.min(radius, height); y++) {
    const at = y * width;
    for (let x = 0; x < width; x++) sums[x]! += from[at + x]!;
  }
  for (let y = 0; y < height; y++) {
    const at = y * width;
    const entering = (y + radius) * width;
    const leaving = (y - radius - 1) * width;
    if (y + radius < height && leaving >= 0) {
      for (let x = 0; x < width; x++) {
        const sum = sums[x]! + from[entering + x]! - from[leaving + x]!;
        sums[x] = sum;
        to[at + x] = sum;
      }
    } else if (y + radius < height) {
      for (let x = 0; x < width; x++) {
        const sum = sums[x]! + from[entering + x]!;
        sums[x] = sum;
        to[at + x] = sum;
      }
    } else if (leaving >= 0) {
      for (let x = 0; x < width; x++) {
        const sum = sums[x]! - from[leaving + x]!;
        sums[x] = sum;
        to[at + x] = sum;
      }
    } else {
      for (let x = 0; x < width; x++) to[at + x] = sums[x]!;
    }
  }
}
