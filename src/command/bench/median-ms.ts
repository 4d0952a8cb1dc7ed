/** One line of the benchmark. */
export interface BenchRow {
  readonly name: string;
  readonly ms: number;
  readonly note?: string;
}

/** Median time of some runs after two warm-up runs, in milliseconds. */
export function medianMs(work: () => unknown, runs = 7): number {
  work();
  work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}
