import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { blurInside } from './blur-inside.ts';
import { classifyTissue, TISSUE_BOUNDS, TISSUE_INDEX, type TissueBounds } from './classify-tissue.ts';
import { contrastVeins } from './contrast-veins.ts';
import { findCentre } from './find-centre.ts';
import { measureColour } from './measure-colour.ts';
import { measureRelief } from './measure-relief.ts';
import { measureSpots } from './measure-spots.ts';
import type { MeasureId } from './measures.ts';
import type { LeafSample } from './sample-leaf.ts';

/** Values by measure; what could not be taken is left out. */
export type Values = { [Id in MeasureId]?: number };

/** The circumstances of one taking: they are varied to see how far the values move. */
export interface Taking {
  readonly lab: LabPlanes;
  readonly gains: readonly [number, number, number];
  readonly bounds: TissueBounds;
  /** Tissue to measure, 255 = counts. */
  readonly tissue: Uint8Array;
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
  const living = Uint8Array.from(kinds, (k) =>
    k === TISSUE_INDEX.healthy || k === TISSUE_INDEX.chlorotic || k === TISSUE_INDEX.purple ? 255 : 0,
  );
  const spots = measureSpots(sample, lab, tissue);
  const values: Values = {
    'chlorotic-fraction': weighChlorotic(lab, kinds, taking.bounds) / all,
    'necrotic-fraction': counts[TISSUE_INDEX.necrotic]! / all,
    'purple-fraction': counts[TISSUE_INDEX.purple]! / all,
    'white-fraction': counts[TISSUE_INDEX.white]! / all,
    'spot-count': spots.count,
    'spot-fraction': spots.area / all,
  };
  if (counts[1]! + counts[2]! + counts[4]! < 0.05 * all) return values;
  const greenness = hueAround(lab, living, width, height, FINE * sizePx);
  return {
    ...values,
    ...measureColour(sample, lab, taking.gains, findTinted(lab, kinds, living, taking.bounds)),
    ...measurePattern(sample, lab, living, greenness),
  };
}

/** Smoothing of hue against the grain of the camera, over the root of the leaf's area. */
const FINE = 0.006;

