import type { Trial, TrialUnit } from './trial.ts';

/**
 * What may be counted as separate evidence: what the treatment was given to separately (Hurlbert 1984, Ecological Monographs 54, 187). `unit`: the
 * plants or plots, for beds hold several treatments; `bed`: whole beds, each with one treatment throughout; `bed-season`: whole beds that change
 * treatment from season to season.
 */
export type Independent = 'unit' | 'bed' | 'bed-season';

/**
 * What the layout alone makes doubtful.
 * `one-bed-a-side`: of some treatment there is a single bed, so a difference may be the beds' own: an indication, no proof.
 * `beds-are-the-units`: whole beds were treated, so beds are counted and not the plants in them.
 * `plants-in-bed-not-independent`: a bed with one treatment holds several units; they share its soil and count as one.
 * `treatment-alone-in-block`: some bed or block has one treatment only and tells nothing by itself.
 * `same-beds-every-season`: beds kept their treatment over the seasons, which makes no more beds of them.
 * `stands-in-strips`: in some bed each treatment stands in one unbroken run; where runs were treated as a whole, each is a bed of its own,
 * and the two are a block.
 * `carry-over`: beds changed treatment between seasons; what was given before may still work.
 */
export type LayoutWarning =
  | 'one-bed-a-side'
  | 'beds-are-the-units'
  | 'plants-in-bed-not-independent'
  | 'treatment-alone-in-block'
  | 'same-beds-every-season'
  | 'stands-in-strips'
  | 'carry-over';

const KEY = '\u0000';
export const seasonOf = ({ season }: TrialUnit): string => season ?? '';
const treatmentsOf = (units: readonly TrialUnit[]): Set<string> =>
  new Set(units.map(({ treatment }) => treatment));

/** Groups in the order in which they are first met. */
export function groupUnits<T>(units: readonly T[], keyOf: (unit: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const unit of units) {
    const key = keyOf(unit);
    const group = groups.get(key);
    if (group) group.push(unit);
    else groups.set(key, [unit]);
  }
  return groups;
}

/** What of these units counts by itself. Pure. */
export function findIndependent(units: readonly TrialUnit[]): Independent {
  const pure = (groups: Map<string, TrialUnit[]>): boolean =>
    [...groups.values()].every((group) => treatmentsOf(group).size === 1);
  if (pure(groupUnits(units, ({ bed }) => bed))) return 'bed';
  return pure(groupUnits(units, (unit) => unit.bed + KEY + seasonOf(unit))) ? 'bed-season' : 'unit';
}

/**
 * The block a unit is compared in where units count: its bed in its season, and the pair or block in it. A block named over several beds is
 * parted by them, or else plants of beds with one treatment would count one by one.
 */
export const blockOf = (unit: TrialUnit): string => [seasonOf(unit), unit.bed, unit.block ?? ''].join(KEY);

/**
 * The block a whole bed is compared in: where beds change, the season; else the block all its units name, if that block
 * holds another treatment too.
 */
export function bedBlocks(units: readonly TrialUnit[]): Map<string, string> {
  const mixed = new Set(
    [...groupUnits(units, ({ block }) => block ?? '')]
      .filter(([block, group]) => block !== '' && treatmentsOf(group).size > 1)
      .map(([block]) => block),
  );
  return new Map(
    [...groupUnits(units, ({ bed }) => bed)].map(([bed, group]) => {
      const named = new Set(group.map(({ block }) => block ?? ''));
      const [block = ''] = named;
      return [bed, named.size === 1 && mixed.has(block) ? block : ''];
    }),
  );
}

/** Beds of each treatment. */
export function bedsOf(units: readonly TrialUnit[]): Map<string, Set<string>> {
  return new Map(
    [...groupUnits(units, ({ treatment }) => treatment)].map(([treatment, group]) => [
      treatment,
      new Set(group.map(({ bed }) => bed)),
    ]),
  );
}

/** Units of each treatment from which an unbroken run is hardly chance: 2 ways in 70 for two treatments of four. */
const RUN = 4;

/** In a bed without pairs or blocks each treatment stands in one unbroken run. */
function standsInStrips(bed: readonly TrialUnit[]): boolean {
  if (bed.some(({ place, block }) => place === undefined || block !== undefined)) return false;
  const groups = [...groupUnits(bed, ({ treatment }) => treatment).values()];
  if (groups.length < 2 || groups.some(({ length }) => length < RUN)) return false;
  const row = [...bed].sort((a, b) => a.place! - b.place!);
  const changes = row.filter(({ treatment }, i) => i > 0 && treatment !== row[i - 1]!.treatment).length;
  return changes === groups.length - 1;
}

/** What the layout makes doubtful, before anything is sown or measured. Pure. */
export function warnOfLayout({ units }: Pick<Trial, 'units'>): LayoutWarning[] {
  const independent = findIndependent(units);
  const seasons = new Set(units.map(seasonOf)).size;
  const warnings = new Set<LayoutWarning>();
  if (independent === 'unit') {
    const blocks = [...groupUnits(units, blockOf).values()];
    if (blocks.some((group) => treatmentsOf(group).size === 1)) warnings.add('treatment-alone-in-block');
    const beds = groupUnits(units, (unit) => unit.bed + KEY + seasonOf(unit)).values();
    if ([...beds].some(standsInStrips)) warnings.add('stands-in-strips');
    return [...warnings];
  }
  warnings.add('beds-are-the-units');
  const perBed = [...groupUnits(units, (unit) => unit.bed + KEY + seasonOf(unit)).values()];
  if (perBed.some(({ length }) => length > 1)) warnings.add('plants-in-bed-not-independent');
  if (independent === 'bed') {
    if ([...bedsOf(units).values()].some(({ size }) => size === 1)) warnings.add('one-bed-a-side');
    if (seasons > 1) warnings.add('same-beds-every-season');
    return [...warnings];
  }
  warnings.add('carry-over');
  if ([...groupUnits(units, seasonOf).values()].some((group) => treatmentsOf(group).size === 1))
    warnings.add('treatment-alone-in-block');
  return [...warnings];
}
