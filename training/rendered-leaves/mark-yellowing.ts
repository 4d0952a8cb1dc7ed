import { type Blade, PURPLE_FROM, TAG, uOf, vOf } from './blade.ts';
import type { Dice } from './dice.ts';
import { cloudAt, smoothStep } from './noise.ts';

/** A mark with its own draws settled: puts itself on one blade after another of the same leaf. */
export type PutOn = (blade: Blade, dice: Dice) => void;

/** Calls `at(i, u, v)` for each texel of the blade. */
export function eachTexel(blade: Blade, at: (i: number, u: number, v: number) => void): void {
  for (let y = 0, i = 0; y < blade.height; y++) {
    const v = vOf(blade, y);
    for (let x = 0; x < blade.width; x++, i++) if (blade.inside[i] === 1) at(i, uOf(blade, x), v);
  }
}

/**
 * Takes chlorophyll away, `share` of the way to `left` (1 = a plain healthy leaf's, so that dark crops turn as yellow as pale ones);
 * carotenoids wane less, so the tissue turns yellow.
 */
export function bleach(blade: Blade, i: number, share: number, left: number, carotenoid: number): void {
  if (share <= 0) return;
  const green = blade.chlorophyll[i]!;
  // By shares of what is left, as pigments wane: half way is the geometric mean.
  if (green > 0) blade.chlorophyll[i] = green * (Math.min(left, 0.5 * green) / green) ** share;
  blade.carotenoid[i]! *= 1 - share * (1 - carotenoid);
}

/** How much carotenoid yellow tissue keeps: cream below a half, deep yellow above 1. */
const drawYellow = (dice: Dice): number => dice.between(0.35, 1.25);

export function drawEvenYellow(dice: Dice): PutOn {
  const left = dice.logBetween(0.006, 0.11);
  const yellow = drawYellow(dice);
  const unrest = dice.between(0, 0.1);
  const slope = dice.between(-0.5, 0.5);
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(1, 3 * u + blade.noiseU, 3 * v + blade.noiseV, 2) - 0.5;
      bleach(
        blade,
        i,
        Math.min(1, 0.95 + unrest * cloud * 2),
        Math.max(0.01, left * (1 + slope * (u - 0.5))),
        yellow,
      );
    });
}

export function drawBetweenVeins(dice: Dice): PutOn {
  const left = dice.logBetween(0.006, 0.12);
  const yellow = drawYellow(dice);
  const near = dice.between(0.02, 0.1);
  const far = near + dice.between(0.07, 0.2);
  /** How far third veins stay green as well. */
  const net = dice.chance(0.55) ? dice.between(0.2, 0.9) : 0;
  const where = dice.pick(['all', 'all', 'all', 'all', 'outer', 'inner', 'cloud'] as const);
  const keep = dice.between(0.85, 1);
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(1, 4 * u + blade.noiseU, 4 * v + blade.noiseV, 3);
      const distance =
        (blade.isParallel ? 0.4 * (1 - 1.6 * blade.vein[i]!) : blade.main[i]! / blade.gap) +
        0.16 * (cloud - 0.5);
      let share = smoothStep(near, far, distance);
      if (net > 0) share *= 1 - net * (1 - smoothStep(0, 0.007, blade.fine[i]!));
      const edge = blade.edge[i]! / blade.halfWidth;
      if (where === 'outer') share *= 1 - smoothStep(0.3, 0.9, edge);
      if (where === 'inner') share *= smoothStep(0.05, 0.4, edge);
      if (where === 'cloud') share *= smoothStep(0.35, 0.55, cloud);
      bleach(blade, i, keep * share, left, yellow);
      // The veins themselves stay as green as the tissue beside them was.
      const vein = blade.vein[i]! * keep;
      blade.chlorophyll[i]! *= 1 + 0.5 * vein;
    });
}

export function drawEdgeYellow(dice: Dice): PutOn {
  const left = dice.logBetween(0.006, 0.1);
  const yellow = drawYellow(dice);
  const fromTip = dice.chance(0.35);
  const reach = fromTip ? dice.between(0.25, 0.6) : dice.between(0.15, 0.45);
  const soft = dice.between(0.08, 0.3);
  const wave = dice.between(0.05, 0.35);
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(2, 6 * u + blade.noiseU, 6 * v + blade.noiseV, 3) - 0.5;
      const edge = blade.edge[i]! / blade.halfWidth;
      const far = (fromTip ? 1 - u + 0.25 * edge : edge) + wave * cloud;
      bleach(blade, i, 1 - smoothStep(reach - soft, reach + soft, far), left, yellow);
    });
}

