import { type BlockValues, blockMeans, welch } from '../../../src/compare/side-by-side/estimate-shift.ts';
import { readTrial, TRIAL_LEVEL, type TrialQuestion } from '../../../src/compare/side-by-side/read-trial.ts';
import { tQuantile } from '../../../src/compare/side-by-side/t-distribution.ts';
import type { Trial, TrialReading, TrialUnit } from '../../../src/compare/side-by-side/trial.ts';
import { seededRandom } from '../../../src/leaf/draw-leaf.ts';

/**
 * How made-up units differ by themselves. All have mean or centre 100; `bad` is normal with one unit at a fifth of its
 * value, `typed` with one typed ten times too large.
 */
export const SHAPES = ['normal', 'skewed', 'bad', 'typed', 'counts', 'unequal'] as const;
export type Shape = (typeof SHAPES)[number];

/** How a made-up trial is laid out. */
export interface MadeDesign {
  readonly name: string;
  readonly treatments: number;
  /** Blocks, each with so many of every treatment. */
  readonly blocks: number;
  readonly each: number;
  /** Standard deviation of what blocks add. */
  readonly blockSpread?: number;
  /** Whole beds: so many beds of each treatment with `each` plants, the beds differing by `bedSpread`. `blocks` is 1. */
  readonly bedsOfEach?: number;
  readonly bedSpread?: number;
  /** Blocks are seasons. */
  readonly seasons?: boolean;
}

const SPREAD = 25;

export interface Drawer {
  readonly uniform: () => number;
  readonly normal: () => number;
}

