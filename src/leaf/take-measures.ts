import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { castOf } from '../photo/settle-white.ts';
import { createInsideBlurs } from './blur-inside.ts';
import { TISSUE_BOUNDS, type TissueBounds } from './classify-tissue.ts';
import { findEnds } from './find-ends.ts';
import { findVeins } from './find-veins.ts';
import { measureDistances } from './measure-distances.ts';
import { measureSpots } from './measure-spots.ts';
import { hueAround, measureTissue, type Taking, type Values } from './measure-tissue.ts';
import type { Measured, MeasureId, Measures } from './measures.ts';
import { colourSample, type LeafSample } from './sample-leaf.ts';
import type { WhiteReference } from './types.ts';

export interface TakenMeasures {
  readonly measures: Measures;
  readonly lab: LabPlanes;
  readonly veins: Uint8Array;
}

/**
 * Takes every measure of colour and pattern, each with a standard error. The error is found by taking the measure again
 * on a smaller sample with one circumstance changed by one standard error and adding up the squares of the moves:
 * - the light: gains turned bluer or yellower, and greener or pinker, by the error of the white reference;
 * - the exposure: by what a guess from the ground misses, or a seventh of a stop where the leaf lies on a sheet;
 * - the mask: eroded by a pixel or two against eroded by nothing;
 * - the bounds between kinds of tissue: hues by 2 degrees, chroma by 1 unit;
 * - and a floor for what a second shot of the same leaf changes (`RETAKE`), which no change of the first can show.
 */
export function takeMeasures(sample: LeafSample, small: LeafSample, white: WhiteReference): TakenMeasures {
  const taking = prepare(sample, white);
  const values = measureTissue(sample, taking);
  const nominal = prepare(small, white);
  const spots = measureSpots(small, nominal.lab, nominal.tissue, nominal.blurs);
  const before = measureTissue(small, { ...nominal, spots });
  const again = (change: Partial<Taking>): Values => measureTissue(small, { ...nominal, ...change });
  const light = (se: number, direction: readonly [number, number, number]): Values => {
    const gains = turnGains(nominal.gains, se, direction);
    return again({ gains, lab: colourSample(small, gains) });
  };
  const brighter = (stops: number): Values => {
    const gains = nominal.gains.map((v) => v * 2 ** stops) as [number, number, number];
    return again({ gains, lab: colourSample(small, gains) });
  };
  const stops = white.exposure === undefined ? OPEN_STOPS : SHEET_STOPS;
  // Two-sided changes count half each.
  const retakes: [Values, number][] = [
    [light(white.se, [1, 0, -1]), 0.5],
    [light(-white.se, [1, 0, -1]), 0.5],
    [light(0.5 * white.se, [1, 0, 1]), 1],
    [brighter(stops), 0.5],
    [brighter(-stops), 0.5],
    [again(tissueOf(small, small.tissue)), 0.5],
    [again(tissueOf(small, erode(small, Math.max(2, 0.018 * small.sizePx)))), 0.5],
    [again({ spots, bounds: moveBounds(-1) }), 0.5],
    [again({ spots, bounds: moveBounds(1) }), 0.5],
  ];
  const measures: { [Id in MeasureId]?: { value: number; se: number } } = {};
  for (const id of Object.keys(values) as MeasureId[]) {
    const value = values[id]!;
    const [floor, share, onSheet, inOpen] = RETAKE[id] ?? [0, 0.1, 1, 1];
    let variance = floor ** 2 + (share * value) ** 2;
    for (const [retaken, weight] of retakes) {
      const from = before[id];
      const to = retaken[id];
      if (from !== undefined && to !== undefined) variance += weight * (to - from) ** 2;
    }
    const scale = white.exposure === undefined ? inOpen : onSheet;
    measures[id] = bringToLevel(id, { value, se: scale * Math.sqrt(variance) }, white);
  }
  const blurs = createInsideBlurs(sample.tissue, sample.width, sample.height);
  const hue = hueAround(taking.lab, blurs, 0.006 * sample.sizePx);
  return { measures, lab: taking.lab, veins: findVeins(sample, taking.lab, hue, blurs) };
}

/** How far exposure strays where it is guessed from the ground, stops: leaves on paper and in place (`training/compare-papaya.ts`). */
const OPEN_STOPS = 0.6;
/** And where the leaf lies on a sheet: light is not even over it (common practice, no source). */
const SHEET_STOPS = 0.15;

