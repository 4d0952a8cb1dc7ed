/**
 * Minimum cut of a sparse graph with two terminals, after Boykov and Kolmogorov 2004 ("An experimental comparison of
 * min-cut/max-flow algorithms for energy minimization in vision", IEEE PAMI 26): two search trees grow from the
 * terminals and are reused after each augmentation, which suits the shallow graphs of pictures. Capacities are whole
 * numbers, so saturation is exact.
 */
export interface FlowGraph {
  readonly nodes: number;
  /** Arcs in pairs: arc `k` and `k ^ 1` are each other's reverse. */
  arcs: number;
  readonly firstArc: Int32Array;
  readonly nextArc: Int32Array;
  readonly headOf: Int32Array;
  readonly capacity: Int32Array;
  /** Residual capacity to the terminals: above 0 from the source, below 0 to the sink. */
  readonly terminal: Int32Array;
}

/** An empty graph with room for `edges` two-way edges. */
export function createFlowGraph(nodes: number, edges: number): FlowGraph {
  return {
    nodes,
    arcs: 0,
    firstArc: new Int32Array(nodes).fill(-1),
    nextArc: new Int32Array(edges * 2),
    headOf: new Int32Array(edges * 2),
    capacity: new Int32Array(edges * 2),
    terminal: new Int32Array(nodes),
  };
}

/** Adds an edge with a capacity each way, the same both ways if only one is given. */
export function addFlowEdge(
  graph: FlowGraph,
  from: number,
  to: number,
  capacity: number,
  back: number = capacity,
): void {
  const arc = graph.arcs;
  graph.headOf[arc] = to;
  graph.capacity[arc] = capacity;
  graph.nextArc[arc] = graph.firstArc[from]!;
  graph.firstArc[from] = arc;
  graph.headOf[arc + 1] = from;
  graph.capacity[arc + 1] = back;
  graph.nextArc[arc + 1] = graph.firstArc[to]!;
  graph.firstArc[to] = arc + 1;
  graph.arcs = arc + 2;
}

const FREE = 0;
const SOURCE = 1;
const SINK = 2;
const AT_TERMINAL = -1;
const ORPHAN = -2;
const NO_PARENT = -3;

/**
 * Solves the cut and returns the side of every node: 1 = with the source. Nodes that reach neither terminal count to
 * the sink. Uses up the capacities.
 */
export function cutGraph(graph: FlowGraph): Uint8Array {
  const { nodes, firstArc, nextArc, headOf, capacity, terminal } = graph;
  const tree = new Uint8Array(nodes);
  const parent = new Int32Array(nodes).fill(NO_PARENT);
  const stamp = new Int32Array(nodes);
  const distance = new Int32Array(nodes);
  // Ring of active nodes; a node is in it at most once.
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

  for (let i = 0; i < nodes; i++) {
    if (terminal[i] === 0) continue;
    tree[i] = terminal[i]! > 0 ? SOURCE : SINK;
    parent[i] = AT_TERMINAL;
    distance[i] = 1;
    activate(i);
  }

  let current = -1;
  for (;;) {
    // Grow: take an active node that still belongs to a tree.
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
    let bridge = -1;
    const side = tree[current]!;
    for (let arc = firstArc[current]!; arc >= 0; arc = nextArc[arc]!) {
      if (capacity[side === SOURCE ? arc : arc ^ 1] === 0) continue;
      const other = headOf[arc]!;
      if (tree[other] === FREE) {
        tree[other] = side;
        parent[other] = arc ^ 1;
        stamp[other] = stamp[current]!;
        distance[other] = distance[current]! + 1;
        activate(other);
      } else if (tree[other] !== side) {
        bridge = side === SOURCE ? arc : arc ^ 1;
        break;
      } else if (stamp[other]! <= stamp[current]! && distance[other]! > distance[current]!) {
        parent[other] = arc ^ 1;
        stamp[other] = stamp[current]!;
        distance[other] = distance[current]! + 1;
      }
    }
    time++;
    if (bridge < 0) {
      current = -1;
      continue;
    }
    // Augment along source … bridge … sink.
    let flow = capacity[bridge]!;
    let node = headOf[bridge ^ 1]!;
    while (parent[node] !== AT_TERMINAL) {
      const arc = parent[node]!;
      if (capacity[arc ^ 1]! < flow) flow = capacity[arc ^ 1]!;
      node = headOf[arc]!;
    }
    if (terminal[node]! < flow) flow = terminal[node]!;
    node = headOf[bridge]!;
    while (parent[node] !== AT_TERMINAL) {
      const arc = parent[node]!;
      if (capacity[arc]! < flow) flow = capacity[arc]!;
      node = headOf[arc]!;
    }
    if (-terminal[node]! < flow) flow = -terminal[node]!;

    capacity[bridge]! -= flow;
    capacity[bridge ^ 1]! += flow;
    node = headOf[bridge ^ 1]!;
    while (parent[node] !== AT_TERMINAL) {
      const arc = parent[node]!;
      capacity[arc]! += flow;
      capacity[arc ^ 1]! -= flow;
      const next = headOf[arc]!;
      if (capacity[arc ^ 1] === 0) orphan(node);
      node = next;
    }
    terminal[node]! -= flow;
    if (terminal[node] === 0) orphan(node);
    node = headOf[bridge]!;
    while (parent[node] !== AT_TERMINAL) {
      const arc = parent[node]!;
      capacity[arc ^ 1]! += flow;
      capacity[arc]! -= flow;
      const next = headOf[arc]!;
      if (capacity[arc] === 0) orphan(node);
      node = next;
    }
    terminal[node]! += flow;
    if (terminal[node] === 0) orphan(node);

    // Adopt: every orphan looks for a parent with a way to its terminal, else it becomes free.
    while (orphanCount > 0) {
      const child = orphans[--orphanCount]!;
      const own = tree[child]!;
      let best = NO_PARENT;
      let bestDistance = 0x7fffffff;
      for (let arc = firstArc[child]!; arc >= 0; arc = nextArc[arc]!) {
        if (capacity[own === SOURCE ? arc ^ 1 : arc] === 0) continue;
        let up = headOf[arc]!;
        if (tree[up] !== own || parent[up] === NO_PARENT) continue;
        let d = 0;
        let reaches = false;
        for (;;) {
          if (stamp[up] === time) {
            d += distance[up]!;
            reaches = true;
            break;
          }
          const step = parent[up]!;
          d++;
          if (step === AT_TERMINAL) {
            stamp[up] = time;
            distance[up] = 1;
            reaches = true;
            break;
          }
          if (step < 0) break;
          up = headOf[step]!;
        }
        if (!reaches) continue;
        if (d < bestDistance) {
          best = arc;
          bestDistance = d;
        }
        // Mark the path walked, so that the next search stops early.
        for (up = headOf[arc]!; stamp[up] !== time; up = headOf[parent[up]!]!) {
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
      for (let arc = firstArc[child]!; arc >= 0; arc = nextArc[arc]!) {
        const other = headOf[arc]!;
        if (tree[other] !== own || parent[other] === NO_PARENT) continue;
        if (capacity[own === SOURCE ? arc ^ 1 : arc]! > 0) activate(other);
        const step = parent[other]!;
        if (step >= 0 && headOf[step] === child) orphan(other);
      }
      tree[child] = FREE;
    }
  }
  const sides = new Uint8Array(nodes);
  for (let i = 0; i < nodes; i++) if (tree[i] === SOURCE) sides[i] = 1;
  return sides;
}
