import type { MeasureId } from '../../leaf/measures.ts';

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
 * Damage that a healthy leaf has none of differs in step with how much there is: leaves of one plant differ by a third of
 * it. Common practice, no source.
 */
const SHARE_OF_DAMAGE = 1 / 3;

/** Standard deviation among leaves of one plant at one position, where the measure is `value`. */
export const spreadAmongLeaves = (measure: MeasureId, value: number): number =>
  SPREAD[measure] ?? SHARE_OF_DAMAGE * Math.abs(value);
