import { drawChances } from './draw-chances.ts';
import { drawTables } from './draw-tables.ts';
import type { CauseSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import type { Network } from './network.ts';
import { marginals } from './weigh-sets.ts';

export interface Ranges {
  /** 10 % and 90 % point of each cause's chance. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Linear interpolation between order statistics. */
function quantile(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const low = sorted[Math.floor(at)]!;
  return low + (sorted[Math.ceil(at)]! - low) * (at - Math.floor(at));
}

/**
 * How far each chance moves when the tables are drawn from their Beta distributions instead of taken at their means. The
 * span is widened to include the chance at the means where skewed tables leave it outside.
 */
export function drawRanges(
  network: Network,
  sets: CauseSets,
  evidence: Evidence,
  posterior: Float64Array,
  count = 200,
): Ranges {
  const low = marginals(network.causes.length, sets, posterior);
  const high = low.slice();
  const signs = [
    ...evidence.signs.map(({ sign }) => sign),
    ...evidence.broad.flatMap(({ members }) => members),
  ];
  const draws = drawTables(network, signs, count);
  drawChances(network, sets, evidence, low, draws).forEach((column, cause) => {
    const p = low[cause]!;
    if (p <= 0 || p >= 1) return;
    column.sort();
    low[cause] = Math.min(p, quantile(column, 0.1));
    high[cause] = Math.max(p, quantile(column, 0.9));
  });
  return { low, high };
}