export function drawer(seed: number): Drawer {
  const uniform = seededRandom(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

/** One unit's value without the treatment. Skewed: lognormal with a coefficient of variation of a half. */
function drawValue({ normal, uniform }: Drawer, shape: Shape, treatment: number): number {
  if (shape === 'skewed') return 100 * Math.exp(Math.sqrt(Math.log(1.25)) * normal());
  if (shape === 'counts') {
    // Poisson with mean 6 by multiplying uniforms (Knuth).
    let count = -1;
    for (let product = 1; product > Math.exp(-6); product *= uniform()) count += 1;
    return count;
  }
  return 100 + SPREAD * (shape === 'unequal' && treatment > 0 ? 2 : 1) * normal();
}

/** Truth: how much each treatment adds to the first. Whole numbers, so that counts stay counts. */
const effectOf = (treatment: number): number => 10 * treatment;

/** A trial with its readings, from a made-up garden. */
export function drawTrial(
  design: MadeDesign,
  shape: Shape,
  drawn: Drawer,
  effect: (treatment: number) => number = effectOf,
): { readonly trial: Trial; readonly readings: TrialReading[] } {
  const treatments = Array.from({ length: design.treatments }, (_, i) => `t${i}`);
  const units: TrialUnit[] = [];
  const readings: TrialReading[] = [];
  const addUnit = (unit: Omit<TrialUnit, 'id'>, value: number): void => {
    const id = `u${units.length}`;
    units.push({ id, ...unit });
    readings.push({ unit: id, date: '2026-08-01', value });
  };
  const beds = design.bedsOfEach ?? 0;
  // Counts have a mean of 6 and stay whole, so what blocks and beds add is scaled and rounded.
  const added = (value: number): number => (shape === 'counts' ? Math.round(0.06 * value) : value);
  for (let block = 0; block < design.blocks; block += 1) {
    const shift = (design.blockSpread ?? 0) * drawn.normal();
    treatments.forEach((treatment, t) => {
      for (let bed = 0; bed < Math.max(1, beds); bed += 1) {
        const bedShift = beds ? (design.bedSpread ?? 0) * drawn.normal() : 0;
        for (let i = 0; i < design.each; i += 1)
          addUnit(
            {
              treatment,
              bed: beds ? `${treatment}-${bed}` : design.seasons ? 'bed' : `bed-${block}`,
              ...(design.seasons ? { season: `${2020 + block}` } : {}),
            },
            drawValue(drawn, shape, t) + effect(t) + added(shift + bedShift),
          );
      }
    });
  }
  if (shape === 'bad' || shape === 'typed') {
    const struck = Math.floor(drawn.uniform() * readings.length);
    readings[struck] = {
      ...readings[struck]!,
      value: readings[struck]!.value * (shape === 'bad' ? 0.2 : 10),
    };
  }
  // A photo measure without bounds carries any value; counts are counted by hand once nothing is below nought.
  const trial: Trial = {
    treatments,
    unit: 'plant',
    measure: { by: 'photo', measure: 'vein-contrast' },
    units,
  };
  return { trial, readings };
}

/** 20 % trimmed means with winsorised variances (Yuen 1974), to set beside. */
function yuen({ first, second }: BlockValues, level: number): readonly [number, number] {
  const side = (values: readonly number[]): { mean: number; d: number; h: number } => {
    const sorted = [...values].sort((a, b) => a - b);
    const g = Math.floor(0.2 * sorted.length);
    const h = sorted.length - 2 * g;
    const kept = sorted.slice(g, sorted.length - g);
    const pulled = sorted.map((v) => Math.min(Math.max(v, kept[0]!), kept.at(-1)!));
    const centre = pulled.reduce((a, b) => a + b, 0) / pulled.length;
    const squares = pulled.reduce((sum, v) => sum + (v - centre) ** 2, 0);
    return { mean: kept.reduce((a, b) => a + b, 0) / h, d: squares / (h * (h - 1)), h };
  };
  const [a, b] = [side(first), side(second)];
  const df = (a.d + b.d) ** 2 / (a.d ** 2 / (a.h - 1) + b.d ** 2 / (b.h - 1));
  const reach = Number.isFinite(df) ? tQuantile((1 + level) / 2, df) * Math.sqrt(a.d + b.d) : 0;
  return [b.mean - a.mean - reach, b.mean - a.mean + reach];
}

/** How often intervals held, and how wide they were. */
export interface Coverage {
  /** Share of trials in which all differences' intervals held the truth. */
  readonly held: number;
  /** Middle width of the first difference's interval. */
  readonly width: number;
  /** Where asked for, the same for t intervals (Welch, or blocks by least squares) and, without blocks, for trimmed means. */
  readonly tHeld?: number;
  readonly tWidth?: number;
  readonly trimmedHeld?: number;
  readonly trimmedWidth?: number;
  readonly runs: number;
}

const middle = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

/** Draws trials and reads them by the whole way. @param beside whether to try t and trimmed means too, which is slow */
export function simulateCoverage(
  design: MadeDesign,
  shape: Shape,
  runs: number,
  seed: number,
  beside = false,
): Coverage {
  const drawn = drawer(seed);
  const kept = { own: 0, t: 0, trimmed: 0 };
  const widths = { own: [] as number[], t: [] as number[], trimmed: [] as number[] };
  const pairs = (design.treatments * (design.treatments - 1)) / 2;
  const level = 1 - (1 - TRIAL_LEVEL) / pairs;
  const trims = beside && design.blocks === 1 && !design.bedsOfEach && design.each >= 2;
  for (let run = 0; run < runs; run += 1) {
    const { trial, readings } = drawTrial(design, shape, drawn);
    const result = readTrial(trial, readings);
    const sound = { own: true, t: true, trimmed: true };
    result.differences.forEach(({ first, second, interval }, i) => {
      const truth = effectOf(Number(second.slice(1))) - effectOf(Number(first.slice(1)));
      const judge = (which: 'own' | 't' | 'trimmed', low: number, high: number): void => {
        // Rounding in the last place must not decide where values are whole numbers.
        if (low > truth + 1e-9 || high < truth - 1e-9) sound[which] = false;
        if (i === 0) widths[which].push(high - low);
      };
      judge('own', interval?.low ?? -Infinity, interval?.high ?? Infinity);
      if (!beside) return;
      const groups = new Map<string, { first: number[]; second: number[] }>();
      for (const { treatment, value, block } of result.points) {
        const group = groups.get(block) ?? { first: [], second: [] };
        groups.set(block, group);
        if (treatment === first) group.first.push(value);
        if (treatment === second) group.second.push(value);
      }
      const blocks = [...groups.values()];
      const means = blocks.length === 1 ? welch(blocks[0]!) : blockMeans(blocks);
      const reach = means ? tQuantile((1 + level) / 2, means.df) * means.se : Infinity;
      judge('t', (means?.estimate ?? 0) - reach, (means?.estimate ?? 0) + reach);
      if (trims) judge('trimmed', ...yuen(blocks[0]!, level));
    });
    for (const which of ['own', 't', 'trimmed'] as const) if (sound[which]) kept[which] += 1;
  }
  return {
    held: kept.own / runs,
    width: middle(widths.own),
    ...(beside ? { tHeld: kept.t / runs, tWidth: middle(widths.t) } : {}),
    ...(trims ? { trimmedHeld: kept.trimmed / runs, trimmedWidth: middle(widths.trimmed) } : {}),
    runs,
  };
}

/** Share of made-up normal trials whose first difference is seen. @param difference as a share of the mean, spread a quarter of it */
export function simulateChance(design: MadeDesign, difference: number, runs: number, seed: number): number {
  const drawn = drawer(seed);
  let seen = 0;
  for (let run = 0; run < runs; run += 1) {
    const { trial, readings } = drawTrial(design, 'normal', drawn, (t) => (t === 1 ? 100 * difference : 0));
    const question: TrialQuestion = {};
    const [found] = readTrial(trial, readings, question).differences;
    if (found?.word === 'more' || found?.word === 'less') seen += 1;
  }
  return seen / runs;
}

export const RANDOM = (each: number, treatments = 2): MadeDesign => ({
  name: `${treatments} treatments at random, ${each} units each`,
  treatments,
  blocks: 1,
  each,
});
export const PAIRS = (blocks: number, treatments = 2): MadeDesign => ({
  name: `${blocks} ${treatments === 2 ? 'pairs' : `blocks of ${treatments}`}`,
  treatments,
  blocks,
  each: 1,
  blockSpread: 25,
});
export const BEDS = (bedsOfEach: number): MadeDesign => ({
  name: `whole beds, ${bedsOfEach} a side with 5 plants each`,
  treatments: 2,
  blocks: 1,
  each: 5,
  bedsOfEach,
  bedSpread: 15,
});
export const DESIGNS: readonly MadeDesign[] = [
  RANDOM(3),
  RANDOM(4),
  RANDOM(5),
  RANDOM(6),
  RANDOM(8),
  RANDOM(12),
  PAIRS(3),
  PAIRS(5),
  PAIRS(8),
  PAIRS(12),
  { name: '3 blocks with 2 of each', treatments: 2, blocks: 3, each: 2, blockSpread: 25 },
  { name: '3 seasons with 4 of each', treatments: 2, blocks: 3, each: 4, blockSpread: 40, seasons: true },
  RANDOM(3, 3),
  RANDOM(5, 3),
  RANDOM(8, 4),
  PAIRS(8, 3),
  BEDS(1),
  BEDS(2),
  BEDS(3),
  BEDS(4),
];
