import { MEASURES, type Measured, type MeasureId } from '../../leaf/measures.ts';

/**
 * How far healthy leaves of one variety in one plot differ by themselves, standard deviation in the unit of the measure:
 * the middle of three sets of field photographs (bean, blackgram, chilli; `training/spread-among-leaves.ts`), stated errors
 * taken out. Other plants and other light are in it, so leaves of one plant differ less: it errs on the side of silence.
 */
const SPREAD: { readonly [Id in MeasureId]?: number } = {
  lightness: 3.9,
  chroma: 12,
  hue: 10,
  'dark-green-index': 0.05,
  evenness: 0.083,
  'vein-contrast': 0.15,
  'edge-contrast': 5.5,
  'tip-contrast': 7.9,
  mottle: 0.056,
  'surface-relief': 0.15,
};

/**
 * Damage that a healthy leaf has none of differs in step with how much there is, and of a share no more than what is left
 * sound allows: leaves of one plant differ by a third of the lesser. Common practice, no source.
 */
const SHARE_OF_DAMAGE = 1 / 3;

const IS_SHARE = new Set<MeasureId>(
  MEASURES.filter(({ unit }) => unit.startsWith('0–1')).map(({ id }) => id),
);

/** Standard deviation among leaves of one plant at one position, where the measure is `value`. */
export const spreadAmongLeaves = (measure: MeasureId, value: number): number =>
  SPREAD[measure] ??
  SHARE_OF_DAMAGE *
    (IS_SHARE.has(measure) ? Math.min(Math.abs(value), Math.abs(1 - value)) : Math.abs(value));

/** The reading of one leaf as one of its plant: with how far leaves differ by themselves, unless it is the very same leaf. */
export const asOneOfItsPlant = (
  measure: MeasureId,
  { value, se }: Measured,
  sameLeaf: boolean,
): Measured => ({
  value,
  se: sameLeaf ? se : Math.hypot(se, spreadAmongLeaves(measure, value)),
});

/**
 * The least change that a grower would call one: half of what healthy leaves differ by themselves; of damage three in a hundred
 * of the leaf, five spots or holes, one pale dot in a thousand. Common practice, no source.
 */
export function leastTold(measure: MeasureId): number {
  const spread = SPREAD[measure];
  if (spread !== undefined) return spread / 2;
  if (measure === 'stipple-density') return 1;
  return IS_SHARE.has(measure) ? 0.03 : 5;
}
