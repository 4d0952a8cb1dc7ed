/** Connected regions of a mask, each with its size. */
export interface Regions {
  /** 0 = outside the mask, else 1 … count. */
  readonly labels: Int32Array;
  readonly count: number;
  /** Pixels of each region; index 0 is unused. */
  readonly sizes: Int32Array;
}

/**
 * Labels the regions of pixels with `mask[i] === wanted`, connected through edges (4) or also corners (8), in one
 * flood fill each; regions are numbered in reading order of their first pixel.
 */
export function labelRegions(
  mask: Uint8Array,
  width: number,
  height: number,
  wanted: number,
  neighbours: 4 | 8,
): Regions {
  const labels = new Int32Array(width * height);
  const stack = new Int32Array(width * height);
  const sizes: number[] = [0];
  for (let start = 0; start < labels.length; start++) {
    if (mask[start] !== wanted || labels[start] !== 0) continue;
    const label = sizes.length;
    let size = 0;
    let depth = 1;
    stack[0] = start;
    labels[start] = label;
    while (depth > 0) {
      const at = stack[--depth]!;
      size++;
      const x = at % width;
      const y = (at / width) | 0;
      const left = x > 0 ? 1 : 0;
      const right = x < width - 1 ? 1 : 0;
      for (let dy = y > 0 ? -1 : 0; dy <= (y < height - 1 ? 1 : 0); dy++) {
        for (let dx = -left; dx <= right; dx++) {
          if (neighbours === 4 && dx !== 0 && dy !== 0) continue;
          const to = at + dy * width + dx;
          if (mask[to] === wanted && labels[to] === 0) {
            labels[to] = label;
            stack[depth++] = to;
          }
        }
      }
    }
    sizes.push(size);
  }
  return { labels, count: sizes.length - 1, sizes: Int32Array.from(sizes) };
}

/**
 * Fills every hole of a mask: what connects neither to the frame from outside nor to a pixel of `open` becomes `255`.
 */
export function fillHoles(
  mask: Uint8Array,
  width: number,
  height: number,
  open: readonly number[] = [],
): Uint8Array {
  const filled = new Uint8Array(mask.length).fill(255);
  const stack = new Int32Array(width * height);
  let depth = 0;
  const visit = (i: number): void => {
    if (mask[i] === 0 && filled[i] === 255) {
      filled[i] = 0;
      stack[depth++] = i;
    }
  };
  for (let x = 0; x < width; x++) {
    visit(x);
    visit((height - 1) * width + x);
  }
  for (let y = 0; y < height; y++) {
    visit(y * width);
    visit(y * width + width - 1);
  }
  for (const i of open) visit(i);
  while (depth > 0) {
    const at = stack[--depth]!;
    const x = at % width;
    if (x > 0) visit(at - 1);
    if (x < width - 1) visit(at + 1);
    if (at >= width) visit(at - width);
    if (at + width < mask.length) visit(at + width);
  }
  return filled;
}
