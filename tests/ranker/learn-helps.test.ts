import { describe, expect, it } from 'vitest';
import { drawBeta, seededUniform } from '../../src/ranker/draw-beta.ts';
import { countOutcomes, gardenOdds, type SettledCase, shareOutOnce } from '../../src/ranker/learn-rates.ts';
import type { CauseId, CropId } from '../../src/signs/vocabulary.ts';
import { knowledgeModel } from '../../src/triage.ts';

/**
 * Made-up gardens whose own rates are known: does what they taught foretell their next year better than the table does?
 * Gardens differ by a factor on every cause, drawn with mean 1; `spread` is its standard deviation.
 */
const model = knowledgeModel();
const sharesOf = shareOutOnce(model);
const CROPS: readonly CropId[] = ['kale', 'tomato', 'lettuce', 'potato', 'leek', 'courgette'];
const SEASONS = ['spring', 'summer', 'autumn'] as const;
const A_YEAR = 8;
const YEARS = 5;
const GARDENS = 60;

interface Drawn extends SettledCase {
  readonly index: number;
}

function pick(weights: Float64Array, uniform: () => number): number {
  let left = uniform() * weights.reduce((sum, weight) => sum + weight, 0);
  for (let i = 0; i < weights.length; i++) {
    left -= weights[i]!;
    if (left <= 0) return i;
  }
  return weights.length - 1;
}

/** A factor with mean 1 and the wanted standard deviation: a Beta scaled up, so that it can be several times 1. */
function factor(spread: number, uniform: () => number): number {
  if (spread === 0) return 1;
  const mean = 0.05;
  // Variance of a Beta over its squared mean is (1 − mean) / (mean · (observations + 1)).
  return drawBeta(mean, (1 - mean) / (mean * spread ** 2) - 1, uniform) / mean;
}

function drawGarden(spread: number, seed: number): Drawn[] {
  const uniform = seededUniform(seed);
  const own = Float64Array.from(model.causes, () => factor(spread, uniform));
  return Array.from({ length: A_YEAR * YEARS }, (_, n) => {
    const crop = CROPS[Math.floor(uniform() * CROPS.length)]!;
    const season = SEASONS[Math.floor(uniform() * SEASONS.length)]!;
    const here = sharesOf(crop, season).map((share, cause) => share * own[cause]!);
    const index = pick(here, uniform);
    return {
      id: `${n}`,
      index,
      causes: [model.causes[index]!.id as CauseId],
      sureness: 0.9,
      date: `${2021 + Math.floor(n / A_YEAR)}-06-01`,
      crop,
      season,
    };
  });
}

/** Mean −ln of the share given to what came true in the last year, by the table and by the garden; nats. */
function lossesOf(spread: number): { readonly table: number; readonly garden: number } {
  let table = 0;
  let garden = 0;
  for (let seed = 1; seed <= GARDENS; seed++) {
    const cases = drawGarden(spread, seed);
    const past = cases.slice(0, -A_YEAR);
    const odds = gardenOdds(model, countOutcomes(model, past, '2025-04-01'));
    for (const { index, crop, season } of cases.slice(-A_YEAR)) {
      const share = sharesOf(crop, season);
      const moved = share.map((one, cause) => one * odds[cause]!);
      table -= Math.log(share[index]!);
      garden -= Math.log(moved[index]! / moved.reduce((sum, one) => sum + one, 0));
    }
  }
  return { table: table / (GARDENS * A_YEAR), garden: garden / (GARDENS * A_YEAR) };
}

describe('learning from a garden', () => {
  it('foretells the next year better where gardens differ', () => {
    const { table, garden } = lossesOf(1.2);
    // Measured: 3.603 by the table, 3.427 as learnt.
    expect(garden).toBeLessThan(table - 0.1);
  });

  it('does little harm where a garden is like any other', () => {
    const { table, garden } = lossesOf(0);
    // Measured: 3.588 by the table, 3.613 as learnt: what learning costs where there is nothing to learn.
    expect(garden).toBeLessThan(table + 0.05);
  });
});
