/** Connected regions of a mask, each with its size. */
export interface Regions {
  /** 0 = outside the mask, else 1 … count. */
  readonly labels: Int32Array;
  readonly count: number;
  /** Pixels of each region; index 0 is unused. */
  readonly sizes: Int32Array;
}

/**
 * Labels the regions of pixels with `mask[i] === wanted`, connected through edges (4) or also corners (8), by the runs of
 * each row and which of them touch; regions are numbered in reading order of their first pixel.
 */
export function labelRegions(
  mask: Uint8Array,
  width: number,
  height: number,
  wanted: number,
  neighbours: 4 | 8,
): Regions {
  const { starts, ends, rows, roots } = findRuns(mask, width, height, wanted, neighbours);
  const labels = new Int32Array(width * height);
  const labelOf = new Int32Array(starts.length);
  const sizes: number[] = [0];
  for (let y = 0; y < height; y++) {
    for (let run = rows[y]!; run < rows[y + 1]!; run++) {
      const root = roots[run]!;
      // A root is the first run of its region in reading order.
      if (root === run) {
        labelOf[run] = sizes.length;
        sizes.push(0);
      }
      const label = labelOf[root]!;
      const at = y * width;
      labels.fill(label, at + starts[run]!, at + ends[run]!);
      sizes[label]! += ends[run]! - starts[run]!;
    }
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
  const { starts, ends, rows, roots } = findRuns(mask, width, height, 0, 4);
  const isOpen = new Uint8Array(starts.length);
  for (let y = 0; y < height; y++) {
    const onRim = y === 0 || y === height - 1;
    for (let run = rows[y]!; run < rows[y + 1]!; run++) {
      if (onRim || starts[run] === 0 || ends[run] === width) isOpen[roots[run]!] = 1;
    }
  }
  for (const i of open) {
    const y = Math.floor(i / width);
    const x = i - y * width;
    for (let run = rows[y]!; run < rows[y + 1]!; run++) {
      if (starts[run]! <= x && x < ends[run]!) isOpen[roots[run]!] = 1;
    }
  }
  const filled = new Uint8Array(mask.length).fill(255);
  for (let y = 0; y < height; y++) {
    for (let run = rows[y]!; run < rows[y + 1]!; run++) {
      if (isOpen[roots[run]!] === 1) filled.fill(0, y * width + starts[run]!, y * width + ends[run]!);
    }
  }
  return filled;
}

/** Runs of wanted pixels, row by row: run k reaches from `starts[k]` up to but without `ends[k]`. */
interface Runs {
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** The first run of each row, and after the last row the number of all. */
  readonly rows: Int32Array;
  /** For each run the first run of its region. */
  readonly roots: Int32Array;
}

function findRuns(mask: Uint8Array, width: number, height: number, wanted: number, neighbours: 4 | 8): Runs {
  let starts = new Int32Array(1024);
  let ends = new Int32Array(1024);
  const rows = new Int32Array(height + 1);
  let count = 0;
  for (let y = 0; y < height; y++) {
    rows[y] = count;
    const end = (y + 1) * width;
    for (let i = y * width; i < end; i++) {
      if (mask[i] !== wanted) continue;
      const first = i;
      while (i < end && mask[i] === wanted) i++;
      if (count === starts.length) {
        starts = enlarge(starts);
        ends = enlarge(ends);
      }
      starts[count] = first - end + width;
      ends[count++] = i - end + width;
    }
  }
  rows[height] = count;
  return { starts, ends, rows, roots: joinRuns(starts, ends, rows, count, neighbours === 8 ? 1 : 0) };
}

function enlarge(list: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(list.length * 2);
  larger.set(list);
  return larger;
}

/** Union of runs that touch, by the smaller index, so that every root is the first run of its region. */
function joinRuns(
  starts: Int32Array,
  ends: Int32Array,
  rows: Int32Array,
  count: number,
  slack: number,
): Int32Array {
  const roots = new Int32Array(count);
  for (let run = 0; run < count; run++) roots[run] = run;
  const rootOf = (run: number): number => {
    let at = run;
    while (roots[at] !== at) {
      roots[at] = roots[roots[at]!]!;
      at = roots[at]!;
    }
    return at;
  };
  for (let y = 1; y < rows.length - 1; y++) {
    let above = rows[y - 1]!;
    for (let run = rows[y]!; run < rows[y + 1]!; run++) {
      while (above < rows[y]! && ends[above]! + slack <= starts[run]!) above++;
      for (let k = above; k < rows[y]! && starts[k]! < ends[run]! + slack; k++) {
        const one = rootOf(run);
        const other = rootOf(k);
        if (one < other) roots[other] = one;
        else roots[one] = other;
      }
    }
  }
  for (let run = 0; run < count; run++) roots[run] = rootOf(run);
  return roots;
}
