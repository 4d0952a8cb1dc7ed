import type { CauseSets } from './enumerate-sets.ts';
import type { Network, Tables } from './network.ts';

/**
 * Reports on what few causes can show, multiplied into the weights of all sets without going through all sets.
 *
 * The weight of a set is taken apart into factors, f(a) f(b) f(c) · f(a,b) f(a,c) f(b,c) · f(a,b,c). A sign that only one
 * cause of a set can show adds to that cause's factor; one that two can show adds a factor for the pair (what they do
 * together over what each does alone); and only where three can show it does the triple get a factor of its own:
 *   P(abc) P(a) P(b) P(c) ÷ (P(∅) P(ab) P(ac) P(bc)), where P(…) is the chance of the report.
 * Most signs are shown by few causes, so in most blocks there is little to do. Exact but for a factor common to all sets.
 */
export interface NarrowReport {
  /** Places in `sets.alive` of the causes that can show it, ascending. */
  readonly at: Uint8Array;
  readonly signs: readonly number[];
  /** P(report | set) is `base + times × ∏ (1 − q)`; positive for every set. */
  readonly base: number;
  readonly times: number;
}

/** Tables of all narrow reports, one after another: rows by cause, squares by pair `[i × k + j]`, i < j. */
export interface Narrow {
  readonly reports: readonly NarrowReport[];
  /** Where each report's row and square begin. */
  readonly rowAt: Uint32Array;
  readonly squareAt: Uint32Array;
  readonly at: Uint8Array;
  /** ∏ (1 − q). */
  readonly row: Float64Array;
  /** P(a), and one over it. */
  readonly own: Float64Array;
  readonly inverseOwn: Float64Array;
  /** 1 ÷ P(ab), and P(b) ÷ P(ab) for the later cause b. */
  readonly inverse: Float64Array;
  readonly beside: Float64Array;
  /** Where the entries of each block begin in `entries`. */
  readonly blockAt: Uint32Array;
  /**
   * Which reports touch both causes of a block and a later one, six numbers each: the report; the places of both causes
   * and the end in the rows; and what leads from a place in the rows to its pair with either cause in the squares.
   */
  readonly entries: Int32Array;
}

export function layOut({ alive }: CauseSets, reports: readonly NarrowReport[]): Narrow {
  const n = alive.length;
  const rowAt = new Uint32Array(reports.length);
  const squareAt = new Uint32Array(reports.length);
  const byBlock: number[][] = Array.from({ length: n * n }, () => []);
  let rows = 0;
  let squares = 0;
  reports.forEach(({ at }, f) => {
    const k = at.length;
    rowAt[f] = rows;
    squareAt[f] = squares;
    for (let i = 0; i < k - 2; i++) {
      for (let j = i + 1; j < k - 1; j++) {
        const square = squares - rows;
        byBlock[at[i]! * n + at[j]!]!.push(f, rows + i, rows + j, rows + k, square + i * k, square + j * k);
      }
    }
    rows += k;
    squares += k * k;
  });
  const blockAt = new Uint32Array(n * n + 1);
  byBlock.forEach((entries, block) => {
    blockAt[block + 1] = blockAt[block]! + entries.length;
  });
  return {
    reports,
    rowAt,
    squareAt,
    at: Uint8Array.from(reports.flatMap(({ at }) => [...at])),
    row: new Float64Array(rows),
    own: new Float64Array(rows),
    inverseOwn: new Float64Array(rows),
    inverse: new Float64Array(squares),
    beside: new Float64Array(squares),
    blockAt,
    entries: Int32Array.from(byBlock.flat()),
  };
}

/**
 * Fill the tables of all reports and multiply their factors of single causes and of pairs in.
 * @param single by place in `sets.alive`
 * @param pair `[i × alive.length + j]` for places i < j
 */
export function multiplyNarrow(
  network: Network,
  tables: Tables,
  sets: CauseSets,
  narrow: Narrow,
  single: Float64Array,
  pair: Float64Array,
): void {
  for (let f = 0; f < narrow.reports.length; f++) {
    fillRow(network, tables, sets, narrow, f, single);
    fillSquare(sets.alive.length, narrow, f, pair);
  }
}

function fillRow(
  network: Network,
  { q }: Tables,
  { alive }: CauseSets,
  { reports, rowAt, row, own, inverseOwn }: Narrow,
  f: number,
  single: Float64Array,
): void {
  const { at, signs, base, times } = reports[f]!;
  const width = network.signs.length;
  const first = rowAt[f]!;
  for (let i = 0; i < at.length; i++) {
    const entry = alive[at[i]!]! * width;
    let absent = 1;
    for (let m = 0; m < signs.length; m++) absent *= 1 - q[entry + signs[m]!]!;
    const chance = base + times * absent;
    row[first + i] = absent;
    own[first + i] = chance;
    inverseOwn[first + i] = 1 / chance;
    single[at[i]!]! *= chance / (base + times);
  }
}

function fillSquare(
  n: number,
  { reports, rowAt, squareAt, row, own, inverseOwn, inverse, beside }: Narrow,
  f: number,
  pair: Float64Array,
): void {
  const { at, base, times } = reports[f]!;
  const k = at.length;
  const first = rowAt[f]!;
  const square = squareAt[f]!;
  for (let i = 0; i < k; i++) {
    const one = times * row[first + i]!;
    const alone = (base + times) * inverseOwn[first + i]!;
    const pairRow = at[i]! * n;
    for (let j = i + 1; j < k; j++) {
      const both = base + one * row[first + j]!;
      const inverseBoth = 1 / both;
      inverse[square + i * k + j] = inverseBoth;
      beside[square + i * k + j] = own[first + j]! * inverseBoth;
      pair[pairRow + at[j]!]! *= alone * both * inverseOwn[first + j]!;
    }
  }
}

/** Multiply the factors of triples into one block, `block[l]` for the place l of the third cause. */
export function multiplyBlock(narrow: Narrow, at: number, block: Float64Array): void {
  const { reports, at: places, row, own, inverse, beside, blockAt, entries } = narrow;
  const end = blockAt[at + 1]!;
  for (let e = blockAt[at]!; e < end; e += 6) {
    const { base, times } = reports[entries[e]!]!;
    const i = entries[e + 1]!;
    const j = entries[e + 2]!;
    const last = entries[e + 3]!;
    const toFirst = entries[e + 4]!;
    const toSecond = entries[e + 5]!;
    const scale = (own[i]! * beside[toFirst + j]!) / (base + times);
    const constant = base * scale;
    const slope = times * row[i]! * row[j]! * scale;
    for (let l = j + 1; l < last; l++)
      block[places[l]!]! *= (constant + slope * row[l]!) * (beside[toFirst + l]! * inverse[toSecond + l]!);
  }
}