/** Multipliers of linear R, G, B that a white reference asks for, brightness included. */
export function gainsOf({ gains, exposure = 1 }: WhiteReference): [number, number, number] {
  return [gains[0] * exposure, gains[1] * exposure, gains[2] * exposure];
}

function prepare(sample: LeafSample, white: WhiteReference): Taking {
  const gains = gainsOf(white);
  return {
    lab: colourSample(sample, gains),
    gains,
    bounds: TISSUE_BOUNDS,
    ends: findEnds(sample),
    ...tissueOf(sample, erode(sample, Math.max(1, 0.006 * sample.sizePx))),
  };
}

function tissueOf({ width, height }: LeafSample, tissue: Uint8Array): Pick<Taking, 'tissue' | 'blurs'> {
  return { tissue, blurs: createInsideBlurs(tissue, width, height) };
}

/**
 * Lightness and chroma under the exposure that the ground tells, where no sheet does: in CIELAB a multiplier of light
 * multiplies L* + 16, a* and b* by its cube root (CIE 15; but for the darkest colours). Not the dark green index: there
 * exposure and the paler colour of what is brighter make up for each other already.
 */
function bringToLevel(id: MeasureId, { value, se }: Measured, white: WhiteReference): Measured {
  const level = Math.cbrt(white.guessedExposure ?? 1);
  if (id === 'chroma') return { value: level * value, se: level * se };
  if (id === 'lightness') return { value: Math.max(0, level * (value + 16) - 16), se: level * se };
  return { value, se };
}

/**
 * What a second shot of the same leaf changes beyond light, exposure, mask and bounds: a part in the measure's unit and a share
 * of the value; then what the sum of all must be multiplied by on a sheet, and in the open, since the circumstances are
 * not independent. Set so that the errors hold at the rate they claim over retakes by script and, in the open, come as near to
 * it as one number can over leaves taken on paper and in place as well (`training/check-errors.ts`,
 * `training/compare-papaya.ts`; the table is in the README).
 */
const RETAKE: { readonly [Id in MeasureId]?: readonly [number, number, number, number] } = {
  'chlorotic-fraction': [0.01, 0.05, 0.57, 0.7],
  'necrotic-fraction': [0.001, 0.1, 0.95, 0.9],
  'purple-fraction': [0.001, 0.1, 0.5, 0.65],
  'white-fraction': [0.004, 0.1, 0.35, 0.56],
  lightness: [1.5, 0.04, 1.1, 1],
  chroma: [1.5, 0.04, 1, 1.2],
  hue: [1.5, 0, 0.7, 1],
  'dark-green-index': [0.015, 0, 0.9, 0.95],
  evenness: [0.015, 0.03, 0.75, 0.92],
  'vein-contrast': [0.05, 0.06, 0.6, 0.79],
  'edge-contrast': [0.5, 0.08, 0.65, 0.9],
  'tip-contrast': [0.5, 0.08, 0.65, 1],
  'spot-count': [1.5, 0.3, 0.9, 1],
  'spot-fraction': [0.001, 0.12, 1, 1.1],
  mottle: [0.012, 0.04, 1.1, 1.17],
  'surface-relief': [0.05, 0.15, 1, 1.3],
};

/** Tissue at least `px` from the outline and from holes: pixels on a border are mixed with the ground. */
export function erode(sample: LeafSample, px: number): Uint8Array {
  const depth = measureDistances(sample.tissue, sample.width, sample.height, 255, px + 2);
  const out = new Uint8Array(depth.length);
  for (let i = 0; i < out.length; i++) if (depth[i]! > px) out[i] = 255;
  return out;
}

/** Gains turned along a direction of log R, G, B until a mid grey shows a cast of `se` CIELAB units. */
function turnGains(
  gains: readonly [number, number, number],
  se: number,
  direction: readonly [number, number, number],
): [number, number, number] {
  const at = (t: number): [number, number, number] => [
    Math.exp(t * direction[0]),
    Math.exp(t * direction[1]),
    Math.exp(t * direction[2]),
  ];
  const step = 0.05;
  const turned = at((step * se) / castOf(at(step)));
  return [gains[0] * turned[0], gains[1] * turned[1], gains[2] * turned[2]];
}

function moveBounds(sign: number): TissueBounds {
  return {
    chloroticHue: TISSUE_BOUNDS.chloroticHue + 2 * sign,
    deadHue: TISSUE_BOUNDS.deadHue + 2 * sign,
    purpleHue: TISSUE_BOUNDS.purpleHue + 2 * sign,
    whiteChroma: TISSUE_BOUNDS.whiteChroma + sign,
  };
}