/** Hue in degrees (0–360 held to 60–180, where plants are) of the mean colour around each pixel of the mask. */
export function hueAround(
  lab: LabPlanes,
  mask: Uint8Array,
  width: number,
  height: number,
  sigmaPx: number,
): Float32Array {
  const a = blurInside(lab.a, mask, width, height, Math.max(0.7, sigmaPx));
  const b = blurInside(lab.b, mask, width, height, Math.max(0.7, sigmaPx));
  const hue = new Float32Array(a.length);
  for (let i = 0; i < hue.length; i++) {
    const h = (Math.atan2(b[i]!, a[i]!) * 180) / Math.PI;
    hue[i] = Math.max(60, Math.min(180, h < -90 ? 180 : h));
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
    const hue = (Math.atan2(lab.b[i]!, lab.a[i]!) * 180) / Math.PI;
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
  let alive = 0;
  let tinted = 0;
  const out = Uint8Array.from(kinds, (kind, i) => {
    if (living[i] === 255) alive++;
    const a = lab.a[i]!;
    const b = lab.b[i]!;
    const counts =
      kind === TISSUE_INDEX.purple ||
      (kind !== TISSUE_INDEX.outside && b > 0 && (a <= 0 || b > least * a) && a * a + b * b > TINTED ** 2);
    if (counts) tinted++;
    return counts ? 255 : 0;
  });
  return tinted > 0.3 * alive ? out : living;
}

/** CIELAB chroma above which a colour is one's own. */
const TINTED = 10;

/** Evenness and the contrasts of edge and tip, on hue: shading and folds leave hue alone; mottle and veins on b*. */
function measurePattern(
  sample: LeafSample,
  lab: LabPlanes,
  living: Uint8Array,
  greenness: Float32Array,
): Values {
  const { width, height, sizePx, depth } = sample;
  const middle = blurInside(greenness, living, width, height, 0.03 * sizePx);
  const yellow = blurInside(lab.b, living, width, height, Math.max(0.8, PATCH.finest * sizePx));
  const yellowNear = blurInside(lab.b, living, width, height, PATCH.broadest * sizePx);
  const mean = meanInside(greenness, living);
  const deepest = maxOf(depth);
  const edge = [0, 0];
  const inner = [0, 0];
  let spread = 0;
  let patches = 0;
  let n = 0;
  for (let i = 0; i < living.length; i++) {
    if (living[i] !== 255) continue;
    n++;
    spread += (middle[i]! - mean) ** 2;
    patches += (yellow[i]! - yellowNear[i]!) ** 2;
    const group = depth[i]! < 0.16 * deepest ? edge : depth[i]! > 0.45 * deepest ? inner : undefined;
    if (group === undefined) continue;
    group[0]! += greenness[i]!;
    group[1]!++;
  }
  const values: Values = {
    evenness: 1 / (1 + Math.sqrt(spread / n) / EVEN_HALF),
    mottle: Math.sqrt(patches / n) / (Math.sqrt(patches / n) + MOTTLE_HALF),
  };
  const veins = contrastVeins(sample, lab, living);
  if (veins !== undefined) values['vein-contrast'] = veins;
  const relief = measureRelief(sample, lab, living);
  if (relief !== undefined) values['surface-relief'] = relief;
  if (edge[1]! > 20 && inner[1]! > 20) {
    values['edge-contrast'] = inner[0]! / inner[1]! - edge[0]! / edge[1]!;
  }
  const tip = contrastTip(sample, living, greenness);
  if (tip !== undefined) values['tip-contrast'] = tip;
  return values;
}

/** Sizes of the patches that mottle, over the root of the leaf's area: below is grain, above is shading and a yellow edge. */
const PATCH = { finest: 0.008, broadest: 0.05 };
/** Spread of hue, degrees, at which evenness is one half, and of b* in patches at which mottle is. */
const EVEN_HALF = 8;
const MOTTLE_HALF = 6;

/**
 * Hue of the base third less hue of the tip third along the longest axis. The tip is the more pointed end; undefined when
 * the ends look alike, or the leaf is about as broad as long.
 */
function contrastTip(sample: LeafSample, living: Uint8Array, greenness: Float32Array): number | undefined {
  const { width, outline, sizePx } = sample;
  const { x: mx, y: my } = findCentre(outline, width);
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (let i = 0; i < outline.length; i++) {
    if (outline[i] !== 255) continue;
    const dx = (i % width) - mx;
    const dy = ((i / width) | 0) - my;
    xx += dx * dx;
    yy += dy * dy;
    xy += dx * dy;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const root = Math.hypot((xx - yy) / 2, xy);
  const elongation = Math.sqrt(((xx + yy) / 2 + root) / Math.max(1, (xx + yy) / 2 - root));
  if (elongation < 1.25) return undefined;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const along = (i: number): number => ((i % width) - mx) * cos + (((i / width) | 0) - my) * sin;
  let least = 0;
  let most = 0;
  for (let i = 0; i < outline.length; i++) {
    if (outline[i] !== 255) continue;
    const t = along(i);
    if (t < least) least = t;
    if (t > most) most = t;
  }
  const sums = { low: [0, 0], high: [0, 0] };
  const ends = { low: 0, high: 0 };
  for (let i = 0; i < outline.length; i++) {
    if (outline[i] !== 255) continue;
    const t = (along(i) - least) / (most - least);
    if (t < 0.12) ends.low++;
    else if (t > 0.88) ends.high++;
    if (living[i] !== 255) continue;
    const group = t < 0.3 ? sums.low : t > 0.7 ? sums.high : undefined;
    if (group === undefined) continue;
    group[0]! += greenness[i]!;
    group[1]!++;
  }
  if (sums.low[1]! < 20 || sums.high[1]! < 20 || sizePx < 20) return undefined;
  const ratio = ends.low / Math.max(1, ends.high);
  if (ratio > 0.8 && ratio < 1.25) return undefined;
  const low = sums.low[0]! / sums.low[1]!;
  const high = sums.high[0]! / sums.high[1]!;
  return ratio < 1 ? high - low : low - high;
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
