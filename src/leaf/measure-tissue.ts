import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { measureHue } from '../photo/measure-hue.ts';
import { createInsideBlurs, type InsideBlurs } from './blur-inside.ts';
import { classifyTissue, TISSUE_BOUNDS, TISSUE_INDEX, type TissueBounds } from './classify-tissue.ts';
import { contrastVeins } from './contrast-veins.ts';
import { AT_BASE, AT_TIP } from './find-ends.ts';
import { measureColour } from './measure-colour.ts';
import { measureRelief } from './measure-relief.ts';
import { measureSpots, type Spots } from './measure-spots.ts';
import type { MeasureId } from './measures.ts';
import type { LeafSample } from './sample-leaf.ts';
import { TISSUES } from './types.ts';

/** Values by measure; what could not be taken is left out. */
export type Values = { [Id in MeasureId]?: number };

/** The circumstances of one taking: they are varied to see how far the values move. */
export interface Taking {
  readonly lab: LabPlanes;
  readonly gains: readonly [number, number, number];
  readonly bounds: TissueBounds;
  /** Tissue to measure, 255 = counts, and blurs over it. */
  readonly tissue: Uint8Array;
  readonly blurs: InsideBlurs;
  /** Tip and base, as `findEnds` gives them. */
  readonly ends: Uint8Array | undefined;
  /** Spots, where they are known: the bounds between kinds of tissue do not move them. */
  readonly spots?: Spots;
}

/** Everything about colour and its pattern that is taken again for each circumstance. */
export function measureTissue(sample: LeafSample, taking: Taking): Values {
  const { lab, tissue } = taking;
  const { width, height, sizePx } = sample;
  const medianL = medianInside(lab.L, tissue);
  const kinds = classifyTissue(lab, tissue, medianL, taking.bounds);
  const counts = new Float64Array(8);
  for (let i = 0; i < kinds.length; i++) if (tissue[i] === 255) counts[kinds[i]!]!++;
  const all = counts.reduce((sum, v) => sum + v, 0);
  if (all < 30) return {};
  const living = new Uint8Array(kinds.length);
  for (let i = 0; i < kinds.length; i++) if (IS_LIVING[kinds[i]!] === 1) living[i] = 255;
  const spots = taking.spots ?? measureSpots(sample, lab, tissue, taking.blurs);
  const values: Values = {
    'chlorotic-fraction': weighChlorotic(lab, kinds, taking.bounds) / all,
    'necrotic-fraction': counts[TISSUE_INDEX.necrotic]! / all,
    'purple-fraction': counts[TISSUE_INDEX.purple]! / all,
    'white-fraction': counts[TISSUE_INDEX.white]! / all,
    'spot-count': spots.count,
    'spot-fraction': spots.area / all,
  };
  if (counts[1]! + counts[2]! + counts[4]! < 0.05 * all) return values;
  const blurs = createInsideBlurs(living, width, height);
  const greenness = hueAround(lab, blurs, FINE * sizePx);
  return {
    ...values,
    ...measureColour(sample, lab, taking.gains, findTinted(lab, kinds, living, taking.bounds)),
    ...measurePattern(sample, taking, living, blurs, greenness),
  };
}

const IS_LIVING = Uint8Array.from({ length: TISSUES.length }, (_, kind) =>
  kind === TISSUE_INDEX.healthy || kind === TISSUE_INDEX.chlorotic || kind === TISSUE_INDEX.purple ? 1 : 0,
);

/** Smoothing of hue against the grain of the camera, over the root of the leaf's area. */
const FINE = 0.006;

/** Hue in degrees (0–360 held to 60–180, where plants are) of the mean colour around each pixel of the mask that `blurs` are over. */
export function hueAround(lab: LabPlanes, blurs: InsideBlurs, sigmaPx: number): Float32Array {
  const blur = blurs(Math.max(0.7, sigmaPx));
  const a = blur(lab.a);
  const b = blur(lab.b);
  const hue = new Float32Array(a.length);
  for (let i = 0; i < hue.length; i++) {
    const h = measureHue(a[i]!, b[i]!);
    hue[i] = h < -90 ? 180 : Math.max(60, Math.min(180, h));
  }
  return hue;
}

/**
 * Chlorotic pixels, each weighed by how far its hue lies between green and yellow: 0 at half of `CHLOROTIC_SPAN` above
 * the bound, 1 at half below. The bound's place is known to some degrees only; a step would leave all leaves that lie
 * wholly on one side alike, and the share would not fall steadily with chlorophyll.
 */
function weighChlorotic(lab: LabPlanes, kinds: Uint8Array, bounds: TissueBounds): number {
  const from = bounds.chloroticHue + CHLOROTIC_SPAN / 2;
  let sum = 0;
  for (let i = 0; i < kinds.length; i++) {
    if (kinds[i] !== TISSUE_INDEX.healthy && kinds[i] !== TISSUE_INDEX.chlorotic) continue;
    const hue = measureHue(lab.a[i]!, lab.b[i]!);
    sum += hue < -90 ? 0 : Math.max(0, Math.min(1, (from - hue) / CHLOROTIC_SPAN));
  }
  return sum;
}

/** Degrees of hue over which green passes into yellow. */
const CHLOROTIC_SPAN = 12;

