import type { Material } from './materials.ts';
import { chanceAbove, type LogNormal } from './normal.ts';

/** Carbon to nitrogen of soil microbes (NRCS-CN), and the share of the carbon they eat that they keep (from memory). */
const MICROBES = { carbonToNitrogen: 8, kept: 0.35 } as const;

/**
 * Nitrogen that rotting sets free (positive) or takes out of the soil (negative), in the unit of the carbon: what the
 * material holds, less what the microbes build in, C · 0.35 / 8.
 */
export function nitrogenBalance(carbon: number, carbonToNitrogen: number): number {
  return carbon / carbonToNitrogen - (carbon * MICROBES.kept) / MICROBES.carbonToNitrogen;
}

/** Carbon to nitrogen at which rotting neither gives nor takes: 8 / 0.35, about 23. */
export const BREAK_EVEN_RATIO = MICROBES.carbonToNitrogen / MICROBES.kept;

/** Nitrogen to add so that a heap of so much carbon and nitrogen comes to a ratio; never negative. Any one unit of weight. */
export function nitrogenToAdd(carbon: number, nitrogen: number, targetRatio: number): number {
  return Math.max(0, carbon / targetRatio - nitrogen);
}

/**
 * Published ratios above which nitrogen is tied up. They disagree (release below 20, tie-up above 30: AB-NMP; break-even 24:
 * NRCS-CN; above 35 when dug in: BARKER), so none is taken as the right one: each counts a quarter, with a tenth of
 * doubt about itself. 15 is then no tie-up, 25 open, 35 likely.
 */
export const TIE_UP_LIMITS = [20, 24, 30, 35] as const;
const LIMIT_SD = 0.1;

/** Chance that something of this ratio ties nitrogen up while it rots, over its own spread and that of the limits. */
export function chanceOfTieUp(ratio: LogNormal): number {
  const chances = TIE_UP_LIMITS.map((limit) => chanceAbove(ratio, limit, LIMIT_SD));
  return chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
}

/**
 * Carbon to nitrogen of several things rotting together. Nitrogen per carbon averages over what of each rots; as nobody
 * knows how much of each there was, the shares are taken as equal with a wide spread (Dirichlet, two for each). Moments
 * of the mean are matched by a lognormal.
 */
export function blendRatios(materials: readonly Material[]): LogNormal {
  if (materials.length === 1) return materials[0]!.carbonToNitrogen;
  const weights = materials.map(({ activity }) => 2 * activity);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const means = materials.map(({ carbonToNitrogen: { logMean, logSd } }) =>
    Math.exp(-logMean + logSd ** 2 / 2),
  );
  let mean = 0;
  let square = 0;
  weights.forEach((a, i) => {
    mean += (a / total) * means[i]!;
    weights.forEach((b, j) => {
      const sharesProduct = (a * (i === j ? a + 1 : b)) / (total * (total + 1));
      const product =
        i === j
          ? means[i]! ** 2 * Math.exp(materials[i]!.carbonToNitrogen.logSd ** 2)
          : means[i]! * means[j]!;
      square += sharesProduct * product;
    });
  });
  const logSd = Math.sqrt(Math.log(square / mean ** 2));
  return { logMean: -(Math.log(mean) - logSd ** 2 / 2), logSd };
}
