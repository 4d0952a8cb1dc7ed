import type { MeasureId } from '../../src/leaf/measures.ts';
import { rank } from '../fit-mark-pair.ts';
import type { RenderedMark } from './choose-marks.ts';

/** One rendered photograph, what is true of it and what was read off it. */
export interface ReadPhoto {
  readonly leaf: string;
  readonly ground: string;
  readonly marks: readonly RenderedMark[];
  readonly trouble: readonly string[];
  /** Of the outline found with the leaf drawn; undefined where none was found. */
  readonly overlap: number | undefined;
  readonly truth: { readonly [Id in MeasureId]?: number };
  readonly measured: { readonly [Id in MeasureId]?: { readonly value: number; readonly se: number } };
}

/** Outlines that agree less are counted as lost: their measures are of something else. */
export const AGREES = 0.9;

/** Measures whose truth is a number of the picture. */
export const WITH_TRUTH: readonly MeasureId[] = [
  'chlorotic-fraction',
  'necrotic-fraction',
  'purple-fraction',
  'white-fraction',
  'spot-fraction',
  'spot-count',
  'hole-fraction',
  'hole-count',
  'edge-loss-fraction',
  'lost-fraction',
];

/** Measures of pattern: what they should tell apart. */
export const PATTERNS: readonly { readonly id: MeasureId; readonly mark: RenderedMark }[] = [
  { id: 'vein-contrast', mark: 'yellow-between-veins' },
  { id: 'mottle', mark: 'mottled' },
  { id: 'surface-relief', mark: 'puckered' },
  { id: 'stipple-density', mark: 'stippled' },
  { id: 'edge-contrast', mark: 'yellow-edges' },
  { id: 'white-fraction', mark: 'white-powder' },
  { id: 'spot-fraction', mark: 'brown-spots' },
  { id: 'spot-fraction', mark: 'rust-pustules' },
  { id: 'chlorotic-fraction', mark: 'yellow-even' },
  { id: 'purple-fraction', mark: 'purple-tint' },
  { id: 'necrotic-fraction', mark: 'brown-patches' },
];

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

export interface Agreement {
  readonly count: number;
  /** Mean and median distance from the truth, mean of the signed one, correlation, share within the stated error. */
  readonly meanOff: number;
  readonly medianOff: number;
  readonly bias: number;
  readonly correlation: number;
  readonly within: number;
}

/** How a measure agrees with the truth where the outline was found. */
export function compareMeasure(read: readonly ReadPhoto[], id: MeasureId): Agreement {
  const pairs = read.flatMap(({ overlap, truth, measured }) => {
    const [real, found] = [truth[id], measured[id]];
    return overlap !== undefined && overlap >= AGREES && real !== undefined && found
      ? [{ real, ...found }]
      : [];
  });
  const off = pairs.map(({ real, value }) => value - real);
  const reals = pairs.map(({ real }) => real);
  const values = pairs.map(({ value }) => value);
  const [ofReal, ofValue] = [mean(reals), mean(values)];
  const together = mean(pairs.map(({ real, value }) => (real - ofReal) * (value - ofValue)));
  const spread = (list: readonly number[], middle: number): number =>
    Math.sqrt(mean(list.map((one) => (one - middle) ** 2)));
  return {
    count: pairs.length,
    meanOff: mean(off.map(Math.abs)),
    medianOff: median(off.map(Math.abs)),
    bias: mean(off),
    correlation: together / (spread(reals, ofReal) * spread(values, ofValue)),
    within: mean(pairs.map(({ real, value, se }) => (Math.abs(value - real) <= se ? 1 : 0))),
  };
}

/** Share of pairs, one with the mark and one with nothing wrong, that the measure ranks rightly. */
export function rankPattern(
  read: readonly ReadPhoto[],
  id: MeasureId,
  mark: RenderedMark,
): { auc: number; present: number; absent: number } {
  const valuesOf = (wanted: (photo: ReadPhoto) => boolean): number[] =>
    read.flatMap((photo) => {
      const value = photo.measured[id]?.value;
      return (photo.overlap ?? 0) >= AGREES && wanted(photo) && value !== undefined ? [value] : [];
    });
  const present = valuesOf(({ marks }) => marks.includes(mark));
  const absent = valuesOf(({ marks }) => marks.length === 0);
  return { auc: rank(present, absent), present: present.length, absent: absent.length };
}

/** Prints the tables of `README.md`. */
export function printAgreement(read: readonly ReadPhoto[]): void {
  for (const key of ['ground', 'leaf'] as const) {
    for (const value of new Set(read.map((photo) => photo[key]))) {
      const some = read.filter((photo) => photo[key] === value);
      const overlaps = some.map(({ overlap }) => overlap ?? 0);
      const found = some.filter(({ overlap }) => overlap !== undefined).length;
      const agree = overlaps.filter((overlap) => overlap >= AGREES).length;
      console.log(
        `${value}: ${some.length} read, ${found} found, ${agree} agree by ${AGREES}, median overlap ${median(overlaps).toFixed(3)}`,
      );
    }
  }
  console.log('| measure | photographs | mean off | median off | bias | r | within its error |');
  for (const id of WITH_TRUTH) {
    const { count, meanOff, medianOff, bias, correlation, within } = compareMeasure(read, id);
    const digits = id.endsWith('count') ? 1 : 3;
    console.log(
      `| ${id} | ${count} | ${meanOff.toFixed(digits)} | ${medianOff.toFixed(digits)} | ${bias.toFixed(digits)} | ${correlation.toFixed(3)} | ${within.toFixed(2)} |`,
    );
  }
  console.log('| measure | with / without | AUC |');
  for (const { id, mark } of PATTERNS) {
    const { auc, present, absent } = rankPattern(read, id, mark);
    console.log(`| ${id}: ${mark} | ${present} / ${absent} | ${auc.toFixed(3)} |`);
  }
}
