import { seededRandom } from '../../leaf/draw-leaf.ts';
import { checkTreatments } from './check-trial.ts';
import type { TrialUnit } from './trial.ts';
import { TrialError } from './trial-error.ts';

/** A bed with places for so many plants or plots in a row. */
export interface TrialBed {
  readonly bed: string;
  readonly places: number;
}

export interface LayoutWish {
  readonly treatments: readonly string[];
  readonly beds: readonly TrialBed[];
  /**
   * `blocks`: neighbours in a bed form pairs or blocks with one of each treatment, in an order drawn anew in each; `random`: drawn over all places;
   * `whole-beds`: each bed gets one treatment, for what cannot be done to part of a bed.
   */
  readonly how: 'blocks' | 'random' | 'whole-beds';
  /** The same seed lays out the same trial. */
  readonly seed: number;
  readonly season?: string;
}

export interface Layout {
  readonly units: readonly TrialUnit[];
  /** Places that no full set of treatments was left for: sow them like the rest, but do not count them. */
  readonly spare: readonly { readonly bed: string; readonly place: number }[];
}

/** Every order equally likely (Fisher and Yates 1938, in Durstenfeld's form). */
function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const order = [...items];
  for (let i = order.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

const repeated = <T>(items: readonly T[], times: number): T[] =>
  Array.from({ length: times }, () => items).flat();

/**
 * Lays a trial out by lot, every treatment equally often. Pure: the seed decides.
 * @throws TrialError `treatments`; `places` where a bed has no whole number of places, beds share a name, or there is no room for one of each
 */
export function layOutTrial({ treatments, beds, how, seed, season }: LayoutWish): Layout {
  checkTreatments(treatments);
  if (new Set(beds.map(({ bed }) => bed)).size < beds.length) throw new TrialError('places');
  for (const { bed, places } of beds)
    if (!Number.isInteger(places) || places < 1) throw new TrialError('places', bed);
  const random = seededRandom(seed);
  const unitAt = (bed: string, place: number, treatment: string, block?: string): TrialUnit => ({
    id: [...(season === undefined ? [] : [season]), bed, place].join('/'),
    treatment,
    bed,
    place,
    ...(block === undefined ? {} : { block }),
    ...(season === undefined ? {} : { season }),
  });
  const all = beds.flatMap(({ bed, places }) =>
    Array.from({ length: places }, (_, i) => ({ bed, place: i + 1 })),
  );
  const count = treatments.length;

  if (how === 'whole-beds') {
    const sets = Math.floor(beds.length / count);
    if (sets === 0) throw new TrialError('places');
    const lots = new Map(
      shuffled(beds, random)
        .slice(0, sets * count)
        .map(({ bed }, i) => [bed, repeated(treatments, sets)[i]!]),
    );
    return {
      units: all.flatMap(({ bed, place }) => (lots.has(bed) ? [unitAt(bed, place, lots.get(bed)!)] : [])),
      spare: all.filter(({ bed }) => !lots.has(bed)),
    };
  }
  if (how === 'random') {
    const sets = Math.floor(all.length / count);
    if (sets === 0) throw new TrialError('places');
    const used = new Set(shuffled(all, random).slice(0, sets * count));
    const lots = shuffled(repeated(treatments, sets), random);
    return {
      units: all.filter((at) => used.has(at)).map(({ bed, place }, i) => unitAt(bed, place, lots[i]!)),
      spare: all.filter((at) => !used.has(at)),
    };
  }
  const units = beds.flatMap(({ bed, places }) =>
    Array.from({ length: Math.floor(places / count) }, (_, block) =>
      shuffled(treatments, random).map((treatment, i) =>
        unitAt(bed, block * count + i + 1, treatment, `${bed}/${block + 1}`),
      ),
    ).flat(),
  );
  if (units.length === 0) throw new TrialError('places');
  const taken = new Set(units.map(({ bed, place }) => `${bed}\u0000${place}`));
  return { units, spare: all.filter(({ bed, place }) => !taken.has(`${bed}\u0000${place}`)) };
}
