/**
 * Minimum cut of a picture's grid with two terminals, after Boykov and Kolmogorov 2004 like `cutGraph`, which cuts graphs of
 * any shape: here the eight neighbours of a pixel are known from its place, so an edge costs no memory but its capacity.
 */
export interface FlowGrid {
  /** Pixels a row and column, one more than the picture has on every side; nothing flows there. */
  readonly width: number;
  readonly height: number;
  /** Residual capacity from each pixel to its neighbours in the order of `STEP_X` and `STEP_Y`, eight a pixel. */
  readonly capacity: Int32Array;
  /** Residual capacity to the terminals: above 0 from the source, below 0 to the sink. */
  readonly terminal: Int32Array;
}

/** An empty grid for a picture of `width` × `height`. */
export function createFlowGrid(width: number, height: number): FlowGrid {
  const pixels = (width + 2) * (height + 2);
  return {
    width: width + 2,
    height: height + 2,
    capacity: new Int32Array(pixels * 8),
    terminal: new Int32Array(pixels),
  };
}

/** Index in the grid of the picture's pixel (x, y). */
export function placeInGrid({ width }: FlowGrid, x: number, y: number): number {
  return (y + 1) * width + x + 1;
}

/** The side of every pixel, 1 = with the source, for the capacity of each to the terminals, row by row. */
export type GridCutter = (terminal: Int32Array) => Uint8Array;

/**
 * Cuts one grid again and again with other terminals. Each cut goes on from the flow of the one before, to which only the
 * change of the terminals is added (Kohli and Torr 2007, "Dynamic graph cuts"): the cut is the same, the way shorter.
 */
export function createGridCutter(edges: FlowGrid): GridCutter {
  const grid: FlowGrid = { ...edges, capacity: edges.capacity.slice(), terminal: edges.terminal.slice() };
  let before: Int32Array | undefined;
  return (terminal) => {
    for (let y = 0, i = 0; y < grid.height - 2; y++) {
      let place = placeInGrid(grid, 0, y);
      for (let x = 0; x < grid.width - 2; x++, i++, place++) {
        grid.terminal[place]! += terminal[i]! - (before?.[i] ?? 0);
      }
    }
    before = terminal;
    return cutGrid(grid);
  };
}

const FREE = 0;
const SOURCE = 1;
const SINK = 2;
/** Instead of the direction of the parent. */
const AT_TERMINAL = 8;
const ORPHAN = 9;
const NO_PARENT = 10;

/**
 * Solves the cut and returns the side of every pixel of the picture: 1 = with the source. Pixels that reach neither
 * terminal count to the sink. Uses up the capacities.
 */
