import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { MARK_SCALES, NETWORK_MARKS } from '../../src/classifier/calibration.ts';
import { reportsOf } from '../../src/classifier/findings-from-network.ts';

type Row = [
  mark: string,
  set: string,
  there: 0 | 1,
  logOdds: number,
  cameraLogOdds: number,
  strangeness: number,
];
/** What nets that never saw a set said of its photographs, written by `training/signs-network/evaluate.ts`. */
const ROWS = JSON.parse(readFileSync(new URL('./left-out-answers.json', import.meta.url), 'utf8')) as Row[];
const ON = MARK_SCALES.filter(({ on }) => on).map(({ mark }) => mark as string);

/** The app's own report of one row. */
function reportOf([mark, , , z, , strangeness]: Row) {
  const logits = NETWORK_MARKS.map((own) => (own === mark ? z : 0));
  return reportsOf({ logits, strangeness, features: [] }).find((report) => report.mark === mark);
}
const rowsOf = (mark: string, set?: string): Row[] =>
  ROWS.filter((row) => row[0] === mark && (set === undefined || row[1] === set));

describe('reports on sets of photographs that the network never saw', () => {
  it('are few where it is sure, and fewer than one in twenty of these is wrong', () => {
    const sure = ROWS.filter((row) => ON.includes(row[0]) && (reportOf(row)?.chance ?? 0) >= 0.8);
    const wrong = sure.filter(([, , there]) => there === 0);
    expect(sure.length).toBeGreaterThan(100);
    expect(wrong.length).toBeLessThan(0.05 * sure.length);
  });

  it('come true at least as often as they say, at even odds', () => {
    // Leaves with and without a mark count alike, as the chances are meant. Bins of what was said against what was so.
    for (const [low, high] of [
      [0.5, 0.65],
      [0.65, 0.8],
      [0.8, 1],
    ] as const) {
      let [there, all] = [0, 0];
      for (const mark of ON) {
        const rows = rowsOf(mark);
        const count = rows.filter((row) => row[2] === 1).length;
        for (const row of rows) {
          const chance = reportOf(row)?.chance ?? 0.5;
          if (chance <= low || chance > high) continue;
          const weight = 0.5 / (row[2] === 1 ? count : rows.length - count);
          all += weight;
          there += row[2] * weight;
        }
      }
      expect(there / all, `said ${low} to ${high}`).toBeGreaterThan(low);
    }
  });

  it.each(ON)('take nothing from what the camera says of %s, on any set', (mark) => {
    const sets = [...new Set(rowsOf(mark).map((row) => row[1]))];
    expect(sets.length).toBeGreaterThan(1);
    for (const set of sets) {
      const rows = rowsOf(mark, set);
      const there = rows.filter((row) => row[2] === 1).length;
      const lossOf = (logOdds: (row: Row) => number): number =>
        rows.reduce((sum, row) => {
          const share = there === 0 ? 1 / rows.length : 0.5 / (row[2] === 1 ? there : rows.length - there);
          return sum + share * Math.log1p(Math.exp((row[2] === 1 ? -1 : 1) * logOdds(row)));
        }, 0);
      const camera = lossOf((row) => row[4]);
      const both = lossOf((row) => row[4] + Math.log(reportOf(row)?.ratio ?? 1));
      expect(both, set).toBeLessThan(camera + 0.01);
      if (there > 3) expect(both, set).toBeLessThan(camera - 0.01);
    }
  });
});
