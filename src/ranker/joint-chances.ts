import type { CauseSets } from './enumerate-sets.ts';
import type { LocalFunction } from './local-likelihoods.ts';

/**
 * P(causes i, j and l all act), `[(i × n + j) × n + l]` by place in `sets.alive`, for i ≤ j and any l; causes may repeat,
 * so that `[i, i, i]` is the chance of one cause and `[i, i, l]` that of a pair.
 */
export interface JointChances {
  readonly sets: CauseSets;
  /** P(set), by place. */
  readonly posterior: Float64Array;
  readonly chances: Float64Array;
  /** The sum over all sets. */
  readonly total: number;
}

/**
 * Sum the chances of sets by the causes that they hold together.
 * @param posterior by place of the set
 * @param chances room for n³ numbers, to be used again
 */
export function sumJointChances(
  sets: CauseSets,
  posterior: Float64Array,
  chances: Float64Array = new Float64Array(sets.alive.length ** 3),
): JointChances {
  const n = sets.alive.length;
  const { most } = sets;
  const single = new Float64Array(n);
  const pair = new Float64Array(n * n);
  let at = 0;
  let total = sets.empty ? posterior[at++]! : 0;
  for (let i = 0; i < n; i++) {
    let ofFirst = posterior[at++]!;
    for (let j = i + 1; j < n && most > 1; j++) {
      let ofPair = posterior[at++]!;
      for (let l = j + 1; l < n && most > 2; l++) {
        const p = posterior[at++]!;
        chances[(i * n + j) * n + l] = p;
        chances[(i * n + l) * n + j] = p;
        chances[(j * n + l) * n + i] = p;
        pair[i * n + l]! += p;
        pair[j * n + l]! += p;
        single[l]! += p;
        ofPair += p;
      }
      pair[i * n + j]! += ofPair;
      single[j]! += ofPair;
      ofFirst += ofPair;
    }
    single[i]! += ofFirst;
    total += ofFirst;
  }
  for (let i = 0; i < n; i++) {
    chances[(i * n + i) * n + i] = single[i]!;
    for (let j = i + 1; j < n; j++) {
      const both = pair[i * n + j]!;
      chances[(i * n + j) * n + i] = both;
      chances[(i * n + j) * n + j] = both;
      chances[(i * n + i) * n + j] = both;
      chances[(j * n + j) * n + i] = both;
    }
  }
  return { sets, posterior, chances, total };
}

/**
 * Sum of P(set) × value over the sets that hold each cause, exactly.
 *
 * A function that only a few causes touch is a sum of what each of them adds alone, what each pair adds beyond that, and what
 * each triple adds beyond its pairs. So it need not be summed over all sets: the joint chances of these few causes, with
 * each cause in turn, are enough.
 * @param byCause by place in `sets.alive`; replaced
 * @param negligible pairs that act together with no more than this chance are passed over. The result is then off by less
 *   than four times that chance for each such pair, times the largest value.
 * @returns the sum over all sets
 */
export function expectByCause(
  joint: JointChances,
  local: LocalFunction,
  byCause: Float64Array,
  negligible = 0,
): number {
  if (local.at.length === joint.sets.alive.length) return expectOverAll(joint, local.values, byCause);
  const { chances, total } = joint;
  const { at, subsets, values } = local;
  const n = byCause.length;
  const k = at.length;
  const none = values[0]!;
  let sum = none * total;
  for (let c = 0; c < n; c++) byCause[c] = none * chances[(c * n + c) * n + c]!;
  for (let i = 0; i < k; i++) {
    const one = values[subsets.singleAt[i]!]!;
    const alone = (at[i]! * n + at[i]!) * n;
    addRow(byCause, one - none, chances, alone);
    sum += (one - none) * chances[alone + at[i]!]!;
    for (let j = i + 1; j < k && subsets.most > 1; j++) {
      const other = values[subsets.singleAt[j]!]!;
      const both = values[subsets.pairAt[i * k + j]!]!;
      const row = (at[i]! * n + at[j]!) * n;
      if (chances[row + at[i]!]! <= negligible) continue;
      const beyond = both - one - other + none;
      addRow(byCause, beyond, chances, row);
      sum += beyond * chances[row + at[i]!]!;
      if (subsets.most > 2) sum += addTriples(local, i, j, chances, row, byCause);
    }
  }
  return sum;
}

function addRow(byCause: Float64Array, times: number, chances: Float64Array, row: number): void {
  for (let c = 0; c < byCause.length; c++) byCause[c]! += times * chances[row + c]!;
}

/** What the triples of one block add, to each of their causes. */
function addTriples(
  { at, subsets, values }: LocalFunction,
  i: number,
  j: number,
  chances: Float64Array,
  row: number,
  byCause: Float64Array,
): number {
  const k = at.length;
  const { singleAt, pairAt } = subsets;
  const pair = pairAt[i * k + j]!;
  const rest = values[singleAt[i]!]! + values[singleAt[j]!]! - values[pair]! - values[0]!;
  let sum = 0;
  for (let l = j + 1; l < k; l++) {
    const beyond =
      values[pair + l - j]! -
      values[pairAt[i * k + l]!]! -
      values[pairAt[j * k + l]!]! +
      values[singleAt[l]!]! +
      rest;
    const added = beyond * chances[row + at[l]!]!;
    byCause[at[l]!]! += added;
    sum += added;
  }
  byCause[at[i]!]! += sum;
  byCause[at[j]!]! += sum;
  return sum;
}

/** The same for what nearly every cause touches: all sets, one after another. */
function expectOverAll(
  { sets: { most, empty }, posterior }: JointChances,
  values: Float64Array,
  byCause: Float64Array,
): number {
  const n = byCause.length;
  // The values are of all subsets, the empty one first.
  const shift = empty ? 0 : 1;
  let at = empty ? 1 : 0;
  let sum = empty ? posterior[0]! * values[0]! : 0;
  byCause.fill(0);
  for (let i = 0; i < n; i++) {
    let ofFirst = posterior[at]! * values[at + shift]!;
    at++;
    for (let j = i + 1; j < n && most > 1; j++) {
      let ofPair = posterior[at]! * values[at + shift]!;
      at++;
      for (let l = j + 1; l < n && most > 2; l++) {
        const added = posterior[at]! * values[at + shift]!;
        at++;
        byCause[l]! += added;
        ofPair += added;
      }
      byCause[j]! += ofPair;
      ofFirst += ofPair;
    }
    byCause[i]! += ofFirst;
    sum += ofFirst;
  }
  return sum;
}
