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
  const values = new Float32Array(plane.length);
  const weights = new Float32Array(plane.length);
  for (let i = 0; i < plane.length; i++) {
    if (mask[i] === 255) {
      values[i] = plane[i]!;
      weights[i] = 1;
    }
  }
  // Half width of each of three boxes: variance of a box of 2r + 1 is ((2r + 1)² − 1) / 12.
  const radius = Math.max(1, Math.round((Math.sqrt(4 * sigmaPx * sigmaPx + 1) - 1) / 2));
  const row = new Float32Array(Math.max(width, height));
  for (let pass = 0; pass < 3; pass++) {
    boxRows(values, width, height, radius, row);
    boxRows(weights, width, height, radius, row);
    boxColumns(values, width, height, radius);
    boxColumns(weights, width, height, radius);
  }
  for (let i = 0; i < plane.length; i++) values[i] = weights[i]! > 1e-6 ? values[i]! / weights[i]! : 0;
  return values;
}

/** Plain blur of the whole plane, with the rim repeated as weights fall. */
export function blurPlane(plane: Float32Array, width: number, height: number, sigmaPx: number): Float32Array {
  return blurInside(plane, new Uint8Array(plane.length).fill(255), width, height, sigmaPx);
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
