import { betaBinomial } from './beta-functions.ts';
import {
  type EffectWeighed,
  midpoints,
  normalised,
  remembering,
  timesOver,
  weighEffect,
} from './weigh-effect.ts';

export interface PotCount {
  readonly seeds: number;
  readonly emerged: number;
}

/** How the hidden numbers are spread beforehand. */
export interface EmergencePrior {
  /** Mean share of seed that comes up in clean mix, and how many seeds' worth that is known. */
  readonly comesUp: number;
  readonly seedsWorth: number;
  /** Chance that the batch keeps no seed from coming up at all; else any loss is as likely as any other. */
  readonly noLoss: number;
  /** Correlation of the seeds of one pot, with weights. */
  readonly correlations: readonly (readonly [rho: number, weight: number])[];
}

/**
 * Seeds of one pot share its drying out and its slug: correlations between 0 and 0.3 (litters and plates in print have 0.01 to
 * 0.3: Crowder 1978, Williams 1975). Weights and the rest common practice, no source.
 */
export const EMERGENCE_PRIOR: EmergencePrior = {
  comesUp: 0.85,
  seedsWorth: 10,
  noLoss: 0.5,
  correlations: [
    [0, 0.35],
    [0.05, 0.3],
    [0.15, 0.2],
    [0.3, 0.15],
  ],
};

/** Emergence or growth below 80 % of the control marks immature compost (CCQC-2001, numbers from memory): a fifth lost is harm. */
export const HARMFUL_LOSS = 0.2;

const CHANCES = midpoints(0, 1, 24);
const LOSSES = [0, ...midpoints(0, 1, 25)] as const;

/** Pots that read the same count once, in one order. */
function tally(pots: readonly PotCount[]): [PotCount, times: number][] {
  const found = new Map<string, [PotCount, number]>();
  for (const pot of pots) {
    const key = `${pot.emerged}/${pot.seeds}`;
    const before = found.get(key);
    if (before) before[1] += 1;
    else found.set(key, [pot, 1]);
  }
  return [...found.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, times]) => times);
}

const keyOf = (tallied: readonly [PotCount, number][]): string =>
  tallied.map(([{ seeds, emerged }, times]) => `${emerged}/${seeds}x${times}`).join(' ');

/** Chances of each count at a grid of own chances, losses and correlations; worked out once for each number of seeds. */
type Table = readonly (readonly (readonly Float64Array[])[])[];
const tables = new Map<string, Table>();

function tableFor(seeds: number, correlations: EmergencePrior['correlations']): Table {
  const key = `${seeds} ${correlations.map(([rho]) => rho).join(' ')}`;
  const known = tables.get(key);
  if (known) return known;
  const made = correlations.map(([rho]) =>
    CHANCES.map((p) =>
      LOSSES.map((loss) =>
        Float64Array.from({ length: seeds + 1 }, (_, up) => betaBinomial(up, seeds, p * (1 - loss), rho)),
      ),
    ),
  );
  tables.set(key, made);
  return made;
}

/**
 * What the counts say of the share of seedlings that the batch keeps from coming up, 0 to 1 of those that clean mix would let
 * up. Beta-binomial in both arms, summed over a grid of the control's chance and the correlation within pots: exact up to the grid.
 */
export function weighEmergence(
  test: readonly PotCount[],
  control: readonly PotCount[],
  prior = EMERGENCE_PRIOR,
): EffectWeighed {
  const arms = [tally(test), tally(control)] as const;
  if (prior !== EMERGENCE_PRIOR) return weighCounts(...arms, prior);
  return remember(arms.map(keyOf).join('; '), () => weighCounts(...arms, prior));
}

const remember = remembering<EffectWeighed>();

function weighCounts(
  test: readonly [PotCount, number][],
  control: readonly [PotCount, number][],
  prior: EmergencePrior,
): EffectWeighed {
  const { correlations } = prior;
  const withTables = (tallied: typeof test) =>
    tallied.map(([{ seeds, emerged }, times]) => ({
      emerged,
      times,
      table: tableFor(seeds, correlations),
    }));
  const [tests, controls] = [withTables(test), withTables(control)];
  const [a, b] = [prior.comesUp * prior.seedsWorth, (1 - prior.comesUp) * prior.seedsWorth];
  const weights = normalised(CHANCES.map((p) => p ** (a - 1) * (1 - p) ** (b - 1)));
  const likelihood: number[] = LOSSES.map(() => 0);
  for (const [rho, [, share]] of correlations.entries())
    for (const [p, weight] of weights.entries()) {
      let ofControl = share * weight;
      for (const { table, emerged, times } of controls)
        ofControl *= timesOver(table[rho]![p]![0]![emerged]!, times);
      const rows = tests.map(({ table, emerged, times }) => ({ row: table[rho]![p]!, emerged, times }));
      for (let loss = 0; loss < LOSSES.length; loss++) {
        let all = ofControl;
        for (const { row, emerged, times } of rows) all *= timesOver(row[loss]![emerged]!, times);
        likelihood[loss]! += all;
      }
    }
  const slab = (1 - prior.noLoss) / (LOSSES.length - 1);
  return weighEffect(
    { values: LOSSES, prior: LOSSES.map((_, at) => (at === 0 ? prior.noLoss : slab)), likelihood },
    HARMFUL_LOSS,
  );
}
