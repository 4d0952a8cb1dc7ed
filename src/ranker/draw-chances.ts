import type { BroadComponent } from './broad-components.ts';
import { signsOfComponent } from './broad-components.ts';
import type { TableDraws } from './draw-tables.ts';
import { type CauseSets, enumerateSets } from './enumerate-sets.ts';
import type { Evidence } from './evidence.ts';
import { absentRow, formOfReport, scalePair } from './likelihoods.ts';
import { touchedBySigns, WIDE } from './local-likelihoods.ts';
import { layOut, multiplyBlock, multiplyNarrow, type Narrow, type NarrowReport } from './narrow-reports.ts';
import type { Network, Tables } from './network.ts';
import { partReports, reportsBySign } from './part-reports.ts';
import { raise } from './raise.ts';
import { logLikelihoodOfSetting, marginals, normalise, oddsOf, weighSets } from './weigh-sets.ts';

/*
 * Chances under many draws of the tables.
 *
 * Sets are gone through in blocks that share their first two causes, the likelier causes first. What few causes can show is
 * taken apart into factors (`narrow-reports.ts`) that leave most triples untouched; what nearly every cause can show, and
 * what ties several signs together, is multiplied in set by set. Blocks whose sets together hold next to nothing at the
 * means of the tables are left out of the draws.
 */

/** Blocks are left out of the draws as long as together they hold no more than this of the posterior. */
export const LEFT_OUT = 1e-6;

/**
 * A block of sets that share their first two causes i < j, by place in `alive`: the pair itself at [j], the triples at
 * [l > j]. Single causes are blocks of their own, with j one past the last place, where every row holds a neutral 1.
 */
type MultiplyBlock = (i: number, j: number, block: Float64Array) => void;

/** What is known of all sets beside the narrow reports; prepared anew for every draw. */
interface Wide {
  readonly prepare: (tables: Tables) => void;
  readonly multiply: MultiplyBlock;
}

/** A row with the neutral place at its end. */
function rowOf(network: Network, tables: Tables, sets: CauseSets, signs: readonly number[]): Float64Array {
  const row = new Float64Array(sets.alive.length + 1);
  row.set(absentRow(network, tables, sets, ...signs));
  row[row.length - 1] = 1;
  return row;
}

interface Form {
  readonly base: number;
  readonly times: number;
}

/** Multiply the sets of a block by `base + times × ∏ row` over their causes. */
function multiplyRow(
  row: Float64Array,
  { base, times }: Form,
  i: number,
  j: number,
  block: Float64Array,
): void {
  const two = times * row[i]! * row[j]!;
  block[j]! *= base + two;
  for (let l = j + 1; l < row.length - 1; l++) block[l]! *= base + two * row[l]!;
}

/** Add `times × ∏ row` over the causes of each set of a block. */
function addRow(row: Float64Array, times: number, i: number, j: number, block: Float64Array): void {
  const two = times * row[i]! * row[j]!;
  block[j]! += two;
  for (let l = j + 1; l < row.length - 1; l++) block[l]! += two * row[l]!;
}

function wideReport(network: Network, sets: CauseSets, { signs, ...form }: Omit<NarrowReport, 'at'>): Wide {
  let row: Float64Array = new Float64Array(0);
  return {
    prepare: (tables) => {
      row = rowOf(network, tables, sets, signs);
    },
    multiply: (i, j, block) => multiplyRow(row, form, i, j, block),
  };
}

