import { meanOfMeasured } from '../leaf/mean-of-measured.ts';
import type { Measured } from '../leaf/measures.ts';
import type { LeafReading } from '../leaf/types.ts';
import { findingsFromRatios, type SignRatio } from './finding-from-ratio.ts';
import { LIKELIHOOD_PAIRS } from './likelihood-pairs.ts';
import type { MarkPair, Spread } from './mark-pair.ts';
import { toScale } from './measure-scale.ts';
import { signAt } from './sign-at.ts';
import type { Finding } from './types.ts';

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

/** What each mark's measure says on one photo; nothing where it was not taken or lies outside what was seen. */
function ratiosOf(reading: LeafReading): SignRatio[] {
  const { role } = reading;
  if (isSilenced(reading) || role === 'normal') return [];
  return LIKELIHOOD_PAIRS.flatMap((pair) => {
    const measured = reading.measures[pair.measure];
    if (measured === undefined || !wasSeen(pair, measured)) return [];
    return [{ sign: signAt(pair.mark, role), ratio: ratioOf(pair, measured) }];
  });
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
 * photograph of the fit came near.
 */
export function findingsFromReadings(readings: readonly LeafReading[]): Finding[] {
  const normals = readings.filter((reading) => reading.role === 'normal' && !isSilenced(reading));
  return findingsFromRatios(
    readings.flatMap((reading) => ratiosOf(againstNormal(reading, normals))),
    'camera',
  );
}
