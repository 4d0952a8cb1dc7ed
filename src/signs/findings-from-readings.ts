import { meanOfMeasured } from '../leaf/mean-of-measured.ts';
import type { Measured } from '../leaf/measures.ts';
import type { LeafReading } from '../leaf/types.ts';
import { LIKELIHOOD_PAIRS } from './likelihood-pairs.ts';
import type { MarkPair, Spread } from './mark-pair.ts';
import { toScale } from './measure-scale.ts';
import type { Finding, Reporter } from './types.ts';
import type { AskableId } from './vocabulary.ts';

/** A ratio closer to 1 than this says nothing worth reading. */
export const SILENT_BELOW = 1.15;
/** What the likelier side of a pair is given; only the ratio counts. */
const LIKELIER = 0.9;
/** One photo in so many is not what its label says; keeps a ratio from running away in the tails. */
const STRAY = 0.05;

/** Troubles in which a leaf's colours or details cannot be trusted: the camera keeps silent on marks. */
const SILENCING = new Set(['too-blurred', 'burnt-out', 'too-dark', 'leaf-too-small', 'no-leaf']);

/** Nothing is concluded from the colours of this photo. */
export const isSilenced = ({ leaf, trouble }: LeafReading): boolean =>
  !leaf.found || trouble.some((code) => SILENCING.has(code));

/** Normal density, but for its constant. */
export function density(x: number, mean: number, sd: number): number {
  const z = (x - mean) / sd;
  return Math.exp(-0.5 * z * z) / sd;
}

/** Density of a measured value in one class, widened by the error of this measurement, with a few strays. */
function densityIn({ mean, sd }: Spread, { value, se }: Measured): number {
  const wide = Math.hypot(sd, se);
  return (1 - STRAY) * density(value, mean, wide) + STRAY * density(value, mean, 4 * wide);
}

/**
 * How much likelier the measure is where the mark is there than where it is not. Beyond the two class means nothing was
 * seen that would allow a stronger word, so the value is taken as lying between them.
 */
export function ratioOf(pair: MarkPair, measured: Measured): number {
  const { value, se } = toScale(measured, pair.scale);
  const low = Math.min(pair.present.mean, pair.absent.mean);
  const high = Math.max(pair.present.mean, pair.absent.mean);
  const held = { value: Math.min(high, Math.max(low, value)), se };
  const ratio = (densityIn(pair.present, held) / densityIn(pair.absent, held)) ** pair.trust;
  return Math.min(pair.most, Math.max(1 / pair.most, ratio));
}

/** Within the range of the photographs that the pair rests on, give or take the error of this measurement. */
function wasSeen(pair: MarkPair, measured: Measured): boolean {
  const { value, se } = toScale(measured, pair.scale);
  return value >= pair.seen[0] - se && value <= pair.seen[1] + se;
}

function signOf({ mark }: MarkPair, role: LeafReading['role']): AskableId | undefined {
  switch (role) {
    case 'old':
    case 'new':
      return `${mark}@${role}`;
    case 'whole':
      return `${mark}@some`;
    case 'normal':
      return undefined;
  }
}

/** What each mark's measure says on one photo; nothing where it was not taken or lies outside what was seen. */
function ratiosOf(reading: LeafReading): { readonly sign: AskableId; readonly ratio: number }[] {
  if (isSilenced(reading)) return [];
  return LIKELIHOOD_PAIRS.flatMap((pair) => {
    const sign = signOf(pair, reading.role);
    const measured = reading.measures[pair.measure];
    if (sign === undefined || measured === undefined || !wasSeen(pair, measured)) return [];
    return [{ sign, ratio: ratioOf(pair, measured) }];
  });
}

/** The finding whose likelihoods stand in this ratio. */
export function findingOf(sign: AskableId, ratio: number, from: Reporter = 'camera'): Finding {
  return {
    sign,
    from,
    ifPresent: ratio >= 1 ? LIKELIER : LIKELIER * ratio,
    ifAbsent: ratio >= 1 ? LIKELIER / ratio : LIKELIER,
  };
}

/** Measures whose ordinary level differs from variety to variety; a normal leaf of the same variety sets it right. */
const LEVELS = new Set(['dark-green-index', 'hue', 'lightness', 'chroma']);

/**
 * Measure against the normal leaves: where some were photographed, a level counts as far as it differs from theirs, set off
 * from the ordinary level that the pairs were fitted at.
 */
function againstNormal(reading: LeafReading, normals: readonly LeafReading[]): LeafReading {
  if (normals.length === 0 || reading.role === 'normal') return reading;
  const measures = { ...reading.measures };
  for (const pair of LIKELIHOOD_PAIRS) {
    const own = reading.measures[pair.measure];
    const usual = meanOfMeasured(normals.flatMap((normal) => normal.measures[pair.measure] ?? []));
    if (!LEVELS.has(pair.measure) || pair.scale !== 'plain' || !own || !usual) continue;
    measures[pair.measure] = {
      value: pair.absent.mean + own.value - usual.value,
      se: Math.hypot(own.se, usual.se),
    };
  }
  return { ...reading, measures };
}

/**
 * What the camera reports: for each position and each mark that photographs with known labels were at hand for, one
 * likelihood pair from the measure and its error. Silent on every other mark, on photos in trouble, and on values that no
 * photograph of the fit came near. Several photos of one position count as the mean of their ratios, which is the ratio
 * of a mark that is on one of these leaves, none knows which: a mark need not be on every leaf, and the same leaf taken
 * again adds nothing.
 */
export function findingsFromReadings(readings: readonly LeafReading[]): Finding[] {
  const normals = readings.filter((reading) => reading.role === 'normal' && !isSilenced(reading));
  const said = new Map<AskableId, number[]>();
  for (const { sign, ratio } of readings.flatMap((reading) => ratiosOf(againstNormal(reading, normals)))) {
    said.set(sign, [...(said.get(sign) ?? []), ratio]);
  }
  return [...said].flatMap(([sign, ratios]) => {
    const ratio = ratios.reduce((sum, r) => sum + r, 0) / ratios.length;
    return ratio < SILENT_BELOW && ratio > 1 / SILENT_BELOW ? [] : [findingOf(sign, ratio)];
  });
}