export function cutGrid(grid: FlowGrid): Uint8Array {
  const { width, height, capacity, terminal } = grid;
  const nodes = width * height;
  // Offsets to the neighbours, in the order of STEP_X and STEP_Y: the opposite of k is k ^ 4.
  const step = Int32Array.of(1, width, width + 1, width - 1, -1, -width, -width - 1, 1 - width);
  const tree = new Uint8Array(nodes);
  const parent = new Uint8Array(nodes).fill(NO_PARENT);
  const stamp = new Int32Array(nodes);
  const distance = new Int32Array(nodes);
  // Ring of active pixels; a pixel is in it at most once.
  const active = new Int32Array(nodes + 1);
  const isActive = new Uint8Array(nodes);
  let head = 0;
  let tail = 0;
  let orphans = new Int32Array(1024);
  let orphanCount = 0;
  let time = 0;

  const activate = (node: number): void => {
    if (isActive[node] === 1) return;
    isActive[node] = 1;
    active[tail] = node;
    tail = tail === nodes ? 0 : tail + 1;
  };
  const orphan = (node: number): void => {
    parent[node] = ORPHAN;
    if (orphanCount === orphans.length) {
      const larger = new Int32Array(orphanCount * 2);
      larger.set(orphans);
      orphans = larger;
    }
    orphans[orphanCount++] = node;
  };

  cancelBetweenNeighbours(grid, step);
  for (let i = 0; i < nodes; i++) {
    if (terminal[i] === 0) continue;
    tree[i] = terminal[i]! > 0 ? SOURCE : SINK;
    parent[i] = AT_TERMINAL;
    distance[i] = 1;
    activate(i);
  }

  let current = -1;
  for (;;) {
    // Grow: take an active pixel that still belongs to a tree.
    if (current < 0 || tree[current] === FREE) {
      current = -1;
      while (head !== tail) {
        const node = active[head]!;
        head = head === nodes ? 0 : head + 1;
        isActive[node] = 0;
        if (tree[node] !== FREE) {
          current = node;
          break;
        }
      }
      if (current < 0) break;
    }
    // The edge at which the trees meet: from a pixel of the source's to its neighbour of the sink's.
    let from = -1;
    let toward = 0;
    const side = tree[current]!;
    for (let k = 0; k < 8; k++) {
      const other = current + step[k]!;
      if ((side === SOURCE ? capacity[current * 8 + k] : capacity[other * 8 + (k ^ 4)]) === 0) continue;
      if (tree[other] === FREE) {
        tree[other] = side;
        parent[other] = k ^ 4;
        stamp[other] = stamp[current]!;
        distance[other] = distance[current]! + 1;
        activate(other);
      } else if (tree[other] !== side) {
        from = side === SOURCE ? current : other;
        toward = side === SOURCE ? k : k ^ 4;
        break;
      } else if (stamp[other]! <= stamp[current]! && distance[other]! > distance[current]!) {
        parent[other] = k ^ 4;
        stamp[other] = stamp[current]!;
        distance[other] = distance[current]! + 1;
      }
    }
    time++;
    if (from < 0) {
      current = -1;
      continue;
    }
    // Augment along source … edge … sink.
    const to = from + step[toward]!;
    const forth = from * 8 + toward;
    const back = to * 8 + (toward ^ 4);
    let flow = capacity[forth]!;
    let node = from;
    while (parent[node] !== AT_TERMINAL) {
      const k = parent[node]!;
      node += step[k]!;
      const room = capacity[node * 8 + (k ^ 4)]!;
      if (room < flow) flow = room;
    }
    if (terminal[node]! < flow) flow = terminal[node]!;
    node = to;
    while (parent[node] !== AT_TERMINAL) {
      const k = parent[node]!;
      const room = capacity[node * 8 + k]!;
      if (room < flow) flow = room;
      node += step[k]!;
    }
    if (-terminal[node]! < flow) flow = -terminal[node]!;

    capacity[forth]! -= flow;
    capacity[back]! += flow;
    node = from;
    while (parent[node] !== AT_TERMINAL) {
      const k = parent[node]!;
      const up = node + step[k]!;
      const down = up * 8 + (k ^ 4);
      capacity[node * 8 + k]! += flow;
      const left = capacity[down]! - flow;
      capacity[down] = left;
      if (left === 0) orphan(node);
      node = up;
    }
    terminal[node]! -= flow;
    if (terminal[node] === 0) orphan(node);
    node = to;
    while (parent[node] !== AT_TERMINAL) {
      const k = parent[node]!;
      const up = node + step[k]!;
      const left = capacity[node * 8 + k]! - flow;
      capacity[node * 8 + k] = left;
      capacity[up * 8 + (k ^ 4)]! += flow;
      if (left === 0) orphan(node);
      node = up;
    }
    terminal[node]! += flow;
    if (terminal[node] === 0) orphan(node);

    // Adopt: every orphan looks for a parent with a way to its terminal, else it becomes free.
    while (orphanCount > 0) {
      const child = orphans[--orphanCount]!;
      const own = tree[child]!;
      let best = NO_PARENT;
      let bestDistance = 0x7fffffff;
      for (let k = 0; k < 8; k++) {
        const next = child + step[k]!;
        if (tree[next] !== own || parent[next] === NO_PARENT) continue;
        if ((own === SOURCE ? capacity[next * 8 + (k ^ 4)] : capacity[child * 8 + k]) === 0) continue;
        let up = next;
        let d = 0;
        let reaches = false;
        for (;;) {
          if (stamp[up] === time) {
            d += distance[up]!;
            reaches = true;
            break;
          }
          const way = parent[up]!;
          d++;
          if (way === AT_TERMINAL) {
            stamp[up] = time;
            distance[up] = 1;
            reaches = true;
            break;
          }
          if (way > AT_TERMINAL) break;
          up += step[way]!;
        }
        if (!reaches) continue;
        if (d < bestDistance) {
          best = k;
          bestDistance = d;
        }
        // Mark the path walked, so that the next search stops early.
        for (up = next; stamp[up] !== time; up += step[parent[up]!]!) {
          stamp[up] = time;
          distance[up] = d--;
        }
      }
      parent[child] = best;
      if (best !== NO_PARENT) {
        stamp[child] = time;
        distance[child] = bestDistance + 1;
        continue;
      }
      for (let k = 0; k < 8; k++) {
        const other = child + step[k]!;
        if (tree[other] !== own || parent[other] === NO_PARENT) continue;
        if ((own === SOURCE ? capacity[other * 8 + (k ^ 4)]! : capacity[child * 8 + k]!) > 0) activate(other);
        if (parent[other]! < AT_TERMINAL && other + step[parent[other]!]! === child) orphan(other);
      }
      tree[child] = FREE;
    }
  }
  const sides = new Uint8Array((width - 2) * (height - 2));
  for (let y = 1, i = 0; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++, i++) if (tree[y * width + x] === SOURCE) sides[i] = 1;
  }
  return sides;
}

/** Lets flow straight from pixels of the source to neighbours of the sink: most of it goes no farther, and so needs no trees. */
function cancelBetweenNeighbours({ width, height, capacity, terminal }: FlowGrid, step: Int32Array): void {
  for (let i = width + 1; i < width * (height - 1) - 1; i++) {
    for (let k = 0; k < 8 && terminal[i]! > 0; k++) {
      const other = i + step[k]!;
      if (terminal[other]! >= 0) continue;
      const flow = Math.min(terminal[i]!, -terminal[other]!, capacity[i * 8 + k]!);
      terminal[i]! -= flow;
      terminal[other]! += flow;
      capacity[i * 8 + k]! -= flow;
      capacity[other * 8 + (k ^ 4)]! += flow;
    }
  }
}
