/**
 * Sets of one to three causes, in blocks: each cause is followed by its pairs, each pair by its triples. So all sets
 * that share their first two causes lie side by side, and a loop over them needs no list of members.
 */
export interface CauseSets {
  readonly count: number;
  /** The causes that the sets are made of, as indices of the network. */
  readonly alive: Uint8Array;
  /** The largest set. */
  readonly most: 1 | 2 | 3;
  /** Whether the empty set is listed; it then comes first. */
  readonly empty: boolean;
  /** Place of each single cause, by its place in `alive`. */
  readonly singleAt: Uint32Array;
  /**
   * Place of each pair, `[i × alive.length + j]` for places i < j in `alive`. The triple with l > j lies l − j further on.
   */
  readonly pairAt: Uint32Array;
}

/**
 * All sets of at most three of the given causes.
 * @param causeCount number of causes of the network, at most 254
 * @param alive indices of the causes that are not ruled out
 * @param options.most the largest set
 * @param options.empty whether the empty set counts; by default not: somebody stopped because something looks wrong
 */
export function enumerateSets(
  causeCount: number,
  alive: ArrayLike<number>,
  { most = 3, empty = false }: { readonly most?: 1 | 2 | 3; readonly empty?: boolean } = {},
): CauseSets {
  if (causeCount > 254) throw new RangeError(`expected at most 254 causes, got ${causeCount}`);
  const n = alive.length;
  const singleAt = new Uint32Array(n);
  const pairAt = new Uint32Array(most >= 2 ? n * n : 0);
  let at = empty ? 1 : 0;
  for (let i = 0; i < n; i++) {
    singleAt[i] = at++;
    if (most < 2) continue;
    for (let j = i + 1; j < n; j++) {
      pairAt[i * n + j] = at++;
      if (most === 3) at += n - 1 - j;
    }
  }
  return { count: at, alive: Uint8Array.from(alive), most, empty, singleAt, pairAt };
}

/** Visit every set but the empty one with the places of its causes in `alive`; −1 where it has fewer than three. */
export function eachSet(
  { alive, most, singleAt, pairAt }: CauseSets,
  visit: (place: number, i: number, j: number, l: number) => void,
): void {
  const n = alive.length;
  for (let i = 0; i < n; i++) {
    visit(singleAt[i]!, i, -1, -1);
    if (most < 2) continue;
    for (let j = i + 1; j < n; j++) {
      const pair = pairAt[i * n + j]!;
      visit(pair, i, j, -1);
      if (most === 3) for (let l = j + 1; l < n; l++) visit(pair + l - j, i, j, l);
    }
  }
}

/** The causes of every set, by its place, as indices of the network. */
export function listSets(sets: CauseSets): number[][] {
  const all: number[][] = Array.from({ length: sets.count }, () => []);
  eachSet(sets, (place, ...members) => {
    all[place] = members.filter((at) => at >= 0).map((at) => sets.alive[at]!);
  });
  return all;
}
