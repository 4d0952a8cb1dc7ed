/**
 * Sets of one to three causes. Member slots that are not used hold `none`, the index one past the last cause, whose
 * row in every table is neutral; so every set is handled by the same three factors.
 */
export interface CauseSets {
  readonly count: number;
  readonly none: number;
  readonly first: Uint8Array;
  readonly second: Uint8Array;
  readonly third: Uint8Array;
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
  alive: readonly number[],
  { most = 3, empty = false }: { readonly most?: 1 | 2 | 3; readonly empty?: boolean } = {},
): CauseSets {
  if (causeCount > 254) throw new RangeError(`expected at most 254 causes, got ${causeCount}`);
  const n = alive.length;
  const pairs = most >= 2 ? (n * (n - 1)) / 2 : 0;
  const triples = most >= 3 ? (n * (n - 1) * (n - 2)) / 6 : 0;
  const count = (empty ? 1 : 0) + n + pairs + triples;
  const none = causeCount;
  const first = new Uint8Array(count).fill(none);
  const second = new Uint8Array(count).fill(none);
  const third = new Uint8Array(count).fill(none);
  let at = empty ? 1 : 0;
  for (let a = 0; a < n; a++) {
    first[at++] = alive[a]!;
    if (most < 2) continue;
    for (let b = a + 1; b < n; b++) {
      first[at] = alive[a]!;
      second[at++] = alive[b]!;
      if (most < 3) continue;
      for (let c = b + 1; c < n; c++) {
        first[at] = alive[a]!;
        second[at] = alive[b]!;
        third[at++] = alive[c]!;
      }
    }
  }
  return { count, none, first, second, third };
}

/** The sets at the given places of a list, as a list of their own. */
export function pickSets(sets: CauseSets, places: ArrayLike<number>): CauseSets {
  const pick = (from: Uint8Array): Uint8Array => Uint8Array.from(places, (place) => from[place]!);
  return {
    count: places.length,
    none: sets.none,
    first: pick(sets.first),
    second: pick(sets.second),
    third: pick(sets.third),
  };
}

/** The causes of one set, as indices. */
export function causesOfSet(sets: CauseSets, place: number): number[] {
  return [sets.first[place]!, sets.second[place]!, sets.third[place]!].filter((cause) => cause !== sets.none);
}