export function drawVeinYellow(dice: Dice): PutOn {
  const left = dice.logBetween(0.01, 0.1);
  const yellow = drawYellow(dice);
  const reach = dice.between(0.06, 0.2);
  const soft = dice.between(0.03, 0.1);
  const net = dice.chance(0.6) ? dice.between(0.3, 0.9) : 0;
  return (blade) =>
    eachTexel(blade, (i) => {
      const distance = blade.isParallel ? 0.4 * (1 - blade.vein[i]!) : blade.main[i]! / blade.gap;
      const main = 1 - smoothStep(reach - soft, reach + soft, distance);
      const fine = blade.isParallel ? 0 : net * (1 - smoothStep(0.002, 0.008, blade.fine[i]!));
      bleach(blade, i, Math.max(main, fine), left, yellow);
    });
}

export function drawPatchYellow(dice: Dice): PutOn {
  const left = dice.logBetween(0.006, 0.1);
  const yellow = drawYellow(dice);
  const size = dice.between(2.5, 6.5);
  const bound = dice.between(0.5, 0.6);
  const soft = dice.between(0.02, 0.07);
  return (blade) => {
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(3, size * u + blade.noiseU, size * v + blade.noiseV, 2);
      bleach(blade, i, smoothStep(bound - soft, bound + soft, cloud), left, yellow);
    });
  };
}

/** Yellow islets bounded by the smallest veins, from a few to nearly all. */
export function drawYellowMosaic(dice: Dice): PutOn {
  const left = dice.logBetween(0.003, 0.08);
  const yellow = dice.between(0.6, 1.5);
  const size = dice.between(3, 12);
  const bound = dice.between(0.4, 0.6);
  const jitter = dice.between(0.1, 0.45);
  const soft = dice.between(0.01, 0.05);
  const veinsGreen = dice.chance(0.6) ? dice.between(0.3, 1) : 0;
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(1, size * u + blade.noiseV, size * v + blade.noiseU, 3);
      const value = cloud + jitter * (blade.islet[i]! - 0.5);
      let share = smoothStep(bound - soft, bound + soft, value);
      share *= 1 - veinsGreen * (1 - smoothStep(0.03, 0.12, blade.main[i]! / blade.gap));
      share *= 0.75 + 0.25 * smoothStep(0.02, 0.2, blade.isletRim[i]!);
      if (share > 0.5) blade.tags[i]! |= TAG.mottle;
      bleach(blade, i, share, left, yellow);
    });
}

/** Light and dark green side by side, the dark islands often raised. */
export function drawGreenMosaic(dice: Dice): PutOn {
  const left = dice.between(0.1, 0.4);
  const size = dice.between(4, 11);
  const soft = dice.between(0.02, 0.08);
  const jitter = dice.between(0.05, 0.3);
  const raise = dice.chance(0.5) ? dice.between(0.002, 0.012) : 0;
  const banding = dice.chance(0.4) ? dice.between(0.1, 0.3) : 0;
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(0, size * u + blade.noiseV, size * v + blade.noiseU, 2);
      const band = banding * (1 - smoothStep(0.05, 0.25, blade.main[i]! / blade.gap));
      const share = smoothStep(0.5 - soft, 0.5 + soft, cloud + jitter * (blade.islet[i]! - 0.5) - band);
      if (share > 0.5) blade.tags[i]! |= TAG.mottle;
      else blade.chlorophyll[i]! *= 1.15;
      blade.relief[i]! += raise * (1 - share);
      blade.chlorophyll[i]! *= 1 - share * (1 - left);
      blade.carotenoid[i]! *= 1 - 0.25 * share;
    });
}

export function drawPurple(dice: Dice): PutOn {
  const strength = dice.between(0.7, 2.6);
  const fade = dice.between(0.25, 0.8);
  const where = dice.pick(['all', 'edges', 'between', 'veins', 'base', 'cloud'] as const);
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(2, 3.5 * u + blade.noiseU, 3.5 * v + blade.noiseV, 3);
      const edge = blade.edge[i]! / blade.halfWidth + 0.5 * (cloud - 0.5);
      const vein = blade.isParallel ? 0.4 * (1 - blade.vein[i]!) : blade.main[i]! / blade.gap;
      let share = 0.75 + 0.5 * (cloud - 0.5);
      if (where === 'edges') share = 1 - smoothStep(0.15, 0.6, edge);
      if (where === 'between') share = smoothStep(0.04, 0.22, vein);
      if (where === 'veins') share = 1 - smoothStep(0.06, 0.3, vein);
      if (where === 'base') share = 1 - smoothStep(0.35, 0.7, u + 0.6 * (cloud - 0.5));
      if (where === 'cloud') share = smoothStep(0.42, 0.56, cloud);
      if (share * strength > PURPLE_FROM) blade.tags[i]! |= TAG.purple;
      blade.anthocyanin[i]! += strength * share;
      blade.chlorophyll[i]! *= 1 - share * (1 - fade);
      blade.carotenoid[i]! *= 1 - 0.7 * share;
    });
}

/** A clean lime or golden variety: pale all over with nothing wrong. */
export function drawGolden(dice: Dice): PutOn {
  const left = dice.between(0.04, 0.11);
  const yellow = dice.between(0.9, 1.6);
  return (blade) => eachTexel(blade, (i) => bleach(blade, i, 1, left, yellow));
}
