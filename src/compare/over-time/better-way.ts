import type { MeasureId } from '../../leaf/measures.ts';

/**
 * Which way a measure goes when a plant mends: down, up, or towards a value. Lightness and chroma are neither good nor bad
 * by themselves, frame share and sharpness speak of the photo, so they have no better way.
 * Common practice, no source: less yellow, dead, eaten or patchy leaf is better, and the hue to mend to is that of
 * healthy leaves in the field photographs (140 in CIELAB) unless a normal leaf of the variety says otherwise.
 */
export type BetterWay = 'down' | 'up' | { readonly towards: number };

const BETTER_WAYS: { readonly [Id in MeasureId]?: BetterWay } = {
  'chlorotic-fraction': 'down',
  'necrotic-fraction': 'down',
  'purple-fraction': 'down',
  'white-fraction': 'down',
  'lost-fraction': 'down',
  'hole-fraction': 'down',
  'edge-loss-fraction': 'down',
  'hole-count': 'down',
  hue: { towards: 140 },
  'dark-green-index': 'up',
  evenness: 'up',
  'vein-contrast': { towards: 0.3 },
  'edge-contrast': { towards: 0 },
  'tip-contrast': { towards: 0 },
  'spot-count': 'down',
  'spot-fraction': 'down',
  'stipple-density': 'down',
  mottle: 'down',
  'surface-relief': 'down',
};

/** Where a normal leaf of the variety is measured, levels of colour mend towards it and not towards green. */
const VARIETY_SETS: ReadonlySet<MeasureId> = new Set<MeasureId>([
  'chlorotic-fraction',
  'purple-fraction',
  'white-fraction',
  'hue',
  'dark-green-index',
  'evenness',
  'vein-contrast',
  'mottle',
  'surface-relief',
]);

/**
 * @param normal value of the same measure on a normal leaf of the variety
 * @returns nothing for measures that are neither good nor bad
 */
export function betterWayOf(measure: MeasureId, normal?: number): BetterWay | undefined {
  const way = BETTER_WAYS[measure];
  return way !== undefined && normal !== undefined && VARIETY_SETS.has(measure) ? { towards: normal } : way;
}

/** How far a value is from well: less is better. In the unit of the measure. */
export function farFromWell(value: number, way: BetterWay): number {
  if (way === 'down') return value;
  if (way === 'up') return -value;
  return Math.abs(value - way.towards);
}
