/** At most so many parts; each is kept aside once. */
export const FOLDS = 5;

export interface Dealt {
  /** Part of each example, from 0. */
  readonly fold: readonly number[];
  readonly folds: number;
}

/**
 * Deals the plantings into parts, all photos of a planting into one. Plantings with the mark go round first, the largest first, then
 * those without: so each part has some of either as long as there are enough. No chance in it: the same photos are dealt the same way.
 */
export function dealFolds(plantings: readonly string[], labels: readonly boolean[]): Dealt {
  const all = [...new Set(plantings)].map((planting) => ({
    planting,
    count: plantings.filter((other) => other === planting).length,
    isThere: plantings.some((other, i) => other === planting && labels[i]),
  }));
  const withMark = all.filter(({ isThere }) => isThere).length;
  const folds = Math.max(1, Math.min(FOLDS, withMark, all.length - withMark));
  all.sort(
    (a, b) =>
      Number(b.isThere) - Number(a.isThere) || b.count - a.count || (a.planting < b.planting ? -1 : 1),
  );
  const foldOf = new Map(all.map(({ planting }, place) => [planting, place % folds]));
  return { fold: plantings.map((planting) => foldOf.get(planting)!), folds };
}