/** The sum of `jointLikelihood`, block by block. */
function tiedReports(network: Network, sets: CauseSets, component: BroadComponent, evidence: Evidence): Wide {
  const reports = reportsBySign(evidence);
  const coefficients = component.coefficients[component.reports.length - 1]!;
  const reported = signsOfComponent(component)
    .filter((sign) => reports.has(sign))
    .map((sign, at) => ({ at, sign, form: formOfReport(network, scalePair(reports.get(sign)!), [sign]) }));
  const terms = component.unions.map((union, subset) => ({
    union,
    times: union.reduce((product, sign) => {
      const report = reports.get(sign);
      return product * (1 - network.leak[sign]!) * (report ? scalePair(report).ifAbsent : 1);
    }, coefficients[subset]!),
    others: reported.filter(({ sign }) => !union.includes(sign)),
  }));
  let rows: Float64Array[] = [];
  let own: Float64Array[] = [];
  const sum = new Float64Array(sets.alive.length + 1);
  const term = new Float64Array(sum.length);
  return {
    prepare: (tables) => {
      rows = terms.map(({ union }) => rowOf(network, tables, sets, union));
      own = reported.map(({ sign }) => rowOf(network, tables, sets, [sign]));
    },
    multiply: (i, j, block) => {
      const end = Math.max(sets.alive.length, j + 1);
      sum.fill(0, j, end);
      for (let t = 0; t < terms.length; t++) {
        const { times, others } = terms[t]!;
        if (others.length === 0) {
          addRow(rows[t]!, times, i, j, sum);
          continue;
        }
        term.fill(0, j, end);
        addRow(rows[t]!, times, i, j, term);
        for (let m = 0; m < others.length; m++) multiplyRow(own[others[m]!.at]!, others[m]!.form, i, j, term);
        for (let l = j; l < end; l++) sum[l]! += term[l]!;
      }
      for (let l = j; l < end; l++) block[l]! *= sum[l]!;
    },
  };
}

function prepareReports(
  network: Network,
  sets: CauseSets,
  evidence: Evidence,
): { readonly narrow: Narrow; readonly wide: readonly Wide[] } {
  const narrow: NarrowReport[] = [];
  const wide: Wide[] = [];
  const { lone, tied } = partReports(evidence);
  for (const { report, signs } of lone) {
    const { at } = touchedBySigns(network, sets, signs);
    const form = formOfReport(network, report, signs);
    // Factors are ratios: where a report can be impossible there is nothing to divide by.
    if (at.length < Math.min(WIDE, sets.alive.length) && report.ifPresent > 0 && report.ifAbsent > 0)
      narrow.push({ at, signs, ...form });
    else wide.push(wideReport(network, sets, { signs, ...form }));
  }
  for (const component of tied) wide.push(tiedReports(network, sets, component, evidence));
  return { narrow: layOut(sets, narrow), wide };
}

/** What no draw changes: crop, season and settings. */
function stillWeights(network: Network, sets: CauseSets, evidence: Evidence): Float64Array {
  const power = network.evidenceWeight.setting;
  return logLikelihoodOfSetting(network, sets, evidence).map((log) => Math.exp(power * log));
}

/** Weighs all sets under one table after another. */
interface Weigher {
  /**
   * @param skip blocks to leave out, `[i × alive.length + j]`
   * @param mass the weight of all sets that hold each cause, by place in `sets.alive`; replaced
   * @param blocks where given, replaced by the weight of each block
   * @returns the sum of all weights
   */
  weigh(tables: Tables, skip: Uint8Array, mass: Float64Array, blocks?: Float64Array): number;
}