/**
 * Tissue whose colour tells of its pigment: greens and yellows of some chroma, and purple. Glare, deep shade and dead tissue
 * have little colour of their own; leaving them out brings the dark green index nearer to the meter on `papaya-spad`
 * (rank correlation 0.943 → 0.953). All living tissue where too little is left.
 */
export function findTinted(
  lab: LabPlanes,
  kinds: Uint8Array,
  living: Uint8Array,
  bounds: TissueBounds = TISSUE_BOUNDS,
): Uint8Array {
  const least = Math.tan((bounds.deadHue * Math.PI) / 180);
  const { outside, purple } = TISSUE_INDEX;
  let alive = 0;
  let tinted = 0;
  const out = new Uint8Array(kinds.length);
  for (let i = 0; i < out.length; i++) {
    const kind = kinds[i]!;
    if (kind === outside) continue;
    if (living[i] === 255) alive++;
    const a = lab.a[i]!;
    const b = lab.b[i]!;
    if (kind === purple || (b > 0 && (a <= 0 || b > least * a) && a * a + b * b > TINTED * TINTED)) {
      out[i] = 255;
      tinted++;
    }
  }
  return tinted > 0.3 * alive ? out : living;
}

/** CIELAB chroma above which a colour is one's own. */
const TINTED = 10;

/** Evenness and the contrasts of edge and tip, on hue: shading and folds leave hue alone; mottle and veins on b*. */
function measurePattern(
  sample: LeafSample,
  taking: Taking,
  living: Uint8Array,
  blurs: InsideBlurs,
  greenness: Float32Array,
): Values {
  const { lab, ends } = taking;
  const { sizePx, depth } = sample;
  const middle = blurs(0.03 * sizePx)(greenness);
  const yellow = blurs(Math.max(0.8, PATCH.finest * sizePx))(lab.b);
  const yellowNear = blurs(PATCH.broadest * sizePx)(lab.b);
  const mean = meanInside(greenness, living);
  const deepest = maxOf(depth);
  let edge = 0;
  let edgeCount = 0;
  let inner = 0;
  let innerCount = 0;
  let spread = 0;
  let patches = 0;
  let n = 0;
  for (let i = 0; i < living.length; i++) {
    if (living[i] !== 255) continue;
    n++;
    const off = middle[i]! - mean;
    const patch = yellow[i]! - yellowNear[i]!;
    spread += off * off;
    patches += patch * patch;
    if (depth[i]! < 0.16 * deepest) {
      edge += greenness[i]!;
      edgeCount++;
    } else if (depth[i]! > 0.45 * deepest) {
      inner += greenness[i]!;
      innerCount++;
    }
  }
  const values: Values = {
    evenness: 1 / (1 + Math.sqrt(spread / n) / EVEN_HALF),
    mottle: Math.sqrt(patches / n) / (Math.sqrt(patches / n) + MOTTLE_HALF),
  };
  const veins = contrastVeins(sample, lab, living, blurs);
  if (veins !== undefined) values['vein-contrast'] = veins;
  const relief = measureRelief(sample, lab, living, blurs);
  if (relief !== undefined) values['surface-relief'] = relief;
  if (edgeCount > 20 && innerCount > 20) values['edge-contrast'] = inner / innerCount - edge / edgeCount;
  const tip = ends === undefined ? undefined : contrastTip(ends, living, greenness);
  if (tip !== undefined) values['tip-contrast'] = tip;
  return values;
}

/** Sizes of the patches that mottle, over the root of the leaf's area: below is grain, above is shading and a yellow edge. */
const PATCH = { finest: 0.008, broadest: 0.05 };
/** Spread of hue, degrees, at which evenness is one half, and of b* in patches at which mottle is. */
const EVEN_HALF = 8;
const MOTTLE_HALF = 6;

/** Hue of the base third less hue of the tip third; undefined on too few pixels. */
function contrastTip(ends: Uint8Array, living: Uint8Array, greenness: Float32Array): number | undefined {
  const sums = [0, 0, 0];
  const counts = [0, 0, 0];
  for (let i = 0; i < ends.length; i++) {
    if (living[i] !== 255) continue;
    sums[ends[i]!]! += greenness[i]!;
    counts[ends[i]!]!++;
  }
  if (counts[AT_TIP]! < 20 || counts[AT_BASE]! < 20) return undefined;
  return sums[AT_BASE]! / counts[AT_BASE]! - sums[AT_TIP]! / counts[AT_TIP]!;
}

/** Median of a plane under a mask, from a histogram of steps of 0.25 between 0 and 110. */
export function medianInside(plane: Float32Array, mask: Uint8Array): number {
  const histogram = new Int32Array(440);
  let n = 0;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] !== 255) continue;
    histogram[Math.max(0, Math.min(439, (plane[i]! * 4) | 0))]!++;
    n++;
  }
  let seen = 0;
  for (let k = 0; k < 440; k++) {
    seen += histogram[k]!;
    if (2 * seen >= n) return (k + 0.5) / 4;
  }
  return 0;
}

function meanInside(plane: Float32Array, mask: Uint8Array): number {
  let sum = 0;
  let n = 0;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] !== 255) continue;
    sum += plane[i]!;
    n++;
  }
  return n > 0 ? sum / n : 0;
}

function maxOf(plane: Float32Array): number {
  let most = 0;
  for (let i = 0; i < plane.length; i++) if (plane[i]! > most) most = plane[i]!;
  return most;
}
