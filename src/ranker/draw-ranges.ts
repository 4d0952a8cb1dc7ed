import { drawBeta, fingerprint, seededUniform } from './draw-beta.ts';
import { type CauseSets, pickSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { meanTables, type Network } from './network.ts';
import { marginals, normalise, weighSets } from './weigh-sets.ts';

export interface Ranges {
  /** 10 % and 90 % point of each cause's chance. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Sets that the draws are made on: the heaviest ones up to this share of the posterior, and every single cause. */
const KEPT_MASS = 0.999;
const MOST_SETS = 1500;

interface Draws {
  readonly rate: readonly Float64Array[];
  readonly bySign: Map<number, readonly Float64Array[]>;
}
const CACHE = new WeakMap<Network, Map<number, Draws>>();

/** Common random numbers: the same draw of the same table entry whatever else is asked, so ranges move only with the evidence. */
function drawsOf(network: Network, count: number): Draws {
  const cached = CACHE.get(network) ?? new Map<number, Draws>();
  CACHE.set(network, cached);
  const known = cached.get(count);
  if (known) return known;
  const columns = network.causes.map((id, cause) => {
    const uniform = seededUniform(fingerprint(id));
    const { mean, observations } = network.rate[cause]!;
    return Array.from({ length: count }, () => drawBeta(mean, observations, uniform));
  });
  const rate = Array.from({ length: count }, (_, draw) =>
    Float64Array.from(columns, (column) => column[draw]!),
  );
  const draws: Draws = { rate, bySign: new Map() };
  cached.set(count, draws);
  return draws;
}

function signDraws(network: Network, draws: Draws, sign: number): readonly Float64Array[] {
  const known = draws.bySign.get(sign);
  if (known) return known;
  const width = network.signs.length;
  const columns = network.causes.map((id, cause) => {
    const mean = network.q[cause * width + sign]!;
    const observations = network.qObservations[cause * width + sign]!;
    const uniform = seededUniform(fingerprint(`${id} ${network.signs[sign]}`));
    return draws.rate.map(() => drawBeta(mean, observations, uniform));
  });
  const made = draws.rate.map((_, draw) => Float64Array.from(columns, (column) => column[draw]!));
  draws.bySign.set(sign, made);
  return made;
}

function heaviest(sets: CauseSets, posterior: Float64Array): CauseSets {
  const order = Array.from(posterior.keys())
    .filter((s) => posterior[s]! > 1e-9)
    .sort((a, b) => posterior[b]! - posterior[a]!);
  const places = new Set<number>();
  let mass = 0;
  for (const place of order) {
    if (mass >= KEPT_MASS || places.size >= MOST_SETS) break;
    places.add(place);
    mass += posterior[place]!;
  }
  for (let s = 0; s < sets.count; s++) if (sets.second[s] === sets.none) places.add(s);
  return pickSets(sets, [...places]);
}

const logit = (p: number): number => Math.log(p) - Math.log1p(-p);
const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** Linear interpolation between order statistics. */
function quantile(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const low = sorted[Math.floor(at)]!;
  return low + (sorted[Math.ceil(at)]! - low) * (at - Math.floor(at));
}

/**
 * How far each chance moves when the tables are drawn from their Beta distributions instead of taken at their means.
 * Draws are made on the heaviest sets and shifted on the logit scale by what the light ones change at the means. The
 * span is widened to include the chance at the means where skewed tables leave it outside.
 */
export function drawRanges(
  network: Network,
  sets: CauseSets,
  evidence: Evidence,
  posterior: Float64Array,
  count = 200,
): Ranges {
  const causeCount = network.causes.length;
  const kept = heaviest(sets, posterior);
  const full = marginals(causeCount, sets, posterior);
  const draws = drawsOf(network, count);
  const moving: Evidence = { ...evidence, factors: [], context: [] };
  const means = meanTables(network);
  // Leanings are not drawn: their share of the weights is the same in every draw.
  const still = weighSets(network, means, kept, { ...evidence, signs: [], broad: [] });
  const stillPrior = weighSets(network, means, kept, { signs: [], broad: [], factors: [], context: [] });
  const used = [
    ...new Set([
      ...evidence.signs.map(({ sign }) => sign),
      ...evidence.broad.flatMap(({ members }) => members),
    ]),
  ];
  const tablesOfSigns = used.map((sign) => [sign, signDraws(network, draws, sign)] as const);
  const q = Float64Array.from(network.q);
  const width = network.signs.length;
  const chances = Array.from({ length: causeCount }, () => new Float64Array(count));
  const middle = marginals(causeCount, kept, normalise(weighSets(network, means, kept, evidence)));
  for (let draw = 0; draw < count; draw++) {
    for (const [sign, table] of tablesOfSigns) {
      const row = table[draw]!;
      for (let cause = 0; cause < causeCount; cause++) q[cause * width + sign] = row[cause]!;
    }
    const logWeights = weighSets(network, { rate: draws.rate[draw]!, q }, kept, moving);
    for (let s = 0; s < kept.count; s++) logWeights[s]! += still[s]! - stillPrior[s]!;
    const drawn = marginals(causeCount, kept, normalise(logWeights));
    for (let cause = 0; cause < causeCount; cause++) chances[cause]![draw] = drawn[cause]!;
  }
  const low = new Float64Array(causeCount);
  const high = new Float64Array(causeCount);
  chances.forEach((column, cause) => {
    const p = full[cause]!;
    if (p <= 0 || p >= 1) {
      low[cause] = p;
      high[cause] = p;
      return;
    }
    const shift = logit(p) - logit(middle[cause]!);
    column.sort();
    low[cause] = Math.min(p, logistic(logit(quantile(column, 0.1)) + shift));
    high[cause] = Math.max(p, logistic(logit(quantile(column, 0.9)) + shift));
  });
  return { low, high };
}