function prepareWeigher(network: Network, sets: CauseSets, evidence: Evidence): Weigher {
  const { furtherCause, evidenceWeight } = network;
  const n = sets.alive.length;
  const { narrow, wide } = prepareReports(network, sets, evidence);
  const still = stillWeights(network, sets, evidence);
  const odds = new Float64Array(n);
  const single = new Float64Array(n);
  const pair = new Float64Array(n * n);
  const besideFirst = new Float64Array(n);
  const block = new Float64Array(n + 1);
  const power = evidenceWeight.signs;
  const weighSingle = (i: number): number => {
    block[n] = single[i]!;
    for (const { multiply } of wide) multiply(i, n, block);
    raise(block, power, n, n + 1);
    return block[n]! * odds[i]! * still[sets.singleAt[i]!]!;
  };
  const weighBlock = (i: number, j: number, mass: Float64Array): number => {
    const at = sets.pairAt[i * n + j]! - j;
    const row = j * n;
    const two = single[i]! * besideFirst[j]!;
    block[j] = two;
    for (let l = j + 1; l < n; l++) block[l] = two * besideFirst[l]! * pair[row + l]!;
    multiplyBlock(narrow, i * n + j, block);
    for (const { multiply } of wide) multiply(i, j, block);
    raise(block, power, j, n);
    const prior = odds[i]! * odds[j]! * furtherCause;
    const further = prior * furtherCause;
    let sum = block[j]! * prior * still[at + j]!;
    for (let l = j + 1; l < n; l++) {
      const weight = block[l]! * further * odds[l]! * still[at + l]!;
      mass[l]! += weight;
      sum += weight;
    }
    mass[j]! += sum;
    return sum;
  };
  return {
    weigh(tables, skip, mass, blocks) {
      for (let i = 0; i < n; i++) odds[i] = oddsOf(tables.rate[sets.alive[i]!]!);
      single.fill(1);
      pair.fill(1);
      mass.fill(0);
      multiplyNarrow(network, tables, sets, narrow, single, pair);
      for (const { prepare } of wide) prepare(tables);
      let total = 0;
      for (let i = 0; i < n; i++) {
        let ofFirst = weighSingle(i);
        for (let l = i + 1; l < n; l++) besideFirst[l] = single[l]! * pair[i * n + l]!;
        for (let j = i + 1; j < n; j++) {
          if (skip[i * n + j]) continue;
          const sum = weighBlock(i, j, mass);
          if (blocks) blocks[i * n + j] = sum;
          ofFirst += sum;
        }
        mass[i]! += ofFirst;
        total += ofFirst;
      }
      return total;
    },
  };
}

/** The lightest blocks at the means of the tables, as long as together they hold no more than a share of all. */
function lightBlocks(blocks: Float64Array, total: number, share: number): Uint8Array {
  const skip = new Uint8Array(blocks.length);
  const lightest = Uint32Array.from(blocks.keys()).sort((a, b) => blocks[a]! - blocks[b]!);
  let left = share * total;
  for (const at of lightest) {
    left -= blocks[at]!;
    if (!(left >= 0)) break;
    skip[at] = 1;
  }
  return skip;
}

/** Beyond these sums products come near the end of the range of numbers, and logarithms have to be taken. */
const [LEAST_TOTAL, MOST_TOTAL] = [1e-200, 1e200];

/**
 * Chance of every cause under each draw of the tables.
 * @param chancesNow P(cause) at the means of the tables, by index of the network: the likelier causes go first
 * @param leftOut share of the posterior whose sets may be left out of the draws; 0 goes through all sets
 * @returns `[cause][draw]`
 */
export function drawChances(
  network: Network,
  { alive }: CauseSets,
  evidence: Evidence,
  chancesNow: Float64Array,
  draws: TableDraws,
  leftOut = LEFT_OUT,
): Float64Array[] {
  const likelierFirst = [...alive].sort((a, b) => chancesNow[b]! - chancesNow[a]! || a - b);
  const sets = enumerateSets(network.causes.length, likelierFirst);
  const n = likelierFirst.length;
  const weigher = prepareWeigher(network, sets, evidence);
  const mass = new Float64Array(n);
  const blocks = new Float64Array(n * n);
  const totalNow = weigher.weigh(draws.means, new Uint8Array(n * n), mass, blocks);
  const skip = lightBlocks(blocks, totalNow, leftOut);
  const chances = network.causes.map(() => new Float64Array(draws.count));
  for (let draw = 0; draw < draws.count; draw++) {
    const tables = draws.tables(draw);
    const total = weigher.weigh(tables, skip, mass);
    if (total > LEAST_TOTAL && total < MOST_TOTAL) {
      for (let i = 0; i < n; i++) chances[likelierFirst[i]!]![draw] = mass[i]! / total;
    } else {
      const posterior = normalise(weighSets(network, tables, sets, evidence));
      marginals(network.causes.length, sets, posterior).forEach((p, cause) => {
        chances[cause]![draw] = p;
      });
    }
  }
  return chances;
}
