import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addFlowEdge, createFlowGraph, cutGraph } from '../../src/leaf/cut-graph.ts';

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
