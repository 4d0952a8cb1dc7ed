import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addFlowEdge, createFlowGraph, cutGraph } from '../../src/leaf/cut-graph.ts';
import { createFlowGrid, createGridCutter, placeInGrid } from '../../src/leaf/cut-grid.ts';
import { STEP_X, STEP_Y } from '../../src/leaf/grow-from-seed.ts';

type Edge = readonly [number, number, number, number];

/** Cost of a given split: edges between the sides plus terminals on the wrong side. */
function costOf(sides: ArrayLike<number>, terminal: readonly number[], edges: readonly Edge[]): number {
  let cost = 0;
  for (const [i, t] of terminal.entries()) {
    if (t > 0 && sides[i] !== 1) cost += t;
    if (t < 0 && sides[i] === 1) cost -= t;
  }
  for (const [from, to, capacity, back] of edges) {
    if (sides[from] === 1 && sides[to] !== 1) cost += capacity;
    if (sides[to] === 1 && sides[from] !== 1) cost += back;
  }
  return cost;
}

describe('minimum cut', () => {
  it('is as cheap as the best of all splits, tried one by one', () => {
    const nodes = 9;
    const graphs = fc.record({
      terminal: fc.array(fc.integer({ min: -20, max: 20 }), { minLength: nodes, maxLength: nodes }),
      edges: fc.array(
        fc.tuple(
          fc.integer({ min: 0, max: nodes - 1 }),
          fc.integer({ min: 0, max: nodes - 1 }),
          fc.integer({ min: 0, max: 15 }),
          fc.integer({ min: 0, max: 15 }),
        ),
        { maxLength: 24 },
      ),
    });
    fc.assert(
      fc.property(graphs, ({ terminal, edges }) => {
        const real = edges.filter(([from, to]) => from !== to);
        const graph = createFlowGraph(nodes, real.length);
        graph.terminal.set(terminal);
        for (const edge of real) addFlowEdge(graph, ...edge);
        const found = costOf(cutGraph(graph), terminal, real);
        let best = Number.POSITIVE_INFINITY;
        for (let code = 0; code < 1 << nodes; code++) {
          const sides = Array.from({ length: nodes }, (_, i) => (code >> i) & 1);
          best = Math.min(best, costOf(sides, terminal, real));
        }
        expect(found).toBe(best);
      }),
      { numRuns: 300 },
    );
  });
});

describe('minimum cut of a grid', () => {
  // `cutGraph` is held against brute force above.
  it('is the cut of the same graph, also when the grid is cut again with other terminals', () => {
    const width = 7;
    const height = 5;
    const n = width * height;
    const terminals = fc.array(fc.integer({ min: -30, max: 30 }), { minLength: n, maxLength: n });
    const capacities = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: n * 8, maxLength: n * 8 });
    fc.assert(
      fc.property(capacities, fc.array(terminals, { minLength: 1, maxLength: 4 }), (capacity, cuts) => {
        const grid = createFlowGrid(width, height);
        const edges: [number, number, number, number][] = [];
        for (let i = 0; i < n; i++) {
          const x = i % width;
          const y = Math.floor(i / width);
          for (let k = 0; k < 4; k++) {
            const nx = x + STEP_X[k]!;
            const ny = y + STEP_Y[k]!;
            if (nx < 0 || nx >= width || ny >= height) continue;
            const forth = capacity[i * 8 + k]!;
            const back = capacity[i * 8 + k + 4]!;
            grid.capacity[placeInGrid(grid, x, y) * 8 + k] = forth;
            grid.capacity[placeInGrid(grid, nx, ny) * 8 + (k ^ 4)] = back;
            edges.push([i, ny * width + nx, forth, back]);
          }
        }
        const cut = createGridCutter(grid);
        for (const terminal of cuts) {
          const graph = createFlowGraph(n, edges.length);
          graph.terminal.set(terminal);
          for (const edge of edges) addFlowEdge(graph, ...edge);
          expect(cut(Int32Array.from(terminal))).toEqual(cutGraph(graph));
        }
      }),
      { numRuns: 200, seed: 11 },
    );
  });
});
